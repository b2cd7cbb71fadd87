/** An address in the handbook, from its root: "/" or "/press-up/bench-hands/". */
export type Address = string

export const ladderAddress = (ladder: string): Address => `/${ladder}/`
export const rungAddress = (ladder: string, rung: string): Address => `/${ladder}/${rung}/`
export const pageAddress = (page: string): Address => `/${page}/`

/** The way to a page from any depth of the host, where it is known that the handbook is published at an address: "/club/press-up/". */
export const rootedAt = (published: string, to: Address): string => new URL(published).pathname.replace(/\/$/, '') + to

/**
 * The way from one page to another, so that a handbook works under any folder of any host.
 *
 * Shape   two addresses, the second perhaps with a fragment, to a relative link.
 */
export function linkTo(from: Address, to: Address): string {
  const up = '../'.repeat(from.split('/').length - 2)
  const way = up + to.slice(1)
  return way === '' ? './' : way
}
