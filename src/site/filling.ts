import { lstatSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { compareText } from '../ladder/finding.ts'
import { NO_CACHE, type Cache } from './cache.ts'
import { copiesOf, digested, sha256Of, type Digested } from './copies.ts'
import { filesBelow } from './manifest.ts'
import { NO_OLD_FILES, oldFiles } from './old-files.ts'
import { sideBySide } from './side-by-side.ts'
import type { SiteFile } from './site-file.ts'

/** A file as it was written. */
export type Written = { readonly file: string; readonly bytes: number; readonly sha256: string }

/** A file as it will be, or was. */
export type Known = Pick<Digested, 'name' | 'sha256' | 'size'>

/** A folder while a build fills it. What was written is known, and not read again. */
export type Filling = {
  /** Writes files, each once, and compressed copies beside those that shrink. Returns when all of them lie there. */
  write(files: readonly (SiteFile | Digested)[]): Promise<void>
  /** Takes over files that lie in the old handbook with the digests wanted: all of them, or none. */
  taken(files: readonly Known[]): boolean
  /** Puts compressed copies beside all that was taken over since it was last asked. */
  copies(): Promise<void>
  /** The text of a file that was written or taken over. */
  text(name: string): string
  /** The bytes of a file in the old handbook, where they have the digest wanted. */
  old(name: string, sha256: string): Uint8Array | undefined
  /** What was written so far, by name, without the copies. */
  originals(): Written[]
  /** The same with them. */
  all(): Written[]
}

const byName = (files: Iterable<Written>): Written[] => [...files].toSorted((a, b) => compareText(a.file, b.file))

/** About as many files are compressed as one, and again when one of them has changed. Chosen by us. */
const TOGETHER = 16

/** Files in groups which stay as they are when others come or go: a group ends after a name whose digest says so. */
function groupsOf<File extends { readonly name: string }>(files: readonly File[]): File[][] {
  const groups: File[][] = [[]]
  for (const file of files) {
    groups.at(-1)?.push(file)
    if (parseInt(sha256Of(file.name).slice(0, 8), 16) % TOGETHER === 0) groups.push([])
  }
  return groups.filter((group) => group.length > 0)
}

/**
 * Fills a new folder, in which nothing but our mark lies. With a cache, what the old handbook in `before` holds already is taken over from it,
 * and a copy that is known to be there is not compressed again; without one, everything is made anew.
 */
export async function fillFolder(folder: string, { before, cache = NO_CACHE }: { before?: string | undefined; cache?: Cache } = {}): Promise<Filling> {
  const [originals, copies, made] = [new Map<string, Written>(), new Map<string, Written>(), new Set<string>()]
  for (const file of await filesBelow(folder)) {
    const bytes = await readFile(path.join(folder, file))
    originals.set(file, { file, bytes: bytes.length, sha256: sha256Of(bytes) })
  }
  const [ours] = originals.keys()
  const old = cache === NO_CACHE || before === undefined || ours === undefined ? NO_OLD_FILES : oldFiles(before, lstatSync(path.join(folder, ours)))

  function placeOf(name: string): string {
    const to = path.join(folder, name)
    const parent = path.dirname(to)
    if (!made.has(parent)) mkdirSync(parent, { recursive: true })
    made.add(parent)
    return to
  }

  /** Puts a file in its place, from the old handbook where it is the same, and says what it is. */
  async function placed(name: string, sha256: string, bytesOf: () => Promise<Uint8Array>): Promise<Written> {
    const to = placeOf(name)
    const there = old.linked(name, to, sha256)
    if (there !== undefined) return { file: name, bytes: there, sha256 }
    const bytes = await bytesOf()
    await writeFile(to, bytes, { flag: 'wx' }) // never into a file that is there: it may be the old handbook's too
    return { file: name, bytes: bytes.length, sha256: sha256Of(bytes) }
  }

  /** Puts the copies beside some files. */
  async function copied(group: readonly Digested[]): Promise<void> {
    for (const { name, sha256, bytes } of await copiesOf(group, cache)) copies.set(name, await placed(name, sha256, bytes))
  }

  /** Whether each of some files lies in the old handbook, and now here. */
  function linked(files: readonly Known[]): boolean {
    const missing = files.findIndex(({ name, sha256 }) => old.linked(name, placeOf(name), sha256) === undefined)
    for (const { name } of files.slice(0, Math.max(missing, 0))) rmSync(path.join(folder, name))
    return missing < 0
  }

  const uncopied: Known[][] = []
  const there = (name: string): Promise<Buffer> => readFile(path.join(folder, name))

  return {
    write: (files) =>
      sideBySide(groupsOf(files), async (group) => {
        const known = group.map((file) => ('sha256' in file ? file : digested(file)))
        for (const { name, bytes, sha256 } of known) originals.set(name, await placed(name, sha256, bytes))
        await copied(known)
      }),
    taken(files) {
      if (!linked(files)) return false
      for (const { name, size, sha256 } of files) originals.set(name, { file: name, bytes: size, sha256 })
      uncopied.push(...groupsOf(files))
      return true
    },
    copies: () => sideBySide(uncopied.splice(0), (group) => copied(group.map((file) => ({ ...file, bytes: () => there(file.name) })))),
    text: (name) => readFileSync(path.join(folder, name), 'utf8'),
    old: (name, sha256) => old.bytes(name, sha256),
    originals: () => byName(originals.values()),
    all: () => byName([...originals.values(), ...copies.values()]),
  }
}
