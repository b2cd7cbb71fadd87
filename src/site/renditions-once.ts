import type { Cache } from './cache.ts'
import { ownDigest } from './own-digest.ts'
import { packed, unpacked } from './packed.ts'
import { libraryVersion, renditions, type Rendition } from './raster.ts'

/** Makes the sizes of a picture that were not made before. What makes them is asked once: our module, and the libraries under it. */
export async function renditionsOnce(cache: Cache): Promise<(bytes: Uint8Array) => Promise<readonly Rendition[]>> {
  const kind = `picture, ${await ownDigest(/^raster/, await libraryVersion())}`
  return async (bytes) => unpacked<Rendition>(await cache.of(kind, bytes, async () => packed(await renditions(bytes))))
}
