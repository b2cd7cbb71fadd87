import assert from 'node:assert/strict'
import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { HANDBOOK, LADDER, write } from './place.ts'

const PROGRAM = path.resolve(import.meta.dirname, '../../src/command/bin.mjs')

/** A source of chance that can be run again from its seed (mulberry32). */
export function chanceFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

/** The edition a published folder is, if every file in it is as its own list says and none is missing or more; fails otherwise. */
export function wholeEdition(folder: string): string {
  const { edition, files } = JSON.parse(readFileSync(path.join(folder, 'build.json'), 'utf8')) as { edition: string; files: readonly { file: string; sha256: string }[] }
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile())
  const there = entries.map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).replaceAll('\\', '/')).filter((file) => file !== 'build.json')
  assert.deepEqual(there.toSorted(), files.map(({ file }) => file).toSorted())
  for (const { file, sha256 } of files) assert.equal(createHash('sha256').update(readFileSync(path.join(folder, file))).digest('hex'), sha256, file)
  assert.match(readFileSync(path.join(folder, 'index.html'), 'utf8'), new RegExp(`edition ${edition}\\b`))
  return edition
}

/** A workspace of one ladder, in the given edition. */
export function workspaceOf(folder: string, edition: number): void {
  write(folder, { 'handbook.yaml': HANDBOOK.replace('"1"', `"${edition}"`), 'ladders/a.md': LADDER })
}

/** One build in a process of its own, killed after a while where one is given. Its own group, so that nothing it started lives on. */
export function build(folder: string, words: readonly string[] = [], killed_after_ms?: number): Promise<{ code: number | null; out: string; note: string; took_ms: number }> {
  return new Promise((resolve) => {
    const began = performance.now()
    const child = spawn(process.execPath, [PROGRAM, 'build', ...words], { cwd: folder, detached: true, stdio: ['ignore', 'pipe', 'pipe'] })
    let [out, note] = ['', '']
    child.stdout.on('data', (bytes: Buffer) => (out += bytes.toString()))
    child.stderr.on('data', (bytes: Buffer) => (note += bytes.toString()))
    const timer = killed_after_ms === undefined ? undefined : setTimeout(() => child.pid !== undefined && child.exitCode === null && process.kill(-child.pid, 'SIGKILL'), killed_after_ms)
    child.on('close', (code) => {
      clearTimeout(timer)
      resolve({ code, out, note, took_ms: performance.now() - began })
    })
  })
}

/** What came of killing builds: how many were killed, ended before, published, and left no handbook until the next. */
export type Survived = { kills: number; ended: number; published: number; gaps: number }

/**
 * Kills builds at moments chosen by chance, each of a new edition, and looks after each: what is published is one whole edition, this or the one before.
 * Without a link there is a moment between two renames in which nothing is; the next build must heal it.
 */
export async function killBuilds(times: number, seed: number, words: readonly string[], told: (line: string) => void = () => undefined): Promise<Survived> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'rungbook-faults-'))
  const out = path.join(folder, '_site')
  const chance = chanceFrom(seed)
  const counted: Survived = { kills: 0, ended: 0, published: 0, gaps: 0 }
  try {
    workspaceOf(folder, 0)
    const first = await build(folder, words)
    assert.equal(first.code, 0, first.note)
    let stands = 0
    let longest_ms = first.took_ms
    for (let edition = 1; edition <= times; edition += 1) {
      workspaceOf(folder, edition)
      // Half of the kills fall on the last third, where files are written and swapped.
      const at_ms = longest_ms * (chance() < 0.5 ? chance() : 0.65 + 0.4 * chance())
      const { code, took_ms } = await build(folder, words, at_ms)
      if (code === null) counted.kills += 1
      else counted.ended += 1
      longest_ms = code === null ? longest_ms * 1.05 : 0.5 * longest_ms + 0.5 * took_ms // about as long as a build takes just now
      if (!existsSync(out)) {
        counted.gaps += 1
        assert.ok(!words.includes('--link'), 'a link is never away')
        assert.equal(wholeEdition(`${out}.last`), String(stands))
        continue
      }
      const is = wholeEdition(out)
      assert.ok(is === String(stands) || is === String(edition), `edition ${is} after ${stands} and ${edition}`)
      if (is === String(edition)) counted.published += 1
      stands = Number(is)
      told(`${edition} of ${times}: killed after ${Math.round(at_ms)} ms, edition ${is} stands whole`)
    }
    workspaceOf(folder, times + 1)
    const last = await build(folder, words)
    assert.equal(last.code, 0, last.note)
    assert.equal(wholeEdition(out), String(times + 1))
    const left = readdirSync(folder).filter((name) => /^_site\.(next|last|lock|turn)$/.test(name))
    assert.deepEqual(left, [], 'the next build clears away what the killed ones left')
    return counted
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}


/** The edition of which all twenty pages of a small handbook are; fails where they are not all there, or of several. */
function smallEdition(folder: string): number {
  const said = new Set(Array.from({ length: 20 }, (_, page) => readFileSync(path.join(folder, `pages/${page}.html`), 'utf8')))
  assert.equal(said.size, 1, [...said].join())
  return Number(/^edition (\d+)\n$/.exec([...said][0] ?? '')?.[1])
}

/** Kills a process that does nothing but publish, so that most kills fall between writing and swapping. Counts how often nothing stood until the next. */
export async function killSwaps(times: number, seed: number, link: boolean): Promise<{ kills: number; gaps: number; editions: number }> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'rungbook-swaps-'))
  const out = path.join(folder, 'site')
  const chance = chanceFrom(seed)
  let [gaps, stands] = [0, 0]
  try {
    for (let kill = 0; kill < times; kill += 1) {
      const child = spawn(process.execPath, ['--import', 'tsx', path.join(import.meta.dirname, 'publish-forever.ts'), out, String(stands + 1), link ? 'link' : 'folder'], { stdio: ['ignore', 'pipe', 'inherit'] })
      await new Promise((resolve) => child.stdout.once('data', resolve))
      await new Promise((resolve) => setTimeout(resolve, 15 + 120 * chance()))
      child.kill('SIGKILL')
      await new Promise((resolve) => child.once('close', resolve))
      if (existsSync(path.join(out, 'pages'))) stands = Math.max(smallEdition(out), stands)
      else if (stands > 0) {
        gaps += 1
        assert.ok(!link, 'a link is never away')
        stands = Math.max(smallEdition(`${out}.last`), stands)
      }
    }
    return { kills: times, gaps, editions: stands }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
