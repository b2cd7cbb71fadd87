import { realpath } from 'node:fs/promises'
import path from 'node:path'
import { check, type Checked as CheckedLadders, type CheckMemory } from '../check/index.ts'
import type { Curriculum, Layer } from '../ladder/curriculum.ts'
import { inOrder, type Finding } from '../ladder/finding.ts'
import { isFirst, partOf, type Part } from '../ladder/part.ts'
import type { Athlete } from '../load/model.ts'
import { measure, type MeasuredCurriculum, type Memory } from '../measure/measure.ts'
import { onceOfEach } from '../quantity/once.ts'
import { readCurriculum, type ReadMemory } from '../read/read-curriculum.ts'
import type { Reading } from '../read/text.ts'
import type { Kept } from '../site/cache.ts'
import { checkShare, checkTeam, shareOf, type CheckTeam } from '../site/check-team.ts'
import { diskKeeping, readWorkspace, type Workspace } from '../site/disk.ts'
import type { KeptFiles } from '../site/file-bytes.ts'
import { pictureFindings } from '../site/pictures.ts'
import { readingsOnce } from '../site/readings-once.ts'
import type { Sources } from './report.ts'
import type { Console, Typed } from './verb.ts'

/** The option every verb knows. */
export const workspaceOption = { workspace: { type: 'string' } } as const

/** The folder of the workspace that was named, by its one true name. */
export async function folderOf({ options }: Typed, { folder }: Pick<Console, 'folder'>): Promise<string> {
  const named = path.resolve(folder, typeof options.workspace === 'string' ? options.workspace : '.')
  return realpath(named).catch(() => named)
}

/** What is to be put right in a workspace, what could not be told, and the lines it stands in. */
export type Found = {
  readonly findings: readonly Finding[]
  readonly untold: readonly Finding[]
  readonly sources: Sources
  readonly workspace: Workspace
  readonly folder: string
}

/** What came of reading, measuring and checking a workspace. */
export type Checked = Found & { readonly measured: MeasuredCurriculum | undefined }

/** What was read and measured before, for who does it again and again. */
export type Seen = { readonly files: KeptFiles; readonly reading: ReadMemory; readonly measuring: Memory; readonly checking: CheckMemory }

/** For the first time, of what is done again and again. */
export const nothingSeen = (): Seen => ({ files: new Map(), reading: new Map(), measuring: new WeakMap(), checking: new WeakMap() })

/** What saves work: what this process saw before, and what an earlier one kept. */
export type Saving = { readonly seen?: Seen | undefined; readonly kept?: KeptOf | undefined }

/** What a check looks at, and who does it: of a part, what is read badly is said by the first. */
export type Checking = { readonly part?: Part | undefined; readonly kept?: KeptOf | undefined; readonly hands?: HandsFor | undefined }

/** Hands worth their while for so many files. */
export type HandsFor = (files: number) => number

/** What an earlier process kept, where it is worth asking for so many files. */
export type KeptOf = (files: number) => Promise<Kept | undefined>

/** Reads, measures and checks the workspace that was named, or the folder the command was started in. */
export async function checkedWorkspace(typed: Typed, console: Pick<Console, 'folder' | 'progress'>, athlete?: Athlete, { seen, kept }: Saving = {}): Promise<Checked> {
  const read = await readNamed(typed, console, { seen, kept })
  const measured = read.curriculum && measure(read.curriculum, athlete, seen?.measuring)
  const found = measured ? check(measured, today(), seen?.checking, 'findings') : NOTHING
  return { measured, ...(await foundIn(read, found, measured)) }
}

/** The same for who wants findings alone: no measured ladder is kept once it was checked, and several hands may check. */
export async function foundInWorkspace(typed: Typed, console: Pick<Console, 'folder' | 'progress'>, asked: 'everything' | 'findings', { part, kept, hands = ONE }: Checking = {}): Promise<Found> {
  const asks = { part, today: today(), asked }
  let team: CheckTeam | undefined
  try {
    const { curriculum, findings, ...read } = await readNamed(typed, console, { kept }, async (layers, before) => {
      const many = hands(countOf(layers))
      team = many > 1 ? await checkTeam(layers, before, many, asks) : undefined
    })
    const found = curriculum ? await (team?.checked(curriculum) ?? checkShare(shareOf(curriculum, asks), asks)) : NOTHING
    return await foundIn({ ...read, findings: part && !isFirst(part) ? [] : findings }, found, curriculum && part ? partOf(curriculum, part) : curriculum)
  } finally {
    team?.end()
  }
}

const ONE: HandsFor = () => 1

const NOTHING = { findings: [], untold: [] }

type Read = { readonly curriculum: Curriculum | undefined; readonly findings: readonly Finding[]; readonly workspace: Workspace; readonly folder: string }

/** Reads the workspace that was named. `ahead` may begin with whatever is to be done with its files. */
async function readNamed({ options }: Typed, { folder: started, progress }: Pick<Console, 'folder' | 'progress'>, { seen, kept }: Saving, ahead?: (layers: readonly Layer[], kept: Kept) => Promise<void>): Promise<Read> {
  const folder = path.resolve(started, typeof options.workspace === 'string' ? options.workspace : '.')
  progress('reading the ladders')
  const workspace = await readWorkspace(folder, diskKeeping(seen?.files))
  const before = await kept?.(countOf(workspace.layers))
  if (before) await ahead?.(workspace.layers, before)
  const readers = before && (await readingsOnce(workspace.layers, before))
  const reading: Reading<Curriculum> = workspace.layers.length === 0 ? { findings: [] } : readCurriculum(workspace.layers, seen?.reading, readers)
  if (reading.value) progress('computing the loads, and checking')
  return { curriculum: reading.value, findings: [...workspace.findings, ...reading.findings], workspace, folder }
}

const countOf = (layers: readonly Layer[]): number => layers.reduce((sum, { files }) => sum + files.length, 0)

/** What was found in files, ladders and pictures, in file order. */
async function foundIn({ findings, workspace, folder }: Omit<Read, 'curriculum'>, checked: CheckedLadders, shown: Pick<Curriculum, 'ladders' | 'pages'> | undefined): Promise<Found> {
  const pictures = shown ? await pictureFindings(shown, { folder, layers: workspace.folders }) : []
  return { findings: inOrder([...findings, ...checked.findings, ...pictures]), untold: inOrder(checked.untold), sources: sourcesOf(workspace), workspace, folder }
}

/** The day it is, by which silences end. */
const today = (): string => new Date().toISOString().slice(0, 10)

/** The lines of every file, as findings name them; decoded for those that a finding stands in. */
function sourcesOf({ layers }: Workspace): Sources {
  const files = new Map(layers.flatMap((layer) => layer.files.map(({ file, shown, bytes }) => [shown ?? file, bytes] as const)))
  return {
    get(file) {
      const bytes = files.get(file)
      return bytes && linesOf(bytes)
    },
  }
}

const linesOf = onceOfEach((bytes: Uint8Array) => new TextDecoder().decode(bytes).split(/\r\n|\r|\n/))
