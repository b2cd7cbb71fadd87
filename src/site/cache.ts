import { createHash } from 'node:crypto'
import { existsSync, fstatSync, readFileSync, utimesSync } from 'node:fs'
import { mkdir, readdir, rename, rm, stat, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { whileOpen } from './plain-file.ts'

/**
 * What was made once and need not be made again: readings, drawings, compressed copies.
 *
 * It lies in this person's own cache folder and never in a workspace, where a stranger could put things into it.
 * An entry is named by the digest of everything it was made from, tool included, so it is right or absent;
 * each carries the digest of its own bytes, so one that was cut short is made again.
 */
export type Cache = {
  /** Where it lies, for another thread to open it; nowhere, where nothing is kept. */
  readonly folder?: string
  /** The bytes for `from`, made now or before. `kind` names what makes them, and its version. */
  of(kind: string, from: string | Uint8Array, make: () => Promise<Uint8Array>): Promise<Uint8Array>
  /** The bytes for `from`, where they were made before. */
  known(kind: string, from: string | Uint8Array): Promise<Uint8Array | undefined>
  /** Whether an entry is there, whole or not. */
  holds(kind: string, from: string | Uint8Array): boolean
  /** Takes out what nobody has asked for in a month. */
  tidy(): Promise<void>
}

/** A cache, and the digest of the tool that fills it. */
export type Kept = { readonly cache: Cache; readonly tool: string }

/** Makes everything anew. */
export const NO_CACHE: Cache = { of: (_kind, _from, make) => make(), known: async () => undefined, holds: () => false, tidy: async () => undefined }

const sha256 = (...parts: readonly (string | Uint8Array)[]): string => {
  const digest = createHash('sha256')
  for (const part of parts) digest.update(`${part.length}:`).update(part) // lengths keep parts apart
  return digest.digest('hex')
}

/** Units characters: a SHA-256 in hexadecimal. */
const DIGEST = 64
const DAY_MS = 86_400_000
/** Chosen by us: a curriculum is worked on now and then. */
const KEPT_DAYS = 30

/** Where this person's caches are, as the platform has it. */
export function cacheFolder(): string {
  const { RUNGBOOK_CACHE, XDG_CACHE_HOME, LOCALAPPDATA } = process.env
  if (RUNGBOOK_CACHE) return path.resolve(RUNGBOOK_CACHE)
  const shared = XDG_CACHE_HOME ?? (process.platform === 'win32' ? LOCALAPPDATA : process.platform === 'darwin' ? path.join(os.homedir(), 'Library', 'Caches') : undefined)
  return path.join(shared !== undefined && path.isAbsolute(shared) ? shared : path.join(os.homedir(), '.cache'), 'rungbook')
}

/** A cache in a folder. What cannot be read or written there is made anew, and nothing is said. */
export function cacheIn(folder: string): Cache {
  const fileOf = (key: string): string => path.join(folder, key.slice(0, 2), key.slice(2))
  const known = (file: string): Uint8Array | undefined => {
    try {
      return whileOpen(file, (opened) => soundBytes(opened, file), () => undefined)
    } catch {
      return undefined
    }
  }
  const keep = async (file: string, bytes: Uint8Array): Promise<void> => {
    const beside = `${file}.${process.pid}.${keeping.count++}`
    try {
      await mkdir(path.dirname(file), { recursive: true })
      await writeFile(beside, Buffer.concat([Buffer.from(sha256(bytes), 'latin1'), bytes]))
      await rename(beside, file)
    } catch {
      await rm(beside, { force: true }).catch(() => undefined)
    }
  }
  return {
    folder,
    async of(kind, from, make) {
      const file = fileOf(sha256(kind, from))
      const before = known(file)
      if (before !== undefined) return before
      const bytes = await make()
      await keep(file, bytes)
      return bytes
    },
    known: async (kind, from) => known(fileOf(sha256(kind, from))),
    holds: (kind, from) => existsSync(fileOf(sha256(kind, from))),
    tidy: () => withoutOld(folder).catch(() => undefined),
  }
}

const keeping = { count: 0 }

/** What an entry holds, if it is whole. One that is asked for stays; once a day is often enough to say so. */
function soundBytes(opened: number, file: string): Uint8Array | undefined {
  const whole = readFileSync(opened)
  const bytes = whole.subarray(DIGEST)
  if (whole.toString('latin1', 0, DIGEST) !== sha256(bytes)) return undefined
  const now = Date.now()
  if (now - fstatSync(opened).mtimeMs > DAY_MS) touch(file, now)
  return bytes
}

function touch(file: string, now: number): void {
  try {
    utimesSync(file, now / 1000, now / 1000)
  } catch {
    // in a folder that can only be read nothing is tidied either
  }
}

async function withoutOld(folder: string): Promise<void> {
  const seen = path.join(folder, 'tidied')
  const now = Date.now()
  const last = await stat(seen).catch(() => undefined)
  if (last && now - last.mtimeMs < DAY_MS) return
  await mkdir(folder, { recursive: true })
  await writeFile(seen, '')
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    const file = path.join(entry.parentPath, entry.name)
    if (!entry.isFile() || file === seen || !/^[0-9a-f]{2}$/.test(path.basename(entry.parentPath))) continue
    const about = await stat(file).catch(() => undefined)
    if (about && now - about.mtimeMs > KEPT_DAYS * DAY_MS) await rm(file, { force: true })
  }
}
