import { fstatSync, lstatSync, readFileSync, type BigIntStats } from 'node:fs'
import { MOST_BYTES } from '../read/text.ts'
import { whileOpen } from './plain-file.ts'

/** Bytes that were read before, by file, and what the disk said of it then; for who reads again and again. */
export type KeptFiles = Map<string, { readonly look: string; readonly bytes: Uint8Array }>

/** Why a file cannot be opened, by what the system calls it. */
const UNOPENED: Readonly<Record<string, string>> = { ENOENT: 'absent', ENOTDIR: 'absent', ELOOP: 'it is not a plain file', ENXIO: 'it is not a plain file' }

/** A file's bytes, or the reason they cannot be had; the very same bytes as before where nobody has touched it since. */
export function fileBytes(file: string, kept?: KeptFiles): Uint8Array | string {
  const before = kept?.get(file)
  return before && before.look === lookNow(file) ? before.bytes : readAnew(file, kept)
}

const readAnew = (file: string, kept?: KeptFiles): Uint8Array | string => whileOpen(file, (opened) => readOpened(opened, file, kept), (code) => UNOPENED[code] ?? 'it may not be opened')

function readOpened(opened: number, file: string, kept?: KeptFiles): Uint8Array | string {
  const about = fstatSync(opened, { bigint: true })
  if (!about.isFile()) return 'it is not a plain file'
  if (about.size > MOST_BYTES * 4) return `it is larger than ${(MOST_BYTES * 4) / 1024} KiB`
  const isOld = Date.now() - Number(about.ctimeMs) > SETTLED_MS
  const bytes = readFileSync(opened)
  if (isOld) kept?.set(file, { look: lookOf(about), bytes })
  return bytes
}

/** What was changed less long ago may be changed again under the same time: the coarsest file systems count in steps of two seconds. Units ms. */
const SETTLED_MS = 3000

/** What is another as soon as somebody writes to a file, or puts another in its place. */
const lookOf = ({ dev, ino, size, mtimeNs, ctimeNs }: BigIntStats): string => [dev, ino, size, mtimeNs, ctimeNs].join(' ')

function lookNow(file: string): string | undefined {
  try {
    const about = lstatSync(file, { bigint: true, throwIfNoEntry: false })
    return about && lookOf(about)
  } catch {
    return undefined
  }
}
