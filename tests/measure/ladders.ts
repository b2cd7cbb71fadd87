import assert from 'node:assert/strict'
import { measureLadder, type MeasuredLadder } from '../../src/measure/measure.ts'
import { readLadderFile } from '../../src/read/read-ladder.ts'
import { bytes } from '../read/said.ts'

const NOTHING_KNOWN = { rungs: new Set<string>(), pages: new Set<string>() }

/** What a ladder of a test is made from; a rung is an id and the rest of its line. */
export type Made = { readonly rungs: readonly (readonly [id: string, more: string])[]; readonly aim?: string; readonly standard?: string; readonly first_reps?: number | undefined; readonly sessions_per_week?: number }

/** A measured ladder of these rungs, in which nothing is wrong. */
export function ladderOf({ rungs, aim = rungs.at(-1)?.[0] ?? '', standard = 'reps: 10, sessions: 2', sessions_per_week = 2, ...given }: Made): MeasuredLadder {
  const { first_reps } = { first_reps: 3, ...given }
  const first = first_reps === undefined ? '' : `first_reps: ${first_reps}\n`
  const lines = rungs.map(([id, more]) => `  - { id: ${id}, title: The rung ${id}, ${more} }\n`).join('')
  const text = `---\nid: pull\ntitle: Pull\nmovement: hip hinge\naim: ${aim}\nequipment: [bar]\nstandard: { sets: 3, ${standard} }\n${first}sessions_per_week: ${sessions_per_week}\nform: [bar close to the legs]\nrungs:\n${lines}stop: [pain in the back]\nask_first: [a hernia]\n---\n`
  const { value, findings } = readLadderFile('ladders/pull.md', bytes(text), 'A club')
  assert.deepEqual(findings, [])
  assert.ok(value?.kind === 'ladder')
  return measureLadder(value.ladder, NOTHING_KNOWN)
}

/** Rungs of these weights, called after them: "kg-40". */
export const weights = (...kg: readonly number[]): [id: string, more: string][] => kg.map((load) => [`kg-${String(load).replace('.', '-')}`, `load: { model: one-rep-max, load_kg: ${load} }`])
