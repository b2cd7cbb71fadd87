import { createHash } from 'node:crypto'
import { chmodSync, lstatSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, readlinkSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll } from 'vitest'
import { MARKER } from '../../src/site/publish.ts'

/** Files of a workspace by name; undefined takes a harmless one away. */
export type Files = Readonly<Record<string, string | Uint8Array | undefined>>

/** A handbook and a ladder in which nothing is to be put right. */
export const HANDBOOK = 'title: A small handbook\norganisation: Tarnwick Gym Club\nedition: "1"\ncontact: nobody yet\n'
export const LADDER = readFileSync(path.resolve(import.meta.dirname, '../check/aim-exists.good.md'), 'utf8')
export const LADDER_FILE = 'ladders/a.md'

/** Folders for one test file, gone when it ends: each workspace stands in a room of its own, so that what is written beside it shows. */
export function rooms(): (name: string, files: Files) => { readonly room: string; readonly workspace: string } {
  const root = mkdtempSync(path.join(os.tmpdir(), 'rungbook-hostile-'))
  afterAll(() => rmSync(root, { recursive: true, force: true }))
  chmodSync(root, 0o755)
  let count = 0
  return (name, files) => {
    count += 1
    const room = path.join(root, `${count}-${name.replace(/[^a-z0-9]+/gi, '-').slice(0, 40)}`)
    const workspace = path.join(room, 'workspace')
    const old = { [`_site/${MARKER}`]: 'This folder is written by rungbook build, and replaced by it.\n', '_site/index.html': '<p>the old handbook</p>\n' }
    write(workspace, { 'handbook.yaml': HANDBOOK, [LADDER_FILE]: LADDER, ...old, ...files })
    return { room, workspace }
  }
}

/** Writes files below a folder. */
export function write(folder: string, files: Files): void {
  for (const [name, body] of Object.entries(files)) {
    if (body === undefined) continue
    const to = path.join(folder, name)
    mkdirSync(path.dirname(to), { recursive: true })
    writeFileSync(to, body)
  }
}

/** Everything below a folder, links not followed: what each is, and a digest of what it holds, or its size where that is much. Two of these are equal where nothing was touched. */
export function everything(folder: string): Readonly<Record<string, string>> {
  const found: Record<string, string> = {}
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const place = path.join(entry.parentPath, entry.name)
    const about = lstatSync(place)
    const small = about.isFile() && about.size < 1e7 && (about.mode & 0o400) !== 0
    const holds = about.isSymbolicLink() ? readlinkSync(place) : small ? createHash('sha256').update(readFileSync(place)).digest('hex') : about.size
    found[path.relative(folder, place)] = `${(about.mode & 0o170000).toString(8)} ${holds}`
  }
  return found
}

/** The harmless ladder with some of its words replaced. Fails where they are not in it: a case that changes nothing proves nothing. */
export function ladder(...changes: readonly (readonly [from: string, to: string])[]): string {
  return changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`"${from}" is not in the ladder`)
    return text.replace(from, () => to)
  }, LADDER)
}

/** A ladder file whose whole front matter is this. */
export const head = (yaml: string): Files => ({ [LADDER_FILE]: `---\n${yaml}\n---\n` })

/** The harmless workspace with some words of its ladder replaced. */
export const changed = (...changes: readonly (readonly [from: string, to: string])[]): Files => ({ [LADDER_FILE]: ladder(...changes) })

/** So many lines, each made from its number. */
export const lines = (count: number, line: (index: number) => string): string => Array.from({ length: count }, (_, index) => line(index)).join('\n')
