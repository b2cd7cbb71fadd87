import { linkSync, lstatSync, readFileSync, type Stats } from 'node:fs'
import path from 'node:path'
import { sha256Of } from './copies.ts'

/** The handbook that stands until a new one is whole: what has not changed is taken over from it. */
export type OldFiles = {
  /** Links the old file of a name to another place, where its bytes have the digest wanted. Returns its size in bytes, or undefined where nothing was linked. */
  linked(name: string, to: string, sha256: string): number | undefined
  /** The bytes of an old file, where they have the digest wanted. */
  bytes(name: string, sha256: string): Uint8Array | undefined
}

export const NO_OLD_FILES: OldFiles = { linked: () => undefined, bytes: () => undefined }

/**
 * The files of an old handbook. A link costs a small part of writing a file anew.
 *
 * Only a plain file with no link on the way to it is taken, of the owner and rights that `like` has, and only after all of its bytes were looked at.
 * The two handbooks then share it: whoever writes into a file of one writes into the other, so nothing of ours does.
 */
export function oldFiles(before: string, like: Stats): OldFiles {
  const folders = new Map<string, boolean>([['.', true]])
  const isPlainFolder = (folder: string): boolean => {
    const known = folders.get(folder)
    if (known !== undefined) return known
    const plain = isPlainFolder(path.dirname(folder)) && lstatSync(path.join(before, folder), { throwIfNoEntry: false })?.isDirectory() === true
    folders.set(folder, plain)
    return plain
  }
  const bytes = (name: string, sha256: string): Buffer | undefined => {
    try {
      if (!isPlainFolder(path.dirname(name))) return undefined
      const from = path.join(before, name)
      const about = lstatSync(from, { throwIfNoEntry: false })
      if (!about?.isFile() || about.mode !== like.mode || about.uid !== like.uid || about.gid !== like.gid) return undefined
      const there = readFileSync(from)
      return sha256Of(there) === sha256 ? there : undefined
    } catch {
      return undefined // such as a file that is just taken away
    }
  }
  return {
    bytes,
    linked(name, to, sha256) {
      const there = bytes(name, sha256)
      try {
        if (there) linkSync(path.join(before, name), to)
        return there?.length
      } catch {
        return undefined // such as a disk without links
      }
    },
  }
}
