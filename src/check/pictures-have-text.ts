import { linksIn, type Link } from '../read/links.ts'
import { linksOf } from './prose.ts'
import type { Rule } from './rule.ts'

const message = (src: string): string => `The picture "${src.slice(0, 80)}" has no text beside it. Write what it shows between the square brackets.`

/** Nothing stands between the square brackets. */
const isWithoutText = ({ alt }: Link): boolean => alt === ''

export const picturesHaveText: Rule = {
  name: 'pictures-have-text',
  says: 'Every picture has text that says what it shows.',
  why: 'Who cannot see it, or has no signal, reads the text instead (WCAG 2.2, 1.1.1).',

  check(ladder) {
    const { front, prose } = linksOf(ladder)
    return [...front, ...prose].filter(({ link }) => isWithoutText(link)).map(({ path, link }) => ({ path, message: message(link.href) }))
  },

  checkPage: ({ body }) => linksIn(body).filter(isWithoutText).map(({ href, line }) => ({ path: ['body', line], message: message(href) })),
}
