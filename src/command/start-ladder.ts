import path from 'node:path'
import { models, modelNamed } from '../load/index.ts'
import { isChoiceKey, isNumberKey, type Key } from '../load/model.ts'
import { DEMANDS, ladderSchema, type Demand } from '../ladder/schema.ts'
import { readCurriculum } from '../read/read-curriculum.ts'
import { nearest } from '../read/nearest.ts'
import { readWorkspace } from '../site/disk.ts'
import { writeNew } from '../site/write-words.ts'
import { folderOf } from './curriculum.ts'
import { ladderText, type Told, type ToldRung } from './ladder-text.ts'
import { ask, asList, asTyped, type Question } from './question.ts'
import { lacking, measuredLast, rungSays, setUpOf, unfitRung, type SetUp } from './told-rung.ts'
import { EXIT, Misuse, type Asked, type Console, type Typed } from './verb.ts'

/** Adds a ladder from a short interview. Nothing is written before the last answer. */
export async function startLadder(id: string, typed: Typed, console: Console): Promise<number> {
  const { asked } = console
  if (!asked) throw new Misuse('There is nobody here to ask.')
  const folder = await folderOf(typed, console)
  console.progress('reading the ladders')
  const movements = await fitId(id, folder)
  const told = await interview(id, movements, asked, (text) => console.note(text))
  const file = `ladders/${id}.md`
  if (!(await writeNew(folder, file, ladderText(told)))) throw new Misuse(`${file} is already there. Nothing was written.`)
  console.out(`${path.join(path.relative(console.folder, folder), file)}: ${told.rungs.length} rungs\n\nNext\n  1  write under its headings how to set up, what a full rep is, cues and faults\n  2  rungbook check      names what is still to be written\n  3  rungbook preview    shows it as a page\n`)
  return EXIT.fine
}

/** The movements there are, where the id is free in every layer. */
async function fitId(id: string, folder: string): Promise<string[]> {
  const { success, error } = ladderSchema.shape.id.safeParse(id)
  if (!success) throw new Misuse(error.issues[0]?.message.replaceAll('{key}', 'The id of a ladder') ?? 'This cannot be an id.')
  const { layers } = await readWorkspace(folder)
  const { value } = layers.length === 0 ? {} : readCurriculum(layers)
  if (!value) throw new Misuse(`There is no handbook in "${folder}" that can be read. Begin one with: rungbook start DIR; or name it with --workspace.`)
  const taken = value.ladders.find((ladder) => ladder.id === id)
  if (taken) throw new Misuse(`The ladder "${id}" is already there, by ${taken.layer}. Choose another id; to change that ladder, write a file that says amends: ${id}.`)
  if (value.pages.some((page) => page.id === id)) throw new Misuse(`A page is called "${id}". Choose another id.`)
  return [...new Set(value.ladders.map(({ movement }) => movement))].toSorted()
}

const fits = (schema: { safeParse(value: unknown): { success: boolean; error?: { issues: { message: string }[] } } }, key: string): Question<string>['read'] => (answer) => {
  const { success, error } = schema.safeParse(answer)
  return success ? { value: answer } : { wrong: (error?.issues[0]?.message ?? '').replaceAll('{key}', key) }
}

/** "3 x 10", "3 x 20 s", "3 x 15 m": what must be shown on a rung before the next. */
const STANDARD: Question<Told['standard']>['read'] = (answer) => {
  const match = /^(\d+) *[x×] *(\d+) *(s|m)?$/i.exec(answer)
  const amount = { s: 'seconds', m: 'metres' }[match?.[3]?.toLowerCase() ?? ''] ?? 'reps'
  const value = match ? { sets: Number(match[1]), [amount]: Number(match[2]) } : undefined
  return value && ladderSchema.shape.standard.safeParse(value).success ? { value } : { wrong: 'Write it as sets x repetitions, such as 3 x 10; 3 x 20 s for seconds, 3 x 15 m for metres.' }
}

const countUpTo = (most: number): Question<number>['read'] => (answer) => (/^\d+$/.test(answer) && Number(answer) >= 1 && Number(answer) <= most ? { value: Number(answer) } : { wrong: `Write a whole number from 1 to ${most}.` })

async function interview(id: string, movements: readonly string[], asked: Asked, note: (text: string) => void): Promise<Told> {
  const answer = <Value>(asks: string, read: Question<Value>['read'], unless?: string): Promise<Value> => ask({ asks, read, ...(unless === undefined ? {} : { unless }) }, asked, note)
  const { title, movement, equipment } = ladderSchema.shape
  const lines = (asks: string, schema: Parameters<typeof fits>[0], key: string): Promise<readonly string[]> =>
    answer(asks, (typed) => {
      const { value } = asList(typed)
      const wrong = fits({ safeParse: () => schema.safeParse(value) }, key)('')
      return 'wrong' in wrong ? wrong : { value }
    }, '')
  if (asked.terminal && movements.length > 0) note(`Movements there are: ${movements.join(', ')}\n`)
  const head = {
    id,
    title: await answer('Title', fits(title, 'Title'), titleOf(id)),
    movement: await answer('Movement', fits(movement, 'Movement')),
    standard: await answer('To be shown on a rung before the next, sets x repetitions', STANDARD, '3 x 10'),
    first_reps: await answer('Fewest first repetitions on a new rung', countUpTo(50), '3'),
  }
  const bare: Told = { ...head, aim: 'rung', equipment: [], form: [], rungs: [], stop: [], ask_first: [] }
  const rungs = await rungsTold(bare, asked, note, answer)
  const ids = rungs.map((rung) => rung.id)
  const aim = await answer(`Aim, the rung the ladder is for (${ids.join(', ')})`, (typed) => (ids.includes(typed) ? { value: typed } : { wrong: `It has no rung "${typed}". ${didYouMean(nearest(typed, ids), ids)}` }), ids.at(-1))
  return {
    ...bare,
    rungs,
    aim,
    equipment: await lines('Equipment', equipment, 'Equipment'),
    form: await lines('Form points, what must be seen in every repetition', ladderSchema.shape.form, 'Form'),
    stop: await lines('Stop signs, when to stop', ladderSchema.shape.stop, 'Stop signs'),
    ask_first: await lines('Ask first, who sees a clinician before starting', ladderSchema.shape.ask_first, 'Ask first'),
  }
}

