import assert from 'node:assert/strict'
import { spawnSync } from 'node:child_process'
import { chmodSync, cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { publish, MARKER } from '../../src/site/publish.ts'
import { build, killBuilds, killSwaps, wholeEdition, workspaceOf } from './faults.ts'
import { everything, rooms, write } from './place.ts'
import { ran } from './ran.ts'

const room = rooms()
const noOld = { [`_site/${MARKER}`]: undefined, '_site/index.html': undefined }

for (const words of [['--link'], []]) {
  test(`killed at any moment${words.length > 0 ? ', with a link' : ''}, a build leaves one whole edition, and the next heals what is left`, async () => {
    const { kills, ended } = await killBuilds(1, 20_261_126, words)
    assert.equal(kills + ended, 1)
  })
}

for (const link of [true, false]) {
  test(`a process that only publishes${link ? ', with a link' : ''}, killed ten times, leaves one whole edition each time`, async () => {
    const { editions } = await killSwaps(10, 20_261_126, link)
    assert.ok(editions >= 10, `${editions} editions`) // each process published at least one before it was killed
  })
}

test('killed between the two renames, the old handbook is put back by the next build, even one that finds something', async () => {
  const { workspace } = room('between', { ...noOld, 'ladders/a.md': 'x' })
  write(workspace, { [`_site.last/${MARKER}`]: '', '_site.last/index.html': 'old' })
  assert.equal((await ran(workspace, ['build'])).code, 1)
  assert.equal(readFileSync(path.join(workspace, '_site/index.html'), 'utf8'), 'old')
})

test('of two builds at once both end well or one is told to wait, and what stands is whole', async () => {
  const { workspace } = room('two', noOld)
  workspaceOf(workspace, 1)
  const both = await Promise.all([build(workspace), build(workspace)])
  const codes = both.map(({ code }) => code).toSorted()
  assert.ok(codes[0] === 0 && (codes[1] === 0 || codes[1] === 2), codes.join())
  for (const { code, note } of both) if (code === 2) assert.equal(note, `The handbook was not written: another build is writing to "${workspace}/_site"; wait until it has ended. The old one stays as it was.\n`)
  assert.equal(wholeEdition(path.join(workspace, '_site')), '1')
  assert.deepEqual(readdirSync(workspace).filter((name) => name.startsWith('_site.')), [])
})

test('a second build is told to wait while the first is filling, and a lock of a killed one holds nobody up', async () => {
  const { workspace } = room('lock', noOld)
  const out = path.join(workspace, '_site')
  let second: unknown
  await publish(out, async (folder) => {
    write(folder, { 'index.html': 'first' })
    second = await publish(out, async () => assert.fail('two fill at once'))
  })
  assert.deepEqual(second, { missing: `another build is writing to "${out}"; wait until it has ended` })
  const gone = spawnSync(process.execPath, ['-e', '']).pid
  write(workspace, { '_site.lock': String(gone) })
  assert.equal(await publish(out, async (folder) => write(folder, { 'index.html': 'third' })), true)
  assert.equal(readFileSync(path.join(out, 'index.html'), 'utf8'), 'third')
})

test('a link is turned at one stroke, to and fro between two folders, and no other link is taken for ours', async () => {
  const { workspace } = room('link', noOld)
  const out = path.join(workspace, '_site')
  const says = async (words: string) => publish(out, async (folder) => write(folder, { 'index.html': words }), { link: true })
  for (const words of ['one', 'two', 'three']) {
    assert.equal(await says(words), true)
    assert.equal(readFileSync(path.join(out, 'index.html'), 'utf8'), words)
  }
  assert.deepEqual(readdirSync(workspace).filter((name) => name.startsWith('_site')), ['_site', '_site.a', '_site.b'])
  rmSync(out)
  mkdirSync(path.join(workspace, 'mine'))
  symlinkSync('mine', out)
  const { code, note } = await ran(workspace, ['build'])
  assert.equal(code, 2)
  assert.match(note, /is a link\. Name the folder itself, or a link that build --link has made\./)
})

test('where the output may not be written to, the build says so and the old handbook stays', async () => {
  const { workspace } = room('read-only', {})
  const place = path.join(workspace, 'published')
  mkdirSync(place)
  cpSync(path.join(workspace, '_site'), path.join(place, 'site'), { recursive: true })
  chmodSync(place, 0o555)
  const before = everything(place)
  const { code, note, out } = await ran(workspace, ['build', '--output', 'published/site', '--no-cache'], process.getuid?.() === 0 ? { uid: 65534 } : {})
  chmodSync(place, 0o755)
  assert.deepEqual([code, out, note], [2, '', 'The handbook was not written: the place may not be written to. The old one stays as it was.\n'])
  assert.deepEqual(everything(place), before)
})

/** A way to a file system of its own, in which nothing outside this process group sees the mount. */
const apart = [['unshare', '--mount'], ['unshare', '--user', '--map-root-user', '--mount']].find((words) => spawnSync(words[0] ?? '', [...words.slice(1), 'mount', '-t', 'tmpfs', 'none', '/mnt']).status === 0)

test(`on a full disk the build says so and the old handbook stays${apart ? '' : ' (NOT RUN: this machine lets nobody mount a small disk)'}`, (context) => {
  if (!apart) return context.skip('this machine lets nobody mount a small disk')
  const { workspace, room: around } = room('full', noOld)
  const disk = path.join(around, 'disk')
  mkdirSync(disk)
  const program = path.resolve(import.meta.dirname, '../../src/command/bin.mjs')
  // The old handbook fits, the new one beside it does not: it takes some three megabytes.
  const script = `mount -t tmpfs -o size=1m none "${disk}" && mkdir "${disk}/site" && echo old > "${disk}/site/index.html" && touch "${disk}/site/${MARKER}" && "${process.execPath}" "${program}" build --output "${disk}/site"; echo "ended with $?"; ls -A "${disk}"; cat "${disk}/site/index.html"`
  const { stdout, stderr } = spawnSync(apart[0] ?? '', [...apart.slice(1), 'sh', '-c', script], { cwd: workspace, encoding: 'utf8' })
  assert.equal(stderr, 'The handbook was not written: the disk is full. The old one stays as it was.\n')
  assert.equal(stdout, 'ended with 2\nsite\nold\n')
  return undefined
})

test('a workspace that is taken away while it is built ends in a handbook, a finding or a sentence, never in a mistake of ours', async () => {
  for (const after_ms of [200, 600, 1100]) {
    const { workspace, room: around } = room('vanished', noOld)
    workspaceOf(workspace, 1)
    const out = path.join(around, 'published')
    const running = build(workspace, ['--output', out])
    await new Promise((resolve) => setTimeout(resolve, after_ms))
    rmSync(path.join(workspace, 'ladders'), { recursive: true })
    rmSync(path.join(workspace, 'handbook.yaml'))
    const { code, note } = await running
    assert.ok(code === 0 || code === 1 || (code === 2 && note.startsWith('The handbook was not written: ')), `${code} ${note}`)
    if (existsSync(out)) assert.equal(wholeEdition(out), '1')
  }
})
