/** What `data/offline.json` holds: which build this is, what every page needs, and what each ladder needs. */
export type OfflineList = {
  readonly version: 1
  readonly edition: string
  /** Digest of everything published: another build, another id. */
  readonly build: string
  /** The handbook asks to be kept nowhere: workers that are out there take themselves away. */
  readonly off: boolean
  readonly core: readonly string[]
  readonly ladders: Readonly<Record<string, readonly string[]>>
  readonly rest: readonly string[]
}

/** True of a list that this code understands; anything else is treated as no list at all. */
export function isOfflineList(value: unknown): value is OfflineList {
  if (typeof value !== 'object' || value === null) return false
  const { version, build, edition, off, core, ladders, rest } = value as Record<string, unknown>
  return version === 1 && typeof build === 'string' && typeof edition === 'string' && typeof off === 'boolean' && Array.isArray(core) && typeof ladders === 'object' && ladders !== null && Array.isArray(rest)
}

/** Where the list is, from the root of the handbook. */
export const LIST = 'data/offline.json'

/** What the caches of a handbook begin with: one in another language below the same host keeps its own. */
export const cachesOf = (root: URL): string => `handbook-${root.pathname}-`

/** The cache of one build. Caches of other builds are taken away once this one is whole. */
export const cacheName = (root: URL, build: string): string => cachesOf(root) + build

/** What a page asks of the worker. */
export type Asked = { readonly keep: 'ladder'; readonly ladder: string } | { readonly keep: 'everything' } | { readonly take: 'new edition' }
