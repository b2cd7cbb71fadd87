import { createHash } from 'node:crypto'
import type { Cache } from './cache.ts'
import { waysOf } from './compress.ts'
import type { SiteFile } from './site-file.ts'

export const sha256Of = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex')

/** A file that is known before its bytes are asked for. Units of size: bytes. */
export type Digested = { readonly name: string; readonly sha256: string; readonly size: number; readonly bytes: () => Promise<Uint8Array> }

/** A file with its digest. */
export function digested({ name, bytes: given }: SiteFile): Digested {
  const bytes = typeof given === 'string' ? Buffer.from(given) : given
  return { name, sha256: sha256Of(bytes), size: bytes.length, bytes: async () => bytes }
}

/** A compressed copy by its digest, which may be known without its bytes being made. */
export type Copy = { readonly name: string; readonly sha256: string; readonly bytes: () => Promise<Uint8Array> }

/**
 * The copies that belong beside some files. Kept of them are the digests alone: to compress a page again is as quick as to read its copy from a cache,
 * and where a copy with that digest lies already, not even that is needed.
 */
export async function copiesOf(files: readonly Digested[], cache: Cache): Promise<Copy[]> {
  const wanted = files.flatMap(({ name, bytes, size, sha256 }) => waysOf(name, size).map(({ ending, kind, of }) => ({ name: `${name}.${ending}`, from: `${kind} ${sha256}`, make: async () => of(await bytes()) })))
  if (wanted.length === 0) return []
  const fresh = new Map<string, Uint8Array>()
  const digests = await cache.of('digests of copies', wanted.map(({ from }) => from).join('\n'), async () => {
    const made = wanted.map(async ({ name, make }) => {
      const bytes = await make()
      fresh.set(name, bytes)
      return sha256Of(bytes)
    })
    return Buffer.from((await Promise.all(made)).join('\n'))
  })
  const known = Buffer.from(digests).toString().split('\n')
  return wanted.map(({ name, make }, index) => ({ name, sha256: known[index] ?? '', bytes: async () => fresh.get(name) ?? make() }))
}
