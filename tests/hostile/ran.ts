import { spawn } from 'node:child_process'
import path from 'node:path'

/** The repository, whatever folder the tests are started in. */
const REPOSITORY = path.resolve(import.meta.dirname, '../..')

/** What a process of its own came to. `spent_s` is work on any core, start included; both are missing where it was aborted. */
export type Ran = { readonly code: number | null; readonly signal: NodeJS.Signals | null; readonly out: string; readonly note: string; readonly spent_s: number | undefined; readonly most_mb: number | undefined }

/** Nobody waits longer for a case than this. Units ms. */
const PATIENCE_MS = 30_000

/** What a process is given besides its words: variables, and another user where this one may do that. */
export type As = { readonly env?: NodeJS.ProcessEnv; readonly uid?: number }

/** Runs the real program in a fresh process. */
export function ran(folder: string, words: readonly string[], { env = {}, uid }: As = {}): Promise<Ran> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['--import', path.join(import.meta.dirname, 'tell-usage.mjs'), path.join(REPOSITORY, 'src/command/bin.mjs'), ...words], {
      cwd: folder,
      env: { ...process.env, ...env },
      ...(uid === undefined ? {} : { uid }),
      stdio: ['ignore', 'pipe', 'pipe', 'pipe'],
      timeout: PATIENCE_MS,
      killSignal: 'SIGKILL',
    })
    const said = ['', '', '', '']
    for (const at of [1, 2, 3] as const) child.stdio[at]?.on('data', (bytes: Buffer) => (said[at] += bytes.toString()))
    child.on('close', (code, signal) => {
      const usage = said[3] ? (JSON.parse(said[3]) as { spent_s: number; most_mb: number }) : undefined
      resolve({ code, signal, out: said[1] ?? '', note: said[2] ?? '', spent_s: usage?.spent_s, most_mb: usage?.most_mb })
    })
  })
}
