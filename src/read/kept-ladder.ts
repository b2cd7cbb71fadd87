import type { Ladder, Rung, RungWords } from '../ladder/curriculum.ts'
import type { Words } from '../ladder/translation.ts'
import { placesOnce, type LadderFile } from './read-ladder.ts'
import type { TranslationFile } from './read-translation.ts'

/** What a ladder file says, as JSON can hold it: without where everything stands, which its bytes tell again. */
export type KeptLadder =
  | { readonly kind: 'ladder'; readonly ladder: Omit<Ladder, 'layer' | 'places'> }
  | { readonly kind: 'amendment'; readonly fields: Extract<LadderFile, { kind: 'amendment' }>['fields']; readonly intro: string; readonly words: readonly (readonly [string, RungWords])[] }

/** A ladder file to be kept; what is not there is left out. */
export function keptLadder(read: LadderFile): KeptLadder {
  if (read.kind === 'amendment') return { kind: 'amendment', fields: read.fields, intro: read.intro, words: [...read.words].map(([id, words]) => [id, told(words)] as const) }
  const { layer: _, places: __, ...ladder } = read.ladder
  return { kind: 'ladder', ladder: { ...ladder, rungs: ladder.rungs.map((rung) => told({ ...rung, words: rung.words && told(rung.words) })) } }
}

/** Without the keys that say that nothing is there. */
const told = <Of extends object>(of: Of): Of => Object.fromEntries(Object.entries(of).filter(([, value]) => value !== undefined)) as Of

/** A ladder file as it was read from these very bytes, out of what JSON kept of it. */
export function fromKept(kept: KeptLadder, file: string, bytes: Uint8Array, layer: string): LadderFile {
  const places = placesOnce(file, bytes, layer)
  if (kept.kind === 'amendment') return { kind: 'amendment', file, fields: kept.fields, intro: kept.intro, words: new Map(kept.words.map(([id, words]) => [id, wordsOf(words)])), places }
  return { kind: 'ladder', ladder: { ...kept.ladder, rungs: kept.ladder.rungs.map(rungOf), layer, places } }
}

/** What JSON leaves out is there again, and says that there is nothing; all in the order it was read in, for by its text a ladder is known later. */
const rungOf = ({ id, title, after, demand, entry, load, supervision, equipment, form, cautions, first_side, words }: Rung): Rung => ({
  id,
  title,
  after,
  demand,
  entry,
  load,
  supervision,
  equipment,
  form,
  cautions,
  first_side,
  words: words && wordsOf(words),
})

const wordsOf = ({ intro, set_up, full_rep, cues, faults, notes }: RungWords): RungWords => ({ intro, set_up, full_rep, cues, faults, notes })

/** The same of a ladder in another language; its places are few, and stand with it. Units of a place: line, column. */
export type KeptTranslation = {
  readonly translates: string
  readonly parts: readonly (readonly [string, Words])[]
  readonly of: readonly (readonly [string, string])[]
  readonly places: readonly (readonly [string, number, number])[]
}

export const keptTranslation = ({ translates, parts, of, places }: TranslationFile): KeptTranslation => ({
  translates,
  parts: [...parts],
  of: [...of],
  places: [...places].map(([key, { line, column }]) => [key, line, column]),
})

export const translationFromKept = ({ translates, parts, of, places }: KeptTranslation, file: string): TranslationFile => ({
  file,
  translates,
  parts: new Map(parts),
  of: new Map(of),
  places: new Map(places.map(([key, line, column]) => [key, { file, line, column }])),
})
