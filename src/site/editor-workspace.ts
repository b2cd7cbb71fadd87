import path from 'node:path'
import { check, type CheckMemory } from '../check/index.ts'
import { outlineOf, type EditorFile, type Outline } from '../editor/outline.ts'
import type { SourceFile } from '../ladder/curriculum.ts'
import { inOrder, type Finding } from '../ladder/finding.ts'
import { measure, type Memory, type MeasuredCurriculum } from '../measure/measure.ts'
import { HANDBOOK_FILE, readCurriculum, readHandbook, type ReadMemory } from '../read/read-curriculum.ts'
import { readLadderFile } from '../read/read-ladder.ts'
import { readPage } from '../read/read-page.ts'
import { languageIn, readLadderTranslation, readPageTranslation, readWordList } from '../read/read-translation.ts'
import type { Reading } from '../read/text.ts'
import { disk, readWorkspace, WORD_LIST, type Reader, type Workspace } from './disk.ts'

/** What is known of a workspace at one moment: its files, what is to be put right, and the last state that could be measured. */
export type EditorState = {
  readonly files: readonly EditorFile[]
  readonly findings: readonly Finding[]
  readonly untold: readonly Finding[]
  readonly measured: MeasuredCurriculum | undefined
  readonly folders: readonly string[]
}

/** A workspace with unsaved text laid over it. */
export type EditorWorkspace = {
  readonly folder: string
  /** Lays text over a file, or with undefined takes it off again. */
  lay(file: string, text: string | undefined): void
  /** Forgets what was read from disk. */
  forget(): void
  /** The files as they are this moment, not yet checked. */
  files(): Promise<readonly EditorFile[]>
  /** Everything, checked; the same value until something changes. */
  state(): Promise<EditorState>
}

/** The day it is, by which silences end. */
const today = (): string => new Date().toISOString().slice(0, 10)

/** Opens the workspace in a folder, given by its true name. */
export function editorWorkspace(folder: string): EditorWorkspace {
  const laid = new Map<string, Uint8Array>()
  const stood = new Map<string, Uint8Array>()
  const broken = new Map<string, readonly Finding[]>()
  const onDisk = new Map<string, { readonly files: readonly SourceFile[]; readonly findings: readonly Finding[] }>()
  const outlines = new WeakMap<Uint8Array, EditorFile>()
  const memory = { read: new Map() as ReadMemory, measured: new WeakMap() as Memory, checked: new WeakMap() as CheckMemory }
  let now: Promise<EditorState> | undefined
  let read: Promise<Workspace> | undefined
  let last: MeasuredCurriculum | undefined

  const reader: Reader = {
    real: (name) => disk.real(name),
    async files(name, shown, findings) {
      let kept = onDisk.get(name)
      if (!kept) {
        const found: Finding[] = []
        kept = { files: await disk.files(name, shown, found), findings: found }
        onDisk.set(name, kept)
      }
      findings.push(...kept.findings)
      return overlaid(name, shown, kept.files, laid).map((source) => standingIn(source, path.join(name, source.file)))
    },
  }
  const workspace = (): Promise<Workspace> => (read ??= readWorkspace(folder, reader))
  const changed = (): void => {
    broken.clear()
    now = undefined
    read = undefined
  }

  async function whole(): Promise<EditorState> {
    const { layers, folders, findings } = await workspace()
    const reading = layers.length === 0 ? { findings: [] } : readCurriculum(layers, memory.read)
    const curriculum = 'value' in reading ? reading.value : undefined
    const measured = curriculum && measure(curriculum, undefined, memory.measured)
    const found = measured ? check(measured, today(), memory.checked) : { findings: [], untold: [] }
    last = measured ?? last
    const of = (list: readonly Finding[]): Finding[] => list.filter(({ file }) => !broken.has(file))
    return {
      files: filesOf(layers, folders),
      findings: inOrder([...findings, ...of(reading.findings), ...of(found.findings), ...[...broken.values()].flat()]),
      untold: inOrder(of(found.untold)),
      measured: last,
      folders,
    }
  }

  /** While a file does not read, the last text of it that did stands in for it, and only what is wrong with it now is said of it. */
  function standingIn(source: SourceFile, name: string): SourceFile {
    if (!laid.has(name)) return source
    const { reads, findings } = triedAlone(source)
    if (reads) stood.set(name, source.bytes)
    const before = stood.get(name)
    if (reads || !before) return source
    broken.set(source.shown ?? source.file, findings)
    return { ...source, bytes: before }
  }

  const filesOf = (layers: Workspace['layers'], folders: readonly string[]): EditorFile[] =>
    layers.flatMap(({ files }, layer) =>
      files.filter(({ file }) => /\.(md|yaml)$/.test(file)).map((source) => {
        const bytes = laid.get(path.join(folders[layer] ?? '', source.file)) ?? source.bytes
        const kept = outlines.get(bytes) ?? editorFile({ ...source, bytes }, layer, folders[layer] === folder)
        outlines.set(bytes, kept)
        return kept
      }),
    )

  return {
    folder,
    lay(file, text) {
      if (text === undefined) laid.delete(file)
      else {
        const before = [...onDisk].flatMap(([name, { files }]) => files.filter((source) => path.join(name, source.file) === file))[0]
        if (before && !stood.has(file) && triedAlone(before).reads) stood.set(file, before.bytes)
        laid.set(file, new TextEncoder().encode(text))
      }
      changed()
    },
    forget() {
      onDisk.clear()
      changed()
    },
    async files() {
      const { layers, folders } = await workspace()
      return filesOf(layers, folders)
    },
    state: () => (now ??= whole()),
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

/** A file that is decoded and outlined once, when somebody asks. */
function editorFile({ file, shown, bytes }: SourceFile, layer: number, own: boolean): EditorFile {
  let text: string | undefined
  let outline: Outline | undefined
  const decoded = (): string => (text ??= new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes))
  return { file, shown: shown ?? file, layer, own, text: decoded, outline: () => (outline ??= outlineOf(file, decoded())) }
}
