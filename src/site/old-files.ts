import { linkSync, lstatSync, readFileSync, type Stats } from 'node:fs'
import path from 'node:path'
import { sha256Of } from './copies.ts'

/** The handbook that stands until a new one is whole: what has not changed is taken over from it. */
export type OldFiles = {
  /** Links the old file of a name to another place, where its bytes have the digest wanted. Returns its size in bytes, or undefined where nothing was linked. */
  linked(name: string, to: string, sha256: string): number | undefined
}

export const NO_OLD_FILES: OldFiles = { linked: () => undefined }

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
  return {
    linked(name, to, sha256) {
      const from = path.join(before, name)
      try {
        if (!isPlainFolder(path.dirname(name))) return undefined
        const about = lstatSync(from, { throwIfNoEntry: false })
        if (!about?.isFile() || about.mode !== like.mode || about.uid !== like.uid || about.gid !== like.gid) return undefined
        const bytes = readFileSync(from)
        if (sha256Of(bytes) !== sha256) return undefined
        linkSync(from, to)
        return bytes.length
      } catch {
        return undefined // such as a disk without links, or a file that is just taken away
      }
    },
  }
}
