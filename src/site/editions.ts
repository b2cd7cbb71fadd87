import { existsSync } from 'node:fs'
import path from 'node:path'
import { compare } from '../compare/compare.ts'
import { missing, type Outcome } from '../quantity/outcome.ts'
import { AVERAGE, measure, type MeasuredCurriculum, type Memory } from '../measure/measure.ts'
import type { EditionChanges } from '../page/changes-page.ts'
import { HANDBOOK_FILE, readCurriculum, type ReadMemory } from '../read/read-curriculum.ts'
import { disk, readWorkspace, type Workspace } from './disk.ts'
import { commitOf, readWorkspaceAt } from './git.ts'

/** An earlier edition that was asked to stay, as it was. */
export type Kept = { readonly edition: string; readonly curriculum: MeasuredCurriculum }

/** The editions of a handbook: what each changed, and those that stay published. */
export type Editions = { readonly changes: readonly EditionChanges[]; readonly kept: readonly Kept[] }

/** Where an edition that stays is read. */
export const keptAt = (edition: string): string => `/editions/${edition.toLowerCase().replace(/[^a-z0-9.]+/g, '-')}/`

/** Editions that stay are at the root, in the language they were written in: a level up from any other. */
export const seenFrom = (editions: readonly EditionChanges[], under: string): EditionChanges[] => editions.map((each) => (each.kept === undefined || under === '' ? each : { ...each, kept: `/..${each.kept}` }))

/** Reads each listed edition from its folder or from git and compares it with the one before; the last is compared with the handbook as it is now. */
export async function readEditions(folder: string, now: MeasuredCurriculum): Promise<Editions> {
  const listed = (now.handbook.editions ?? []).filter(({ edition }) => edition !== now.handbook.edition).toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
  const current = now.handbook.editions?.find(({ edition }) => edition === now.handbook.edition)
  const once: Once = { reading: new Map(), measuring: new WeakMap() }
  const states: { edition: string; on: string | undefined; note: string | undefined; keep: boolean; below: boolean; state: Outcome<MeasuredCurriculum> }[] = []
  for (const { edition, on, note, keep, revision } of listed) {
    const copy = revision === undefined ? copyOf(folder, edition) : undefined
    const state = copy === undefined ? await at(folder, revision ?? `edition/${edition}`, once) : measured(await readCopy(folder, copy), once, copy)
    states.push({ edition, on, note, keep, below: copy !== undefined && now.handbook.extends !== undefined, state })
  }
  states.push({ edition: now.handbook.edition, on: current?.on, note: current?.note, keep: false, below: false, state: now })
  const changes = states.flatMap(({ edition, on, note, keep, below, state }, index): EditionChanges[] => {
    const before = states[index - 1]
    if (!before) return []
    const comparison = 'missing' in before.state ? before.state : 'missing' in state ? state : compare(before.state, state)
    return [{ edition, on, note, since: `edition ${before.edition}`, comparison, own_only: before.below, kept: keep ? keptAt(edition) : undefined, kept_own_only: keep && below }]
  })
  const kept = states.flatMap(({ edition, keep, state }) => (keep && !('missing' in state) ? [{ edition, curriculum: state }] : []))
  return { changes: changes.toReversed(), kept }
}

type Once = { reading: ReadMemory; measuring: Memory }

async function at(folder: string, revision: string, once: Once): Promise<Outcome<MeasuredCurriculum>> {
  const commit = await commitOf(folder, revision)
  return 'failed' in commit ? missing(commit.failed) : measured(await readWorkspaceAt(commit, folder), once, revision)
}

function measured({ layers, findings }: Workspace, once: Once, where: string): Outcome<MeasuredCurriculum> {
  const reading = layers.length === 0 ? { findings } : readCurriculum(layers, once.reading)
  const value = 'value' in reading ? reading.value : undefined
  return value ? measure(value, AVERAGE, once.measuring) : missing(`the handbook cannot be read at ${where}`)
}

/** The folder in which an edition's own files were kept, as `editions/2026.1`, where there is one. */
function copyOf(folder: string, edition: string): string | undefined {
  const copy = `editions/${edition}`
  return /^[0-9A-Za-z][0-9A-Za-z.-]*$/.test(edition) && existsSync(path.join(folder, copy, HANDBOOK_FILE)) ? copy : undefined
}

/** A workspace with its own files from a copy of them. What it extends is named as from the workspace, and read as it is now. */
async function readCopy(folder: string, copy: string): Promise<Workspace> {
  const own = await disk.real(folder)
  return readWorkspace(folder, { real: disk.real, files: (place, shown, findings) => disk.files(place === own ? path.join(place, copy) : place, shown, findings) })
}
