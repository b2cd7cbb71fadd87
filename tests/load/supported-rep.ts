import assert from 'node:assert/strict'
import type { Body } from '../../src/load/body.ts'
import type { Key } from '../../src/load/model.ts'
import { supportedBody, supportedRep } from '../../src/load/supported-body.ts'
import { isMissing, type Outcome } from '../../src/quantity/outcome.ts'

type Input = Parameters<typeof supportedRep>[0]
type Settled = Extract<ReturnType<typeof supportedRep>, { lowest: unknown }>

/** Which way the force on the hands points, and where a flat foot presses, from heel (0) to ball (1). */
export type Touch = Parameters<typeof supportedRep>[3]
/** What a coach would write; the rest is as the model fills it in. */
export type SetUp = Pick<Input, 'facing' | 'feet' | 'hands'> & Partial<Input>
/** One still of the rep, and the forces that hold it, as shares of body weight. */
export type Held = Settled['lowest']

/** The model's defaults, and nothing for what may be left out. */
const UNSAID = Object.fromEntries(Object.entries<Key>(supportedBody.keys).map(([name, key]) => [name, 'default' in key ? key.default : undefined])) as Omit<Input, 'facing' | 'feet' | 'hands'> // every key is there, as the model lists it

/** One body under one assumption, at the start and at the end of the rep: arms straight, arms bent. */
export function supported(setUp: SetUp, stature_m: number, body: Body, touch: Touch): Outcome<{ readonly start: Outcome<Held>; readonly end: Outcome<Held> }> {
  const rep = supportedRep({ ...UNSAID, ...setUp }, stature_m, body, touch)
  if (isMissing(rep)) return rep
  return setUp.facing === 'down' ? { start: rep.highest, end: rep.lowest } : { start: rep.lowest, end: rep.highest } // a press-up starts high, a row low
}

/** The same where it must be settled. */
export function held(setUp: SetUp, stature_m: number, body: Body, touch: Touch, at: 'start' | 'end'): Held {
  const rep = supported(setUp, stature_m, body, touch)
  if (isMissing(rep)) return assert.fail(rep.missing)
  const still = rep[at]
  return isMissing(still) ? assert.fail(still.missing) : still
}
