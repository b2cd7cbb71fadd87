import assert from 'node:assert/strict'
import { spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { filesBelow } from '../../src/site/manifest.ts'
import { REPOSITORY, run, scratch } from './demo.ts'

const folder = await scratch()

/** A small workspace of its own, with one ladder of the starter curriculum. */
function workspace(name: string, change: (ladder: string) => string | Uint8Array = (ladder) => ladder): string {
  const place = path.join(folder, name)
  mkdirSync(path.join(place, 'ladders'), { recursive: true })
  writeFileSync(path.join(place, 'handbook.yaml'), 'title: A small handbook\norganisation: Tarnwick Gym Club\nedition: "1"\ncontact: nobody yet\n')
  writeFileSync(path.join(place, 'ladders/landing.md'), change(readFileSync(path.join(REPOSITORY, 'ladders/landing.md'), 'utf8')))
  return place
}

const contents = async (place: string) => Promise.all((await filesBelow(place)).map(async (file) => [file, readFileSync(path.join(place, file)).toString('base64')]))

test('two builds of one input give the same bytes, in any folder', async () => {
  const one = workspace('same-one')
  const other = workspace('same-other')
  assert.equal((await run(one, 'build')).code, 0)
  assert.equal((await run(folder, 'build', '--workspace', other, '--output', 'elsewhere')).code, 0)
  assert.deepEqual(await contents(path.join(one, '_site')), await contents(path.join(folder, 'elsewhere')))
})

test('a bad ladder stops the build with its line, and the old handbook stays whole', async () => {
  const place = workspace('bad')
  assert.equal((await run(place, 'build')).code, 0)
  const before = await contents(path.join(place, '_site'))
  writeFileSync(path.join(place, 'ladders/landing.md'), readFileSync(path.join(place, 'ladders/landing.md'), 'utf8').replace(/drop_height_cm: 40/, 'drop_height_cm: forty'))
  const { code, out } = await run(place, 'build')
  assert.equal(code, 1)
  assert.match(out, /ladders\/landing\.md:\d+:\d+ {2}drop_height_cm must be a number from 0 to 150 cm\. {2}\(values-fit\)/)
  assert.deepEqual(await contents(path.join(place, '_site')), before)
  assert.equal(existsSync(path.join(place, '_site.next')), false)
})

const broken: [name: string, text: string | Uint8Array, says: RegExp][] = [
  ['not UTF-8', Uint8Array.of(0x2d, 0x2d, 0x2d, 0x0a, 0xff, 0xfe, 0x0a), /landing\.md:2:1 {2}The file is not UTF-8 text\. Save it again as UTF-8\./],
  ['empty', '', /landing\.md:1:1 {2}The file is empty\. Write in it, or delete it\./],
  ['binary', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 1), /landing\.md:1:1 {2}The file is not UTF-8 text\./],
  ['without front matter', '# A ladder\n', /landing\.md:1:1 {2}The file has no front matter\. Begin it with a line of three hyphens/],
  ['with a number where words belong', '---\nid: landing\ntitle: 7\n---\n', /landing\.md:3:1 {2}title must be words on one line/],
]

for (const [name, text, says] of broken) {
  test(`a ladder that is ${name} is a finding with its place and remedy, and nothing is written`, async () => {
    const place = workspace(`broken ${name}`, () => text)
    const { code, out, note } = await run(place, 'build')
    assert.equal(code, 1)
    assert.match(out, says)
    assert.equal(note, '')
    assert.doesNotMatch(out, /\n\s+at /)
    assert.equal(existsSync(path.join(place, '_site')), false)
  })
}

test('two ladders of one id are a finding that names the other', async () => {
  const place = workspace('twins')
  cpSync(path.join(place, 'ladders/landing.md'), path.join(place, 'ladders/second.md'))
  const { code, out } = await run(place, 'check')
  assert.equal(code, 1)
  assert.match(out, /ladders\/second\.md:2:1 {2}The ladder "landing" is already there, in ladders\/landing\.md:2\./)
})

test('the output may not be the workspace, its sources, a link or a foreign folder', async () => {
  const place = workspace('outputs')
  mkdirSync(path.join(folder, 'foreign'))
  writeFileSync(path.join(folder, 'foreign/diary.txt'), 'mine')
  symlinkSync(path.join(folder, 'foreign'), path.join(folder, 'link'))
  const refused = async (output: string): Promise<string> => {
    const { code, note } = await run(place, 'build', '--output', output)
    assert.equal(code, 2, output)
    return note
  }
  assert.match(await refused('.'), /holds the workspace or your home folder/)
  assert.match(await refused('..'), /holds the workspace or your home folder/)
  assert.match(await refused('/'), /holds the workspace or your home folder/)
  assert.match(await refused('ladders'), /lies among the ladders or pages/)
  assert.match(await refused('../link'), /is a link/)
  assert.match(await refused('../foreign'), /holds files that are not a handbook of ours/)
  assert.equal(readFileSync(path.join(folder, 'foreign/diary.txt'), 'utf8'), 'mine')
})

test('the program itself runs from another folder, and its exit codes are those it promises', () => {
  const program = (...words: string[]) => spawnSync(process.execPath, [path.join(REPOSITORY, 'src/command/bin.mjs'), ...words], { cwd: folder, encoding: 'utf8' })
  const fine = program('check', '--workspace', path.join(REPOSITORY, 'site-demo'))
  assert.deepEqual([fine.status, fine.stdout, fine.stderr], [0, 'nothing to put right\n', ''])
  assert.equal(program('check', '--workspace', 'nowhere').status, 1)
  const mistyped = program('chekc')
  assert.deepEqual([mistyped.status, mistyped.stdout, mistyped.stderr], [2, '', 'There is no verb "chekc". Did you mean check?\n'])
  assert.equal(program('check', '--formt', 'json').status, 2)
})

test('a build lists every file it wrote with its digest', async () => {
  const place = workspace('manifest')
  await run(place, 'build')
  const { files } = JSON.parse(readFileSync(path.join(place, '_site/build.json'), 'utf8')) as { files: { file: string }[] }
  assert.deepEqual(files.map(({ file }) => file), (await filesBelow(path.join(place, '_site'))).filter((file) => file !== 'build.json'))
})
