import type { Comparison } from '../compare/change.ts'
import { compare } from '../compare/compare.ts'
import type { Finding, Places } from '../ladder/finding.ts'
import { words } from '../ladder/words.ts'
import { AVERAGE, measure, type MeasuredCurriculum, type Memory } from '../measure/measure.ts'
import { readCurriculum, type ReadMemory } from '../read/read-curriculum.ts'
import { withoutUnchanged } from '../read/unchanged.ts'
import { readWorkspace, type Workspace } from '../site/disk.ts'
import { commitOf, readWorkspaceAt } from '../site/git.ts'
import { seal } from '../site/seal.ts'
import { folderOf, workspaceOption } from './curriculum.ts'
import { reviewJson } from './review-json.ts'
import { reviewMarkdown } from './review-markdown.ts'
import { reviewSarif } from './review-sarif.ts'
import { reviewText } from './review-text.ts'
import { EXIT, Misuse, type Console, type Typed, type Verb } from './verb.ts'

/** A comparison, what had to be left out of it, and the curriculum as it is now. */
export type Reviewed = { readonly comparison: Comparison; readonly notes: readonly string[]; readonly after: MeasuredCurriculum }

const FORMATS = { text: reviewText, markdown: reviewMarkdown, json: reviewJson, sarif: reviewSarif } as const

const isFormat = (name: unknown): name is keyof typeof FORMATS => typeof name === 'string' && Object.hasOwn(FORMATS, name)

/** `rungbook review`: what a change means. */
export const reviewVerb: Verb = {
  name: 'review',
  says: 'says what the working tree, or another revision, changes against a git revision, and what follows from it',
  usage: `rungbook review REVISION [REVISION] [--workspace DIR] [--format ${Object.keys(FORMATS).join('|')}]\nrungbook review --seal LADDER --by NAME [--workspace DIR]`,
  examples: ['rungbook review main', 'rungbook review edition/2026.1 edition/2026.2', 'rungbook review origin/main --format markdown', 'rungbook review --seal press-up --by "A. Reviewer"'],
  choices: { format: Object.keys(FORMATS) },
  options: { ...workspaceOption, format: { type: 'string' }, seal: { type: 'string' }, by: { type: 'string' } },

  async run(typed, console) {
    if (typed.options.seal !== undefined) return sealed(typed, console)
    const format = typed.options.format ?? 'text'
    if (!isFormat(format)) throw new Misuse(`--format must be one of ${Object.keys(FORMATS).join(', ')}, not "${String(format)}".`)
    const [base, other, ...more] = typed.rest
    if (base === undefined || more.length > 0) throw new Misuse('Name one revision to compare the working tree with, or two to compare with one another.')
    const folder = await folderOf(typed, console)
    console.progress('reading what is compared')
    const then = await at(folder, base)
    const now = other === undefined ? await readWorkspace(folder) : await at(folder, other)
    for (const side of [then, now]) {
      if (!('failed' in side)) continue
      console.note(`${side.failed}\n`)
      return EXIT.usage
    }
    if ('failed' in then || 'failed' in now) return EXIT.usage
    console.progress('comparing')
    const reviewed = reviewedOf(...bothRead(then, now))
    console.out(FORMATS[format](reviewed))
    return EXIT.fine
  },
}

/** One side of a comparison: what could be read, and the files that could not. */
type Side = { readonly measured: MeasuredCurriculum | undefined; readonly findings: readonly Finding[] }

/** Reads and measures both sides: only what differs between them, and what they share once. */
function bothRead(then: Workspace, now: Workspace): [Side, Side] {
  const [before, after] = withoutUnchanged(then.layers, now.layers)
  const once: Once = { reading: new Map(), measuring: new WeakMap() }
  return [read({ ...then, layers: before }, once), read({ ...now, layers: after }, once)]
}

/** What was read and measured, to be used again. */
type Once = { readonly reading: ReadMemory; readonly measuring: Memory }

