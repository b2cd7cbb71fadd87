import { link, lstat, mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'

/** A file that is to stand in a workspace. `instead` says that one that stands there may be written over. */
export type NewFile = { readonly file: string; readonly text: string; readonly instead: boolean }

/** What came of it: files written, those that were as they should be already, or the reason none was written. */
export type Written = { readonly written: readonly string[]; readonly same: readonly string[] } | { readonly refused: string }

/**
 * Writes all files, or none. Each is written whole beside its place and moved there; what stood there before is put back if one cannot be moved.
 *
 * Shape   a folder by its true name and files to what was written. A file that may not be written over, or lies behind a link, refuses them all.
 */
export async function writeLadders(folder: string, files: readonly NewFile[]): Promise<Written> {
  const before = await Promise.all(files.map(async ({ file }) => standing(path.join(folder, file))))
  const wrong = files.find(({ instead }, index) => before[index] === 'no file' || (before[index] !== undefined && !instead))
  if (wrong) return { refused: `"${wrong.file}" is there already` }
  const changed = files.filter(({ text }, index) => before[index] !== text)
  const done: NewFile[] = []
  try {
    for (const { file, text } of changed) {
      await mkdir(path.dirname(path.join(folder, file)), { recursive: true })
      await writeFile(besideOf(folder, file), text, { flag: 'wx' })
    }
    for (const next of changed) {
      await moved(folder, next)
      done.push(next)
    }
  } catch (error) {
    for (const { file } of done) {
      const old = before[files.findIndex((other) => other.file === file)]
      if (old === undefined) await rm(path.join(folder, file), { force: true })
      else await writeFile(path.join(folder, file), old)
    }
    return { refused: `the files could not be written (${(error as NodeJS.ErrnoException).code ?? String(error)})` }
  } finally {
    await Promise.all(changed.map(({ file }) => rm(besideOf(folder, file), { force: true }).catch(() => undefined)))
  }
  return { written: changed.map(({ file }) => file), same: files.filter((file) => !changed.includes(file)).map(({ file }) => file) }
}

/** The name under which a file waits until all are whole. A workspace does not read names that begin with a dot. */
const besideOf = (folder: string, file: string): string => path.join(folder, path.dirname(file), `.${path.basename(file)}.${process.pid}.new`)

/** What stands at a place: words, nothing, or something that is no plain file. */
async function standing(name: string): Promise<string | 'no file' | undefined> {
  const about = await lstat(name).catch(() => undefined)
  if (!about) return undefined
  return about.isFile() ? readFile(name, 'utf8') : 'no file'
}

/** Puts a waiting file in its place: over what is there if it may, else only where there is nothing, even if somebody wrote there this moment. */
async function moved(folder: string, { file, instead }: NewFile): Promise<void> {
  const [from, to] = [besideOf(folder, file), path.join(folder, file)]
  if (instead) return rename(from, to)
  await link(from, to).catch(async (error: NodeJS.ErrnoException) => {
    if (error.code === 'EEXIST') throw error
    await writeFile(to, await readFile(from), { flag: 'wx' }) // a disk without links
  })
}
