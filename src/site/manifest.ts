import { createHash } from 'node:crypto'
import { readdir, readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'
import { compareText } from '../ladder/finding.ts'
import type { Cache } from './cache.ts'
import { sideBySide } from './side-by-side.ts'

/** Files that shrink, and from what size it is worth it. Units bytes. */
const TEXT = /\.(html|css|js|json|svg|xml|txt|webmanifest)$/
const WORTH_IT = 256

/** Every file below a folder, by name, with forward slashes. */
export async function filesBelow(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  return entries.filter((entry) => entry.isFile()).map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).replaceAll('\\', '/')).toSorted(compareText)
}

const [br, gz] = [promisify(brotliCompress), promisify(gzip)]

/** Ways of compressing, named with what decides their bytes: a newer library may compress otherwise. */
const WAYS = [
  { ending: 'gz', kind: `gzip 9, zlib ${process.versions.zlib}`, of: (bytes: Uint8Array) => gz(bytes, { level: 9 }) },
  { ending: 'br', kind: `brotli 9, ${process.versions.brotli}`, of: (bytes: Uint8Array) => br(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 9, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } }) },
] as const

/** Writes a .br and a .gz beside each text file. */
export async function writeCompressed(folder: string, cache: Cache): Promise<void> {
  await sideBySide((await filesBelow(folder)).filter((name) => TEXT.test(name)), async (name) => {
    const bytes = await readFile(path.join(folder, name))
    if (bytes.length < WORTH_IT) return
    await Promise.all(WAYS.map(async ({ ending, kind, of }) => writeFile(path.join(folder, `${name}.${ending}`), await cache.of(kind, bytes, () => of(bytes)))))
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