function read(workspace: Workspace, once: Once): Side {
  const reading = workspace.layers.length === 0 ? { findings: [] } : readCurriculum(workspace.layers, once.reading)
  const value = 'value' in reading ? reading.value : undefined
  return { measured: value && measure(value, AVERAGE, once.measuring), findings: [...workspace.findings, ...reading.findings] }
}

async function at(folder: string, revision: string): Promise<Workspace | { readonly failed: string }> {
  const commit = await commitOf(folder, revision)
  return 'failed' in commit ? commit : readWorkspaceAt(commit, folder)
}

const NOTHING: Comparison = { typed: [], followed: [] }

/** Compares what can be compared, and says what cannot: a ladder that does not read on one side is left out on both. */
function reviewedOf(before: Side, after: Side): Reviewed {
  const sides = [['at the base', before], ['now', after]] as const
  const { measured: now } = after
  const { measured: then } = before
  if (!then || !now) {
    const notes = sides.flatMap(([when, { measured, findings }]) => (measured ? [] : [`The handbook cannot be read ${when}, so nothing can be compared: ${findings[0]?.message ?? 'it is not there.'}`]))
    return { comparison: NOTHING, notes, after: now ?? then ?? { handbook: { title: '', organisation: '', edition: '1', languages: ['en'], units: 'metric', contact: '' }, ladders: [], pages: [] } }
  }
  const unread = [
    { when: 'at the base', files: unreadable(then, before.findings) },
    { when: 'now', files: unreadable(now, after.findings) },
  ]
  const notes = unread.flatMap(({ when, files }) => [...files].map((file) => `${file} cannot be read ${when}; it is left out.`))
  const files = new Set(unread.flatMap((side) => [...side.files]))
  const left = new Set([then, now].flatMap(written).filter((one) => filesOf(one).some((file) => files.has(file))).map(({ id }) => id))
  return { comparison: compare(without(then, left), without(now, left)), notes, after: now }
}

/** A ladder or page, and where each part of it was written: in its own file, or in one that amends it. */
type Written = { readonly id: string; readonly places: Places }

const written = ({ ladders, pages }: MeasuredCurriculum): Written[] => [...ladders, ...pages]
const filesOf = ({ places }: Written): string[] => [...places().values()].map(({ file }) => file)

/** Files with findings out of which nothing of a ladder or page came. */
function unreadable(measured: MeasuredCurriculum, findings: readonly Finding[]): Set<string> {
  const known = new Set(written(measured).flatMap(filesOf))
  return new Set(findings.map(({ file }) => file).filter((file) => file.endsWith('.md') && !known.has(file)))
}

function without(curriculum: MeasuredCurriculum, ids: ReadonlySet<string>): MeasuredCurriculum {
  const kept = ({ id }: Written): boolean => !ids.has(id)
  return { ...curriculum, ladders: curriculum.ladders.filter(kept), pages: curriculum.pages.filter(kept) }
}

/** Signs a ladder off: who, when, and a digest over its criteria, loads and safety, into its own file. */
async function sealed(typed: Typed, console: Console): Promise<number> {
  const { seal: id, by } = typed.options
  if (typeof id !== 'string' || typeof by !== 'string' || by.trim() === '') throw new Misuse('Say which ladder is signed off and by whom: --seal press-up --by "A. Reviewer".')
  if (!words(80).safeParse(by).success) throw new Misuse('A reviewer is named on one line, in at most 80 characters, none of them hidden.')
  const folder = await folderOf(typed, console)
  console.progress('reading the ladders')
  const { measured } = read(await readWorkspace(folder), { reading: new Map(), measuring: new WeakMap() })
  const ladder = measured?.ladders.find((candidate) => candidate.id === id)
  if (!ladder) throw new Misuse(`There is no ladder "${id}" here that can be read.`)
  const file = await seal(folder, ladder, { by: by.trim(), on: new Date().toISOString().slice(0, 10) })
  if (file === undefined) throw new Misuse(`"${id}" is not written in this workspace. Sign it where it is, or in a file here that says amends: ${id}.`)
  console.out(`${file}: reviewed by ${by.trim()}, seal ${ladder.digest}\n`)
  return EXIT.fine
}
