import { linksIn } from '../read/links.ts'
import { writtenIn } from './prose.ts'
import type { Rule } from './rule.ts'

const message = (src: string): string => `The picture "${src.slice(0, 80)}" has no text beside it. Write what it shows between the square brackets.`

/** Pictures with nothing between the square brackets. */
const withoutText = (text: string) => linksIn(text).filter(({ alt }) => alt === '')

export const picturesHaveText: Rule = {
  name: 'pictures-have-text',
  says: 'Every picture has text that says what it shows.',
  why: 'Who cannot see it, or has no signal, reads the text instead (WCAG 2.2, 1.1.1).',

  check: (ladder) => writtenIn(ladder).flatMap(({ path, text }) => withoutText(text).map(({ href }) => ({ path, message: message(href) }))),

  checkPage: ({ body }) => withoutText(body).map(({ href, line }) => ({ path: ['body', line], message: message(href) })),
}
