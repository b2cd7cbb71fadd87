import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { withSeal } from '../../src/site/write-words.ts'
import { FULL, FULL_ES, TWO } from '../read/spanish.ts'
import { edited } from '../read/said.ts'
import { run } from '../site/demo.ts'
import { folderNamed, repository, write } from './repository.ts'

const PAGE = '---\ntitle: Safety first\nsummary: When you should stop at once.\n---\n\nFirst of all, stop.\n\n## Stepping back\n\n- Go down one rung.\n'

function workspace(name: string, files: Readonly<Record<string, string>> = {}): string {
  const folder = folderNamed(name)
  write(folder, { 'handbook.yaml': TWO, 'ladders/arms/balance.md': FULL, 'content/safety.md': PAGE, ...files })
  return folder
}

const textOf = (folder: string, file: string): string => readFileSync(path.join(folder, file), 'utf8')

test('what another language lacks is listed, and the exit says so', async () => {
  const folder = workspace('listed', { 'ladders/arms/balance.es.md': edited(FULL_ES, 'stop: [un tobillo que cede]\n', '') })
  const { code, out } = await run(folder, 'translate')
  assert.equal(code, 1)
  assert.match(out, /^es: 0 of 2 ladders and pages say all that the original says\n {2}balance {2}title \(unsealed\), intro \(unsealed\), form \(unsealed\), stop \(missing, safety\), ask_first \(unsealed, safety\), wall \(unsealed\)/)
  assert.match(out, /\n {2}safety {2}not begun\n {2}words\.es\.yaml {2}balance, wall\n$/)
  assert.deepEqual(await run(folder, 'translate', 'es'), { code, out, note: '' })
})

