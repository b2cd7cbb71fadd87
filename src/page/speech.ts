import type { MeasuredCurriculum } from '../measure/measure.ts'
import { inLanguage } from '../read/in-language.ts'
import { coachWords, type CoachWords } from './coach-words.ts'
import type { Lookup } from './finished.ts'
import type { Frame } from './site-page.ts'
import { tongueOf, type Tongue } from './tongue.ts'

/** A handbook in one of its languages: what it says, how the interface says it, the coaches' words that are told apart there from the interface's, and the folder it stands in, "" or "es/". */
export type Speech = { readonly tongue: Tongue; readonly curriculum: MeasuredCurriculum; readonly toldApart: readonly CoachWords[]; readonly under: string }

/**
 * A handbook in every language it lists. The first stands at the root, each other in a folder of its own, with the same addresses below it.
 *
 * Shape   a curriculum to as many of the same as it has languages; each knows the address it is published at.
 */
export function speechesOf(curriculum: MeasuredCurriculum): Speech[] {
  const { handbook } = curriculum
  const original = handbook.languages[0] ?? 'en'
  const own = coachWords(curriculum)
  return [...new Set([original, ...handbook.languages])].map((language) => {
    const under = language === original ? '' : `${language}/`
    const said = inLanguage(curriculum, language)
    const words = Object.fromEntries(curriculum.words?.get(language) ?? [])
    const theirs = language === original && handbook.languages.length === 1 && language.split('-')[0] === 'en' && Object.keys(words).length === 0 ? NONE : said === curriculum ? own : coachWords(said) // English as it is written needs nobody's words told apart
    const left = language === original ? undefined : { language: original, words: leftIn(own, theirs, words) }
    return {
      tongue: tongueOf(language, { units: handbook.units, words, theirs: { has: (text) => theirs.names.has(text) || theirs.words.has(text) }, ...(left ? { left } : {}) }),
      curriculum: { ...said, handbook: { ...said.handbook, ...(handbook.address === undefined ? {} : { address: `${handbook.address.replace(/\/$/, '')}/${under}` }) } },
      toldApart: theirs === NONE ? [] : [theirs, ...(left ? [own] : [])],
      under,
    }
  })
}

/** The languages of a handbook, as each of its pages leads to the others. */
export const languagesOf = (speeches: readonly Speech[]): Frame['languages'] => speeches.map(({ tongue: { language, name }, under, curriculum: { handbook: { address } } }) => ({ language, name, under, root: address }))

const NONE: CoachWords = { names: new Set(), words: new Set() }

/** Words that no translation stands for: the same in both, and not said to be the same. */
const leftIn = (original: CoachWords, said: CoachWords, list: Readonly<Record<string, string>>): Lookup => ({
  has: (text) => said.words.has(text) && original.words.has(text) && !Object.hasOwn(list, text) && /\p{L}{2}/u.test(text),
})
