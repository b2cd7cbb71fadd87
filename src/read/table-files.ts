import { Document, isMap, isSeq, visit } from 'yaml'
import type { Ladder, RungWords } from '../ladder/curriculum.ts'
import { digestOf } from '../ladder/digest.ts'
import { placeOf, type Finding, type Path } from '../ladder/finding.ts'
import { readLadderFile, rungOf } from './read-ladder.ts'
import type { TableLadder } from './read-table.ts'
import { letters } from './table-columns.ts'
import type { Reading } from './text.ts'

/** A ladder as the file it becomes. */
export type WrittenLadder = { readonly id: string; readonly text: string; readonly row: number; readonly ladder: Ladder }

/** Longer than this, a list stands on lines of its own. Units letters. Chosen by us. */
const WIDE = 100

/**
 * The file of a ladder out of a table, read back to be sure that it says the same.
 *
 * Shape   a ladder to its file, or findings about cells whose words mean something else in Markdown.
 */
export function ladderFile(ladder: TableLadder): Reading<WrittenLadder> {
  const { id } = ladder.fields
  const text = ladderFileText(ladder)
  const top = placeOf(ladder.places, [])
  const read = readLadderFile(`${id}.md`, new TextEncoder().encode(text), '')
  const again = read.value?.kind === 'ladder' ? read.value.ladder : undefined
  const changed = again ? otherwise(ladder, again) : []
  if (again && read.findings.length === 0 && changed.length === 0) return { value: { id, text, row: top.line, ladder: again }, findings: [] }
  const paths: readonly Path[] = changed.length > 0 ? changed : [[]]
  return { findings: paths.map((path) => cannot(ladder, path, read.findings[0]?.message)) }
}

function cannot({ places }: TableLadder, path: Path, why: string | undefined): Finding {
  const place = placeOf(places, path)
  const reason = why === undefined ? '' : ` ${why}`
  return { ...place, rule: 'tables-are-sound', message: `Row ${place.line}, column ${letters(place.column - 1)}: These words would be read otherwise in a ladder file: they hold a heading, or begin like a list or a table.${reason} Write them as plain lines.` }
}

/** The cells whose words come back changed. */
function otherwise({ fields, intro, words }: TableLadder, again: Ladder): Path[] {
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
export function ladderFileText({ fields: { stop, ask_first, rungs, ...fields }, intro, words }: TableLadder): string {
  const sections = rungs.flatMap(({ id, title }) => {
    const said = words.get(id)
    return said ? [sectionText(title, id, said)] : []
  })
  return `---\n${headText({ ...fields, rungs, stop, ask_first })}---\n${[intro, ...sections].filter((part) => part !== '').map((part) => `\n${part}\n`).join('')}`
}

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
