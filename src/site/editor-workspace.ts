import path from 'node:path'
import { check, type CheckMemory } from '../check/index.ts'
import type { Around } from '../editor/choices.ts'
import { outlineOf, type EditorFile, type Outline } from '../editor/outline.ts'
import type { Curriculum, SourceFile } from '../ladder/curriculum.ts'
import { inOrder, type Finding } from '../ladder/finding.ts'
import { measure, type Memory } from '../measure/measure.ts'
import { readCurriculum, type ReadMemory } from '../read/read-curriculum.ts'
import { overlayOn, type Overlaid } from './editor-overlay.ts'
import { inTurns } from './in-turns.ts'

/** What is to be put right in a workspace, and the files it stands in. */
export type EditorState = { readonly files: readonly EditorFile[]; readonly findings: readonly Finding[]; readonly untold: readonly Finding[] }

/** A workspace with unsaved text laid over it. */
export type EditorWorkspace = {
  readonly folder: string
  /** Lays text over a file, or with undefined takes it off again. */
  lay(file: string, text: string | undefined): void
  /** Forgets what was read from disk. */
  forget(): void
  /** What an answer about one place needs: read, and measured only as far as it asks. */
  around(): Promise<Around>
  /** Everything, checked; the same value until something changes. */
  state(): Promise<EditorState>
}

type Now = { readonly overlaid: Overlaid; readonly files: readonly EditorFile[]; readonly curriculum: Curriculum | undefined; readonly findings: readonly Finding[] }

/** The day it is, by which silences end. */
const today = (): string => new Date().toISOString().slice(0, 10)

/** Opens the workspace in a folder, given by its true name. */
export function editorWorkspace(folder: string): EditorWorkspace {
  const overlay = overlayOn(folder)
  const outlines = new WeakMap<Uint8Array, EditorFile>()
  const reading: ReadMemory = new Map()
  const memory = { measured: new WeakMap() as Memory, checked: new WeakMap() as CheckMemory }
  let read: Promise<Now> | undefined
  let checked: Promise<EditorState> | undefined
  let last: Curriculum | undefined

  const changed = (): void => {
    read = undefined
    checked = undefined
  }
  const now = (): Promise<Now> => (read ??= readNow())

  async function readNow(): Promise<Now> {
    const overlaid = await overlay.read()
    const { value: curriculum, findings } = overlaid.layers.length === 0 ? { value: undefined, findings: [] } : readCurriculum(overlaid.layers, reading)
    last = curriculum ?? last
    return { overlaid, files: filesOf(overlaid), curriculum, findings }
  }

  const filesOf = ({ layers, folders }: Overlaid): EditorFile[] =>
    layers.flatMap(({ files }, layer) =>
      files.filter(({ file }) => /\.(md|yaml)$/.test(file)).map((source) => {
        const bytes = overlay.over(path.join(folders[layer] ?? '', source.file)) ?? source.bytes
        const kept = outlines.get(bytes) ?? editorFile({ ...source, bytes }, layer, folders[layer] === folder)
        outlines.set(bytes, kept)
        return kept
      }),
    )

  /** Ladders that were not measured or checked before are so in turns, so that a large workspace answers from the first second. */
  async function checkNow(): Promise<EditorState> {
    const mine = now()
    const isOver = (): boolean => read !== mine
    const { overlaid, files, curriculum, findings } = await mine
    const day = today()
    let [told, untold]: [readonly Finding[], readonly Finding[]] = [[], []]
    if (curriculum) {
      await inTurns(curriculum.ladders.filter(({ rungs }) => !memory.measured.has(rungs)), (ladder) => void measure({ ...curriculum, ladders: [ladder], pages: [] }, undefined, memory.measured), isOver)
      if (isOver()) return state()
      const measured = measure(curriculum, undefined, memory.measured)
      await inTurns(measured.ladders.filter((ladder) => !memory.checked.has(ladder)), (ladder) => void check({ ...measured, ladders: [ladder], pages: [] }, day, memory.checked), isOver)
      if (isOver()) return state()
      ;({ findings: told, untold } = check(measured, day, memory.checked))
    }
    const { broken } = overlaid
    const standing = (list: readonly Finding[]): Finding[] => list.filter(({ file }) => !broken.has(file))
    return { files, findings: inOrder([...overlaid.findings, ...standing(findings), ...standing(told), ...[...broken.values()].flat()]), untold: inOrder(standing(untold)) }
  }
  const state = (): Promise<EditorState> => (checked ??= checkNow())

  return {
    folder,
    lay(file, text) {
      overlay.lay(file, text)
      changed()
    },
    forget() {
      overlay.forget()
      changed()
    },
    async around() {
      const { files } = await now()
      const curriculum = last
      return {
        files,
        curriculum,
        measured(id) {
          const ladder = curriculum?.ladders.find((candidate) => candidate.id === id)
          return curriculum && ladder ? measure({ ...curriculum, ladders: [ladder], pages: [] }, undefined, memory.measured).ladders[0] : undefined
        },
      }
    },
    state,
  }
}

/** A file that is decoded and outlined once, when somebody asks. */
function editorFile({ file, shown, bytes }: SourceFile, layer: number, own: boolean): EditorFile {
  let text: string | undefined
  let outline: Outline | undefined
  const decoded = (): string => (text ??= new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes))
  return { file, shown: shown ?? file, layer, own, text: decoded, outline: () => (outline ??= outlineOf(file, decoded())) }
}
