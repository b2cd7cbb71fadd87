import assert from 'node:assert/strict'
import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, test } from 'vitest'
import { wholeEdition } from './faults.ts'
import { HANDBOOK, LADDER, write } from './place.ts'

const ROOT = path.resolve(import.meta.dirname, '../..')
const room = mkdtempSync(path.join(os.tmpdir(), 'rungbook-same-'))
afterAll(() => rmSync(room, { recursive: true, force: true }))

const starter = (name: string): string => readFileSync(path.join(ROOT, 'ladders', `${name}.md`), 'utf8')
const FILES: readonly (readonly [name: string, text: string])[] = [
  ['handbook.yaml', HANDBOOK],
  ['ladders/a.md', LADDER],
  ['ladders/İi/press-up.md', starter('press-up')],
  ['ladders/landing.md', starter('landing')],
  ['content/safety.md', '---\ntitle: Safety\nsummary: When to stop.\norder: 1\n---\n\nStop when it hurts.[^1]\n\n[^1]: Pain is a sign.\n'],
  ['content/how.md', '---\ntitle: How to read\nsummary: How to read a ladder.\norder: 1\n---\n\n```mermaid How to go on\nflowchart TB\na{"Form held?"} -->|"yes"| b["Move on"]\na -->|"no"| c["Hold"]\n```\n'],
]

/** Builds the same workspace in a folder, under the given circumstances, and gives the list of all that was written, digests included. */
async function built(folder: string, { env, umask = '022', order, words = [] }: { env: NodeJS.ProcessEnv; umask?: string; order: 'to' | 'fro'; words?: readonly string[] }): Promise<string> {
  mkdirSync(folder, { recursive: true })
  for (const [name, text] of order === 'to' ? FILES : FILES.toReversed()) write(folder, { [name]: text })
  const program = path.join(ROOT, 'src/command/bin.mjs')
  const code = await new Promise((resolve) => void spawn('sh', ['-c', 'umask "$1"; shift; exec "$@"', 'sh', umask, process.execPath, program, 'build', ...words], { cwd: folder, env: { ...process.env, ...env }, stdio: ['ignore', 'ignore', 'inherit'] }).once('close', resolve))
  assert.equal(code, 0)
  wholeEdition(path.join(folder, '_site'))
  return readFileSync(path.join(folder, '_site/build.json'), 'utf8')
}

test('in another folder, time zone, language, order of files, umask and year, with and without a cache, the bytes are the same', { timeout: 300_000 }, async () => {
  const fresh = (name: string): NodeJS.ProcessEnv => ({ XDG_CACHE_HOME: path.join(room, name), HOME: path.join(room, `${name}-home`) })
  const plain = await built(path.join(room, 'one'), { env: { TZ: 'UTC', LANG: 'C', LC_ALL: 'C', ...fresh('cache-one') }, order: 'to', words: ['--no-cache'] })
  const places = [
    { folder: 'two/ä b/İstanbul', env: { TZ: 'Pacific/Kiritimati', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8', NODE_OPTIONS: `--import ${path.join(import.meta.dirname, 'another-day.mjs')}`, ANOTHER_DAY: '2040-02-29T23:59:59Z' }, umask: '077', order: 'fro' as const },
    { folder: 'three', env: { TZ: 'America/St_Johns', LANG: 'de_DE.UTF-8', LC_ALL: '', NODE_OPTIONS: `--import ${path.join(import.meta.dirname, 'another-day.mjs')}`, ANOTHER_DAY: '1970-01-01T00:00:01Z' }, umask: '002', order: 'to' as const },
  ]
  for (const { folder, env, umask, order } of places) assert.equal(await built(path.join(room, folder), { env: { ...env, ...fresh('cache-other') }, umask, order }), plain, folder)
})
