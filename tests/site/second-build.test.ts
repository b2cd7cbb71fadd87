import assert from 'node:assert/strict'
import { spawnSync } from 'node:child_process'
import { appendFileSync, cpSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { test, vi } from 'vitest'
import * as files from '../../src/site/ladder-files.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { toolDigest } from '../../src/site/tool-digest.ts'
import { REPOSITORY, run, scratch } from './demo.ts'

const folder = await scratch()

/** A club over an association of two ladders and a glossary; nothing of the large starter curriculum. */
function workspace(): { club: string; association: string } {
  const [club, association] = ['club', 'association'].map((name) => path.join(folder, name)) as [string, string]
  for (const place of [club, association]) for (const below of ['ladders', 'content']) mkdirSync(path.join(place, below), { recursive: true })
  writeFileSync(path.join(association, 'handbook.yaml'), 'title: Below\norganisation: Tarnwick Association\nedition: "1"\ncontact: nobody yet\n')
  for (const ladder of ['landing', 'front-plank']) cpSync(path.join(REPOSITORY, `ladders/${ladder}.md`), path.join(association, `ladders/${ladder}.md`))
  writeFileSync(path.join(association, 'content/glossary.md'), '---\ntitle: Glossary\nsummary: Words we use.\n---\n\nRung\n: One version of a movement.\n')
  writeFileSync(path.join(club, 'handbook.yaml'), 'title: Above\norganisation: Tarnwick Gym Club\nedition: "1"\ncontact: nobody yet\nextends: ../association\n')
  writeFileSync(path.join(club, 'ladders/landing.md'), '---\namends: landing\nbecause: Our hall has a low bench only.\nsessions_per_week: 1\n---\n')
  return { club, association }
}

const { club, association } = workspace()
const replace = (file: string, from: string, to: string): void => {
  const text = readFileSync(file, 'utf8')
  assert.ok(text.includes(from), `${file} holds ${from}`)
  writeFileSync(file, text.replace(from, to))
}

async function built(where: string, words: readonly string[] = [], workspace = club): Promise<void> {
  const { code, out } = await run(workspace, 'build', '--output', where, ...words)
  assert.equal(code, 0, out)
}

const bytesIn = async (where: string): Promise<Map<string, string>> => new Map((await filesBelow(where)).map((file) => [file, readFileSync(path.join(where, file)).toString('base64')]))

/** Holds a build that keeps what it can to one that makes everything anew. */
async function sameAsAnew(workspace: string): Promise<void> {
  await built(path.join(folder, 'kept'), [], workspace)
  await built(path.join(folder, 'anew'), ['--no-cache'], workspace)
  await sameFiles()
}

async function sameFiles(): Promise<void> {
  const [kept, anew] = [await bytesIn(path.join(folder, 'kept')), await bytesIn(path.join(folder, 'anew'))]
  assert.deepEqual([...kept.keys()], [...anew.keys()])
  for (const [file, bytes] of anew) assert.equal(kept.get(file), bytes, file)
}

const drawing = (wide: number): string => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10"><path d="M1 1h${wide}v2h-${wide}z"/></svg>\n`

/** Each edit follows the one before, so that the cache has seen all that came earlier. */
const edits: readonly { says: string; edit: () => void }[] = [
  { says: 'nothing', edit: () => undefined },
  { says: 'a ladder of the layer below, its glossary and an amendment', edit: () => (replace(path.join(association, 'ladders/landing.md'), 'drop_height_cm: 40', 'drop_height_cm: 41'), appendFileSync(path.join(association, 'content/glossary.md'), '\nEntry\n: What is shown first.\n'), replace(path.join(club, 'ladders/landing.md'), 'a low bench', 'two low benches')) },
  { says: 'handbook.yaml, and a ladder taken back to what it was', edit: () => (replace(path.join(club, 'handbook.yaml'), 'edition: "1"', 'edition: "2"\ncolours: { accent: "#204a87" }'), replace(path.join(association, 'ladders/landing.md'), 'drop_height_cm: 41', 'drop_height_cm: 40')) },
  { says: 'the ladders there are, and the page on safety', edit: () => (cpSync(path.join(REPOSITORY, 'ladders/grip-hang.md'), path.join(association, 'ladders/grip-hang.md')), writeFileSync(path.join(club, 'content/safety.md'), '---\ntitle: Keep safe\nsummary: When to stop.\n---\n\nStop when it hurts.\n')) },
  { says: 'a ladder that shows a picture now', edit: () => (replace(path.join(association, 'ladders/front-plank.md'), '\n## ', '\n![A mat](mat.svg)\n\n## '), writeFileSync(path.join(association, 'ladders/mat.svg'), drawing(6))) },
  { says: 'the picture alone, and a ladder less', edit: () => (writeFileSync(path.join(association, 'ladders/mat.svg'), drawing(7)), rmSync(path.join(association, 'ladders/grip-hang.md'))) },
]

process.env['RUNGBOOK_CACHE'] = path.join(folder, 'cache')

for (const { says, edit } of edits) {
  test(`after a change to ${says}, a build that keeps what it can writes the same bytes as one that makes everything anew`, { timeout: 120_000 }, async () => {
    edit()
    await sameAsAnew(club)
    assert.ok(readdirSync(path.join(folder, 'cache')).length > 2)
  })
}

test('a file that has not changed is taken over, not written again', { timeout: 120_000 }, async () => {
  const about = (): Map<string, number> => new Map(['front-plank/index.html', 'front-plank/index.html.br', 'landing/index.html'].map((file) => [file, statSync(path.join(folder, 'kept', file)).ino]))
  const before = about()
  replace(path.join(association, 'ladders/landing.md'), 'drop_height_cm: 40', 'drop_height_cm: 42')
  await built(path.join(folder, 'kept'))
  const after = about()
  assert.deepEqual([...before].filter(([file, inode]) => after.get(file) !== inode).map(([file]) => file), ['landing/index.html'])
})

test('only a ladder that changed is made again', { timeout: 120_000 }, async () => {
  const made = vi.spyOn(files, 'ladderFiles')
  replace(path.join(association, 'ladders/landing.md'), 'drop_height_cm: 42', 'drop_height_cm: 43')
  await built(path.join(folder, 'kept'))
  assert.deepEqual(made.mock.calls.map(([{ id }]) => id), ['landing'])
  made.mockClear()
  rmSync(path.join(folder, 'kept/front-plank/index.html'))
  await built(path.join(folder, 'kept'))
  assert.deepEqual(made.mock.calls.map(([{ id }]) => id), ['front-plank'])
  made.mockRestore()
})

test('a ladder is changed, and of another a page was taken away: both are made, and search finds all', { timeout: 120_000 }, async () => {
  replace(path.join(association, 'ladders/landing.md'), 'drop_height_cm: 43', 'drop_height_cm: 44')
  rmSync(path.join(folder, 'kept/front-plank/index.html'))
  await sameAsAnew(club)
})

test('build.json tells a deploy of one changed ladder from the rest: only its own pages and what lists them', { timeout: 120_000 }, async () => {
  const listed = async (): Promise<Map<string, string>> => new Map((JSON.parse(readFileSync(path.join(folder, 'kept/build.json'), 'utf8')) as { files: { file: string; sha256: string }[] }).files.map(({ file, sha256 }) => [file, sha256]))
  const before = await listed()
  replace(path.join(association, 'ladders/front-plank.md'), '- Push the floor far away.', '- Push the floor away.')
  await built(path.join(folder, 'kept'))
  const after = await listed()
  const changed = [...after].filter(([file, digest]) => before.get(file) !== digest).map(([file]) => file)
  const elsewhere = changed.filter((file) => !/front-plank|^(pagefind|data)\/|^offline|build\.json/.test(file))
  assert.ok(changed.some((file) => file.startsWith('front-plank/')))
  assert.deepEqual(elsewhere.filter((file) => file.startsWith('landing/')), [])
  assert.ok(changed.length < after.size / 2, `${changed.length} of ${after.size}`)
})

test('a language more, other words of the interface, and a language less are the bytes of a first build too', { timeout: 180_000 }, async () => {
  const place = path.join(folder, 'two-languages')
  mkdirSync(path.join(place, 'ladders'), { recursive: true })
  for (const ladder of ['landing.md', 'landing.es.md']) cpSync(path.join(REPOSITORY, 'ladders', ladder), path.join(place, 'ladders', ladder))
  const handbook = path.join(place, 'handbook.yaml')
  writeFileSync(handbook, 'title: Two\norganisation: Tarnwick Gym Club\nedition: "1"\ncontact: nobody yet\nlanguages: [en, es]\n')
  const spanish = path.join(place, 'words.es.yaml')
  writeFileSync(spanish, 'jump and landing: salto y caída\nbox: cajón\nmat: colchoneta\ntape: cinta\nstick: palo\n')
  await sameAsAnew(place)
  assert.ok(readFileSync(path.join(folder, 'kept/es/landing/index.html'), 'utf8').includes('lang="es"'))
  writeFileSync(path.join(place, 'words.en.yaml'), 'Stop when: Stop if\n')
  replace(spanish, 'palo', 'vara')
  await sameAsAnew(place)
  assert.match(readFileSync(path.join(folder, 'kept/landing/index.html'), 'utf8'), /Stop if/)
  assert.match(readFileSync(path.join(folder, 'kept/es/landing/index.html'), 'utf8'), /vara/)
  replace(handbook, 'languages: [en, es]', 'languages: [en]')
  for (const file of [spanish, path.join(place, 'ladders/landing.es.md')]) rmSync(file)
  await sameAsAnew(place)
})

test('in two languages as well, only a ladder that changed is made again, and that in both', { timeout: 180_000 }, async () => {
  const place = path.join(folder, 'both')
  mkdirSync(path.join(place, 'ladders'), { recursive: true })
  for (const ladder of ['landing.md', 'landing.es.md', 'front-plank.md', 'front-plank.es.md']) cpSync(path.join(REPOSITORY, 'ladders', ladder), path.join(place, 'ladders', ladder))
  writeFileSync(path.join(place, 'handbook.yaml'), 'title: Both\norganisation: Tarnwick Gym Club\nedition: "1"\ncontact: nobody yet\nlanguages: [en, es]\n')
  writeFileSync(path.join(place, 'words.es.yaml'), 'jump and landing: salto y caída\ntrunk hold on the front: sostén del tronco por delante\nbox: cajón\nmat: colchoneta\nknee pad: rodillera\nchalk: tiza\ntape: cinta\nstick: palo\ntape measure: cinta métrica\nwatch: reloj\n')
  const made = vi.spyOn(files, 'ladderFiles')
  await sameAsAnew(place)
  replace(path.join(place, 'ladders/front-plank.es.md'), '- Poner una almohadilla sobre una colchoneta y arrodillarse en ella con las dos espinillas apoyadas en el suelo.', '- Poner una almohadilla sobre una colchoneta y arrodillarse en ella con las dos espinillas apoyadas en el suelo ya.')
  made.mockClear()
  await built(path.join(folder, 'kept'), [], place)
  assert.deepEqual(made.mock.calls.map(([{ id }, , { speech }]) => `${speech.under}${id}`), ['front-plank', 'es/front-plank'])
  made.mockRestore()
  await sameAsAnew(place)
})

test('a tool that says one sentence otherwise takes over nothing that says it', { timeout: 180_000 }, async () => {
  const place = path.join(folder, 'tool')
  for (const part of ['src', 'package.json', 'eleventy.config.ts', 'tests/check']) cpSync(path.join(REPOSITORY, part), path.join(place, part), { recursive: true })
  symlinkSync(path.join(REPOSITORY, 'node_modules'), path.join(place, 'node_modules'))
  assert.equal(await toolDigest(path.join(place, 'src')), await toolDigest())
  replace(path.join(place, 'src/page/rung-page.ts'), 'This is the first rung: begin here.', 'This is the lowest rung: begin here.')
  assert.notEqual(await toolDigest(path.join(place, 'src')), await toolDigest())
  await built(path.join(folder, 'kept'))
  for (const [where, ...words] of [['kept'], ['anew', '--no-cache']]) {
    const { status, stderr } = spawnSync(process.execPath, [path.join(place, 'src/command/bin.mjs'), 'build', '--output', path.join(folder, where ?? ''), ...words], { cwd: club, encoding: 'utf8' })
    assert.equal(status, 0, stderr)
  }
  assert.match(readFileSync(path.join(folder, 'kept/landing/snap-down/index.html'), 'utf8'), /This is the lowest rung/)
  await sameFiles()
})
