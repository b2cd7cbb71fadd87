import { linksIn, type Link } from '../read/links.ts'
import { pictureFile } from '../read/pictures.ts'
import { linksOf } from './prose.ts'
import type { Rule } from './rule.ts'

const isPicture = ({ alt }: Link): boolean => alt !== undefined

/** A picture that is no file a page may show. */
const isAstray = (link: Link): boolean => isPicture(link) && pictureFile('content/page.md', link.href) === undefined

const elsewhere = (href: string): string => `The picture "${href.slice(0, 80)}" cannot be shown. Put a PNG, JPEG, WebP or SVG into the workspace, and write the way to it from this file, such as pictures/grip.jpg.`

export const picturesLieInTheWorkspace: Rule = {
  name: 'pictures-lie-in-the-workspace',
  says: 'Every picture is a file of the workspace, shown below the front matter.',
  why: 'A picture that lies elsewhere is gone one day, tells its host who looks, and is not there without a signal.',

  check(ladder) {
    const { front, prose } = linksOf(ladder)
    return [
      ...prose.filter(({ link }) => isAstray(link)).map(({ path, link: { href, line } }) => ({ path: [...path, 'text', line], message: elsewhere(href) })),
      ...front.filter(({ link }) => isPicture(link)).map(({ path, link: { href } }) => ({ path, message: `The picture "${href.slice(0, 80)}" stands in the front matter, where only words are shown. Move it below.` })),
    ]
  },

  checkPage: ({ body }) => linksIn(body).filter(isAstray).map(({ href, line }) => ({ path: ['body', line], message: elsewhere(href) })),
}
