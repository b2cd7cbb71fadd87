import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { html, type Html } from './html.ts'
import { SEARCH_KINDS, type SearchKind } from './search-kinds.ts'
import type { SitePage } from './site-page.ts'
import { spoken } from './written.ts'

type Found = NonNullable<SitePage['found']>

/** What search finds a ladder's own page by. */
export const foundOfLadder = ({ movement, equipment }: MeasuredLadder): Found => ({ kind: 'ladder', movement, equipment })

/** What search finds the page of a rung by. */
export const foundOfRung = ({ equipment, demand }: MeasuredRung, ladder: MeasuredLadder): Found => ({ kind: 'rung', movement: ladder.movement, equipment: equipment.length > 0 ? equipment : ladder.equipment, demand })

/** The values of one kind that a page may be chosen by. */
export const valuesOf = ({ movement, equipment = [], demand = [] }: Found, kind: SearchKind): readonly string[] => ({ movement: movement === undefined ? [] : [movement], equipment, demand })[kind]

/** Hidden data for the search index: what a result shows, and what may be chosen, each value once as it is said on the page. It stands last, for a result without words begins as its page does. */
export function searchable({ found, title }: SitePage): Html | undefined {
  if (!found) return undefined
  return html`<div hidden><span data-pagefind-meta="title">${title}</span> <span data-pagefind-meta="kind">${found.kind}</span>${found.load && html` <span data-pagefind-meta="load">${found.load}</span>`}${SEARCH_KINDS.map((kind) => filters(kind, valuesOf(found, kind)))}</div>`
}

const filters = (kind: SearchKind, values: readonly string[]) => (tongue: Parameters<typeof spoken>[1]) => {
  const said = values.map((value) => spoken(value, tongue))
  return values.flatMap((value, index) => (said.indexOf(said[index] ?? '') === index ? [html` <span data-pagefind-filter="${kind}">${value}</span>`] : []))
}
