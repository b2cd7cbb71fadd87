import { compare } from '../compare/compare.ts'
import { missing, type Outcome } from '../quantity/outcome.ts'
import { AVERAGE, measure, type MeasuredCurriculum, type Memory } from '../measure/measure.ts'
import type { EditionChanges } from '../page/changes-page.ts'
import { readCurriculum, type ReadMemory } from '../read/read-curriculum.ts'
import { commitOf, readWorkspaceAt } from './git.ts'

/** An earlier edition that was asked to stay, as it was. */
export type Kept = { readonly edition: string; readonly curriculum: MeasuredCurriculum }

/** The editions of a handbook: what each changed, and those that stay published. */
export type Editions = { readonly changes: readonly EditionChanges[]; readonly kept: readonly Kept[] }

/** Where an edition that stays is read. */
export const keptAt = (edition: string): string => `/editions/${edition.toLowerCase().replace(/[^a-z0-9.]+/g, '-')}/`

/** Reads each listed edition from git and compares it with the one before; the last is compared with the handbook as it is now. */
export async function readEditions(folder: string, now: MeasuredCurriculum): Promise<Editions> {
  const listed = (now.handbook.editions ?? []).filter(({ edition }) => edition !== now.handbook.edition).toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
  const current = now.handbook.editions?.find(({ edition }) => edition === now.handbook.edition)
  const once = { reading: new Map() as ReadMemory, measuring: new WeakMap() as Memory }
  const states: { edition: string; on: string | undefined; note: string | undefined; keep: boolean; state: Outcome<MeasuredCurriculum> }[] = []
  for (const { edition, on, note, keep, revision } of listed) states.push({ edition, on, note, keep, state: await at(folder, revision ?? `edition/${edition}`, once) })
  states.push({ edition: now.handbook.edition, on: current?.on, note: current?.note, keep: false, state: now })
  const changes = states.flatMap(({ edition, on, note, keep, state }, index): EditionChanges[] => {
    const before = states[index - 1]
    if (!before) return []
    const comparison = 'missing' in before.state ? before.state : 'missing' in state ? state : compare(before.state, state)
    return [{ edition, on, note, since: `edition ${before.edition}`, comparison, kept: keep ? keptAt(edition) : undefined }]
  })
  const kept = states.flatMap(({ edition, keep, state }) => (keep && !('missing' in state) ? [{ edition, curriculum: state }] : []))
  return { changes: changes.toReversed(), kept }
}

async function at(folder: string, revision: string, once: { reading: ReadMemory; measuring: Memory }): Promise<Outcome<MeasuredCurriculum>> {
  const commit = await commitOf(folder, revision)
  if ('failed' in commit) return missing(commit.failed)
  const { layers, findings } = await readWorkspaceAt(commit, folder)
  const reading = layers.length === 0 ? { findings } : readCurriculum(layers, once.reading)
  const value = 'value' in reading ? reading.value : undefined
  return value ? measure(value, AVERAGE, once.measuring) : missing(`the handbook cannot be read at ${revision}`)
}
