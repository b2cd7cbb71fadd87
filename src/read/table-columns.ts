import { models } from '../load/index.ts'
import { isListKey, isNumberKey, type Key } from '../load/model.ts'
import { itemsCell, linesCell, markedCell, numberCell, numbersCell, pairsCell, rowsCell, wordsCell, type Cell } from './table-cell.ts'

/** A column of a table of ladders: its name, where its value belongs, and how it is written. */
export type Column = {
  readonly name: string
  /** Of the ladder, said once on its first row; of the rung; or of the rung's prose. */
  readonly of: 'ladder' | 'rung' | 'words'
  readonly path: readonly string[]
  readonly cell: Cell
  /** What a blank cell stands for, where that is not nothing. */
  readonly blank?: readonly []
}

const column = (name: string, of: Column['of'], path: readonly string[], cell: Cell, blank?: readonly []): Column => ({ name, of, path, cell, ...(blank ? { blank } : {}) })

const amounts = (name: string, of: Column['of'], keys: readonly string[]): Column[] => keys.map((key) => column(`${name}_${key}`, of, [name, key], numberCell))

const cellOf = (key: Key): Cell => (isListKey(key) ? markedCell(key.list === 'pairs' ? pairsCell : numbersCell) : isNumberKey(key) ? numberCell : wordsCell)

const named = new Map(models.flatMap(({ keys }) => Object.entries<Key>(keys)))

/** What the load models ask, each key once, in the order of the models. */
const loadColumns: readonly Column[] = [...named].map(([name, key]) => column(name, 'rung', ['load', name], cellOf(key)))

/** Every column, in the order a table is written: the rung first, then its prose, then what is said once of the ladder. */
export const columns: readonly Column[] = [
  column('ladder', 'ladder', ['id'], wordsCell),
  column('rung', 'rung', ['id'], wordsCell),
  column('title', 'rung', ['title'], wordsCell),
  column('after', 'rung', ['after'], markedCell(linesCell)),
  column('demand', 'rung', ['demand'], linesCell),
  column('model', 'rung', ['load', 'model'], wordsCell),
  ...loadColumns,
  ...amounts('entry', 'rung', ['sets', 'reps', 'seconds', 'metres', 'sessions', 'reserve_reps']),
  column('supervision', 'rung', ['supervision'], wordsCell),
  column('equipment', 'rung', ['equipment'], linesCell),
  column('form', 'rung', ['form'], linesCell),
  column('cautions', 'rung', ['cautions'], linesCell),
  column('first_side', 'rung', ['first_side'], wordsCell),
  column('about', 'words', ['intro'], markedCell(wordsCell)),
  column('set_up', 'words', ['set_up'], markedCell(wordsCell)),
  column('full_rep', 'words', ['full_rep'], markedCell(itemsCell)),
  column('cues', 'words', ['cues'], markedCell(itemsCell)),
  column('faults', 'words', ['faults'], markedCell(rowsCell(['seen', 'cause', 'say', 'remedy']))),
  column('notes', 'words', ['notes'], markedCell(wordsCell)),
  column('ladder_title', 'ladder', ['title'], wordsCell),
  column('movement', 'ladder', ['movement'], wordsCell),
  column('aim', 'ladder', ['aim'], wordsCell),
  column('ladder_equipment', 'ladder', ['equipment'], linesCell, []),
  ...amounts('standard', 'ladder', ['sets', 'reps', 'seconds', 'metres', 'sessions', 'rest_s', 'reserve_reps']),
  column('first_reps', 'ladder', ['first_reps'], numberCell),
  column('sessions_per_week', 'ladder', ['sessions_per_week'], numberCell),
  column('ladder_form', 'ladder', ['form'], linesCell, []),
  column('ladder_supervision', 'ladder', ['supervision'], wordsCell),
  column('stop', 'ladder', ['stop'], linesCell, []),
  column('ask_first', 'ladder', ['ask_first'], linesCell, []),
  column('sources', 'ladder', ['sources'], markedCell(rowsCell(['id', 'cite', 'doi']))),
  column('retired', 'ladder', ['retired'], markedCell(rowsCell(['id', 'heir', 'because']))),
  column('silence', 'ladder', ['silence'], markedCell(rowsCell(['rule', 'until', 'because', 'rung']))),
  column('review_by', 'ladder', ['review', 'by'], wordsCell),
  column('review_on', 'ladder', ['review', 'on'], wordsCell),
  column('review_seal', 'ladder', ['review', 'seal'], wordsCell),
  column('ladder_about', 'ladder', ['intro'], wordsCell),
]

/** True for a column that stands in a table only where a rung needs it. */
export const isLoadColumn = (one: Column): boolean => loadColumns.includes(one)

/** The name a spreadsheet gives a column: A, B, … Z, AA. `index` counts from 0. */
export function letters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26))
  return index < 26 ? last : `${letters(Math.floor(index / 26) - 1)}${last}`
}
