import type { Fault, RungWords } from '../ladder/curriculum.ts'
import type { Finding, Place } from '../ladder/finding.ts'
import { pathKey } from '../ladder/finding.ts'
import { lineBeside, listItems, tableRows, tablesIn, type Section } from './markdown.ts'
import { nearest } from './nearest.ts'
import { atTop } from './text.ts'

const RULE = 'sections-are-known'

/** The headings a rung may hold, and the notes that may follow them. */
const HEADINGS = ['Set up', 'Full rep', 'Cues', 'Faults', 'Notes']

const FAULT_COLUMNS = ['seen', 'likely cause', 'say', 'if it stays']

/** One rung's prose, with the places of its cues, faults and steps under `rungs/<id>/`, where they are noted. `lines` are those of the body it was cut from. */
export function rungWords(file: string, section: Section, body: { readonly lines: readonly string[]; readonly line: number }, id: string, noted: Map<string, Place> | undefined): { words: RungWords; findings: Finding[] } {
  const findings: Finding[] = []
  const at = (path: readonly (string | number)[], line: number) => void noted?.set(pathKey(['rungs', id, ...path]), { file, line, column: 1 })
  at(['section'], section.line)
  at(['section', 'text'], section.text_line)
  const parts = new Map<string, Section>()
  for (const part of section.subsections) {
    if (!HEADINGS.includes(part.title)) {
      const like = nearest(part.title, HEADINGS)
      findings.push(atTop(file, RULE, `"${part.title}" is not a heading a rung knows. ${like ? `Did you mean ${like}?` : `Known headings: ${HEADINGS.join(', ')}.`}`, part.line))
    } else if (parts.has(part.title)) {
      findings.push(atTop(file, RULE, `"${part.title}" stands twice under "${section.title}". Join the two.`, part.line))
    }
    parts.set(part.title, part)
    at([slug(part.title)], part.line)
    at([slug(part.title), 'text'], part.text_line)
  }
  const lines = (title: string, key: string): string[] | undefined => {
    const part = parts.get(title)
    if (!part) return undefined
    const beside = lineBeside(part, 'list', body.line)
    if (beside !== undefined) findings.push(atTop(file, RULE, `${title} is a list, and this line is no item of it. Begin it with a hyphen, or move it to Notes.`, beside))
    return listItems(part, body.lines, body.line).map(({ text, line }, index) => {
      at([key, index], line)
      return text
    })
  }
  const notes = parts.get('Notes')
  const words: RungWords = {
    intro: section.text,
    set_up: parts.get('Set up')?.text,
    full_rep: lines('Full rep', 'full-rep'),
    cues: lines('Cues', 'cues'),
    faults: faultsOf(file, parts.get('Faults'), body.line, at, findings),
    notes: notes ? [{ title: 'Notes', body: notes.text }] : [],
  }
  return { words, findings }
}

const slug = (title: string): string => title.toLowerCase().replaceAll(' ', '-')

function faultsOf(file: string, part: Section | undefined, body_line: number, at: (path: readonly (string | number)[], line: number) => void, findings: Finding[]): Fault[] | undefined {
  if (!part) return undefined
  const [head, ...rows] = tableRows(part, body_line)
  const named = head?.cells.map((cell) => cell.toLowerCase())
  if (!named || named.length !== FAULT_COLUMNS.length || FAULT_COLUMNS.some((column, index) => named[index] !== column)) {
    findings.push(atTop(file, RULE, `Faults must be a table with the columns ${FAULT_COLUMNS.join(', ')}.`, head?.line ?? part.line))
    return []
  }
  if (tablesIn(part) > 1) findings.push(atTop(file, RULE, 'Faults holds more than one table. Join them into one.', part.line))
  const beside = lineBeside(part, 'table', body_line)
  if (beside !== undefined) findings.push(atTop(file, RULE, 'Faults is a table, and this line is no row of it. Write it as a row, or move it to Notes.', beside))
  return rows.map(({ cells, line }, index) => {
    at(['faults', index], line)
    const [seen = '', cause = '', say = '', remedy = ''] = cells
    return { seen, cause, say, remedy }
  })
}
