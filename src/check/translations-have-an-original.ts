import { nearest } from '../read/nearest.ts'
import type { Found, Rule } from './rule.ts'
import { begun, type Spoken } from './translated.ts'

/** Parts astray in one file for which the likeliest original is looked for: each look goes through every part there is. Chosen by us. */
const MOST_GUESSES = 20

const found = (one: Spoken): Found[] =>
  begun(one).flatMap(({ language, parts, own }) => {
    const known = new Set(parts.map(({ key }) => key))
    const open = [...known].filter((key) => own?.parts.has(key) === false)
    return [...(own?.parts.keys() ?? [])]
      .filter((key) => !known.has(key))
      .map((key, nth) => {
        const like = nth < MOST_GUESSES ? nearest(key, open) : undefined
        return { path: ['translations', language, ...key.split('/')], message: `"${key}" is translated into ${language}, but "${one.title}" has no such part. ${like ? `Did you mean ${like}?` : 'Take it out.'}` }
      })
  })

export const translationsHaveAnOriginal: Rule = {
  name: 'translations-have-an-original',
  says: 'Everything that is translated is there in the original.',
  why: 'What has no original is shown nowhere: its id is misspelt, or it was withdrawn.',

  check: found,

  checkPage: found,
}
