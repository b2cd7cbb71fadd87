import { isSafety } from '../ladder/translation.ts'
import type { Found, Rule } from './rule.ts'
import { begun, called, pathOf, SEAL, type Spoken } from './translated.ts'

const found = (one: Spoken): Found[] =>
  begun(one).flatMap((translated) => {
    const { language } = translated
    const parts = translated.parts.filter((part) => !isSafety(part))
    const unsealed = parts.filter(({ standing, differs }) => standing === 'unsealed' && differs === undefined).map(({ name }) => name)
    return [
      ...parts.filter(({ standing }) => standing === 'stale').map((part) => ({ path: pathOf(translated, part), message: `The original of ${called(part)} has changed since it was translated into ${language}. Translate it again, then: ${SEAL(language, one)}` })),
      ...(unsealed.length === 0 ? [] : [{ path: ['translations', language], message: `Not yet sealed in ${language}: ${unsealed.join(', ')}. Read ${unsealed.length === 1 ? 'it' : 'them'} beside the original, then: ${SEAL(language, one)}` }]),
    ]
  })

export const translationsAreCurrent: Rule = {
  name: 'translations-are-current',
  says: 'Every part of a translation was made from the words that stand now.',
  why: 'Where the original moved on, a wrong translation of a criterion is worse than none; the page shows the original until then.',

  check: found,

  checkPage: found,
}
