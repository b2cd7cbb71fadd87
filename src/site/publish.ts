import { existsSync, lstatSync, readdirSync, rmdirSync, rmSync, unlinkSync } from 'node:fs'
import { lstat, mkdir, readdir, readlink, realpath, rename, rm, symlink, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { missing, type Outcome } from '../quantity/outcome.ts'
import { alone } from './lock.ts'

/** The file that says: this folder was made by us, and may be replaced. */
export const MARKER = '.rungbook-output'

/** Fills a folder; `before` is the handbook that stands until then, if there is one. */
type Fill = (folder: string, before: string | undefined) => Promise<void>

/** Why a handbook may not be written to `out`, or undefined. It must be new, empty or of our own making, and hold nothing of the workspace. */
export async function unfitOutput(out: string, folders: readonly string[]): Promise<string | undefined> {
  const about = await lstat(out).catch(() => undefined)
  const linked = about?.isSymbolicLink() === true
  if (linked && (await ownTarget(out)) === undefined) return `"${out}" is a link. Name the folder itself, or a link that build --link has made.`
  if (about && !linked && !about.isDirectory()) return `"${out}" is a file, not a folder. Name another.`
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

/** The two folders a link of ours leads to in turn, beside it. */
const sides = (out: string): readonly [string, string] => [`${out}.a`, `${out}.b`]

/** The folder that a link of our own making leads to; undefined for any other link, and where there is none. */
async function ownTarget(out: string): Promise<string | undefined> {
  const name = await readlink(out).catch(() => undefined)
  return name === undefined ? undefined : sides(out).find((side) => path.basename(side) === name && existsSync(path.join(side, MARKER)))
}

/** Puts the old handbook back where a build was killed after it had taken it away and before the new one stood there. */
export async function healed(out: string): Promise<void> {
  if (!(await lstat(out).catch(() => undefined)) && existsSync(path.join(`${out}.last`, MARKER))) await rename(`${out}.last`, out)
}

/**
 * Writes a handbook beside the old one and puts it in its place only when it is whole.
 *
 * Shape   the output folder and what fills a folder; the old handbook stays untouched when filling fails. With `link`, or where it is one already, the output
 *         is a link that is turned to the new folder at one stroke, so that a server never misses a file; the folder before stays until the next build.
 * Missing when another build is writing there.
 */
export async function publish(out: string, fill: Fill, { link = false }: { link?: boolean } = {}): Promise<Outcome<true>> {
  await mkdir(path.dirname(out), { recursive: true })
  const done = await alone(`${out}.lock`, async (): Promise<true> => {
    await healed(out)
    const target = await ownTarget(out)
    const standing = target ?? (existsSync(path.join(out, MARKER)) ? out : undefined)
    const turned = link || target !== undefined
    const next = turned ? (sides(out).find((side) => side !== target) ?? `${out}.b`) : `${out}.next`
    await filled(next, () => fill(next, standing))
    await (turned ? turn(out, next) : swap(out, next))
    return true
  })
  return done ?? missing(`another build is writing to "${out}"; wait until it has ended`)
}

/** Takes away whatever has a name, if anything has: a folder in half the time of what does so whatever stands in the way. That is asked where something does. */
function cleared(name: string): void {
  try {
    if (lstatSync(name).isDirectory()) removed(name)
  } catch {
    // nothing is there, or something stands in the way
  }
  rmSync(name, { recursive: true, force: true })
}

/** All at once: file by file in turns takes twice the processor time. */
function removed(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const name = folder + path.sep + entry.name
    if (entry.isDirectory()) removed(name)
    else unlinkSync(name)
  }
  rmdirSync(folder)
}

/** A new folder with what fills it; none where filling fails. */
async function filled(next: string, fill: () => Promise<void>): Promise<void> {
  cleared(next)
  await mkdir(next)
  try {
    await writeFile(path.join(next, MARKER), 'This folder is written by rungbook build, and replaced by it.\n')
    await fill()
  } catch (error) {
    cleared(next)
    throw error
  }
}

/** Puts one folder in the place of another. Between the two renames there is no handbook; who is killed there is healed by the next build. */
async function swap(out: string, next: string): Promise<void> {
  cleared(`${out}.last`)
  if (await lstat(out).catch(() => undefined)) await rename(out, `${out}.last`)
  await rename(next, out)
  cleared(`${out}.last`)
}

/** Turns the link to another folder at one stroke. A folder that stood in its place is moved out of it first. */
async function turn(out: string, next: string): Promise<void> {
  await rm(`${out}.turn`, { force: true })
  await symlink(path.basename(next), `${out}.turn`, 'dir')
  const about = await lstat(out).catch(() => undefined)
  if (about?.isDirectory()) await rename(out, `${out}.last`)
  await rename(`${out}.turn`, out)
  cleared(`${out}.last`)
}
