import { isMissing } from '../quantity/outcome.ts'
import type { Fault, RungWords } from '../ladder/curriculum.ts'
import { pathKey, type Finding, type Place, type Places } from '../ladder/finding.ts'
import { ladderSchema, type LadderFields } from '../ladder/schema.ts'
import { fitted } from './plain-words.ts'
import { unguarded } from './table-cell.ts'
import { columns, type Column } from './table-columns.ts'
import { inCell, tableRowsOf, type Rows } from './table-rows.ts'
import type { Reading } from './text.ts'

/** A ladder before it is a file: its fields, and its prose by rung. */
export type SaidLadder = { readonly fields: LadderFields; readonly intro: string; readonly words: ReadonlyMap<string, RungWords> }

/** A ladder out of a table, and the cell each part came from; lines count rows, columns cells. */
export type TableLadder = SaidLadder & { readonly places: Places }

type Row = Rows['rows'][number]

/**
 * Reads ladders from a table: one rung a row, in the order they stand; what is said once of a ladder may stand on any of its rows.
 *
 * Shape   bytes to ladders, or every finding, each with its row and column. All rows are sound, or no ladder is given.
 */
export function readTable(file: string, bytes: Uint8Array, encoding?: string): Reading<readonly TableLadder[]> {
  const table = tableRowsOf(file, bytes, encoding)
  if (!table.value) return { findings: table.findings }
  const { header, rows } = table.value
  const idAt = header.findIndex((column) => column?.name === 'ladder')
  const nameless = rows.filter(({ cells }) => (cells[idAt] ?? '') === '')
  if (nameless.length > 0) return { findings: nameless.map(({ row }) => inCell(file, row, idAt, 'The ladder this rung belongs to is not named. Write its id on every row.', 'ladder')) }
  const ids = [...new Set(rows.map(({ cells }) => cells[idAt] ?? ''))]
  const read = ids.map((id) => ladderOf(file, header, rows.filter(({ cells }) => cells[idAt] === id)))
  const findings = read.flatMap((ladder) => ladder.findings)
  return findings.length > 0 ? { findings } : { value: read.flatMap(({ value }) => (value ? [value] : [])), findings: [] }
}

/** What is gathered while cells are read: where each value came from, and what is wrong. */
type Gathered = { readonly file: string; readonly header: Rows['header']; readonly places: Map<string, Place>; readonly findings: Finding[] }

function ladderOf(file: string, header: Rows['header'], rows: readonly Row[]): Reading<TableLadder> {
  const gathered: Gathered = { file, header, places: new Map([['', { file, line: rows[0]?.row ?? 1, column: 1 }]]), findings: [] }
  const rungAt = header.findIndex((column) => column?.name === 'rung')
  const rungs = rows.map((row, index) => {
    gathered.places.set(pathKey(['rungs', index]), { file, line: row.row, column: rungAt + 1 })
    return { fields: valuesOf('rung', row, ['rungs', index], gathered), words: wordsOf(valuesOf('words', row, ['words', index], gathered)) }
  })
  const { intro, ...fields } = saidOnce(rows, gathered)
  const fit = fitted(ladderSchema, { ...fields, rungs: rungs.map((rung) => rung.fields) }, () => gathered.places)
  const unfit = fit.findings.map(({ line, column, message, rule }) => inCell(file, line, column - 1, message, header[column - 1]?.name, rule))
  const findings = [...gathered.findings, ...unfit.filter(({ line, column }) => !gathered.findings.some((found) => found.line === line && found.column === column))]
  if (!fit.value || findings.length > 0) return { findings }
  const words = new Map(fit.value.rungs.flatMap(({ id }, index) => (rungs[index]?.words ? [[id, rungs[index].words] as const] : [])))
  return { value: { fields: fit.value, intro: typeof intro === 'string' ? intro : '', words, places: () => gathered.places }, findings: [] }
}

/** The values of one row that are of the rung, or of its prose. */
function valuesOf(of: 'rung' | 'words', { row, cells }: Row, under: readonly (string | number)[], gathered: Gathered): Record<string, unknown> {
  const into: Record<string, unknown> = {}
  gathered.header.forEach((column, index) => {
    if (column?.of === of) take(into, column, index, row, cells[index] ?? '', under, gathered)
  })
  return into
}

/** What is said of the ladder on any of its rows; two rows must not say different things. */
function saidOnce(rows: readonly Row[], gathered: Gathered): Record<string, unknown> {
  const into: Record<string, unknown> = Object.fromEntries(columns.filter(({ of, blank }) => of === 'ladder' && blank).map(({ path }) => [path[0] ?? '', []]))
  gathered.header.forEach((column, index) => {
    if (column?.of !== 'ladder') return
    const [given, ...others] = rows.filter(({ cells }) => (cells[index] ?? '') !== '')
    if (!given) return
    for (const { row } of others.filter(({ cells }) => cells[index] !== given.cells[index])) {
      gathered.findings.push(inCell(gathered.file, row, index, `This says otherwise of the ladder than row ${given.row}. Say it once, or the same.`, column.name))
    }
    take(into, column, index, given.row, given.cells[index] ?? '', [], gathered)
  })
  return into
}

/** Reads one cell into a value, and notes where it stood. */
function take(into: Record<string, unknown>, { path, cell, name }: Column, index: number, row: number, text: string, under: readonly (string | number)[], { file, places, findings }: Gathered): void {
  if (text === '') return
  const value = cell.read(unguarded(text))
  if (isMissing(value)) findings.push(inCell(file, row, index, value.missing, name))
  else put(into, path, value)
  for (let length = 1; length <= path.length; length += 1) {
    const key = pathKey([...under, ...path.slice(0, length)])
    if (length === path.length || !places.has(key)) places.set(key, { file, line: row, column: index + 1 })
  }
}

/** Puts a value where a path leads, beside what is there. */
function put(into: Record<string, unknown>, [key = '', ...rest]: readonly string[], value: unknown): void {
  if (rest.length === 0) {
    into[key] = value
    return
  }
  const held = into[key]
  const inside = typeof held === 'object' && held !== null ? (held as Record<string, unknown>) : {}
  into[key] = inside
  put(inside, rest, value)
}

/** The prose of a rung, or nothing where every cell of it is blank. */
function wordsOf({ intro, set_up, full_rep, cues, faults, notes }: Record<string, unknown>): RungWords | undefined {
  const text = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined)
  const lines = (value: unknown): string[] | undefined => (Array.isArray(value) ? value.map(String) : undefined)
  if ([intro, set_up, full_rep, cues, faults, notes].every((value) => value === undefined)) return undefined
  const noted = text(notes)
  return { intro: text(intro) ?? '', set_up: text(set_up), full_rep: lines(full_rep), cues: lines(cues), faults: Array.isArray(faults) ? faults.map(faultOf) : undefined, notes: noted === undefined ? [] : [{ title: 'Notes', body: noted }] }
}

const faultOf = (row: Readonly<Record<string, string>>): Fault => ({ seen: row.seen ?? '', cause: row.cause ?? '', say: row.say ?? '', remedy: row.remedy ?? '' })
