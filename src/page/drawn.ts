import { digestOf } from '../ladder/digest.ts'
import { linkTo, type Address } from './address.ts'
import { escaped } from './escaped.ts'
import { raw, type Html } from './html.ts'

/** What only a build can make, by its key: the drawing of a flowchart, the files of a picture. Prose leaves a place where each belongs. */
export type Drawn = ReadonlyMap<string, string>

const PLACE = /<drawn-here key="([a-z0-9-]+)" text="([^"]*)"><\/drawn-here>/g

/** The place of something drawn, and the text for who does not see it. No text of a coach can be taken for one: all of it is escaped. */
export const drawnHere = (key: string, text = ''): Html => raw(`<drawn-here key="${key}" text="${escaped(text)}"></drawn-here>`)

/** By what name a picture is known, from its file. */
export const pictureKey = (file: string): string => `picture-${digestOf(file)}`

/** A page with everything drawn in its place. What is drawn twice on a page has ids of its own the second time; what was not drawn leaves its text. */
export function withDrawn(page: string, drawn: Drawn, at: Address): string {
  const root = linkTo(at, '/')
  const times = new Map<string, number>()
  return page.replace(PLACE, (_, key: string, text: string) => {
    const nth = (times.get(key) ?? 0) + 1
    times.set(key, nth)
    const markup = drawn.get(key)?.replaceAll('{root}', root).replaceAll('{text}', () => text) ?? text
    return nth === 1 ? markup : markup.replaceAll(`"${key}`, `"${key}-again-${nth}`).replaceAll(`#${key}`, `#${key}-again-${nth}`)
  })
}
