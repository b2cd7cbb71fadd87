import type { MeasuredLadder } from '../measure/measure.ts'
import { foundOfLadder, foundOfRung, valuesOf } from './found.ts'
import { SEARCH_KINDS, type SearchKind } from './search-kinds.ts'
import type { Speech } from './speech.ts'
import type { Tongue } from './tongue.ts'
import { spoken } from './written.ts'

/** Values to choose from in one list. Chosen by us: nobody looks through more, and a page of them weighs. */
const MOST_VALUES = 200

/** A list to choose from: its values as pages say them, in the order of their language, each with the number of pages it finds. */
export type Choice = { readonly kind: SearchKind; readonly values: readonly (readonly [value: string, pages: number])[] }

/** What may be chosen on the search page of a handbook in one language. A kind with one value or none has no list, for nothing is to be chosen; a kind with very many has none either. */
export function searchChoices({ curriculum: { ladders }, tongue: { language }, tongueOf }: Speech): Choice[] {
  const order = new Intl.Collator(language)
  const counts = new Map(SEARCH_KINDS.map((kind) => [kind, new Map<string, number>()]))
  for (const ladder of ladders) {
    const said = sayingOf(tongueOf(ladder))
    for (const found of foundOf(ladder)) {
      for (const [kind, pages] of counts) {
        for (const value of new Set(valuesOf(found, kind).map(said))) pages.set(value, (pages.get(value) ?? 0) + 1)
      }
    }
  }
  return [...counts].flatMap(([kind, pages]) => (pages.size < 2 || pages.size > MOST_VALUES ? [] : [{ kind, values: [...pages].toSorted(([a], [b]) => order.compare(a, b) || (a < b ? -1 : 1)) }]))
}

const foundOf = (ladder: MeasuredLadder) => [foundOfLadder(ladder), ...ladder.rungs.map((rung) => foundOfRung(rung, ladder))]

/** A value as the index keeps it: in one language, spaces made one. */
function sayingOf(tongue: Tongue): (value: string) => string {
  const known = new Map<string, string>()
  return (value) => {
    const said = known.get(value) ?? spoken(value, tongue).replace(/[ \t\n]+/g, ' ').trim()
    known.set(value, said)
    return said
  }
}
