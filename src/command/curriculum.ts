import { realpath } from 'node:fs/promises'
import path from 'node:path'
import { check, type CheckMemory } from '../check/index.ts'
import { inOrder, type Finding } from '../ladder/finding.ts'
import { isFirst, type Part } from '../ladder/part.ts'
import type { Athlete } from '../load/model.ts'
import { onceOfEach } from '../quantity/once.ts'
import { measure, type MeasuredCurriculum, type Memory } from '../measure/measure.ts'
import { readCurriculum, type ReadMemory } from '../read/read-curriculum.ts'
import { diskKeeping, readWorkspace, type Workspace } from '../site/disk.ts'
import type { KeptFiles } from '../site/file-bytes.ts'
import { pictureFindings } from '../site/pictures.ts'
import type { Sources } from './report.ts'
import type { Console, Typed } from './verb.ts'

/** The option every verb knows. */
export const workspaceOption = { workspace: { type: 'string' } } as const

/** The folder of the workspace that was named, by its one true name. */
export async function folderOf({ options }: Typed, { folder }: Pick<Console, 'folder'>): Promise<string> {
  const named = path.resolve(folder, typeof options.workspace === 'string' ? options.workspace : '.')
  return realpath(named).catch(() => named)
}

/** What came of reading, measuring and checking a workspace. */
export type Checked = {
  readonly measured: MeasuredCurriculum | undefined
  readonly findings: readonly Finding[]
  readonly untold: readonly Finding[]
  readonly sources: Sources
  readonly workspace: Workspace
  readonly folder: string
}

/** What was read and measured before, for who does it again and again. */
export type Seen = { readonly files: KeptFiles; readonly reading: ReadMemory; readonly measuring: Memory; readonly checking: CheckMemory }

/** Reads, measures and checks the workspace that was named, or the folder the command was started in; of a part, what is read badly is said by the first. */
export async function checkedWorkspace({ options }: Typed, { folder: started, progress }: Pick<Console, 'folder' | 'progress'>, athlete?: Athlete, seen?: Seen, part?: Part): Promise<Checked> {
  const folder = path.resolve(started, typeof options.workspace === 'string' ? options.workspace : '.')
  progress('reading the ladders')
  const workspace = await readWorkspace(folder, diskKeeping(seen?.files))
  const reading = workspace.layers.length === 0 ? { findings: [] } : readCurriculum(workspace.layers, seen?.reading)
  const curriculum = 'value' in reading ? reading.value : undefined
  if (curriculum) progress('computing the loads')
  const measured = curriculum && measure(curriculum, athlete, seen?.measuring, part)
  const found = measured ? check(measured, today(), seen?.checking) : { findings: [], untold: [] }
  const pictures = measured ? await pictureFindings(measured, { folder, layers: workspace.folders }) : []
  const findings = inOrder([...(part && !isFirst(part) ? [] : [...workspace.findings, ...reading.findings]), ...found.findings, ...pictures])
  return { measured, findings, untold: inOrder(found.untold), sources: sourcesOf(workspace), workspace, folder }
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
