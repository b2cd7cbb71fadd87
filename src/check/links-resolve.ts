import { nearest } from '../read/nearest.ts'
import { linksIn, targetOf } from '../read/links.ts'
import type { Known, MeasuredRung } from '../measure/measure.ts'
import type { Found, Rule } from './rule.ts'

/** What is wrong with a link, if anything. */
function wrong(href: string, { rungs, pages }: Known): string | undefined {
  const target = targetOf(href)
  const shown = href.slice(0, 80)
  if (target.kind === 'refused') return `The link "${shown}" leads nowhere the handbook may go: ${target.why}.`
  if (target.kind === 'rung' && !rungs.has(target.name)) return `The link "${shown}" leads to no rung.${like(nearest(target.name, [...rungs]), 'rung:')}`
  if (target.kind === 'page' && !pages.has(target.id) && !rungs.has(target.id)) return `The link "${shown}" leads to no page.${like(nearest(target.id, [...pages]), '/')}`
  return undefined
}

const like = (name: string | undefined, before: string): string => (name ? ` Did you mean ${before}${name}?` : ' Mend it or take it out.')

const proseOf = ({ words }: MeasuredRung): string[] =>
  words ? [words.intro, words.set_up ?? '', ...(words.full_rep ?? []), ...(words.cues ?? []), ...(words.faults ?? []).flatMap(({ seen, cause, say, remedy }) => [seen, cause, say, remedy]), ...words.notes.map(({ body }) => body)] : []

export const linksResolve: Rule = {
  name: 'links-resolve',
  says: 'Every link leads to a rung, a ladder or a page that is there.',
  why: 'A dead link on a phone in a gym is a question nobody answers.',

  check({ intro, rungs, known }) {
    const found = (path: Found['path'], texts: readonly string[]): Found[] =>
      texts.flatMap((text) => linksIn(text)).flatMap(({ href }) => {
        const message = wrong(href, known)
        return message ? [{ path, message }] : []
      })
    return [...found([], [intro]), ...rungs.flatMap((rung) => found(['rungs', rung.id], proseOf(rung)))]
  },

  checkPage: ({ body, known }) =>
    linksIn(body).flatMap(({ href, line }) => {
      const message = wrong(href, known)
      return message ? [{ path: ['body', line], message }] : []
    }),
}
