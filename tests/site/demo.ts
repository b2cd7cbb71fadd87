import { existsSync } from 'node:fs'
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { afterAll } from 'vitest'
import { main } from '../../src/command/main.ts'
import type { Console } from '../../src/command/verb.ts'
import { demoPlace } from './demo-place.ts'

/** What a run of the command line wrote, and how it ended. */
export type Run = { readonly code: number; readonly out: string; readonly note: string }

/** Runs the command line in this process, from a folder. */
export const run = (folder: string, ...words: string[]): Promise<Run> => runAnswered(folder, words)

/** The same with somebody, or something, that answers. */
export async function runAnswered(folder: string, words: readonly string[], asked?: Console['asked']): Promise<Run> {
  let [out, note] = ['', '']
  const code = await main(words, {
    out: (text) => void (out += text),
    note: (text) => void (note += text),
    progress: () => undefined,
    ended: () => Promise.resolve(),
    colour: false,
    folder,
    ...(asked ? { asked } : {}),
  })
  return { code, out, note }
}

/** A folder for this test file alone, gone when it ends. */
export async function scratch(): Promise<string> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'rungbook-test-'))
  afterAll(() => rm(folder, { recursive: true, force: true }))
  return folder
}

/**
 * The demo handbook as a build writes it, made once in a run of the tests by whichever file asks first; nobody may write in it.
 * Returns the folder.
 */
export async function builtDemo(): Promise<string> {
  const place = demoPlace(process.ppid)
  const [site, done, failed] = ['site', 'done', 'failed'].map((name) => path.join(place, name)) as [string, string, string]
  const first = await mkdir(place).then(() => true, () => false)
  if (first) {
    const { code, out, note } = await run(REPOSITORY, 'build', '--workspace', 'site-demo', '--output', site)
    await writeFile(code === 0 ? done : failed, out + note)
  }
  while (!existsSync(done)) {
    if (existsSync(failed)) throw new Error(`the demo cannot be built: ${await readFile(failed, 'utf8')}`)
    await new Promise((resolve) => setTimeout(resolve, 100))
  }
  return site
}

/** The repository, whatever folder the tests are started in. */
export const REPOSITORY = path.resolve(import.meta.dirname, '../..')
