import { readFile } from 'node:fs/promises'
import path from 'node:path'
import type { Curriculum } from '../ladder/curriculum.ts'
import { inOrder, placeOf, type Finding } from '../ladder/finding.ts'
import { readCurriculum } from '../read/read-curriculum.ts'
import { readTable } from '../read/read-table.ts'
import { ladderFile, type WrittenLadder } from '../read/table-files.ts'
import { readWorkspace } from '../site/disk.ts'
import { writeLadders, type NewFile } from '../site/write-ladders.ts'
import { folderOf, workspaceOption } from './curriculum.ts'
import { forTerminal, textReport } from './report-text.ts'
import { EXIT, Misuse, type Verb } from './verb.ts'

/** Encodings a spreadsheet may have written besides UTF-8 and UTF-16. */
const ENCODINGS = ['windows-1252', 'iso-8859-15', 'macintosh']

/** `rungbook import`: ladders out of a table. */
export const importVerb: Verb = {
  name: 'import',
  says: 'writes ladder files from a table: all of them, or none if a row is wrong',
  usage: `rungbook import FILE.csv [--workspace DIR] [--replace] [--encoding ${ENCODINGS.join('|')}]

  --replace   also writes ladders anew that are there already, in the files they stand in
  --encoding  what the table was saved in, if not in UTF-8`,
  examples: ['rungbook import ladders.csv', 'rungbook import ladders.csv --replace', 'rungbook import old.csv --encoding windows-1252'],
  options: { ...workspaceOption, replace: { type: 'boolean' }, encoding: { type: 'string' } },
  choices: { encoding: ENCODINGS },

  async run(typed, console) {
    const [name, ...more] = typed.rest
    const { encoding, replace } = typed.options
    if (name === undefined || more.length > 0) throw new Misuse('Name one table, such as ladders.csv.')
    if (typeof encoding === 'string' && !ENCODINGS.includes(encoding)) throw new Misuse(`--encoding must be one of ${ENCODINGS.join(', ')}, not "${encoding}".`)
    const bytes = await readFile(path.resolve(console.folder, name)).catch(() => undefined)
    if (!bytes) throw new Misuse(`There is no file "${name}".`)
    const folder = await folderOf(typed, console)
    const { layers, findings: unread } = await readWorkspace(folder)
    const { value: curriculum, findings: broken } = readCurriculum(layers)
    if (!curriculum) {
      console.note(textReport([...unread, ...broken], new Map(), false))
      return EXIT.findings
    }
    const table = readTable(name, bytes, typeof encoding === 'string' ? encoding : undefined)
    const files = (table.value ?? []).map(ladderFile)
    const ladders = files.flatMap(({ value }) => (value ? [value] : []))
    const placed = ladders.map((ladder) => placeFor(ladder, curriculum, name, replace === true))
    const findings = inOrder([...table.findings, ...files.flatMap((file) => file.findings), ...placed.flatMap((place) => ('message' in place ? [place] : []))])
    const made = findings.length > 0 ? { refused: '' } : await writeLadders(folder, placed.flatMap((place) => ('text' in place ? [place] : [])))
    if ('refused' in made) {
      console.out(findings.length > 0 ? textReport(findings, new Map(), console.colour) : '')
      console.note(`Nothing was written${made.refused === '' ? '' : `: ${forTerminal(made.refused)}`}.\n`)
      return EXIT.findings
    }
    console.out([...made.written.map((file) => `written  ${forTerminal(file)}\n`), ...made.same.map((file) => `as it was  ${forTerminal(file)}\n`)].join(''))
    console.note('rungbook check says what else there is to put right.\n')
    return EXIT.fine
  },
}

/** Where a ladder is written: where it stands, if it may be written anew, else in a file of its own. A finding where it may not. */
function placeFor({ id, text, row }: WrittenLadder, { ladders }: Curriculum, file: string, replace: boolean): NewFile | Finding {
  const there = ladders.find((ladder) => ladder.id === id)
  if (!there) return { file: `ladders/${id}.md`, text, instead: false }
  const stands = placeOf(there.places, ['id']).file
  const wrong = (remedy: string): Finding => ({ file, line: row, column: 1, rule: 'ids-are-unique', message: `Row ${row}, column A: The ladder "${id}" is already there, in ${stands}. ${remedy}` })
  if (stands.startsWith('..') || path.isAbsolute(stands)) return wrong('That layer is not ours to change. Give this one another id, or amend that one.')
  return replace ? { file: stands, text, instead: true } : wrong('Import with --replace to write it anew, or give this one another id.')
}
