import { MOST_PARTS, readPart, type Part } from '../ladder/part.ts'
import { applyEdits } from '../site/apply-edits.ts'
import type { Kept } from '../site/cache.ts'
import { keptHere } from '../site/kept-here.ts'
import { watchWorkspace } from '../site/watch.ts'
import { checkedWorkspace, foundInWorkspace, nothingSeen, workspaceOption, type Found } from './curriculum.ts'
import { FORMATS, isFormat, type Format } from './report.ts'
import { forTerminal } from './report-text.ts'
import { workersAsked, workersOption } from './workers.ts'
import { EXIT, Misuse, type Console, type Typed, type Verb } from './verb.ts'

/** `rungbook check`: everything a coach can put right. */
export const checkVerb: Verb = {
  name: 'check',
  says: 'finds what is wrong with the ladders and pages of a workspace',
  usage: `rungbook check [--workspace DIR] [--format ${Object.keys(FORMATS).join('|')}] [--fix] [--watch] [--part I/N] [--workers N]\n\n--part 2/8 checks the second of eight parts of the ladders, split by their ids, so that eight machines can share the work; the first part also checks the pages and names files that cannot be read.\n\n--workers says how many cores may check a large workspace; as many as are worth it, unless given.`,
  examples: ['rungbook check', 'rungbook check --workspace club --watch', 'rungbook check --fix', 'rungbook check --format github', 'rungbook check --part 2/8'],
  alone: true,
  choices: { format: Object.keys(FORMATS) },
  options: { ...workspaceOption, format: { type: 'string' }, fix: { type: 'boolean' }, watch: { type: 'boolean' }, part: { type: 'string' }, ...workersOption },

  async run(typed, console) {
    const format = typed.options.format ?? 'text'
    if (!isFormat(format)) throw new Misuse(`--format must be one of ${Object.keys(FORMATS).join(', ')}, not "${String(format)}".`)
    const part = partIn(typed)
    const alone = SAYS_FINDINGS_ALONE.includes(format)
    const workers = workersAsked(typed)
    const hands = (files: number): number => Math.min(workers, MOST_HANDS, Math.floor(files / WORTH_A_HAND))
    const seen = typed.options.watch && alone && !part ? nothingSeen() : undefined // who checks again and again keeps what did not change
    const checks = (): Promise<Found> => (seen ? checkedWorkspace(typed, console, undefined, { seen }) : foundInWorkspace(typed, console, alone ? 'findings' : 'everything', { part, kept, hands }))
    if (typed.options.fix) await fix(checks, console)
    const checked = await checks()
    if (typed.options.watch) return watched(checked, checks, console, format)
    console.out(FORMATS[format](checked, console.colour))
    return checked.findings.length === 0 ? EXIT.fine : EXIT.findings
  },
}

/** Formats that say nothing of what cannot be told. */
const SAYS_FINDINGS_ALONE: readonly Format[] = ['text', 'github']

/** Files whose reading takes longer than looking at the whole tool, by which what was kept is known. Measured: a hundred. */
const WORTH_KEEPING = 200

/** Files a hand, by which several are faster than one. Measured: of two thousand files, two take as long as one, and of ten thousand three quarters. */
const WORTH_A_HAND = 2000
/** Each hand holds all that was read. Chosen by us: two were measured. */
const MOST_HANDS = 4

const kept = async (files: number): Promise<Kept | undefined> => (files < WORTH_KEEPING ? undefined : keptHere())

/** The part that was asked for, or undefined for the whole. Part 1 also says what is wrong with pages, and with files that cannot be read. */
function partIn({ options: { part } }: Typed): Part | undefined {
  if (typeof part !== 'string') return undefined
  const read = readPart(part)
  if (!read) throw new Misuse(`--part must be which part of how many, such as 2/8, at most ${MOST_PARTS}, not "${part}".`)
  return read
}

/** What one edit puts right may let the next be seen. Chosen by us. */
const MOST_ROUNDS = 5

/** Makes the remedies that are one edit, round after round, and says each. */
async function fix(checks: () => Promise<Found>, console: Console): Promise<void> {
  let count = 0
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const { folder, findings } = await checks()
    const made = await applyEdits(folder, findings)
    for (const { file, line, before, after } of made) console.note(`${forTerminal(`${file}:${line}`)}\n  - ${forTerminal(before)}\n  + ${forTerminal(after)}\n`)
    count += made.length
    if (made.length === 0) break
  }
  console.note(`${count} put right\n`)
}

/** Checks again after each save, until the process is ended. The lines around each run are what an editor's problem matcher waits for. */
async function watched(first: Found, checks: () => Promise<Found>, console: Console, format: Format): Promise<number> {
  const say = (checked: Found): void => console.out(`check begins\n${FORMATS[format](checked, console.colour)}check ends\n`)
  say(first)
  const end = watchWorkspace(first.workspace.folders, async () => say(await checks()))
  await console.ended()
  end()
  return EXIT.fine
}
