import { lstat, mkdir, readdir, realpath, rename, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'

/** The file that says: this folder was made by us, and may be replaced. */
export const MARKER = '.rungbook-output'

/** Why a handbook may not be written to `out`, or undefined. It must be new, empty or of our own making, and hold nothing of the workspace. */
export async function unfitOutput(out: string, folders: readonly string[]): Promise<string | undefined> {
  const about = await lstat(out).catch(() => undefined)
  if (about?.isSymbolicLink()) return `"${out}" is a link. Name the folder itself.`
  if (about && !about.isDirectory()) return `"${out}" is a file, not a folder. Name another.`
  const parent = await realpath(path.dirname(out)).catch(() => undefined)
  const real = parent === undefined ? out : path.join(parent, path.basename(out))
  const holds = (inner: string) => inner === real || inner.startsWith(real.endsWith(path.sep) ? real : real + path.sep)
  if (folders.some(holds) || holds(os.homedir())) return `"${out}" holds the workspace or your home folder. Name a folder of its own, such as _site.`
  const sources = folders.flatMap((folder) => ['ladders', 'content'].map((under) => path.join(folder, under)))
  if (sources.some((source) => real === source || real.startsWith(source + path.sep))) return `"${out}" lies among the ladders or pages. Name a folder of its own, such as _site.`
  if (!about) return undefined
  const names = await readdir(out)
  return names.length === 0 || names.includes(MARKER) ? undefined : `"${out}" holds files that are not a handbook of ours. Name a new folder, or empty it.`
}

/**
 * Writes a handbook beside the old one and puts it in its place only when it is whole.
 *
 * Shape   the output folder and what fills a folder; the old handbook stays untouched when filling fails.
 */
export async function publish(out: string, fill: (folder: string) => Promise<void>): Promise<void> {
  const [next, last] = [`${out}.next`, `${out}.last`]
  await rm(next, { recursive: true, force: true })
  await mkdir(next, { recursive: true })
  try {
    await writeFile(path.join(next, MARKER), 'This folder is written by rungbook build, and replaced by it.\n')
    await fill(next)
  } catch (error) {
    await rm(next, { recursive: true, force: true })
    throw error
  }
  await rm(last, { recursive: true, force: true })
  if (await lstat(out).catch(() => undefined)) await rename(out, last)
  await rename(next, out)
  await rm(last, { recursive: true, force: true })
}
