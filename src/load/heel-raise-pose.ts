/**
 * A heel raise on the floor or off a step: the body straight above the ball of the foot, heels down and up.
 * Lengths are shares of stature; the athlete looks to +x.
 */
import { missing, type Outcome } from '../quantity/outcome.ts'
import { radians } from '../quantity/unit.ts'
import { balanced } from './balance.ts'
import type { Body } from './body.ts'
import { footOn, legOn, standing, tuckedLeg, type Held, type Standing } from './standing-body.ts'
import { point } from './vector.ts'

/** Heels as high as they go, and below the edge of a step. Chosen by us, after common practice. */
const UP = radians(38)
const DOWN = radians(-14)
const STRAIGHT = radians(3)

/** The body with its heels down and with its heels up. */
export function heelRaisePoses(body: Body, step: number, legs: 'two legs' | 'one leg', held: Held): Outcome<readonly [Standing, Standing]> {
  const at = (tilt: number): Standing | undefined => {
    const foot = footOn(body, point(0, step), tilt)
    return balanced(
      body,
      (shin, trunk) => {
        const leg = legOn(body, foot, shin, STRAIGHT)
        return standing(body, leg, legs === 'two legs' ? leg : tuckedLeg(body, leg.hip, radians(5), radians(60)), trunk, held.mass > 0 ? 'hang' : 'ahead', held)
      },
      foot.ball.x,
    )
  }
  const [down, up] = [at(step > 0 ? DOWN : 0), at(UP)]
  return down && up ? [down, up] : missing('the body cannot balance on the balls of its feet')
}
