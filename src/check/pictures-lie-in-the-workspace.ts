import { linksIn } from '../read/links.ts'
import { pictureFile } from '../read/pictures.ts'
import { proseOf, writtenIn } from './prose.ts'
import type { Rule } from './rule.ts'

/** Pictures of a text that are no file a page may show. */
const astray = (text: string) => linksIn(text).filter(({ href, alt }) => alt !== undefined && pictureFile('content/page.md', href) === undefined)

const elsewhere = (href: string): string => `The picture "${href.slice(0, 80)}" cannot be shown. Put a PNG, JPEG, WebP or SVG into the workspace, and write the way to it from this file, such as pictures/grip.jpg.`

export const picturesLieInTheWorkspace: Rule = {
  name: 'pictures-lie-in-the-workspace',
  says: 'Every picture is a file of the workspace, shown below the front matter.',
  why: 'A picture that lies elsewhere is gone one day, tells its host who looks, and is not there without a signal.',

  check(ladder) {
    const prose = proseOf(ladder)
    const below = new Set(prose.map(({ path }) => path.join('/')))
    const front = writtenIn(ladder).filter(({ path }) => !below.has(path.join('/')))
    return [
      ...prose.flatMap(({ path, text }) => astray(text).map(({ href, line }) => ({ path: [...path, 'text', line], message: elsewhere(href) }))),
      ...front.flatMap(({ path, text }) => linksIn(text).filter(({ alt }) => alt !== undefined).map(({ href }) => ({ path, message: `The picture "${href.slice(0, 80)}" stands in the front matter, where only words are shown. Move it below.` }))),
    ]
  },

  checkPage: ({ body }) => astray(body).map(({ href, line }) => ({ path: ['body', line], message: elsewhere(href) })),
}
