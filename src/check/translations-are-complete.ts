import { isSafety } from '../ladder/translation.ts'
import type { Found, Rule } from './rule.ts'
import { begun, pathOf, type Spoken } from './translated.ts'

const found = (one: Spoken): Found[] =>
  begun(one).flatMap((translated) => {
    const missing = translated.parts.filter((part) => part.standing === 'missing' && !isSafety(part))
    const [first] = missing
    return first ? [{ path: pathOf(translated, first), message: `"${one.title}" lacks in ${translated.language}: ${missing.map(({ name }) => name).join(', ')}. Translate ${missing.length === 1 ? 'it' : 'them'}.` }] : []
  })

export const translationsAreComplete: Rule = {
  name: 'translations-are-complete',
  says: 'A translation holds every part that the original holds.',
  why: 'A page in two languages is read by nobody with ease.',

  check: found,

  checkPage: found,
}
