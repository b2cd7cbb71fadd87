/**
 * A heel raise on the floor or off a step: the body above the balls of its feet, or of one foot and what helps it, heels down and up.
 * Lengths are shares of stature; the working ball is at x = 0, the athlete looks to +x.
 */
import { missing, type Outcome } from '../quantity/outcome.ts'
import { radians } from '../quantity/unit.ts'
import { balanced } from './balance.ts'
import type { Body } from './body.ts'
import { footOn, legOn, legTo, standing, tuckedLeg, type Arms, type Held, type Leg, type Standing } from './standing-body.ts'
import { point } from './vector.ts'

/** What helps the working foot: the other foot so far behind, flat or always on its toes, or hands on a bar of that height. */
export type Helper = { readonly on: 'feet' | 'toes'; readonly behind: number } | { readonly on: 'hands'; readonly height: number }
export type HeelRaise = { readonly step: number; readonly legs: 'two legs' | 'one leg'; readonly held: Held; readonly helper: Helper | undefined; readonly front: number }

/** Heels as high as they go, and below the edge of a step. Chosen by us, after common practice. */
const UP = radians(38)
const DOWN = radians(14)
const STRAIGHT = radians(3)
/** A helping foot on its toes keeps its heel up; a flat one lifts it as far as the leg needs. Chosen by us. */
const TOES = radians(58)
const MORE = [0, 6, 12, 18, 26, 34].map(radians)
/** Feet closer than this stand side by side, and are seen as one. */
const BESIDE = 0.02
/** How much further than the shin the trunk leans for hands to reach a bar; none where nobody reaches. */
const REACHING = [0, 4, 8, 12, 16, 20].map(radians)
/** From the toes to a bar the hands press on. Share of stature, chosen by us: 20 cm at 174 cm. */
const TO_BAR = 0.115

/** The free leg of a body on one leg. */
const free = (body: Body, leg: Leg): Leg => tuckedLeg(body, leg.hip, radians(5), radians(60))

/** The other leg with its heel raised by `tilt`, or undefined where its foot cannot stay where it is. */
function otherOf(body: Body, { legs, helper }: HeelRaise, leg: Leg, tilt: number): Leg | undefined {
  if (helper === undefined) return legs === 'two legs' ? leg : free(body, leg)
  if (helper.on === 'hands') return free(body, leg)
  return Math.abs(helper.behind) < BESIDE ? leg : legTo(body, footOn(body, point(-helper.behind, 0), tilt), leg.hip)
}

/** Where hands press on a bar. */
const onBar = (body: Body, height: number): Arms => ({ to: point(body.foot.length - body.ball_length + TO_BAR, height) })

/** The body with its heels down and with its heels up. */
export function heelRaisePoses(body: Body, asked: HeelRaise): Outcome<readonly [Standing, Standing]> {
  const { step, held, helper, front } = asked
  const arms = helper?.on === 'hands' ? onBar(body, helper.height) : held.mass > 0 ? 'hang' : 'ahead'
  const help_x = helper === undefined ? 0 : helper.on === 'hands' ? body.foot.length - body.ball_length + TO_BAR : -helper.behind
  const at = (tilt: number, further: number): Standing | undefined => {
    const foot = footOn(body, point(0, step), tilt)
    const withRear = (rear: number): Standing | undefined =>
      balanced(
        body,
        (shin, trunk) => {
          const leg = legOn(body, foot, shin, STRAIGHT)
          const other = otherOf(body, asked, leg, rear)
          return other && standing(body, leg, other, trunk + further, arms, held)
        },
        (1 - front) * help_x,
      )
    return firstOf(helper?.on === 'toes' ? [TOES] : helper?.on === 'feet' ? MORE.map((more) => Math.max(tilt, 0) + more) : [0], withRear)
  }
  for (const further of helper?.on === 'hands' ? REACHING : [0]) {
    const [down, up] = [at(sunk(body, step), further), at(UP, further)]
    if (down && up) return [down, up]
  }
  return missing(helper === undefined ? 'the body cannot balance on the balls of its feet' : helper.on === 'hands' ? 'the hands do not reach the bar in balance' : 'without a turn of the hips, which is not drawn, the other foot does not reach so far back')
}

/** How far the heels sink below a step, and no lower than the floor. */
const sunk = (body: Body, step: number): number => (step <= 0 ? 0 : -Math.min(DOWN, Math.asin(Math.min(1, step / body.ball_length))))

/** The first that can be made of several numbers. */
function firstOf(tried: readonly number[], make: (value: number) => Standing | undefined): Standing | undefined {
  for (const value of tried) {
    const made = make(value)
    if (made) return made
  }
  return undefined
}
