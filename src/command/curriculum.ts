import path from 'node:path'
import { check } from '../check/index.ts'
import { inOrder, type Finding } from '../ladder/finding.ts'
import type { Athlete } from '../load/model.ts'
import { measure, type MeasuredCurriculum } from '../measure/measure.ts'
import { readCurriculum } from '../read/read-curriculum.ts'
import { readWorkspace, type Workspace } from '../site/disk.ts'
import type { Console, Typed } from './verb.ts'

/** The option every verb knows. */
export const workspaceOption = { workspace: { type: 'string' } } as const

/** What came of reading, measuring and checking a workspace. */
export type Checked = { readonly measured: MeasuredCurriculum | undefined; readonly findings: readonly Finding[]; readonly workspace: Workspace; readonly folder: string }

/** Reads, measures and checks the workspace that was named, or the folder the command was started in. */
export async function checkedWorkspace({ options }: Typed, { folder: started }: Pick<Console, 'folder'>, athlete?: Athlete): Promise<Checked> {
  const folder = path.resolve(started, typeof options.workspace === 'string' ? options.workspace : '.')
  const workspace = await readWorkspace(folder)
  const reading = workspace.layers.length === 0 ? { findings: [] } : readCurriculum(workspace.layers)
  const curriculum = 'value' in reading ? reading.value : undefined
  const measured = curriculum && measure(curriculum, athlete)
  const findings = inOrder([...workspace.findings, ...reading.findings, ...(measured ? check(measured) : [])])
  return { measured, findings, workspace, folder }
}
