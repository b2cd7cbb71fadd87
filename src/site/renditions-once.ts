import { createHash } from 'node:crypto'
import { readdir, readFile } from 'node:fs/promises'
import type { Cache } from './cache.ts'
import { libraryVersion, renditions, type Rendition } from './raster.ts'

type Head = readonly { readonly width_px: number; readonly height_px: number; readonly kind: Rendition['kind']; readonly length: number }[]

/** The sizes of a picture, made once for its bytes. */
export const renditionsOnce = async (bytes: Uint8Array, cache: Cache): Promise<readonly Rendition[]> => unpacked(await cache.of(`picture, ${await ownDigest()}`, bytes, async () => packed(await renditions(bytes))))

/** What makes the sizes at this moment: our module, and the libraries under it. */
async function ownDigest(): Promise<string> {
  const digest = createHash('sha256').update(await libraryVersion())
  const here = new URL('.', import.meta.url)
  for (const name of (await readdir(here)).toSorted()) if (name.startsWith('raster')) digest.update(name).update(await readFile(new URL(name, here)))
  return digest.digest('hex')
}

/** A line of JSON that says what follows, then the pictures one behind the other. */
function packed(made: readonly Rendition[]): Uint8Array {
  const head: Head = made.map(({ bytes, width_px, height_px, kind }) => ({ width_px, height_px, kind, length: bytes.length }))
  return Buffer.concat([Buffer.from(`${JSON.stringify(head)}\n`), ...made.map(({ bytes }) => bytes)])
}

function unpacked(bytes: Uint8Array): readonly Rendition[] {
  const end = bytes.indexOf(10)
  const head = JSON.parse(Buffer.from(bytes.subarray(0, end)).toString()) as Head
  const starts = head.map((_, nth) => head.slice(0, nth).reduce((sum, { length }) => sum + length, end + 1))
  return head.map(({ length, ...size }, nth) => ({ ...size, bytes: bytes.subarray(starts[nth], (starts[nth] ?? 0) + length) }))
}
