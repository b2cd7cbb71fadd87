import { lstat, mkdir, mkdtemp, readdir, rename, rm } from 'node:fs/promises'
import path from 'node:path'
import { writeFiles, type SiteFile } from './site-file.ts'

/** Names of what is in the way that are said; the rest is counted. */
const NAMED = 5

/** Why a folder cannot be begun in, or undefined: it must be absent or empty, but for a repository without files. */
export async function unfitStart(folder: string): Promise<string | undefined> {
  const about = await lstat(folder).catch(() => undefined)
  if (!about) return undefined
  if (about.isSymbolicLink()) return `"${folder}" is a link. Name the folder itself.`
  if (!about.isDirectory()) return `"${folder}" is a file. Name a new folder.`
  const names = (await readdir(folder)).filter((name) => name !== '.git').toSorted()
  if (names.length === 0) return undefined
  const said = names.slice(0, NAMED).join(', ')
  return `"${folder}" is not empty: it holds ${names.length > NAMED ? `${said} and ${names.length - NAMED} more` : said}. Name a new folder, or empty this one.`
}

/**
 * Writes files into a folder that is absent or empty: all of them, or none.
 *
 * Shape   a folder that `unfitStart` found fit, and its files.
 */
export async function writeFolder(folder: string, files: readonly SiteFile[]): Promise<void> {
  const there = await lstat(folder).then(() => true, () => false)
  await mkdir(there ? folder : path.dirname(folder), { recursive: true })
  const stage = await mkdtemp(there ? path.join(folder, '.rungbook-start-') : `${folder}.start-`)
  const moved: string[] = []
  try {
    await writeFiles(files, stage)
    if (!there) await rename(stage, folder)
    else {
      for (const name of await readdir(stage)) {
        await rename(path.join(stage, name), path.join(folder, name))
        moved.push(name)
      }
    }
  } catch (error) {
    for (const name of moved) await rm(path.join(folder, name), { recursive: true, force: true })
    throw error
  } finally {
    await rm(stage, { recursive: true, force: true })
  }
}
