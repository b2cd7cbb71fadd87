import type { Cache } from './cache.ts'
import { ownDigest } from './own-digest.ts'
import { libraryVersion, renditions, type Rendition } from './raster.ts'

type Head = readonly { readonly width_px: number; readonly height_px: number; readonly kind: Rendition['kind']; readonly length: number }[]

/** Makes the sizes of a picture that were not made before. What makes them is asked once: our module, and the libraries under it. */
export async function renditionsOnce(cache: Cache): Promise<(bytes: Uint8Array) => Promise<readonly Rendition[]>> {
  const kind = `picture, ${await ownDigest(/^raster/, await libraryVersion())}`
  return async (bytes) => unpacked(await cache.of(kind, bytes, async () => packed(await renditions(bytes))))
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
