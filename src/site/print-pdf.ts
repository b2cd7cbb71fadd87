import { execFile } from 'node:child_process'
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { bookletAddress, bookletPdf, pocketAddress, pocketPdf, wallAddress, wallPdf } from '../page/cards-page.ts'
import { quietly } from './chromium.ts'
import { previewServer } from './preview-server.ts'
import type { SiteFile } from './site-file.ts'

/** How long one card may take, and how many are printed at once. Units ms. */
const PATIENCE_MS = 60_000
const AT_ONCE = Math.min(4, os.availableParallelism())

/** What is printed, and to which file. */
type Job = { readonly address: string; readonly name: string }

/** A wall card at A4, the pocket cards and the booklet of each ladder. */
const jobsOf = (ladders: readonly string[]): Job[] =>
  ladders.flatMap((ladder) => [
    { address: wallAddress(ladder), name: wallPdf(ladder) },
    { address: pocketAddress(ladder), name: pocketPdf(ladder) },
    { address: bookletAddress(ladder), name: bookletPdf(ladder) },
  ])

/**
 * The cards of some ladders as tagged PDFs, printed by a Chromium from files served on this machine for as long as it takes.
 * A PDF holds the time it was made and names of Chromium's own, so the same cards give other bytes in every build.
 *
 * Shape   the files of a handbook, ids of ladders and a Chromium to three files a ladder, in order.
 * Missing when a card is not printed, with what Chromium last said.
 */
export async function cardPdfs(files: readonly SiteFile[], ladders: readonly string[], chromium: string): Promise<Outcome<readonly SiteFile[]>> {
  const served = new Map(files.map(({ name, bytes }) => [name, bytes]))
  const { server, port } = await previewServer(() => served, 0)
  const folder = await mkdtemp(path.join(os.tmpdir(), 'rungbook-pdf-'))
  try {
    return await inTurn(jobsOf(ladders), (job, nth) => printed(job, `http://127.0.0.1:${port}`, chromium, path.join(folder, String(nth))))
  } finally {
    server.close()
    server.closeAllConnections()
    await rm(folder, { recursive: true, force: true, maxRetries: 3 })
  }
}

/** Does jobs a few at a time, and stops at the first that is not done. */
async function inTurn(jobs: readonly Job[], work: (job: Job, nth: number) => Promise<Outcome<SiteFile>>): Promise<Outcome<readonly SiteFile[]>> {
  const done: SiteFile[] = []
  const left = [...jobs.entries()]
  const failures: string[] = []
  const worker = async (): Promise<void> => {
    for (let next = left.shift(); next && failures.length === 0; next = left.shift()) {
      const outcome = await work(next[1], next[0])
      if (isMissing(outcome)) failures.push(outcome.missing)
      else done[next[0]] = outcome
    }
  }
  await Promise.all(Array.from({ length: AT_ONCE }, worker))
  return failures[0] === undefined ? done : missing(failures[0])
}

/** Prints one page with a Chromium of its own, whose profile is gone afterwards. */
async function printed({ address, name }: Job, root: string, chromium: string, profile: string): Promise<Outcome<SiteFile>> {
  const to = `${profile}.pdf`
  const words = ['--headless', ...quietly(), '--no-pdf-header-footer', '--export-tagged-pdf', `--user-data-dir=${profile}`, `--print-to-pdf=${to}`, root + address]
  const said = await new Promise<string>((resolve) => {
    execFile(chromium, words, { timeout: PATIENCE_MS, killSignal: 'SIGKILL' }, (error, _out, note) => resolve(error?.killed ? `it gave no answer in ${PATIENCE_MS / 1000} s` : note.trim().split('\n').at(-1) || 'it said nothing'))
  })
  const bytes = await readFile(to).catch(() => undefined)
  return bytes?.subarray(0, 5).toString() === '%PDF-' ? { name, bytes } : missing(`Chromium did not print ${name}: ${said}`)
}
