import path from 'node:path'
import type { SourceFile } from '../ladder/curriculum.ts'
import type { Finding } from '../ladder/finding.ts'
import { HANDBOOK_FILE, readHandbook } from '../read/read-curriculum.ts'
import { readLadderFile } from '../read/read-ladder.ts'
import { readPage } from '../read/read-page.ts'
import { languageIn, readLadderTranslation, readPageTranslation, readWordList } from '../read/read-translation.ts'
import type { Reading } from '../read/text.ts'
import { disk, readWorkspace, WORD_LIST, type Workspace } from './disk.ts'

/** A workspace with unsaved text laid over it. `broken` holds what is wrong with files that do not read now, and for which the last text that did stands in. */
export type Overlaid = Workspace & { readonly broken: ReadonlyMap<string, readonly Finding[]> }

export type Overlay = {
  /** Lays text over a file, or with undefined takes it off again. */
  lay(file: string, text: string | undefined): void
  /** Forgets what was read from disk. */
  forget(): void
  /** What lies over a file, if anything does. */
  over(file: string): Uint8Array | undefined
  read(): Promise<Overlaid>
}

type Kept = { readonly files: readonly SourceFile[]; readonly findings: readonly Finding[] }

/** Lays unsaved text over the workspace in a folder, and reads from disk only what was not read before. */
export function overlayOn(folder: string): Overlay {
  const laid = new Map<string, Uint8Array>()
  const stood = new Map<string, Uint8Array>()
  let onDisk = new Map<string, Kept>()

  async function kept(name: string, shown: string): Promise<Kept> {
    const into = onDisk
    const before = into.get(name)
    if (before) return before
    const findings: Finding[] = []
    const now = { files: await disk.files(name, shown, findings), findings }
    into.set(name, now)
    return now
  }

  function standingIn(source: SourceFile, name: string, broken: Map<string, readonly Finding[]>): SourceFile {
    if (!laid.has(name)) return source
    const { reads, findings } = triedAlone(source)
    if (reads) stood.set(name, source.bytes)
    const before = stood.get(name)
    if (reads || !before) return source
    broken.set(source.shown ?? source.file, findings)
    return { ...source, bytes: before }
  }

  return {
    lay(file, text) {
      if (text === undefined) return void laid.delete(file)
      const before = [...onDisk].flatMap(([name, { files }]) => files.filter((source) => path.join(name, source.file) === file))[0]
      if (before && !stood.has(file) && triedAlone(before).reads) stood.set(file, before.bytes)
      laid.set(file, new TextEncoder().encode(text))
    },
    forget: () => void (onDisk = new Map()),
    over: (file) => laid.get(file),
    async read() {
      const broken = new Map<string, readonly Finding[]>()
      const workspace = await readWorkspace(folder, {
        real: (name) => disk.real(name),
        async files(name, shown, findings) {
          const { files, findings: found } = await kept(name, shown)
          findings.push(...found)
          return overlaid(name, shown, files, laid).map((source) => standingIn(source, path.join(name, source.file), broken))
        },
      })
      return { ...workspace, broken }
    },
  }
}

/** One file read by itself: whether it reads at all, and what is wrong with it. */
function triedAlone(source: SourceFile): { readonly reads: boolean; readonly findings: readonly Finding[] } {
  const reading = readAlone(source)
  return { reads: 'value' in reading && reading.value !== undefined, findings: reading.findings }
}

function readAlone(source: SourceFile): Reading<unknown> {
  const { file, shown = file, bytes } = source
  if (file === HANDBOOK_FILE) return readHandbook(source)
  if (WORD_LIST.test(file)) return readWordList(source)
  const translated = languageIn(file) !== undefined
  if (file.startsWith('content/')) return translated ? readPageTranslation(shown, bytes) : readPage(file, shown, bytes, '')
  return translated ? readLadderTranslation(shown, bytes) : readLadderFile(shown, bytes, '')
}

const isLaid = (file: string): boolean => file === HANDBOOK_FILE || WORD_LIST.test(file) || /^(?:ladders|content)\/.+\.md$/.test(file)

/** The files of a folder with the unsaved text in place of what is on disk, and the files that are not on disk yet. */
function overlaid(folder: string, shown: string, files: readonly SourceFile[], laid: ReadonlyMap<string, Uint8Array>): SourceFile[] {
  const inside = new Map([...laid].flatMap(([name, bytes]) => (name.startsWith(folder + path.sep) ? [[path.relative(folder, name).replaceAll('\\', '/'), bytes] as const] : [])))
  const added = [...inside.keys()].filter((file) => isLaid(file) && !files.some((source) => source.file === file))
  return [
    ...files.map((source) => ({ ...source, bytes: inside.get(source.file) ?? source.bytes })),
    ...added.map((file) => ({ file, bytes: inside.get(file) ?? new Uint8Array(), ...(shown === '' ? {} : { shown: path.join(shown, file).replaceAll('\\', '/') }) })),
  ]
}
