import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { afterAll } from 'vitest'
import { main } from '../../src/command/main.ts'

/** What a run of the command line wrote, and how it ended. */
export type Run = { readonly code: number; readonly out: string; readonly note: string }

/** Runs the command line in this process, from a folder. */
export async function run(folder: string, ...words: string[]): Promise<Run> {
  let [out, note] = ['', '']
  const code = await main(words, {
    out: (text) => void (out += text),
    note: (text) => void (note += text),
    progress: () => undefined,
    ended: () => Promise.resolve(),
    colour: false,
    folder,
  })
  return { code, out, note }
}

/** A folder for this test file alone, gone when it ends. */
export async function scratch(): Promise<string> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'rungbook-test-'))
  afterAll(() => rm(folder, { recursive: true, force: true }))
  return folder
}

/** The repository, whatever folder the tests are started in. */
export const REPOSITORY = path.resolve(import.meta.dirname, '../..')
