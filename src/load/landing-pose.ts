/**
 * A landing at touch-down and at its deepest: the middle of the body sinks by the travel between them, in balance.
 * Lengths are shares of stature; the ground is y = 0, the athlete looks to +x.
 */
import { missing, type Outcome } from '../quantity/outcome.ts'
import { radians } from '../quantity/unit.ts'
import { balanced } from './balance.ts'
import type { Body } from './body.ts'
import { root } from './root.ts'
import { centreOf, flatFoot, footOn, legOn, middleOfFoot, standing, tuckedLeg, type Leg, type Standing } from './standing-body.ts'

/** Touch-down on the balls of the feet with knees that are ready to bend. Chosen by us. */
const HEELS_UP = radians(25)
const READY = radians(20)
/** The free foot of a one-leg landing stays behind. Chosen by us. */
const TUCKED = radians(70)
/** No knee bends further under a landing. Chosen by us: the heel would meet the seat. */
const BEND_MOST = radians(140)
const NOTHING = { mass: 0, at: 'hands' } as const

/** The body at touch-down and after its middle has sunk by `travel`; or why not. */
export function landingPoses(body: Body, travel: number, legs: 'two legs' | 'one leg'): Outcome<readonly [Standing, Standing]> {
  const whole = (leg: Leg, shin: number, bend: number, trunk: number): Standing | undefined =>
    standing(body, leg, legs === 'two legs' ? leg : tuckedLeg(body, leg.hip, Math.max(bend - shin - 0.2, 0), TUCKED + bend / 3), trunk, 'hang', NOTHING)
  const flat = flatFoot(body, 0)
  const toes = footOn(body, flat.ball, HEELS_UP)
  const touch = balanced(body, (shin, trunk) => whole(legOn(body, toes, shin, READY), shin, READY, trunk), flat.ball.x)
  const at = (bend: number): Standing | undefined => balanced(body, (shin, trunk) => whole(legOn(body, flat, shin, bend), shin, bend, trunk), middleOfFoot(body))
  if (!touch) return missing('the body does not balance at touch-down')
  const low = centreOf(body, touch).y - travel
  const bend = root((value) => {
    const there = at(value)
    return there && centreOf(body, there).y - low
  }, READY, BEND_MOST)
  const deepest = bend === undefined ? undefined : at(bend)
  return deepest ? [touch, deepest] : missing('the legs cannot sink so far in balance')
}