test('a file to begin from holds the original’s words beside the original, and none is written over', async () => {
  const folder = workspace('begun')
  assert.deepEqual(await run(folder, 'translate', 'es', 'balance'), { code: 0, out: 'ladders/arms/balance.es.md: write over the words in it, then: rungbook translate es balance --seal\n', note: '' })
  const text = textOf(folder, 'ladders/arms/balance.es.md')
  assert.match(text, /^---\ntranslates: balance\ntitle: Standing on one leg\nform:\n {2}- belt level\nstop:\n/)
  assert.match(text, /\n## Free \{#free\}\n\nA rung without help\.\n\n### Set up \{#set-up\}\n- Bare feet\.\n/)
  assert.match(text, /\n### Faults \{#faults\}\n\| seen \| likely cause \| say \| if it stays \|\n\|---\|---\|---\|---\|\n\| Arms wave \| eyes wander \| Look at one spot \| Back to the wall \|\n$/)
  assert.doesNotMatch(text, /^of:/m)
  const again = await run(folder, 'translate', 'es', 'balance')
  assert.equal(again.code, 2)
  assert.match(again.note, /^ladders\/arms\/balance\.es\.md is there already, and is left as it is\.\n/)
  assert.equal(textOf(folder, 'ladders/arms/balance.es.md'), text)
  await run(folder, 'translate', 'es', 'safety')
  assert.equal(textOf(folder, 'content/safety.es.md'), '---\ntranslates: safety\ntitle: Safety first\nsummary: When you should stop at once.\n---\n\nFirst of all, stop.\n\n## Stepping back {#stepping-back}\n\n- Go down one rung.\n')
  await run(folder, 'translate', 'es', 'words')
  assert.match(textOf(folder, 'words.es.yaml'), /\n# "balance": \n# "wall": \n# "Handbook": \n$/)
})

test('what still stands in the original’s words is not sealed', async () => {
  const folder = workspace('untouched')
  await run(folder, 'translate', 'es', 'safety')
  const { code, note } = await run(folder, 'translate', 'es', 'safety', '--seal')
  assert.equal(code, 1)
  assert.equal(note, [
    'content/safety.es.md: summary is not sealed: "When you should stop at once." is still in the original’s words\n',
    'content/safety.es.md: intro is not sealed: "First of all, stop." is still in the original’s words\n',
    'content/safety.es.md: stepping-back is not sealed: "- Go down one rung." is still in the original’s words\n',
  ].join(''))
  const short = workspace('short', { 'ladders/arms/balance.es.md': edited(FULL_ES, '[despeja el suelo, quítate los calcetines sueltos]', '[despeja el suelo]') })
  assert.equal((await run(short, 'translate', 'es', '--seal')).note, 'ladders/arms/balance.es.md: free is not sealed: it has in cautions 1 entry, the original 2\n')
})

test('a seal writes the digests of what stands now, and changes nothing else', async () => {
  const folder = workspace('sealed', { 'ladders/arms/balance.es.md': FULL_ES.replaceAll('\n', '\r\n') })
  assert.deepEqual(await run(folder, 'translate', 'es', '--seal'), { code: 0, out: 'ladders/arms/balance.es.md: 13 parts sealed\n', note: '' })
  const text = textOf(folder, 'ladders/arms/balance.es.md')
  assert.equal(text.replace(/^of:\r\n( {2}.*\r\n)+/m, ''), FULL_ES.replaceAll('\n', '\r\n'))
  assert.deepEqual(await run(folder, 'translate', 'es', '--seal'), { code: 0, out: '', note: '' })
  assert.doesNotMatch((await run(folder, 'translate', 'es')).out, /balance {2}/)
  write(folder, { 'ladders/arms/balance.md': edited(FULL, 'eyes wander', 'the eyes wander') })
  assert.match((await run(folder, 'translate', 'es')).out, /\n {2}balance {2}free\/faults \(stale\)\n/)
  assert.deepEqual(await run(folder, 'translate', 'es', 'balance', '--seal'), { code: 0, out: 'ladders/arms/balance.es.md: 13 parts sealed\n', note: '' })
  assert.equal(textOf(folder, 'ladders/arms/balance.es.md').split('\n').length, text.split('\n').length)
})

test('a block of digests is written where it stood, between other keys', () => {
  const text = '---\ntranslates: a\nof:\n  title: "1"\n  intro: "2"\ntitle: A\n---\n\nof: x\n'
  assert.equal(withSeal(text, new Map([['title', 'f'], ['rung:title', 'e']])), '---\ntranslates: a\nof:\n  title: "f"\n  rung:title: "e"\ntitle: A\n---\n\nof: x\n')
})

test('a layer begins with what it changed, and seals its own files alone', async () => {
  const folder = workspace('layered', { 'ladders/arms/balance.es.md': FULL_ES, 'club/handbook.yaml': `${TWO.replace('A club', 'A union')}extends: ..\n`, 'club/ladders/balance.md': '---\namends: balance\nbecause: We train on grass.\nstop: [a cramp]\n---\n' })
  await run(folder, 'translate', 'es', '--seal')
  const below = textOf(folder, 'ladders/arms/balance.es.md')
  const club = path.join(folder, 'club')
  await run(club, 'translate', 'es', 'balance')
  assert.equal(textOf(club, 'ladders/balance.es.md'), '---\ntranslates: balance\nbecause: We train on grass.\nstop:\n  - an ankle that gives way\n  - a cramp\n---\n')
  write(club, { 'ladders/balance.es.md': '---\ntranslates: balance\nbecause: Entrenamos en hierba.\nstop: [un tobillo que cede, un calambre]\n---\n' })
  assert.deepEqual(await run(club, 'translate', 'es', '--seal'), { code: 0, out: 'ladders/balance.es.md: 2 parts sealed\n', note: '' })
  assert.equal(textOf(folder, 'ladders/arms/balance.es.md'), below)
  assert.equal((await run(club, 'translate', 'es', 'balance')).out, 'Nothing of "balance" is left to translate into es.\n')
})

test('a review reads translations and lists of words as they were at a commit, also of a workspace within a repository', async () => {
  const files = { 'handbook.yaml': TWO, 'ladders/balance.md': FULL, 'ladders/balance.es.md': FULL_ES, 'words.es.yaml': 'wall: pared\n' }
  for (const inside of ['', 'club/']) {
    const folder = repository(`reviewed-${inside.replace('/', '')}`, Object.fromEntries(Object.entries(files).map(([file, text]) => [inside + file, text])))
    const workspace = path.join(folder, inside)
    assert.equal((await run(workspace, 'review', 'HEAD')).out, '')
    write(workspace, { 'words.es.yaml': 'wall: muro\n', 'ladders/balance.es.md': edited(FULL_ES, 'Dedos quietos', 'Dedos tranquilos') })
    const { out } = await run(workspace, 'review', 'HEAD')
    assert.match(out, /handbook {2}translation said otherwise: es wall, pared → muro\n/)
    assert.match(out, /balance {2}translation said otherwise: es free\/cues, Dedos quietos\. → Dedos tranquilos\.\n/)
  }
})

test('wrong usage is told apart', async () => {
  const folder = workspace('misused')
  const wrong = async (...words: string[]) => {
    const { code, note } = await run(folder, 'translate', ...words)
    assert.equal(code, 2)
    return note.split('\n')[0]
  }
  assert.equal(await wrong('fr'), '"fr" is not a language to translate into. handbook.yaml lists: es.')
  assert.equal(await wrong('es', 'balanse'), 'There is no ladder or page "balanse" here that can be read. Did you mean balance?')
  assert.equal(await wrong('es', 'balance', '--seal'), '"balance" is not translated into es in this workspace. Begin with: rungbook translate es balance')
  assert.equal(await wrong('es', 'a', 'b'), 'Name one language, and at most one ladder or page.')
  assert.equal(await wrong('--seal'), 'Name the language that is sealed.')
  write(folder, { 'handbook.yaml': TWO.replace('languages: [en, es]\n', '') })
  assert.equal(await wrong('es'), '"es" is not a language to translate into. Add it to handbook.yaml: languages: [en, es].')
  assert.equal((await run(folder, 'translate')).out, 'This handbook has one language. Add another to languages in handbook.yaml.\n')
})
