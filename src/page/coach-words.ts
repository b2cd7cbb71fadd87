import { once, onceOfEach } from '../quantity/once.ts'
import { models } from '../load/index.ts'
import { repetitionFormulas } from '../load/repetitions.ts'
import { sources } from '../load/sources.ts'
import { rules } from '../check/index.ts'
import type { RungWords } from '../ladder/curriculum.ts'
import type { MeasuredCurriculum, MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { plainLines } from './card-words.ts'

/** Texts of a handbook by what becomes of them in another language. */
export type CoachWords = {
  /** Names and ids: the same in every language. */
  readonly names: ReadonlySet<string>
  /** What a translation is wanted for. */
  readonly words: ReadonlySet<string>
}

type Texts = readonly (string | undefined)[]

const namesIn = ({ id, layer, review, sources: cited = [], amended, withdrawn_notes, rungs, retired = [] }: MeasuredLadder): Texts => [
  id, layer, review?.by,
  ...cited.flatMap(({ id: name, cite, doi }) => [name, cite, doi]),
  ...amended.map(({ by }) => by),
  ...withdrawn_notes.flatMap(({ by, layer: whose }) => [by, whose]),
  ...retired.map((gone) => gone.id),
  ...rungs.map((rung) => rung.id),
]

const wordsIn = ({ title, intro, movement, equipment, form, stop, ask_first, amended, withdrawn_notes, rungs, retired = [] }: MeasuredLadder): Texts => [
  title, intro, movement,
  ...equipment, ...equipment.map((thing) => thing.toLowerCase()), ...form, ...stop, ...ask_first,
  ...amended.flatMap(({ because, what }) => [because, ...what.map((did) => ('title' in did ? did.title : undefined))]),
  ...withdrawn_notes.flatMap(({ note, because }) => [note, because]),
  ...retired.map((gone) => gone.because),
  ...rungs.flatMap(wordsOf),
]

const wordsOf = ({ title, equipment, form, cautions, first_side, words }: MeasuredRung): Texts => [title, ...equipment, ...form, ...cautions, first_side, ...(words ? proseOf(words) : [])]

const proseOf = ({ intro, set_up, full_rep = [], cues = [], faults = [], notes }: RungWords): Texts => [intro, set_up, ...full_rep, ...cues, ...faults.flatMap(({ seen, cause, say, remedy }) => [seen, cause, say, remedy]), ...notes.flatMap(({ title, body }) => [title, body])]

/** A text as it is written, and as paper shows it, without its marks. */
function bothWays(text: string): string[] {
  if (PLAIN.test(text)) return [text.trim()]
  const lines = plainLines(text)
  return [text.trim(), ...lines, lines.join(' ')]
}

/** One line without a mark of Markdown. */
const PLAIN = /^[\p{L}\p{N} ,;:'’()%?/–-]+$/u

const allOf = (texts: Texts): readonly string[] => texts.flatMap((text) => (text === undefined ? [] : bothWays(text)))

type OfLadder = { readonly names: readonly string[]; readonly words: readonly string[] }

/** Kept with the ladder: of a thousand, a save makes one another. */
const ofLadder = onceOfEach((ladder: MeasuredLadder): OfLadder => ({ names: allOf(namesIn(ladder)), words: allOf(wordsIn(ladder)) }))

/** Names of the program's own. */
const NAMES: readonly string[] = [
  ...models.flatMap(({ name, keys }) => [name, ...Object.keys(keys)]),
  ...rules.map(({ name }) => name),
  ...repetitionFormulas.map(({ name }) => name),
  ...Object.entries(sources).flatMap(([key, source]) => [key, source.cite, ...('doi' in source ? [source.doi] : [])]),
]

/** What a handbook says beside its ladders; worked out once, though it is asked for with each of them. */
const besideLadders = onceOfEach(({ handbook: { title, organisation, edition, contact, editions = [] }, pages }: MeasuredCurriculum): OfLadder => ({
  names: allOf([...NAMES, title, organisation, edition, contact, ...editions.map((each) => each.edition), ...pages.map(({ id }) => id)]),
  words: allOf([...editions.map(({ note }) => note), ...pages.flatMap(({ title: name, summary }) => [name, summary])]),
}))

/** Everything on a page of some of its ladders that is no phrase of the interface; joined when somebody first asks. */
export function coachWords(curriculum: MeasuredCurriculum, ladders: readonly MeasuredLadder[] = curriculum.ladders): CoachWords {
  const lists = once(() => [...ladders.map(ofLadder), besideLadders(curriculum)])
  const names = once(() => union(lists().map((list) => list.names)))
  const words = once(() => union(lists().map((list) => list.words)))
  return {
    get names() {
      return names()
    },
    get words() {
      return words()
    },
  }
}

function union(lists: readonly (readonly string[])[]): ReadonlySet<string> {
  const all = new Set<string>()
  for (const list of lists) for (const text of list) all.add(text)
  return all
}
