import os from 'node:os'
import { Misuse, type Typed } from './verb.ts'

/** More threads than this gain nothing: what they wait for is one. Chosen by us. */
const MOST = 16

export const workersOption = { workers: { type: 'string' } } as const

/** How many cores may work side by side: as many as there are, unless said. */
export function workersAsked({ options: { workers } }: Typed): number {
  if (workers === undefined) return Math.min(MOST, os.availableParallelism())
  const asked = Number(workers)
  if (!Number.isInteger(asked) || asked < 1 || asked > MOST) throw new Misuse(`--workers must be a whole number from 1 to ${MOST}.`)
  return asked
}
