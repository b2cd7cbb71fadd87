import { createHash } from 'node:crypto'
import { readdir, readFile, stat, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { compareText } from '../ladder/finding.ts'
import type { Cache } from './cache.ts'
import { waysOf } from './compress.ts'
import { sideBySide } from './side-by-side.ts'

/** Every file below a folder, by name, with forward slashes. */
export async function filesBelow(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  return entries.filter((entry) => entry.isFile()).map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).replaceAll('\\', '/')).toSorted(compareText)
}

/** Writes a .br and a .gz beside each file that shrinks. */
export async function writeCompressed(folder: string, cache: Cache): Promise<void> {
  await sideBySide(await filesBelow(folder), async (name) => {
    const { size } = await stat(path.join(folder, name))
    const ways = waysOf(name, size)
    if (ways.length === 0) return
    const bytes = await readFile(path.join(folder, name))
    await Promise.all(ways.map(async ({ ending, kind, of }) => writeFile(path.join(folder, `${name}.${ending}`), await cache.of(kind, bytes, () => of(bytes)))))
  })
}

/** Writes build.json: every file with its size and digest, so that a deploy sends only what changed. */
export async function writeManifest(folder: string, edition: string): Promise<number> {
  const names = (await filesBelow(folder)).filter((name) => name !== 'build.json')
  const files = await Promise.all(
    names.map(async (name) => {
      const bytes = await readFile(path.join(folder, name))
      return { file: name, bytes: bytes.length, sha256: createHash('sha256').update(bytes).digest('hex') }
    }),
  )
  await writeFile(path.join(folder, 'build.json'), `${JSON.stringify({ version: 1, edition, files }, null, 1)}\n`)
  return files.length
}
