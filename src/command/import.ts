import { readFile } from 'node:fs/promises'
import path from 'node:path'
import type { Curriculum } from '../ladder/curriculum.ts'
import { inOrder, placeOf, type Finding } from '../ladder/finding.ts'
import { readCurriculum } from '../read/read-curriculum.ts'
import { readWorkspace } from '../site/disk.ts'
import { writeLadders, type NewFile } from '../site/write-ladders.ts'
import { folderOf, workspaceOption } from './curriculum.ts'
import { imported, type Candidate } from './imported.ts'
import { forTerminal, textReport } from './report-text.ts'
import { EXIT, Misuse, type Console, type Typed, type Verb } from './verb.ts'

/** Encodings a spreadsheet may have written besides UTF-8 and UTF-16. */
const ENCODINGS = ['windows-1252', 'iso-8859-15', 'macintosh']

/** `rungbook import`: ladders out of a table. */
export const importVerb: Verb = {
  name: 'import',
  says: 'writes ladder files from a table, or what export wrote as JSON: all of it, or nothing if a row is wrong',
  usage: `rungbook import FILE.csv|FILE.json [--workspace DIR] [--replace] [--encoding ${ENCODINGS.join('|')}]

  --replace   also writes anew what is there already, in the file it stands in
  --encoding  what the table was saved in, if not in UTF-8`,
  examples: ['rungbook import ladders.csv', 'rungbook import ladders.csv --replace', 'rungbook import old.csv --encoding windows-1252', 'rungbook import curriculum.json'],
  options: { ...workspaceOption, replace: { type: 'boolean' }, encoding: { type: 'string' } },
  choices: { encoding: ENCODINGS },

  async run(typed, console) {
    const { name, bytes, encoding } = await named(typed, console)
    const folder = await folderOf(typed, console)
    console.progress('reading the ladders')
    const { layers, findings: unread } = await readWorkspace(folder)
    const { value: curriculum, findings: broken } = readCurriculum(layers)
    if (!curriculum) {
      console.note(textReport([...unread, ...broken], new Map(), false))
      return EXIT.findings
    }
    const { value: candidates = [], findings } = imported(name, bytes, encoding)
    const places = candidates.map((one) => placeFor(one, curriculum, typed.options.replace === true))
    return written(folder, places.flatMap((place) => ('text' in place ? [place] : [])), [...findings, ...places.flatMap((place) => ('message' in place ? [place] : []))], console)
  },
}

async function named({ rest: [name, ...more], options: { encoding } }: Typed, { folder }: Console): Promise<{ readonly name: string; readonly bytes: Uint8Array; readonly encoding: string | undefined }> {
  if (name === undefined || more.length > 0) throw new Misuse('Name one table, such as ladders.csv.')
  if (typeof encoding === 'string' && !ENCODINGS.includes(encoding)) throw new Misuse(`--encoding must be one of ${ENCODINGS.join(', ')}, not "${encoding}".`)
  const bytes = await readFile(path.resolve(folder, name)).catch(() => undefined)
  if (!bytes) throw new Misuse(`There is no file "${name}".`)
  return { name, bytes, encoding: typeof encoding === 'string' ? encoding : undefined }
}

/** Writes the files if nothing is wrong, and says what became of each. */
async function written(folder: string, files: readonly NewFile[], findings: readonly Finding[], console: Console): Promise<number> {
  const made = findings.length > 0 ? { refused: undefined } : await writeLadders(folder, files)
  if ('refused' in made) {
    if (findings.length > 0) console.out(textReport(inOrder(findings), new Map(), console.colour))
    console.note(`Nothing was written${made.refused === undefined ? '' : `: ${forTerminal(made.refused)}`}.\n`)
    return EXIT.findings
  }
  console.out([...made.written.map((file) => `written  ${forTerminal(file)}\n`), ...made.same.map((file) => `as it was  ${forTerminal(file)}\n`)].join(''))
  console.note('rungbook check says what else there is to put right.\n')
  return EXIT.fine
}

const isForeign = (file: string): boolean => file.startsWith('..') || path.isAbsolute(file)

/** Where a ladder or page is written: where it stands, if it may be written anew, else in a file of its own. A finding where it may not. */
function placeFor({ kind, id, text, from, named: where }: Candidate, { ladders, pages }: Curriculum, replace: boolean): NewFile | Finding {
  const there = kind === 'ladder' ? ladders.find((ladder) => ladder.id === id) : pages.find((page) => page.id === id)
  const stands = there && placeOf(there.places, kind === 'ladder' ? ['id'] : []).file
  const own = { file: `${kind === 'ladder' ? 'ladders' : 'content'}/${id}.md`, text, instead: false }
  if (stands === undefined || (kind === 'page' && isForeign(stands))) return own // a page takes the place of one below
  const wrong = (remedy: string): Finding => ({ ...from, rule: 'ids-are-unique', message: `${where}: The ${kind} "${id}" is already there, in ${stands}. ${remedy}` })
  if (isForeign(stands)) return wrong('That layer is not ours to change. Give this one another id, or amend that one.')
  return replace ? { file: stands, text, instead: true } : wrong('Import with --replace to write it anew, or give this one another id.')
}
