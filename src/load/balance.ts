/**
 * Standing poses that balance: the middle of all masses above a given place on the ground.
 * Trunk and working shin lean alike, the trunk never backwards; where the ankle has no more bend, the trunk leans on.
 */
import type { Body } from './body.ts'
import { root } from './root.ts'
import { centreOf, type Standing } from './standing-body.ts'
import { radians } from '../quantity/unit.ts'

/** As far as a shin leans over a flat foot. Common practice puts it at 35 to 40 degrees. */
const SHIN_MOST = radians(35)
const SHIN_LEAST = radians(-12)
const TRUNK_MOST = radians(88)

/** A body by the lean of its shin and its trunk, or undefined where it does not close. */
export type Made = (shin: number, trunk: number) => Standing | undefined

/** How far the middle of the masses stands ahead of `x`. */
export const ahead = (body: Body, made: Standing | undefined, x: number): number | undefined => made && centreOf(body, made).x - x

/** The body whose masses stand above `x`, or undefined where it cannot balance. */
export function balanced(body: Body, make: Made, x: number): Standing | undefined {
  const alike = root((shin) => ahead(body, make(shin, Math.max(shin, 0)), x), SHIN_LEAST, SHIN_MOST)
  if (alike !== undefined) return make(alike, Math.max(alike, 0))
  const further = root((trunk) => ahead(body, make(SHIN_MOST, trunk), x), SHIN_MOST, TRUNK_MOST)
  return further === undefined ? undefined : make(SHIN_MOST, further)
}
