import Papa from 'papaparse'
import type { Finding } from '../ladder/finding.ts'
import { nearest } from './nearest.ts'
import { columns, letters, type Column } from './table-columns.ts'
import type { Reading } from './text.ts'

/** The rows of a table under their header. `row` counts as a spreadsheet does, the header being row 1. */
export type Rows = { readonly header: readonly (Column | undefined)[]; readonly rows: readonly { readonly row: number; readonly cells: readonly string[] }[] }

const RULE = 'tables-are-sound'

/** The most a table may weigh and hold. Chosen by us: ten times the largest curriculum we know. */
const MOST_BYTES = 8 * 1024 * 1024
const MOST_ROWS = 20_000

/** A finding about a cell, its row and column named as a spreadsheet names them. `column` counts from 0. */
export const inCell = (file: string, row: number, column: number, message: string, name?: string, rule = RULE): Finding => ({
  file,
  line: row,
  column: column + 1,
  rule,
  message: `Row ${row}, column ${letters(column)}${name === undefined ? '' : ` (${name.slice(0, 60)})`}: ${message}`,
})

const whole = (file: string, message: string): Reading<never> => ({ findings: [{ file, line: 1, column: 1, rule: RULE, message }] })

/**
 * Cuts a table into rows of cells. Commas, semicolons or tabs part them, whichever its header uses; UTF-8, UTF-16 with its mark, or the encoding that is named.
 *
 * Shape   bytes to rows, or findings: not text, a header that cannot be used, a quotation mark that is not closed, a row that is too long.
 */
export function tableRowsOf(file: string, bytes: Uint8Array, encoding?: string): Reading<Rows> {
  if (bytes.length > MOST_BYTES) return whole(file, `The table is larger than ${MOST_BYTES / 1024 / 1024} MiB. Split it.`)
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe
  const text = new TextDecoder(encoding ?? (wide ? 'utf-16le' : 'utf-8')).decode(bytes).replace(/\r\n?/g, '\n').replace(/^sep=.\n/, '')
  if (text.trim() === '') return whole(file, 'The table is empty. Begin with the header that rungbook export --template writes.')
  const { data, errors } = Papa.parse<string[]>(text, { delimiter: delimiterOf(text), newline: '\n' })
  const unread = encoding === undefined ? lost(file, data) : undefined
  if (unread) return { findings: [unread] }
  const [error] = errors
  if (error) return { findings: [inCell(file, (error.row ?? 0) + 1, 0, 'A quotation mark in this row is not closed, or stands within a cell that does not begin with one. Write a quotation mark within a cell twice.')] }
  const [names = [], ...rows] = data
  const header = headerOf(file, names)
  if (header.findings.length > 0 || !header.value) return { findings: header.findings }
  const filled = rows.map((cells, index) => ({ row: index + 2, cells: cells.map((cell) => cell.trim()) })).filter(({ cells }) => cells.some((cell) => cell !== ''))
  if (filled.length === 0) return whole(file, 'The table has a header and no rows. Write one rung a row.')
  if (filled.length > MOST_ROWS) return whole(file, `The table has more than ${MOST_ROWS} rows. Split it.`)
  const long = filled.filter(({ cells }) => cells.slice(names.length).some((cell) => cell !== ''))
  if (long.length > 0) return { findings: long.map(({ row, cells }) => inCell(file, row, names.length, `This row has ${cells.length} cells, the header ${names.length}. Put a cell that holds commas in quotation marks.`)) }
  return { value: { header: header.value, rows: filled }, findings: [] }
}

/** Of comma, semicolon and tab, the one that parts the header into most names we know. */
function delimiterOf(text: string): string {
  const line = text.slice(0, text.indexOf('\n') < 0 ? text.length : text.indexOf('\n'))
  const known = (delimiter: string): number => line.split(delimiter).filter((name) => columns.some((column) => column.name === name.trim().replace(/^"|"$/g, ''))).length
  return [',', ';', '\t'].reduce((best, delimiter) => (known(delimiter) > known(best) ? delimiter : best))
}

/** The first cell that holds what is not UTF-8. */
function lost(file: string, data: readonly (readonly string[])[]): Finding | undefined {
  for (const [index, cells] of data.entries()) {
    const column = cells.findIndex((cell) => cell.includes('\ufffd'))
    if (column >= 0) return inCell(file, index + 1, column, 'A letter here is not UTF-8. Save the table again as "CSV UTF-8", or import it with --encoding windows-1252 if an older spreadsheet wrote it.')
  }
  return undefined
}

function headerOf(file: string, names: readonly string[]): Reading<readonly (Column | undefined)[]> {
  const known = columns.map(({ name }) => name)
  const typed = names.map((name) => name.trim())
  const findings = typed.flatMap((name, index): Finding[] => {
    if (name === '') return []
    if (typed.indexOf(name) < index) return [inCell(file, 1, index, `The column "${name.slice(0, 60)}" stands twice. Take one out.`)]
    if (known.includes(name)) return []
    const like = nearest(name, known)
    return [inCell(file, 1, index, `There is no column "${name.slice(0, 60)}". ${like ? `Did you mean ${like}?` : 'Take it out, or name it as rungbook export --template does.'}`)]
  })
  const absent = ['ladder', 'rung'].filter((name) => !typed.includes(name))
  const wanted = absent.map((name) => inCell(file, 1, typed.length, `The column "${name}" is not there. Add it.`))
  return { value: typed.map((name) => columns.find((column) => column.name === name)), findings: [...findings, ...wanted] }
}
