import type { MeasuredCurriculum, MeasuredLadder } from '../measure/measure.ts'
import { inLanguage } from '../read/in-language.ts'
import { coachWords, type CoachWords } from './coach-words.ts'
import type { Lookup } from './finished.ts'
import type { Frame } from './site-page.ts'
import { tongueOf, type Left, type Tongue } from './tongue.ts'

/** A handbook in one of its languages: what it says, how the interface says it, and the folder it stands in, "" or "es/". */
export type Speech = {
  readonly tongue: Tongue
  /** The tongue of a ladder's own pages. Of coaches' words it knows those of that ladder and of the handbook alone, so that no other ladder changes what they say. */
  readonly tongueOf: (ladder: MeasuredLadder) => Tongue
  /** The words of the handbook itself, in this language and in the original, where coaches' words are told apart from the interface's. */
  readonly toldApart: readonly CoachWords[]
  readonly curriculum: MeasuredCurriculum
  readonly under: string
}

/**
 * A handbook in every language it lists. The first stands at the root, each other in a folder of its own, with the same addresses below it.
 *
 * Shape   a curriculum to as many of the same as it has languages; each knows the address it is published at.
 */
export function speechesOf(curriculum: MeasuredCurriculum): Speech[] {
  const { handbook } = curriculum
  const original = handbook.languages[0] ?? 'en'
  const originals = new Map(curriculum.ladders.map((ladder) => [ladder.id, ladder]))
  return [...new Set([original, ...handbook.languages])].map((language) => {
    const under = language === original ? '' : `${language}/`
    const said = inLanguage(curriculum, language)
    const words = Object.fromEntries(curriculum.words?.get(language) ?? [])
    const asWritten = language === original && handbook.languages.length === 1 && language.split('-')[0] === 'en' && Object.keys(words).length === 0 // English as it is written needs nobody's words told apart
    const beside = (own: CoachWords, theirs: CoachWords): { theirs: Lookup; left: Left | undefined } => ({
      theirs: { has: (text) => theirs.names.has(text) || theirs.words.has(text) },
      left: language === original ? undefined : { language: original, words: leftIn(own, theirs, words) },
    })
    const [own, theirs] = asWritten ? [NONE, NONE] : [coachWords(curriculum), coachWords(said)]
    const whole = beside(own, theirs)
    const tongue = tongueOf(language, { units: handbook.units, words, theirs: whole.theirs, ...(whole.left ? { left: whole.left } : {}) })
    return {
      tongue,
      tongueOf(ladder) {
        if (asWritten) return tongue
        const first = originals.get(ladder.id) ?? ladder
        const of = beside(coachWords(curriculum, [first]), coachWords(said, [ladder]))
        return tongue.among(of.theirs, of.left)
      },
      toldApart: asWritten ? [] : [coachWords(said, []), coachWords(curriculum, [])],
      curriculum: { ...said, handbook: { ...said.handbook, ...(handbook.address === undefined ? {} : { address: `${handbook.address.replace(/\/$/, '')}/${under}` }) } },
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
