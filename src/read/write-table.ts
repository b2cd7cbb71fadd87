import type { Ladder, Rung, RungWords } from '../ladder/curriculum.ts'
import { guarded } from './table-cell.ts'
import { columns, isLoadColumn, type Column } from './table-columns.ts'

/**
 * Ladders as a table in CSV (RFC 4180), one rung a row, what is said of a ladder on its first row. Columns of load models that no rung uses are left out.
 *
 * Shape   ladders to text with CRLF line ends and a byte order mark, by which spreadsheets know UTF-8.
 */
export function tableText(ladders: readonly Ladder[], all = false): string {
  const rows = ladders.flatMap((ladder) => ladder.rungs.map((rung, index) => columns.map((column) => cellText(column, ladder, rung, index))))
  const kept = columns.flatMap((column, index) => (all || !isLoadColumn(column) || rows.some((row) => row[index] !== '') ? [index] : []))
  const lines = [columns.map(({ name }) => name), ...rows].map((row) => kept.map((index) => quoted(row[index] ?? '')).join(','))
  return `\ufeff${lines.map((line) => `${line}\r\n`).join('')}`
}

/** A cell in quotes where it holds what would end it, in this table or in one whose cells a semicolon ends. */
const quoted = (text: string): string => (/[",;\t\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)

function cellText({ of, path, cell, name }: Column, ladder: Ladder, rung: Rung, index: number): string {
  if (name !== 'ladder' && of === 'ladder' && index > 0) return ''
  const value = of === 'ladder' ? at(ladder, path) : of === 'rung' ? at({ ...rung, after: saidAfter(ladder, rung, index) }, path) : at(saidWords(rung.words), path)
  return value === undefined ? '' : guarded(cell.write(value))
}

const at = (value: unknown, path: readonly string[]): unknown => path.reduce<unknown>((held, key) => (typeof held === 'object' && held !== null ? (held as Readonly<Record<string, unknown>>)[key] : undefined), value)

/** What a rung follows, where that is not the rung above it. */
function saidAfter({ rungs }: Ladder, { after }: Rung, index: number): readonly string[] | undefined {
  const unless = rungs.slice(Math.max(0, index - 1), index).map(({ id }) => id)
  return after.length === unless.length && after.every((id, nth) => id === unless[nth]) ? undefined : after
}

/** A rung's prose by its columns. An empty beginning is said only where there is nothing else. */
function saidWords(words: RungWords | undefined): Readonly<Record<string, unknown>> {
  if (!words) return {}
  const { intro, notes, ...sections } = words
  const others = { ...sections, notes: notes[0]?.body }
  const alone = Object.values(others).every((section) => section === undefined)
  return { ...others, intro: intro === '' && !alone ? undefined : intro }
}
