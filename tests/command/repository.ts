import assert from 'node:assert/strict'
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll } from 'vitest'

/** The sure way to the same repository everywhere: a name, a branch, a day, and nothing of the machine's own. */
const AS = ['-c', 'user.name=A Coach', '-c', 'user.email=coach@club.example', '-c', 'init.defaultBranch=main', '-c', 'commit.gpgsign=false', '-c', 'protocol.file.allow=always']
const ENV = { ...process.env, GIT_CONFIG_GLOBAL: os.devNull, GIT_CONFIG_SYSTEM: os.devNull, GIT_AUTHOR_DATE: '2026-11-25T12:00:00Z', GIT_COMMITTER_DATE: '2026-11-25T12:00:00Z' }

/** Runs git in a folder and gives what it wrote. */
export const git = (folder: string, ...words: string[]): string => execFileSync('git', [...AS, ...words], { cwd: folder, env: ENV, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] }).trim()

const root = mkdtempSync(path.join(os.tmpdir(), 'rungbook-test-'))
afterAll(() => rmSync(root, { recursive: true, force: true }))

/** A folder that is not in a repository, gone when the test file ends. */
export function folderNamed(name: string): string {
  const folder = path.join(root, name)
  mkdirSync(folder, { recursive: true })
  return folder
}

/** Writes files below a folder. */
export function write(folder: string, files: Readonly<Record<string, string | Uint8Array>>): void {
  for (const [name, body] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, name)), { recursive: true })
    writeFileSync(path.join(folder, name), body)
  }
}

/** A repository of one commit, with these files. */
export function repository(name: string, files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = folderNamed(name)
  git(folder, 'init', '--quiet')
  write(folder, files)
  commit(folder, 'first')
  return folder
}

/** Everything as it lies, as one commit. */
export function commit(folder: string, message: string): string {
  git(folder, 'add', '--all')
  git(folder, 'commit', '--quiet', '--message', message)
  return git(folder, 'rev-parse', 'HEAD')
}

/** The real program in a process of its own. */
export function program(folder: string, words: readonly string[], env: NodeJS.ProcessEnv = {}): { code: number | null; out: string; note: string } {
  const ran = spawnSync(process.execPath, [path.resolve(import.meta.dirname, '../../src/command/bin.mjs'), ...words], { cwd: folder, env: { ...process.env, ...env }, encoding: 'utf8' })
  assert.equal(ran.error, undefined)
  return { code: ran.status, out: ran.stdout, note: ran.stderr }
}
