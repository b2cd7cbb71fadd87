import { missing, type Outcome } from '../quantity/outcome.ts'

/** How one kind of value is written in a cell and read back: the same value, letter for letter. Reading is Missing with a sentence where the cell holds something else. */
export type Cell = { write(value: unknown): string; read(text: string): Outcome<unknown> }

/** Numbers as people write them in a file: no leading zero, no comma, no infinity. */
const PLAIN_NUMBER = /^[-+]?(0|[1-9]\d*)(\.\d+)?$/

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [])
const linesOf = (text: string): string[] => text.split('\n').map((line) => line.trim()).filter((line) => line !== '')
const number = (text: string): Outcome<unknown> => (PLAIN_NUMBER.test(text) ? Number(text) : missing(`"${text.slice(0, 30)}" is not a plain number. Write it as 12 or 12.5.`))
const firstWrong = (values: readonly Outcome<unknown>[]): Outcome<unknown> => values.find((value) => typeof value === 'object' && value !== null && 'missing' in value) ?? values

/** Words, or Markdown over several lines. */
export const wordsCell: Cell = { write: String, read: (text) => text }

export const numberCell: Cell = { write: String, read: number }

/** Short lines, one a line. */
export const linesCell: Cell = { write: (value) => listOf(value).join('\n'), read: linesOf }

/** Numbers, one a line. */
export const numbersCell: Cell = { write: linesCell.write, read: (text) => firstWrong(linesOf(text).map(number)) }

/** Pairs of numbers, "10 40", one a line. */
export const pairsCell: Cell = {
  write: (value) => listOf(value).map((pair) => listOf(pair).join(' ')).join('\n'),
  read: (text) => firstWrong(linesOf(text).map((line) => firstWrong(line.split(/\s+/).map(number)))),
}

/** Rows of a few columns, "seen | cause | say | if it stays", one a line; a bar within is written \|. Columns at the end may be left out. */
export const rowsCell = (keys: readonly string[]): Cell => ({
  write: (value) =>
    listOf(value)
      .map((row) => {
        const cells = keys.map((key) => String((row as Readonly<Record<string, unknown>>)[key] ?? '').replaceAll('|', '\\|'))
        while (cells.length > 1 && cells.at(-1) === '') cells.pop()
        return cells.join(' | ') || '|'
      })
      .join('\n'),
  read(text) {
    const rows = linesOf(text).map((line) => line.split(/(?<!\\)\|/).map((cell) => cell.trim().replaceAll('\\|', '|')))
    const long = rows.find((cells) => cells.length > keys.length)
    if (long) return missing(`A line here has ${long.length} parts; it may have ${keys.length}: ${keys.join(' | ')}. Write a bar within a part as \\|.`)
    return rows.map((cells) => Object.fromEntries(keys.flatMap((key, index) => (cells[index] === undefined || cells[index] === '' ? [] : [[key, cells[index]]]))))
  },
})

/** Items that may go on over further lines, which are moved right by two. */
export const itemsCell: Cell = {
  write: (value) => listOf(value).map((item) => marked(String(item)).replaceAll(/\n(?=[^\n])/g, '\n  ')).join('\n'),
  read: (text) =>
    text
      .split('\n')
      .reduce<string[]>((items, line) => (items.length > 0 && (line.trim() === '' || line.startsWith('  ')) ? [...items.slice(0, -1), `${items.at(-1)}\n${line.slice(2)}`] : [...items, line]), [])
      .map((item) => unmarked(item.trim())),
}

/** Stands for something that is there and holds nothing, where a blank cell would mean that it is not there. */
export const EMPTY = '(empty)'
const LIKE_EMPTY = /^\(+empty\)+$/

const marked = (text: string): string => (text === '' ? EMPTY : LIKE_EMPTY.test(text) ? `(${text})` : text)
const unmarked = (text: string): string => (text === EMPTY ? '' : LIKE_EMPTY.test(text) ? text.slice(1, -1) : text)

/** A cell in which nothing and something empty are told apart. */
export const markedCell = (cell: Cell): Cell => ({ write: (value) => marked(cell.write(value)), read: (text) => (text === EMPTY ? emptied(cell) : cell.read(unmarked(text))) })

const emptied = (cell: Cell): Outcome<unknown> => (cell === wordsCell ? '' : [])

/** What a spreadsheet would take for a formula: signs at the beginning, in either width. */
const FORMULA = /^'*[=+\-@\t\r＝＋－＠]/
const GUARDED = /^'+[=+\-@\t\r＝＋－＠]/
/** What it takes for a number and writes as it was; a plus would be lost. */
const NO_FORMULA = /^-(0|[1-9]\d*)(\.\d+)?$/

/** The text of a cell with an apostrophe before what a spreadsheet would run as a formula. Numbers below nought are left alone. */
export const guarded = (text: string): string => (FORMULA.test(text) && !NO_FORMULA.test(text) ? `'${text}` : text)

/** Takes off the apostrophe that `guarded` put there, and no other. */
export const unguarded = (text: string): string => (GUARDED.test(text) ? text.slice(1) : text)
