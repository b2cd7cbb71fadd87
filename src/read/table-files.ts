import { Document, isMap, isSeq, visit } from 'yaml'
import type { Ladder, RungWords } from '../ladder/curriculum.ts'
import { digestOf } from '../ladder/digest.ts'
import { placeOf, type Finding, type Path } from '../ladder/finding.ts'
import { readLadderFile, rungOf } from './read-ladder.ts'
import type { SaidPage } from './read-exported.ts'
import type { SaidLadder, TableLadder } from './read-table.ts'
import { letters } from './table-columns.ts'
import type { Reading } from './text.ts'

/** A ladder as the file it becomes. */
export type WrittenLadder = { readonly id: string; readonly text: string; readonly ladder: Ladder }

/** Longer than this, a list stands on lines of its own. Units letters. Chosen by us. */
const WIDE = 100

/** Why a ladder cannot be written so that it reads the same: the parts that come back changed, and what reading said. */
export type Unwritable = { readonly changed: readonly Path[]; readonly why: string | undefined }

/**
 * The file of a ladder that was read from somewhere else, read back to be sure that it says the same.
 *
 * Shape   a ladder to its file, or the parts of it whose words mean something else in Markdown.
 */
export function ladderFile(ladder: SaidLadder): WrittenLadder | Unwritable {
  const { id } = ladder.fields
  const text = ladderFileText(ladder)
  const { value, findings } = readLadderFile(`${id}.md`, new TextEncoder().encode(text), '')
  const again = value?.kind === 'ladder' ? value.ladder : undefined
  const changed = again ? otherwise(ladder, again) : []
  return again && findings.length === 0 && changed.length === 0 ? { id, text, ladder: again } : { changed: changed.length > 0 ? changed : [[]], why: findings[0]?.message }
}

/** The file of a ladder out of a table, or a finding about each cell that cannot be written. */
export function tableFile(ladder: TableLadder): Reading<WrittenLadder> {
  const file = ladderFile(ladder)
  if ('text' in file) return { value: file, findings: [] }
  const cannot = (path: Path): Finding => {
    const place = placeOf(ladder.places, path)
    return { ...place, rule: 'tables-are-sound', message: `Row ${place.line}, column ${letters(place.column - 1)}: ${otherwiseRead(file)}` }
  }
  return { findings: file.changed.map(cannot) }
}

/** What is said of words that cannot stand in a ladder file as they are. */
export const otherwiseRead = ({ why }: Unwritable): string => `These words would be read otherwise in a ladder file: they hold a heading, or begin like a list or a table.${why === undefined ? '' : ` ${why}`} Write them as plain lines.`

/** The parts whose words come back changed. */
function otherwise({ fields, intro, words }: SaidLadder, again: Ladder): Path[] {
  const { rungs: _, ...said } = fields
  const whole = Object.entries({ ...said, intro }).filter(([key, value]) => digestOf(value) !== digestOf((again as Readonly<Record<string, unknown>>)[key])).map(([key]) => [key])
  const each = fields.rungs.flatMap((rung, index): Path[] => {
    const wanted = rungOf(rung, fields.rungs[index - 1], words.get(rung.id))
    const got = again.rungs[index]
    const parts = wanted.words ? Object.entries(wanted.words).filter(([key, value]) => digestOf(value) !== digestOf(got?.words?.[key as keyof RungWords])).map(([key]): Path => ['words', index, key]) : []
    return parts.length > 0 || digestOf(wanted) === digestOf(got) ? parts : [['rungs', index]]
  })
  return [...whole, ...each]
}

/** The file, as a coach would write it: the head in YAML, a section for each rung that has prose. */
export function ladderFileText({ fields: { stop, ask_first, rungs, ...fields }, intro, words }: SaidLadder): string {
  const sections = rungs.flatMap(({ id, title }) => {
    const said = words.get(id)
    return said ? [sectionText(title, id, said)] : []
  })
  return `---\n${headText({ ...fields, rungs, stop, ask_first })}---\n${[intro, ...sections].filter((part) => part !== '').map((part) => `\n${part}\n`).join('')}`
}

/** The file of a page. */
export const pageFileText = ({ id: _, body, ...fields }: SaidPage): string => `---\n${headText(fields)}---\n${body}`

/** YAML in which short lists and maps stand on one line. */
function headText(value: object): string {
  const document = new Document(JSON.parse(JSON.stringify(value)))
  visit(document, {
    Collection(key, node) {
      const short = JSON.stringify(node).length <= WIDE
      if (isSeq(node) && !node.items.some(isMap)) node.flow = short
      if (isMap(node) && key !== null && node !== document.contents) node.flow = short || node.has('model')
    },
  })
  return document.toString({ lineWidth: 0, flowCollectionPadding: true })
}

function sectionText(title: string, id: string, { intro, set_up, full_rep, cues, faults, notes }: RungWords): string {
  const items = (list: readonly string[]): string => list.map((item) => `- ${item.replaceAll(/\n(?=[^\n])/g, '\n  ')}`.trimEnd()).join('\n')
  const cell = (text: string): string => text.replaceAll('|', '\\|')
  const table = faults?.map(({ seen, cause, say, remedy }) => `| ${[seen, cause, say, remedy].map(cell).join(' | ')} |`)
  const parts: readonly (readonly [string, string | undefined])[] = [
    ['Set up', set_up],
    ['Full rep', full_rep && items(full_rep)],
    ['Cues', cues && items(cues)],
    ['Faults', table && ['| seen | likely cause | say | if it stays |', '|---|---|---|---|', ...table].join('\n')],
    ['Notes', notes[0]?.body],
  ]
  const written = parts.flatMap(([heading, text]) => (text === undefined ? [] : [`### ${heading}${text === '' ? '' : `\n${text}`}`]))
  return [`## ${title} {#${id}}`, ...(intro === '' ? [] : [intro]), ...written].join('\n\n')
}
