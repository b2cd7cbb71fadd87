import { picturesIn } from '../read/links.ts'
import type { Rule } from './rule.ts'

const message = (src: string): string => `The picture "${src.slice(0, 80)}" has no text beside it. Write what it shows between the square brackets.`

export const picturesHaveText: Rule = {
  name: 'pictures-have-text',
  says: 'Every picture has text that says what it shows.',
  why: 'Who cannot see it, or has no signal, reads the text instead (WCAG 2.2, 1.1.1).',

  check: ({ intro, rungs }) => [
    ...picturesIn(intro).flatMap(({ href, alt }) => (alt === '' ? [{ path: [], message: message(href) }] : [])),
    ...rungs.flatMap(({ id, words }) => picturesIn([words?.intro, words?.set_up].filter(Boolean).join('\n\n')).flatMap(({ href, alt }) => (alt === '' ? [{ path: ['rungs', id], message: message(href) }] : []))),
  ],

  checkPage: ({ body }) => picturesIn(body).flatMap(({ href, alt, line }) => (alt === '' ? [{ path: ['body', line], message: message(href) }] : [])),
}
