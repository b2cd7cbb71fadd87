import assert from 'node:assert/strict'
import { mkdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { afterAll, beforeAll, test } from 'vitest'
import { HANDBOOK } from '../command/small.ts'
import { editorOn, folderOf, positionAfter, type Editor } from './client.ts'

type Where = { uri: string; range: { start: { line: number; character: number }; end: { line: number; character: number } } }
type Change = { range: Where['range']; newText: string }

/** A ladder with a picture character before what is looked for, so that columns are counted in UTF-16 units. */
const PRESS = `---
id: press-up
title: Press-up
movement: horizontal press
aim: floor
equipment: [bench]
standard: { sets: 3, reps: 12, sessions: 2 }
first_reps: 3
form: ["🧍 one line", chest to a fist above the floor]
rungs:
  - { id: bench-hands, title: Hands on a bench, load: { model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: 45 } }
  - { id: floor, title: "🧍 Hands on the floor", after: [bench-hands], load: { model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: 0 } }
stop: [sharp or spreading pain]
ask_first: [a shoulder operated on in the last year]
silence: [{ rule: every-rung-is-described, rung: bench-hands, because: written next week, until: 2099-01-01 }]
retired: [{ id: wall-hands, heir: bench-hands, because: nobody needed it }]
---

See [🧍 the bench](rung:press-up/bench-hands) and [safety](/safety/).

## Hands on a bench {#bench-hands}

### Cues
- Long neck.
`

const GLOSSARY = '---\ntitle: Glossary\nsummary: Words.\n---\n\nAim\n: The rung a ladder exists for.\n\nSee [it](rung:press-up/bench-hands).\n'
const SAFETY = '---\ntitle: Safety\nsummary: When to stop.\n---\n\nStop when it hurts.\n'
const AMENDMENT = `---
amends: press-up
because: our benches are low
rungs:
  - { id: floor, entry: { reps: 15 } }
  - { id: knuckles, title: On the knuckles, after: [floor], load: { model: skill } }
---

Ours. [below](rung:press-up/bench-hands)
`

const OURS = `${HANDBOOK}extends: ../lower layer\n`
const SPANISH = `---
translates: dip
rungs:
  - { id: bench-hands, title: Manos en un banco }
of: { title: 3f2a91bc, bench-hands: 3f2a91bc, bench-hands/cues: 3f2a91bc }
---

## Manos en un banco {#bench-hands}

### Qué decir {#cues}
- Cuello largo.
`

const below = folderOf({}, 'around')
const { folder, write } = { folder: path.join(below.folder, 'a club #1 & ü'), write: below.write }
const lower = (file: string): string => `lower layer/${file}`
const own = (file: string): string => `a club #1 & ü/${file}`
for (const [file, text] of Object.entries({
  [lower('handbook.yaml')]: HANDBOOK,
  [lower('ladders/press-up.md')]: PRESS,
  [own('handbook.yaml')]: OURS,
  [own('ladders/press-up-ours.md')]: AMENDMENT,
  [own('ladders/dip.md')]: PRESS.replaceAll('press-up', 'dip').replace('Press-up', 'Dip').replaceAll('\n', '\r\n'),
  [own('ladders/dip.es.md')]: SPANISH,
  [own('content/glossary.md')]: GLOSSARY.replace('press-up/', 'dip/'),
  [own('content/safety.md')]: SAFETY,
})) write(file, text)

const DIP = readFileSync(path.join(folder, 'ladders/dip.md'), 'utf8')
let editor: Editor
beforeAll(async () => {
  editor = await editorOn(folder)
  await editor.open('ladders/dip.md', DIP)
})
afterAll(async () => {
  assert.equal(await editor.end(), 0)
  assert.equal(editor.complaints(), '')
  assert.deepEqual(editor.log, [])
  below.remove()
})

const after = (letters: string, text = DIP) => positionAfter(text, letters)
/** Where something stands, as "file line:from-to", lines from 0. */
const said = ({ uri, range: { start, end } }: Where): string => `${path.relative(below.folder, new URL(uri).pathname.split('/').map(decodeURIComponent).join('/'))} ${start.line}:${start.character}-${end.character}`
const labels = (items: readonly { label: string }[]): string[] => items.map(({ label }) => label)

test('what is typed is checked before it is saved, and a finding that is gone is taken back', async () => {
  await editor.change('ladders/dip.md', DIP.replace('movement:', 'movemnt:'))
  const [typo] = await editor.findings('ladders/dip.md', (list) => list.length === 1)
  assert.equal(typo?.message, 'There is no key "movemnt" here. Did you mean movement?')
  assert.deepEqual(typo?.range, { start: { line: 3, character: 0 }, end: { line: 3, character: 7 } })
  assert.equal(typo?.severity, 1)
  await editor.change('ladders/dip.md', DIP)
  await editor.findings('ladders/dip.md', (list) => !list.some(({ code }) => code === 'keys-are-known'))
})

test('a remedy that is one edit is offered where its finding stands, and nowhere else', async () => {
  await editor.change('ladders/dip.md', DIP.replace('movement:', 'movemnt:'))
  await editor.findings('ladders/dip.md', (list) => list.some(({ code }) => code === 'keys-are-known'))
  const fixes = (line: number) => editor.send<{ title: string; edit: { changes: Record<string, Change[]> } }[]>('textDocument/codeAction', { textDocument: { uri: editor.uriOf('ladders/dip.md') }, range: { start: { line, character: 0 }, end: { line, character: 1 } }, context: { diagnostics: [] } })
  const [fix] = await fixes(3)
  assert.equal(fix?.title, 'Write "movement" in place of "movemnt"')
  assert.deepEqual(Object.values(fix?.edit.changes ?? {}), [[{ range: { start: { line: 3, character: 0 }, end: { line: 3, character: 7 } }, newText: 'movement' }]])
  assert.deepEqual(await fixes(9), [])
  await editor.change('ladders/dip.md', DIP)
})

test('letters typed after a picture, key by key, are taken where they stand', async () => {
  const start = after('[🧍 the bench](rung:dip/')
  await editor.type('ladders/dip.md', start, { ...start, character: start.character + 'bench-hands'.length }, 'x')
  const [dead] = await editor.findings('ladders/dip.md', (list) => list.some(({ code }) => code === 'links-resolve')).then((list) => list.filter(({ code }) => code === 'links-resolve'))
  assert.equal(dead?.message, 'The link "rung:dip/x" leads to no rung. Mend it or take it out.')
  await editor.type('ladders/dip.md', start, { ...start, character: start.character + 1 }, 'bench-hands')
  await editor.findings('ladders/dip.md', (list) => !list.some(({ code }) => code === 'links-resolve'))
})

test('keys, ids, movements, equipment, models and choices are offered where they may stand', async () => {
  const offered = async (letters: string, text = DIP) => {
    await editor.change('ladders/dip.md', text)
    const found = await editor.ask<{ label: string }[]>('completion', 'ladders/dip.md', after(letters, text))
    await editor.change('ladders/dip.md', DIP)
    return labels(found)
  }
  assert.deepEqual(await offered('aim: '), ['bench-hands', 'floor'])
  assert.deepEqual(await offered('after: ['), ['bench-hands', 'floor'])
  assert.deepEqual(await offered('movement: '), ['horizontal press'])
  assert.deepEqual(await offered('equipment: ['), ['bench'])
  assert.ok((await offered('model: ')).includes('lever-hold'))
  assert.deepEqual(await offered('facing: '), ['down', 'up'])
  assert.ok((await offered('hands: surface, ')).includes('lean_deg'))
  assert.ok(!(await offered('hands: surface, ', DIP.replace('hands: surface, ', 'hands: surface, , '))).includes('facing'), 'a key that is there is not offered again')
  assert.deepEqual(await offered('demand: [', DIP.replace('after: [bench-hands]', 'demand: [')), ['balance', 'one side', 'longer range', 'speed', 'grip'])
  assert.deepEqual(await offered('supervision: ', DIP.replace('first_reps: 3', 'supervision: ')), ['none', 'partner', 'coach', 'qualified coach'])
  assert.ok((await offered('{ rule: ')).includes('steps-are-climbable'))
  assert.ok((await offered('zz', DIP.replace('first_reps', 'zz'))).includes('sessions_per_week'))
})

test('links, headings and words of the glossary are offered in the body', async () => {
  const offered = async (written: string) => {
    const text = DIP.replace('- Long neck.', written)
    await editor.change('ladders/dip.md', text)
    const found = await editor.ask<{ label: string; textEdit: { newText: string } }[]>('completion', 'ladders/dip.md', after(written, text))
    await editor.change('ladders/dip.md', DIP)
    return found.map(({ textEdit }) => textEdit.newText)
  }
  assert.deepEqual(await offered('- [x](rung:'), ['dip', 'press-up'])
  assert.deepEqual(await offered('- [x](rung:press-up/'), ['bench-hands', 'floor', 'knuckles'])
  assert.ok((await offered('- [x](')).includes('/safety/'))
  assert.ok((await offered('### Fau')).some((text) => text.startsWith('Faults\n| seen | likely cause | say | if it stays |')))
  assert.deepEqual(await offered('## '), ['🧍 Hands on the floor {#floor}'])
  assert.deepEqual(await offered('- the ai'), ['aim'])
})

test('a rung shows its computed load and every line of where it comes from', async () => {
  const { contents, range } = await editor.ask<{ contents: { value: string }; range: Where['range'] }>('hover', 'ladders/dip.md', after('[🧍 the bench](rung:dip/bench'))
  assert.match(contents.value, /^\*\*Hands on a bench\*\* \(dip\/bench-hands\)\n\nforce on one working hand: \*\*\d+ % of body weight\*\*, from \d+ to \d+ % of body weight \(supported-body\)\n/)
  assert.match(contents.value, /F\/W = Σ mᵢ/)
  assert.deepEqual(range, { start: { line: 18, character: 28 }, end: { line: 18, character: 39 } }, 'the figure before it counts two')
  const heading = await editor.ask<{ contents: { value: string } }>('hover', 'ladders/dip.md', after('## Hands on'))
  assert.match(heading.contents.value, /^\*\*Hands on a bench\*\*/)
})

test('a key says what it is for and its span, a rule what it asks', async () => {
  const says = async (letters: string) => (await editor.ask<{ contents: { value: string } }>('hover', 'ladders/dip.md', after(letters))).contents.value
  assert.match(await says('hand_hei'), /^\*\*hand_height_cm\*\*: Height of the hands above the floor, from 0 to 250 cm\./)
  assert.match(await says('first_re'), /^\*\*first_reps\*\*: Fewest repetitions worth beginning a new rung with\.\n\nFrom 1 to 50\./)
  assert.match(await says('every-rung'), /^\*\*every-rung-is-described\*\*: /)
})

test('an id leads to where it is said to exist, in whichever layer', async () => {
  const leads = async (file: string, text: string, letters: string) => (await editor.ask<Where[]>('definition', file, positionAfter(text, letters))).map(said)
  await editor.open('ladders/press-up-ours.md', AMENDMENT)
  await editor.open('handbook.yaml', OURS)
  assert.deepEqual(await leads('ladders/press-up-ours.md', AMENDMENT, 'amends: pre'), ['lower layer/ladders/press-up.md 1:4-12'])
  assert.deepEqual(await leads('ladders/press-up-ours.md', AMENDMENT, '{ id: flo'), ['lower layer/ladders/press-up.md 11:10-15'])
  assert.deepEqual(await leads('ladders/press-up-ours.md', AMENDMENT, 'rung:press-up/ben'), ['lower layer/ladders/press-up.md 10:10-21'])
  assert.deepEqual(await leads('handbook.yaml', OURS, 'extends: ../low'), ['lower layer/handbook.yaml 0:0-0'])
  assert.deepEqual(await leads('ladders/dip.md', DIP, 'aim: f'), [`${own('ladders/dip.md')} 11:10-15`])
  assert.deepEqual(await leads('ladders/dip.md', DIP, '](/saf'), [`${own('content/safety.md')} 0:0-0`])
  assert.deepEqual(await leads('ladders/dip.md', DIP, 'title: D'), [])
})

test('a rung is renamed through every file: its own id, after, heirs, silences, headings, links and translations', async () => {
  const at = after('after: [ben')
  assert.deepEqual(await editor.ask('prepareRename', 'ladders/dip.md', at), { range: { start: { line: 11, character: 57 }, end: { line: 11, character: 68 } }, placeholder: 'bench-hands' })
  const { changes } = await editor.ask<{ changes: Record<string, Change[]> }>('rename', 'ladders/dip.md', at, { newName: 'low-bench' })
  const edits = Object.entries(changes).flatMap(([uri, list]) => list.map(({ range, newText }) => `${said({ uri, range })} ${newText}`))
  assert.deepEqual(edits.toSorted(), [
    `${own('content/glossary.md')} 8:18-29 low-bench`,
    `${own('ladders/dip.es.md')} 3:10-21 low-bench`,
    `${own('ladders/dip.es.md')} 4:23-34 low-bench`,
    `${own('ladders/dip.es.md')} 4:46-57 low-bench`,
    `${own('ladders/dip.es.md')} 7:23-34 low-bench`,
    `${own('ladders/dip.md')} 10:10-21 low-bench`,
    `${own('ladders/dip.md')} 11:57-68 low-bench`,
    `${own('ladders/dip.md')} 14:49-60 low-bench`,
    `${own('ladders/dip.md')} 15:34-45 low-bench`,
    `${own('ladders/dip.md')} 18:28-39 low-bench`,
    `${own('ladders/dip.md')} 20:22-33 low-bench`,
  ].toSorted())
})

test('a rename is refused in a layer that is not ours, to a name that is taken, and to what is no name', async () => {
  const refused = async (file: string, text: string, letters: string, newName: string) => editor.ask('rename', file, positionAfter(text, letters), { newName }).then(() => 'made', (error: Error) => error.message)
  assert.equal(await refused('ladders/press-up-ours.md', AMENDMENT, '{ id: flo', 'ground'), '"floor" is a rung of ../lower layer/ladders/press-up.md, a layer that is not ours to change.')
  assert.equal(await refused('ladders/dip.md', DIP, 'aim: f', 'bench-hands'), '"dip" has a rung "bench-hands" already, in ladders/dip.md. Choose another id.')
  assert.equal(await refused('ladders/dip.md', DIP, 'aim: f', 'The Floor'), '"The Floor" must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.')
  assert.equal(await refused('ladders/dip.md', DIP, 'id: d', 'dips'), '"dip" is the id of a ladder: its address and file names hang on it. Only rungs are renamed here.')
  assert.equal(await refused('ladders/dip.md', DIP, 'movement: h', 'pull'), 'There is no rung id here. Put the cursor on one.')
})

test('a new rung of an amendment is ours to rename', async () => {
  const { changes } = await editor.ask<{ changes: Record<string, Change[]> }>('rename', 'ladders/press-up-ours.md', positionAfter(AMENDMENT, '{ id: knu'), { newName: 'fists' })
  assert.equal(Object.values(changes).flat().length, 1)
})

test('while handbook.yaml is broken, it alone is found fault with, and ladders go on being helped', async () => {
  await editor.change('handbook.yaml', `${HANDBOOK}extends: [../low\n`)
  const found = await editor.findings('handbook.yaml', (list) => list.length > 0)
  assert.equal(found[0]?.message, 'A bracket or brace that was opened before this is not closed. Close it with ] or }.')
  await editor.findings('ladders/press-up-ours.md', (list) => !list.some(({ code }) => code === 'amendments-fit'))
  assert.ok(await editor.ask('hover', 'ladders/dip.md', after('aim: f')))
  await editor.change('handbook.yaml', OURS)
  await editor.findings('handbook.yaml', (list) => list.length === 0)
})

test('a link to a rung of a file that is half-typed is not called dead', async () => {
  await editor.change('ladders/dip.md', DIP.replace('aim: floor', 'aim: [flo'))
  await editor.findings('ladders/dip.md', (list) => list.some(({ code }) => code === 'front-matter-is-plain'))
  await editor.open('content/glossary.md', `${GLOSSARY.replace('press-up/', 'dip/')}\n[dead](rung:dip/nowhere)\n`)
  const found = await editor.findings('content/glossary.md', (list) => list.length > 0)
  assert.deepEqual(found.map(({ message }) => message), ['The link "rung:dip/nowhere" leads to no rung. Mend it or take it out.'])
  await editor.change('ladders/dip.md', DIP)
  await editor.close('content/glossary.md')
  await editor.findings('content/glossary.md', (list) => list.length === 0)
})

test('a file outside every workspace gets no answer, and is not read', async () => {
  mkdirSync(path.join(below.folder, 'elsewhere'), { recursive: true })
  assert.equal(await editor.ask('hover', '../elsewhere/secret.md', { line: 0, character: 0 }), null)
  assert.deepEqual(await editor.send('textDocument/codeAction', { textDocument: { uri: 'untitled:Untitled-1' }, range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, context: { diagnostics: [] } }), [])
  assert.equal(await editor.send('textDocument/hover', { textDocument: { uri: 'file://%ff%2f/x' }, position: { line: 0, character: 0 } }), null)
})
