import { nearest } from '../read/nearest.ts'
import { linksIn, targetOf, type Link } from '../read/links.ts'
import type { Known } from '../measure/measure.ts'
import { linksOf } from './prose.ts'
import type { Found, Rule } from './rule.ts'

/** Dead links of one text for which the likeliest target is looked for: each look goes through every rung there is. Chosen by us. */
const MOST_GUESSES = 20

type Wrong = { readonly says: string; readonly guess: () => string }

/** What is wrong with a link, if anything. */
function wrong(href: string, { rungs, pages }: Known): Wrong | undefined {
  const target = targetOf(href)
  const shown = href.slice(0, 80)
  if (target.kind === 'refused') return { says: `The link "${shown}" leads nowhere the handbook may go: ${target.why}.`, guess: () => '' }
  if (target.kind === 'rung' && !rungs.has(target.name)) return { says: `The link "${shown}" leads to no rung.`, guess: () => like(nearest(target.name, [...rungs]), (name) => `rung:${name}`) }
  if (target.kind === 'page' && !pages.has(target.id) && !rungs.has(target.id)) return { says: `The link "${shown}" leads to no page.`, guess: () => like(nearest(target.id, [...pages]), (id) => `/${id}/`) }
  return undefined
}

/** Pictures have a rule of their own. */
const isLink = ({ alt }: Link): boolean => alt === undefined

const like = (name: string | undefined, written: (name: string) => string): string => (name ? ` Did you mean ${written(name)}?` : ' Mend it or take it out.')

/** One finding a dead link. */
const dead = (links: readonly { readonly path: Found['path']; readonly href: string }[], known: Known): Found[] =>
  links
    .flatMap(({ path, href }) => [wrong(href, known)].flatMap((found) => (found ? [{ path, ...found }] : [])))
    .map(({ path, says, guess }, nth) => ({ path, message: says + (nth < MOST_GUESSES ? guess() : '') }))

export const linksResolve: Rule = {
  name: 'links-resolve',
  says: 'Every link leads to a rung, a ladder or a page that is there.',
  why: 'A dead link on a phone in a gym is a question nobody answers.',

  check(ladder) {
    const { front, prose } = linksOf(ladder)
    return dead([...front, ...prose].filter(({ link }) => isLink(link)).map(({ path, link }) => ({ path, href: link.href })), ladder.known)
  },

  checkPage: ({ body, known }) => dead(linksIn(body).filter(isLink).map(({ href, line }) => ({ path: ['body', line], href })), known),
}
