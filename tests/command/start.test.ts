import assert from 'node:assert/strict'
import { spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { ladderText } from '../../src/command/ladder-text.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { writeFolder } from '../../src/site/new-folder.ts'
import { readLadderFile } from '../../src/read/read-ladder.ts'
import { REPOSITORY, run, runAnswered, scratch, type Run } from '../site/demo.ts'
import { HANDBOOK, ladder } from './small.ts'

const folder = await scratch()

/** Runs the command line with somebody, or something, that answers. */
async function told(where: string, words: readonly string[], answers: readonly string[], terminal = false): Promise<Run & { readonly asked: readonly string[] }> {
  const asked: string[] = []
  const left = [...answers]
  const ran = await runAnswered(where, words, { terminal, answer: async (question) => (asked.push(question), left.shift()) })
  return { ...ran, asked }
}

const first = (note: string): string => note.split('\n')[0] ?? ''

test('start writes a whole workspace in which nothing is to be put right, and says the next three steps', async () => {
  const { code, out, note } = await run(folder, 'start', 'tarnwick-gym', '--yes')
  assert.deepEqual([code, note], [0, ''])
  const place = path.join(folder, 'tarnwick-gym')
  const files = ['.editorconfig', '.github/workflows/curriculum.yml', '.gitignore', '.vscode/settings.json', '.vscode/tasks.json', 'README.md', 'content/welcome.md', 'handbook.yaml', 'ladders/goblet-squat.md', 'ladders/press-up.md', 'package.json', 'template.csv']
  assert.deepEqual((await filesBelow(place)).toSorted(), files.toSorted())
  assert.match(out, /^tarnwick-gym: 12 files\n\nNext\n {2}1 {2}cd tarnwick-gym && npm install --ignore-scripts\n {2}2 {2}npx rungbook preview .*\n {2}3 {2}npx rungbook start ladder ID .*\n$/)
  assert.deepEqual(await run(place, 'check'), { code: 0, out: 'nothing to put right\n', note: '' })
  assert.match(readFileSync(path.join(place, 'handbook.yaml'), 'utf8'), /^organisation: "Tarnwick gym"$/m)
  const about = JSON.parse(readFileSync(path.join(place, 'package.json'), 'utf8')) as { scripts: object; dependencies: Record<string, string> }
  assert.deepEqual(about.scripts, { check: 'rungbook check', build: 'rungbook build', preview: 'rungbook preview' })
  assert.equal(path.resolve(place, (about.dependencies.rungbook ?? '').replace('file:', '')), REPOSITORY)
  for (const settings of ['.vscode/settings.json', '.vscode/tasks.json']) JSON.parse(readFileSync(path.join(place, settings), 'utf8'))
})

test('the table it writes can be imported as it is', async () => {
  await run(folder, 'start', 'table', '--yes')
  const { code, out } = await run(path.join(folder, 'table'), 'import', 'template.csv')
  assert.deepEqual([code, out], [0, 'written  ladders/press-up-template.md\n'])
})

test('its amendment says of a ladder of the starter curriculum what the organisation asks', async () => {
  await run(folder, 'start', 'amending', '--yes')
  const { out } = await run(path.join(folder, 'amending'), 'explain', 'press-up/floor')
  assert.match(out, /3 sets of 15 repetitions/)
})

test('options answer beforehand, whatever signs they hold', async () => {
  const given = ['--organisation', 'Bode "B" & Sons: #1', '--language', 'es', '--units', 'imperial', '--accent', '#7a1f1f', '--contact', 'coach@tarnwick.example']
  assert.equal((await run(folder, 'start', 'given', ...given, '--yes')).code, 0)
  const place = path.join(folder, 'given')
  assert.equal((await run(place, 'check')).out, 'nothing to put right\n')
  const handbook = readFileSync(path.join(place, 'handbook.yaml'), 'utf8')
  for (const line of ['organisation: "Bode \\"B\\" & Sons: #1"', 'languages: [es]', 'units: imperial', 'contact: "coach@tarnwick.example"', 'colours: { accent: "#7a1f1f" }']) assert.ok(handbook.includes(`${line}\n`), line)
})

const unfit: [words: string[], says: string][] = [
  [['--language', 'klingon!'], '--language: Each language must be a code such as en or pt-BR.'],
  [['--units', 'stones'], '--units: Units must be one of: metric, imperial.'],
  [['--accent', 'teal'], '--accent: Colour must be a colour such as "#0b5563".'],
  [['--organisation', ' '], '--organisation: Organisation is empty; write something or leave the key out.'],
]
for (const [words, says] of unfit) {
  test(`start with ${words.join(' ')} is wrong usage, and nothing is written`, async () => {
    const { code, note } = await run(folder, 'start', 'unfit', ...words, '--yes')
    assert.deepEqual([code, first(note)], [2, says])
    assert.equal(existsSync(path.join(folder, 'unfit')), false)
  })
}

test('on a terminal it asks for what no option says, again where an answer will not do, and an interrupt writes nothing', async () => {
  const { code, note, asked } = await told(folder, ['start', 'asked', '--units', 'metric'], ['', 'Tarnwick Gym Club', 'klingon!', '', '', ''], true)
  assert.equal(code, 0)
  assert.equal(note, '  Each language must be a code such as en or pt-BR.\n')
  assert.deepEqual(asked, ['Organisation: ', 'Organisation: ', 'Language of your files, such as en or es [en]: ', 'Language of your files, such as en or es [en]: ', 'Colour [#0b5563]: ', 'Whom a reader asks [The coach who gave you this handbook]: '])
  const stopped = await told(folder, ['start', 'stopped'], ['Tarnwick Gym Club'], true)
  assert.deepEqual([stopped.code, first(stopped.note)], [2, 'Nothing was written.'])
  assert.equal(existsSync(path.join(folder, 'stopped')), false)
})

test('where there is nobody to ask it does not wait', async () => {
  const { code, note } = await run(folder, 'start', 'nobody')
  assert.deepEqual([code, first(note)], [2, 'There is nobody here to ask. Give --organisation NAME, or --yes to take what is usual.'])
  assert.equal((await run(folder, 'start', 'somebody', '--organisation', 'Tarnwick Gym Club')).code, 0)
  const waiting = spawn(process.execPath, [path.join(REPOSITORY, 'src/command/bin.mjs'), 'start', 'waiting'], { cwd: folder, stdio: ['pipe', 'ignore', 'ignore'] }) // its input stays open
  assert.equal(await new Promise((resolve) => waiting.on('exit', resolve)), 2)
})

test('a folder that is not empty is refused, naming what is in it; a link and a file too', async () => {
  const place = path.join(folder, 'full')
  mkdirSync(place)
  writeFileSync(path.join(place, 'diary.txt'), 'mine')
  assert.equal(first((await run(folder, 'start', 'full', '--yes')).note), `"${place}" is not empty: it holds diary.txt. Name a new folder, or empty this one.`)
  for (const name of ['b', 'c', 'd', 'e', 'f', 'g']) writeFileSync(path.join(place, name), '')
  assert.equal(first((await run(folder, 'start', 'full', '--yes')).note), `"${place}" is not empty: it holds b, c, d, diary.txt, e and 2 more. Name a new folder, or empty this one.`)
  assert.deepEqual(readdirSync(place).length, 7)
  symlinkSync(place, path.join(folder, 'linked'))
  assert.equal(first((await run(folder, 'start', 'linked', '--yes')).note), `"${path.join(folder, 'linked')}" is a link. Name the folder itself.`)
  assert.equal(first((await run(place, 'start', 'diary.txt', '--yes')).note), `"${path.join(place, 'diary.txt')}" is a file. Name a new folder.`)
  assert.equal((await run(folder, 'start', 'full', '--yes')).code, 2)
})

test('an empty folder, and a repository without files, are begun in where they stand', async () => {
  const place = path.join(folder, 'cloned')
  mkdirSync(path.join(place, '.git'), { recursive: true })
  assert.match((await run(place, 'start', '.', '--yes')).out, /^this folder: 12 files\n\nNext\n {2}1 {2}npm install /)
  assert.equal((await run(place, 'check')).code, 0)
})

test('a workspace that cannot be written whole is not written at all', async () => {
  const impossible = [{ name: 'handbook.yaml', bytes: HANDBOOK }, { name: `${'x'.repeat(300)}.md`, bytes: '' }]
  const there = path.join(folder, 'there')
  mkdirSync(there)
  for (const place of [path.join(folder, 'absent'), there]) await assert.rejects(writeFolder(place, impossible), { code: 'ENAMETOOLONG' })
  assert.deepEqual([existsSync(path.join(folder, 'absent')), readdirSync(there)], [false, []])
  assert.deepEqual(readdirSync(folder).filter((name) => name.includes('.start-')), [])
})

test('the workflow that start writes is the one that README.md shows', () => {
  const workflow = readFileSync(path.join(REPOSITORY, 'src/command/workspace/curriculum.yml'), 'utf8')
  assert.ok(readFileSync(path.join(REPOSITORY, 'README.md'), 'utf8').includes(`\`\`\`yaml\n${workflow}\`\`\`\n`))
})

const club = path.join(folder, 'club')
mkdirSync(path.join(club, 'ladders'), { recursive: true })
writeFileSync(path.join(club, 'handbook.yaml'), HANDBOOK)
writeFileSync(path.join(club, 'ladders/bench-press.md'), ladder())

const WALL = ['', 'horizontal press', '3 x 12', '3', 'Hands on a wall', 'supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: 110', 'Hands on a table', 'hand_height_cm: 75', 'balance', 'Hands on the floor', 'hand_height_cm: 0', '', '', 'hands-on-a-table', 'wall; table, sturdy', 'one line from ear to heel', 'sharp pain', '']

test('start ladder writes what it was told, says each load as it is entered, and leaves the prose to be found by check', async () => {
  const { code, out, note } = await told(club, ['start', 'ladder', 'wall-press'], WALL)
  assert.equal(code, 0)
  assert.match(out, /^ladders\/wall-press\.md: 3 rungs\n\nNext\n/)
  assert.match(note, /^ {2}Hands on a wall: \d+ % of body weight \(\d+ to \d+ % of body weight from body to body\)\n/)
  assert.match(note, /\n {2}Hands on the floor: 36 % of body weight \(35 to 37 % of body weight from body to body\); 1\.45 times the rung below; 0 to 5 repetitions to expect at first\n {2}Hands on the floor: This step suits some athletes and not others\. Between them lies: hands at about 51 cm\.\n/)
  const { value, findings } = readLadderFile('wall-press.md', readFileSync(path.join(club, 'ladders/wall-press.md')), '')
  assert.deepEqual(findings, [])
  assert.ok(value?.kind === 'ladder')
  const { title, aim, equipment, standard, first_reps, rungs } = value.ladder
  assert.deepEqual([title, aim, equipment, first_reps], ['Wall press', 'hands-on-a-table', ['wall', 'table, sturdy'], 3])
  assert.deepEqual([standard.sets, standard.reps], [3, 12])
  assert.deepEqual(rungs.map(({ id, demand }) => [id, demand]), [['hands-on-a-wall', []], ['hands-on-a-table', ['balance']], ['hands-on-the-floor', []]])
  assert.deepEqual(rungs[1]?.load, { model: 'supported-body', facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 75 })
  const found = (await run(club, 'check')).out
  assert.match(found, /"Hands on a wall" lacks Set up, Full rep, Cues, Faults\. Write them under its heading\. {2}\(every-rung-is-described\)/)
  assert.match(found, /This does not say who should ask first\./)
  assert.doesNotMatch(found, /wall-press\.md:.*\((values-fit|keys-are-known|sections-are-known)\)/)
})

test('a step too steep is warned of before the file exists, with what lies between', async () => {
  const { code, note } = await told(club, ['start', 'ladder', 'steep'], ['', 'horizontal press', '3 x 8', '8', 'Wall', 'supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: 120', 'Floor', 'hand_height_cm: 0', '', 'Wall again', 'hand_height_cm: 120', ''])
  assert.match(note, /\n {2}Floor: WARNING: this step is too steep\. Between them lies: hands at about \d+ cm\.\n/)
  assert.match(note, /\n {2}Wall again: WARNING: this rung loads less than the one below it\. Rungs go from the easiest to the hardest\.\n/)
  assert.equal(code, 0) // what is not answered is left for check to find
})

test('on a terminal a slip is asked again, what the model needs is asked for, and a hyphen takes a rung back', async () => {
  const answers = ['', 'squat', 'ten', '3 x 20 s', '', '-', 'Chair', 'leg-pres-of-body', 'leg-press-of-body', 'three legs', 'two legs', 'Slip', 'added_mas_percent: 5', 'added_mass_percent: 500', '', 'added_mass_percent: 5', 'hops', '', '-', 'Chair', 'added_mass_percent: 10', 'longer range', '', 'chair3', 'chair-2', '', '', '', '']
  const { code, note, asked } = await told(club, ['start', 'ladder', 'chair-squat'], answers, true)
  assert.equal(code, 0, note)
  for (const line of [
    'Write it as sets x repetitions, such as 3 x 10; 3 x 20 s for seconds, 3 x 15 m for metres.',
    'There is no rung yet.',
    'There is no model "leg-pres-of-body". Did you mean leg-press-of-body?',
    'stance must be one of: two legs, split, step-up, one leg.',
    'leg-press-of-body has no "added_mas_percent". Did you mean added_mass_percent?',
    'added_mass_percent must be a number from 0 to 200 % of body mass.',
    'There is no demand "hops". They are: balance, one side, longer range, speed, grip.',
    'It has no rung "chair3". Did you mean chair?',
  ]) assert.ok(note.includes(`  ${line}\n`), line)
  assert.ok(asked.some((question) => question.includes('stance, what the body stands on')))
  const { value } = readLadderFile('chair-squat.md', readFileSync(path.join(club, 'ladders/chair-squat.md')), '')
  assert.ok(value?.kind === 'ladder')
  assert.deepEqual([value.ladder.standard.seconds, value.ladder.aim, value.ladder.rungs.map(({ id }) => id)], [20, 'chair-2', ['chair', 'chair-2']])
})

const refused: [words: string[], answers: string[], says: string][] = [
  [['bench-press'], [], 'The ladder "bench-press" is already there, by Tarnwick Gym Club. Choose another id; to change that ladder, write a file that says amends: bench-press.'],
  [['Bench Press'], [], 'The id of a ladder must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.'],
  [['search'], [], 'The id of a ladder is a name the handbook keeps for itself; choose another.'],
  [[], [], 'Name the one ladder to begin, such as: start ladder wall-press. A folder of that name is begun with: start ./ladder.'],
  [['new-one'], [], 'There is no answer to "Movement". Nothing was written.'],
  [['new-one'], ['', 'squat', 'many'], '"many" does not answer "To be shown on a rung before the next, sets x repetitions": Write it as sets x repetitions, such as 3 x 10; 3 x 20 s for seconds, 3 x 15 m for metres. Nothing was written.'],
  [['new-one'], ['', 'squat', '', '', 'Chair', 'hand_height_cm: 90'], '"hand_height_cm: 90" does not answer "Its set-up, such as model: supported-body, hand_height_cm: 90": Begin with what its load is computed by: supported-body, lever-hold, leg-press-of-body, assisted, one-rep-max, landing, published, skill. Nothing was written.'],
  [['new-one'], ['', 'squat', '', '', 'Chair', 'leg-press-of-body, stance: two legs, added_mass_percent: 900'], 'The set-up of "Chair" will not do: added_mass_percent must be a number from 0 to 200 % of body mass. Nothing was written.'],
]
for (const [words, answers, says] of refused) {
  test(`start ladder ${words.join(' ')} with ${answers.length} answers is refused: ${says.slice(0, 60)}`, async () => {
    const { code, note } = await told(club, ['start', 'ladder', ...words], answers)
    assert.deepEqual([code, note.split('\n').find((line) => !line.startsWith('  '))], [2, says])
    assert.equal(existsSync(path.join(club, 'ladders/new-one.md')), false)
  })
}

test('a ladder of a layer below is in use too, and where there is no handbook it is said', async () => {
  await run(folder, 'start', 'layered', '--yes')
  assert.match((await told(path.join(folder, 'layered'), ['start', 'ladder', 'pull-up'], [])).note, /^The ladder "pull-up" is already there, by The Rungbook starter curriculum\./)
  assert.match((await told(folder, ['start', 'ladder', 'wall-press'], [])).note, /^There is no handbook in ".*" that can be read\. Begin one with: rungbook start DIR; or name it with --workspace\.\n/)
})

test('words that mean something to YAML come back from the file as they were typed', () => {
  for (const title of ['true', 'No', '# one', 'a: b', '[x]', '- dash', 'quote " and \\ stroke', "it's", '007', 'ends with colon:', 'ünïcode – dash', '*star*', '&and', '@at', '%x', '{y}']) {
    const text = ladderText({ id: 'x', title, movement: title, aim: 'one', equipment: [title], standard: { sets: 3, reps: 5 }, first_reps: 3, form: [title], rungs: [{ id: 'one', title, demand: [], load: { model: 'skill' } }], stop: [title], ask_first: [title] })
    const { value } = readLadderFile('x.md', new TextEncoder().encode(text), '')
    assert.ok(value?.kind === 'ladder', title)
    const { movement, equipment, form, rungs, stop } = value.ladder
    assert.deepEqual([value.ladder.title, movement, equipment, form, rungs[0]?.title, stop], [title, title, [title], [title], title, [title]])
  }
})

test('the program reads answers from its input, passes over lines that begin with #, and does not wait for more', () => {
  const place = path.join(folder, 'piped')
  mkdirSync(path.join(place, 'ladders'), { recursive: true })
  writeFileSync(path.join(place, 'handbook.yaml'), HANDBOOK)
  const program = (input: string) => spawnSync(process.execPath, [path.join(REPOSITORY, 'src/command/bin.mjs'), 'start', 'ladder', 'wall-press'], { cwd: place, encoding: 'utf8', input })
  const empty = program('')
  assert.deepEqual([empty.status, first(empty.stderr)], [2, 'There is no answer to "Movement". Nothing was written.'])
  const { status, stdout } = program(`# as they are asked\n${WALL.join('\r\n')}\n`)
  assert.deepEqual([status, first(stdout)], [0, 'ladders/wall-press.md: 3 rungs'])
  assert.equal(program(WALL.join('\n')).status, 2)
})

test('where answers are to be piped in and none come, it gives up', async () => {
  const waiting = spawn(process.execPath, [path.join(REPOSITORY, 'src/command/bin.mjs'), 'start', 'ladder', 'never', '--workspace', club], { cwd: folder, stdio: ['pipe', 'ignore', 'ignore'] }) // its input stays open
  assert.equal(await new Promise((resolve) => waiting.on('exit', resolve)), 2)
})
