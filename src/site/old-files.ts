import { fstatSync, linkSync, lstatSync, readSync, type Stats } from 'node:fs'
import path from 'node:path'
import { sha256Of } from './copies.ts'
import { whileOpen } from './plain-file.ts'

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
  const there = (name: string, sha256: string, room?: Room): Uint8Array | undefined => {
    try {
      if (!isPlainFolder(path.dirname(name))) return undefined
      return whileOpen(path.join(before, name), (opened) => {
        const about = fstatSync(opened)
        if (!about.isFile() || about.mode !== like.mode || about.uid !== like.uid || about.gid !== like.gid) return undefined
        const bytes = readWhole(opened, about.size, room)
        return sha256Of(bytes) === sha256 ? bytes : undefined
      }, () => undefined)
    } catch {
      return undefined // such as a file that is just taken away
    }
  }
  const room: Room = { bytes: new Uint8Array(0) }
  return {
    bytes: (name, sha256) => there(name, sha256),
    linked(name, to, sha256) {
      const bytes = there(name, sha256, room)
      try {
        if (bytes) linkSync(path.join(before, name), to)
        return bytes?.length
      } catch {
        return undefined // such as a disk without links
      }
    },
  }
}

/** Where file after file is read when only its digest is wanted: else tens of thousands would have to be cleared away. */
type Room = { bytes: Uint8Array }

/** The bytes of an open file of a size, in a room where one is given; fewer where it has become shorter, and one more where it has become longer. */
function readWhole(opened: number, size: number, room: Room = { bytes: new Uint8Array(0) }): Uint8Array {
  const most = size + 1
  if (room.bytes.length < most) room.bytes = new Uint8Array(most)
  let read = 0
  for (let more = 1; more > 0 && read < most; read += more) more = readSync(opened, room.bytes, read, most - read, read)
  return room.bytes.subarray(0, read)
}
