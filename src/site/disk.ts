import { existsSync } from 'node:fs'
import { lstat, readdir, realpath, stat } from 'node:fs/promises'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Layer, SourceFile } from '../ladder/curriculum.ts'
import { compareText, type Finding } from '../ladder/finding.ts'
import { HANDBOOK_FILE, readHandbook } from '../read/read-curriculum.ts'
import { atTop } from '../read/text.ts'
import { fileBytes, type KeptFiles } from './file-bytes.ts'

/** Layers deep that one handbook may extend another. Chosen by us. */
const MOST_LAYERS = 20
/** Files one workspace may hold. Chosen by us: ten times the largest we measured. */
const MOST_FILES = 100_000

/** A workspace on disk: its layers, the one that is extended first, or why it cannot be read. */
export type Workspace = { readonly layers: readonly Layer[]; readonly folders: readonly string[]; readonly findings: readonly Finding[] }

/** Where files are read from: the disk, or a commit. */
export type Reader = {
  /** The folder by its one true name, or undefined where there is none. */
  real(folder: string): Promise<string | undefined>
  /** Its ladders, pages, handbook.yaml and lists of words. `shown` is the folder as findings name it. */
  files(folder: string, shown: string, findings: Finding[]): Promise<SourceFile[]>
}

/** Reads from disk; files that nobody has touched since they were kept, not again. */
export const diskKeeping = (kept?: KeptFiles): Reader => ({ real: realFolder, files: (folder, shown, findings) => filesOf(folder, shown, findings, kept) })

/** Reads from disk. */
export const disk: Reader = diskKeeping()

/**
 * Reads a workspace and those it extends.
 *
 * Shape   a folder to layers of files. Links, devices and pipes are not followed; a folder that is not there is a finding.
 */
export async function readWorkspace(folder: string, reader: Reader = disk): Promise<Workspace> {
  const layers: Layer[] = []
  const folders: string[] = []
  const findings: Finding[] = []
  let next: string | undefined = folder
  while (next !== undefined) {
    const here: string = next
    const real = await reader.real(here)
    const above = folders.length === 0 ? HANDBOOK_FILE : path.relative(folder, path.join(folders[0] ?? folder, HANDBOOK_FILE))
    const wrong = real === undefined ? absent(here, folder, folders) : unending(real, folders)
    if (real === undefined || wrong !== undefined) {
      findings.push(atTop(above, real === undefined ? 'handbook-is-there' : 'layers-end', wrong ?? ''))
      break
    }
    const files = await reader.files(real, path.relative(folder, real), findings)
    if (!files.some(({ file }) => file === HANDBOOK_FILE) && (folders.length > 0 || findings.some(({ file }) => file === HANDBOOK_FILE))) {
      // Said here where it is known why: what is extended is no workspace, or the file is there and cannot be read.
      if (folders.length > 0) findings.push(atTop(above, 'handbook-is-there', `What this handbook extends is no workspace: there is no handbook.yaml that can be read in "${path.relative(folder, real)}". Mend extends.`))
      return { layers: [], folders, findings }
    }
    layers.unshift({ files })
    folders.unshift(real)
    const handbook = files.find(({ file }) => file === HANDBOOK_FILE)
    const extended = handbook ? readHandbook(handbook).value?.extends : undefined
    next = extended === undefined ? undefined : extendedFolder(real, extended)
  }
  return { layers, folders, findings }
}

/** The starter curriculum that comes with this program, by the name a handbook extends it by. */
const STARTER = 'rungbook/starter'
/** The folder this program lies in: the repository, or the installed package. */
export const OWN = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '')

/** Where what is extended lies: our own starter, a folder beside, or an installed package. */
function extendedFolder(from: string, name: string): string {
  if (name === STARTER) return OWN
  if (/^[./\\]/.test(name) || path.isAbsolute(name)) return path.resolve(from, name)
  const installed = above(from).map((folder) => path.join(folder, 'node_modules', name)).find((folder) => existsSync(path.join(folder, HANDBOOK_FILE)))
  return installed ?? path.resolve(from, name)
}

/** A folder and all that it lies in. */
const above = (folder: string): string[] => (path.dirname(folder) === folder ? [folder] : [folder, ...above(path.dirname(folder))])

const absent = (here: string, folder: string, folders: readonly string[]): string =>
  folders.length === 0 ? `There is no folder "${here}".` : `What this handbook extends is not there: no folder "${path.relative(folder, here)}". Mend extends.`

