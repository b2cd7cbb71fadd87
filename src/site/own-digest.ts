import { createHash } from 'node:crypto'
import { readdir, readFile } from 'node:fs/promises'

/** What some of this folder's modules are at this moment, and whatever else decides what they make: by which a cache knows its own from another's. */
export async function ownDigest(modules: RegExp, ...more: readonly (string | Uint8Array)[]): Promise<string> {
  const digest = createHash('sha256')
  const here = new URL('.', import.meta.url)
  for (const name of (await readdir(here)).toSorted()) if (modules.test(name)) digest.update(name).update(await readFile(new URL(name, here)))
  for (const part of more) digest.update(part)
  return digest.digest('hex')
}
