import { models } from '../load/index.ts'
import { repetitionFormulas } from '../load/repetitions.ts'
import { sources } from '../load/sources.ts'
import { rules } from '../check/index.ts'
import type { MeasuredCurriculum, MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { plainLines } from './card-words.ts'

/** What a coach wrote in a ladder that stands on pages as it is, its names with it. */
const ofLadder = ({ id, title, movement, equipment, form, stop, ask_first, layer, review, sources: cited = [], amended, withdrawn_notes, rungs, retired = [] }: MeasuredLadder): (string | undefined)[] => [
  id, title, movement, layer, review?.by,
  ...equipment, ...equipment.map((thing) => thing.toLowerCase()), ...form, ...stop, ...ask_first,
  ...cited.flatMap(({ id: name, cite, doi }) => [name, cite, doi]),
  ...amended.flatMap(({ by, because }) => [by, because]),
  ...withdrawn_notes.flatMap(({ note, because, by, layer: whose }) => [note, because, by, whose]),
  ...retired.flatMap((gone) => [gone.id, gone.because]),
  ...rungs.flatMap(ofRung),
]

const ofRung = ({ id, title, equipment, form, cautions, first_side, words }: MeasuredRung): (string | undefined)[] => [id, title, ...equipment, ...form, ...cautions, first_side, words?.set_up, ...(words?.cues ?? [])]

/** A text as it is written, and as paper shows it, without its marks. */
const bothWays = (text: string): string[] => [text.trim(), ...plainLines(text), plainLines(text).join(' ')]

/** Names of the program's own, which are the same in every language. */
const NAMES: readonly string[] = [
  ...models.flatMap(({ name, keys }) => [name, ...Object.keys(keys)]),
  ...rules.map(({ name }) => name),
  ...repetitionFormulas.map(({ name }) => name),
  ...Object.entries(sources).flatMap(([key, source]) => [key, source.cite, ...('doi' in source ? [source.doi] : [])]),
]

/** Everything on a page that is no phrase of the interface: what coaches wrote, and names. */
export const coachWords = ({ handbook: { title, organisation, edition, contact, editions = [] }, ladders, pages }: MeasuredCurriculum): ReadonlySet<string> =>
  new Set(
    [
      ...NAMES,
      title, organisation, edition, contact,
      ...editions.flatMap((each) => [each.edition, each.note]),
      ...ladders.flatMap(ofLadder),
      ...pages.flatMap(({ id, title: name, summary }) => [id, name, summary]),
    ].flatMap((text) => (text === undefined ? [] : bothWays(text))),
  )