function unending(real: string, folders: readonly string[]): string | undefined {
  if (folders.includes(real)) return 'This handbook extends, by way of others, itself. Take out one extends.'
  return folders.length >= MOST_LAYERS ? `More than ${MOST_LAYERS} handbooks extend one another. Join some of them.` : undefined
}

async function realFolder(folder: string): Promise<string | undefined> {
  try {
    const real = await realpath(folder)
    return (await lstat(real)).isDirectory() ? real : undefined
  } catch {
    return undefined
  }
}

/** The files of one workspace that are ladders, pages, its handbook.yaml or lists of words, by name. `shown` is the folder as findings name it. */
async function filesOf(folder: string, shown: string, findings: Finding[], kept?: KeptFiles): Promise<SourceFile[]> {
  const names = [HANDBOOK_FILE, ...(await logoIn(folder)), ...(await wordListsIn(folder)), ...(await markdownIn(folder, 'ladders', shown, findings)), ...(await markdownIn(folder, 'content', shown, findings))]
  const files: SourceFile[] = []
  const straight = new Map<string, boolean>()
  for (const name of fewEnough(names, shown, findings)) {
    const within = path.dirname(path.join(folder, name))
    if (!straight.has(within)) straight.set(within, await isStraight(within))
    const bytes = straight.get(within) ? fileBytes(path.join(folder, name), kept) : 'a link leads to the folder it lies in'
    if (typeof bytes === 'string') {
      if (name.endsWith('.md') || bytes !== 'absent') findings.push(atTop(path.join(shown, name), 'files-are-text', `This file cannot be read: ${bytes}. Mend it or take it away.`))
    } else files.push({ file: name, bytes, ...(shown === '' ? {} : { shown: path.join(shown, name).replaceAll('\\', '/') }) })
  }
  return files
}

/** As many names as may be read; that there are more is found, so that nothing is left out unseen. */
export function fewEnough(names: readonly string[], shown: string, findings: Finding[], most = MOST_FILES): readonly string[] {
  if (names.length > most) findings.push(atTop(path.join(shown, HANDBOOK_FILE), 'files-are-few-enough', `This workspace has ${names.length} files; at most ${most} are read. Move some into a handbook that this one extends.`))
  return names.slice(0, most)
}

/** The name of the logo that handbook.yaml asks for. */
async function logoIn(folder: string): Promise<string[]> {
  const bytes = fileBytes(path.join(folder, HANDBOOK_FILE))
  const logo = typeof bytes === 'string' ? undefined : readHandbook({ file: HANDBOOK_FILE, bytes }).value?.logo
  return logo === undefined ? [] : [logo]
}

/** Files such as words.es.yaml, at the top of a workspace. */
export const WORD_LIST = /^words\.[A-Za-z0-9-]+\.yaml$/

const wordListsIn = async (folder: string): Promise<string[]> => (await readdir(folder).catch(() => [])).filter((name) => WORD_LIST.test(name)).toSorted(compareText)

/** True for a link that leads to a folder. */
async function isLinkedFolder(place: string): Promise<boolean> {
  const isLink = (await lstat(place).catch(() => undefined))?.isSymbolicLink() ?? false
  return isLink && ((await stat(place).catch(() => undefined))?.isDirectory() ?? false)
}

async function markdownIn(folder: string, under: string, shown: string, findings: Finding[]): Promise<string[]> {
  const found: string[] = []
  const linked = (name: string): void => void findings.push(atTop(path.join(shown, name), 'files-are-text', 'This is a link to a folder. Put the folder itself here; links are not followed.'))
  if (await isLinkedFolder(path.join(folder, under))) linked(under)
  const waiting = (await lstat(path.join(folder, under)).catch(() => undefined))?.isDirectory() ? [under] : []
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    const entries = await readdir(path.join(folder, at), { withFileTypes: true }).catch(() => [])
    for (const entry of entries) {
      const name = `${at}/${entry.name}`
      if (entry.name.startsWith('.')) continue
      if (entry.isDirectory() && !entry.name.endsWith('.md')) waiting.push(name)
      else if (entry.isFile() && entry.name.endsWith('.md')) found.push(name)
      else if (entry.name.endsWith('.md')) findings.push(atTop(path.join(shown, name), 'files-are-text', 'This is not a plain file. Put the file itself here; links, folders and devices are not followed.'))
      else if (await isLinkedFolder(path.join(folder, name))) linked(name)
    }
  }
  return found.toSorted(compareText)
}

/** True where the folder is where its name says, and no link leads to it. */
async function isStraight(folder: string): Promise<boolean> {
  const lies = await realpath(folder).catch(() => undefined)
  return lies === undefined || lies === folder
}