const didYouMean = (like: string | undefined, known: readonly string[]): string => (like ? `Did you mean ${like}?` : `They are: ${known.join(', ')}.`)
const titleOf = (id: string): string => id.charAt(0).toUpperCase() + id.slice(1).replaceAll('-', ' ')

type Answer = <Value>(asks: string, read: Question<Value>['read'], unless?: string) => Promise<Value>

/** Rungs from the easiest to the hardest, each measured as soon as it is entered; a hyphen takes the last one back. */
async function rungsTold(bare: Told, asked: Asked, note: (text: string) => void, answer: Answer): Promise<ToldRung[]> {
  const rungs: ToldRung[] = []
  if (asked.terminal) note('Now the rungs, the easiest first. An empty line ends them, a hyphen takes the last one back.\n')
  for (;;) {
    const below = rungs.at(-1)
    const title = await answer(below ? `Rung ${rungs.length + 1}, its title` : 'The easiest rung, its title', (typed) => (typed === '' || typed === '-' ? { value: typed } : fits(ladderSchema.shape.title, 'Title')(typed)), below ? '' : undefined)
    if (title === '' && below) return rungs
    if (title === '-') {
      if (!rungs.pop()) note('  There is no rung yet.\n')
      continue
    }
    const rung = await rungTold({ id: idOf(title, rungs), title }, below, asked, note, answer)
    rungs.push(rung)
    for (const line of rungSays(measuredLast({ ...bare, aim: rung.id, rungs }))) note(`  ${title}: ${line}\n`)
  }
}

async function rungTold(named: { readonly id: string; readonly title: string }, below: ToldRung | undefined, asked: Asked, note: (text: string) => void, answer: Answer): Promise<ToldRung> {
  for (;;) {
    const load = await loadTold(below?.load, answer, asked, note)
    const demand = below ? await answer(`Harder in another way too (${DEMANDS.join(', ')})`, demandsOf, '') : []
    const rung = { ...named, load, demand }
    const unfit = unfitRung(rung)
    if (unfit === undefined) return rung
    if (!asked.terminal) throw new Misuse(`The set-up of "${named.title}" will not do: ${unfit} Nothing was written.`)
    note(`  ${unfit}\n`)
  }
}

const demandsOf: Question<readonly Demand[]>['read'] = (typed) => {
  const { value } = asList(typed)
  const stranger = value.find((word) => !(DEMANDS as readonly string[]).includes(word))
  return stranger === undefined ? { value: value as readonly Demand[] } : { wrong: `There is no demand "${stranger}". ${didYouMean(nearest(stranger, DEMANDS), DEMANDS)}` }
}

/** A set-up: what was typed on one line, and an answer for each thing the model needs and was not told. */
async function loadTold(below: SetUp | undefined, answer: Answer, asked: Asked, note: (text: string) => void): Promise<SetUp> {
  if (!below && asked.terminal) note(`Models that compute a load:\n${models.map(({ name, says }) => `  ${name.padEnd(18)} ${says}\n`).join('')}`)
  const typed = await answer(below ? 'Its set-up, where it differs, such as hand_height_cm: 45' : 'Its set-up, such as model: supported-body, hand_height_cm: 90', (line) => setUpOf(line, below), below ? '' : undefined)
  const name = typed.model ?? 'skill'
  const model = modelNamed(name)
  if (!model) throw new Error(`bug: no load model is named ${name}`)
  const filled: Record<string, SetUp[string]> = { ...typed }
  for (const [key, spec] of lacking(model, typed)) filled[key] = await answer(`  ${key}, ${spec.says} (${spanOf(spec)})`, valueOf(key, spec))
  return { ...filled, model: name }
}

const spanOf = (key: Key): string => (isChoiceKey(key) ? key.choices.join(', ') : isNumberKey(key) ? `${key.min} to ${key.max} ${key.unit}` : 'words')

const valueOf = (name: string, key: Key): Question<SetUp[string]>['read'] => (typed) => {
  if (isChoiceKey(key)) return key.choices.includes(typed) ? { value: typed } : { wrong: `${name} must be one of: ${key.choices.join(', ')}.` }
  if (!isNumberKey(key)) return asTyped(typed)
  const value = Number(typed)
  return value >= key.min && value <= key.max ? { value } : { wrong: `${name} must be a number from ${key.min} to ${key.max} ${key.unit}.` }
}

/** A title as an id no rung has yet: small letters, digits and hyphens. */
function idOf(title: string, rungs: readonly ToldRung[]): string {
  const plain = title.normalize('NFD').replace(/\p{Mark}/gu, '').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^[^a-z]+|-+$/g, '').slice(0, 50).replace(/-+$/, '')
  const base = plain === '' ? `rung-${rungs.length + 1}` : plain
  const taken = (id: string): boolean => rungs.some((rung) => rung.id === id) || !ladderSchema.shape.id.safeParse(id).success
  return taken(base) ? ([2, 3, 4, 5, 6, 7, 8, 9].map((count) => `${base}-${count}`).find((id) => !taken(id)) ?? `rung-${rungs.length + 1}`) : base
}
