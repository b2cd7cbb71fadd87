import { createHash } from 'node:crypto'
import { mkdir, readFile, realpath, rename, writeFile } from 'node:fs/promises'
import path from 'node:path'
import type { Missing } from '../quantity/outcome.ts'
import { renditions, type Rendition } from './raster.ts'

/** Where a workspace keeps what is slow to make, and in which state of the code it was made. */
const KEPT = '.rungbook'
const STATE = 1

export const digestOfFile = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** The sizes of a picture, made once for its bytes and kept in the workspace. */
export async function keptRenditions(bytes: Uint8Array, workspace: string): Promise<readonly Rendition[] | Missing> {
  const shelf = await shelfOf(workspace)
  const file = shelf && path.join(shelf, `${digestOfFile(bytes)}-${STATE}`)
  const before = file && unpacked(await readFile(file).catch(() => undefined))
  if (before) return before
  const made = await renditions(bytes)
  if (file && !isList(made)) return made
  if (file && isList(made)) await write(file, packed(made)).catch(() => undefined) // a workspace that cannot be written to is built all the same
  return made
}

const isList = (value: readonly Rendition[] | Missing): value is readonly Rendition[] => Array.isArray(value)

/** The folder for kept pictures; undefined where it is a link, so that nothing is written elsewhere. */
async function shelfOf(workspace: string): Promise<string | undefined> {
  const shelf = path.join(workspace, KEPT, 'pictures')
  await mkdir(shelf, { recursive: true }).catch(() => undefined)
  const [real, home] = await Promise.all([shelf, workspace].map((folder) => realpath(folder).catch(() => undefined)))
  return real !== undefined && home !== undefined && real === path.join(home, KEPT, 'pictures') ? real : undefined
}

async function write(file: string, bytes: Uint8Array): Promise<void> {
  const next = `${file}.${process.pid}`
  await writeFile(next, bytes)
  await rename(next, file)
}

type Head = readonly { readonly width_px: number; readonly height_px: number; readonly kind: Rendition['kind']; readonly length: number; readonly digest: string }[]

/** A line of JSON that says what follows, then the pictures one behind the other. */
function packed(made: readonly Rendition[]): Uint8Array {
  const head: Head = made.map(({ bytes, ...rest }) => ({ ...rest, length: bytes.length, digest: digestOfFile(bytes) }))
  return Buffer.concat([Buffer.from(`${JSON.stringify(head)}\n`), ...made.map(({ bytes }) => bytes)])
}

/** What was kept, if every byte of it is as it was; a file that was cut or changed is made anew. */
function unpacked(bytes: Buffer | undefined): readonly Rendition[] | undefined {
  if (!bytes) return undefined
  try {
    const end = bytes.indexOf(10)
    const head = JSON.parse(bytes.subarray(0, end).toString()) as Head
    let from = end + 1
    const found = head.map(({ length, digest, width_px, height_px, kind }) => {
      const own = bytes.subarray(from, from + length)
      from += length
      const fits = Number.isInteger(width_px) && Number.isInteger(height_px) && ['webp', 'jpeg', 'png'].includes(kind) && digestOfFile(own) === digest
      return fits ? { width_px, height_px, kind, bytes: own } : undefined
    })
    return found.length > 0 && found.every((each) => each !== undefined) ? found : undefined
  } catch {
    return undefined
  }
}
