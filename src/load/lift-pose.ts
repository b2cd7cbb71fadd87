/**
 * Lifts from the floor, presses overhead and carries, in balance on the feet with what is held.
 * Lengths are shares of stature, masses of body mass; the ground is y = 0, the athlete looks to +x.
 */
import { missing, type Outcome } from '../quantity/outcome.ts'
import { radians } from '../quantity/unit.ts'
import { balanced } from './balance.ts'
import type { Body } from './body.ts'
import { flatFoot, legOn, middleOfFoot, standing, straightLeg, upright, type Arms, type Leg, type Standing } from './standing-body.ts'
import { joined } from './chain.ts'
import type { Point } from './model.ts'
import { length, minus, plus, point, times, unit } from './vector.ts'

export type Lift = {
  readonly lift: 'floor lift' | 'one-leg floor lift' | 'suitcase lift' | 'overhead press' | 'one-hand press' | 'carry'
  /** Height of the handle where the lift begins. */
  readonly handle: number
  readonly knee: number
  readonly mass: number
}

/** A knee that is nearly straight. Chosen by us. */
const SOFT = radians(4)
/** A bar at the collar bones, ahead of the shoulders and a little above them. Shares of stature, chosen by us. */
const COLLAR = { ahead: 0.085, up: 0.01 } as const

const armOf = ({ upper_arm, forearm, hand }: Body): number => upper_arm.length + forearm.length + hand.length / 2

/** Where a handle stands: over the middle of the feet, or beside the ankle. */
const handleAt = (body: Body, { lift, handle }: Lift): Point => point(lift === 'suitcase lift' ? 0 : middleOfFoot(body), handle)

/** How far the trunk leans for straight arms to reach a handle; on one leg straight under the shoulders. */
function leanTo(body: Body, asked: Lift, hip: Point): number | undefined {
  if (asked.lift === 'one-leg floor lift') {
    const rise = (asked.handle + armOf(body) - hip.y) / body.trunk.length
    return Math.abs(rise) > 1 ? undefined : Math.acos(rise)
  }
  const hand = handleAt(body, asked)
  const apart = length(minus(hand, hip))
  if (apart > body.trunk.length + armOf(body) || apart < Math.abs(body.trunk.length - armOf(body))) return undefined
  const shoulder = minus(joined(hip, hand, body.trunk.length, armOf(body), 'left'), hip)
  return Math.atan2(shoulder.x, shoulder.y)
}

/** Bent to the handle: the shin leans as balance asks, the trunk as the hands need. */
function bent(body: Body, asked: Lift, shin: number): Standing | undefined {
  const leg = legOn(body, flatFoot(body, 0), shin, Math.PI - asked.knee)
  const trunk = leanTo(body, asked, leg.hip)
  if (trunk === undefined) return undefined
  const onOne = asked.lift === 'one-leg floor lift'
  const shoulder = plus(leg.hip, times(upright(trunk), body.trunk.length))
  const way = onOne ? point(0, -1) : unit(minus(handleAt(body, asked), shoulder))
  const arms = { to: plus(shoulder, times(way, armOf(body))) }
  return oneHanded(asked, standing(body, leg, onOne ? straightLeg(body, leg.hip, times(upright(trunk), -1)) : leg, trunk, arms, { mass: asked.mass, at: 'hands' }), body)
}

/** A free arm hangs beside a suitcase, and is held a little ahead in a press. Chosen by us. */
const FREE_ARM = { 'suitcase lift': 0, 'one-hand press': radians(24) } as const

/** The same body with its free arm, where one hand holds the weight. */
function oneHanded({ lift }: Pick<Lift, 'lift'>, pose: Standing | undefined, { upper_arm, forearm, hand }: Body): Standing | undefined {
  if (!pose || (lift !== 'suitcase lift' && lift !== 'one-hand press')) return pose
  const way = upright(Math.PI - FREE_ARM[lift])
  const down = (by: number): Point => plus(pose.shoulder, times(way, by))
  const wrist = upper_arm.length + forearm.length
  return { ...pose, free: { elbow: down(upper_arm.length), wrist: down(wrist), hand: down(wrist + hand.length / 2) } }
}

/** Standing tall with the arms where they are asked. */
const tall = (body: Body, { lift, mass }: Lift, arms: (leg: Leg, trunk: number) => Arms): Standing | undefined =>
  balanced(
    body,
    (shin, trunk) => {
      const leg = legOn(body, flatFoot(body, 0), shin, SOFT)
      return oneHanded({ lift }, standing(body, leg, leg, trunk, arms(leg, trunk), { mass, at: 'hands' }), body)
    },
    middleOfFoot(body),
  )

/** Straight arms above the middle of the foot. */
function overhead(body: Body, leg: Leg, trunk: number): Arms {
  const shoulder = { x: leg.hip.x + body.trunk.length * Math.sin(trunk), y: leg.hip.y + body.trunk.length * Math.cos(trunk) }
  const arm = armOf(body)
  const across = middleOfFoot(body) - shoulder.x
  return { to: point(middleOfFoot(body), shoulder.y + Math.sqrt(Math.max(0, arm * arm - across * across))) }
}

const collar = (body: Body, leg: Leg, trunk: number): Arms => ({
  to: point(leg.hip.x + body.trunk.length * Math.sin(trunk) + COLLAR.ahead, leg.hip.y + body.trunk.length * Math.cos(trunk) + COLLAR.up),
})

/** Both ends of a lift, or the one pose of a carry; or why it cannot be drawn. */
export function liftPoses(body: Body, asked: Lift): Outcome<readonly Standing[]> {
  const { lift } = asked
  const poses =
    lift === 'carry'
      ? [tall(body, asked, () => 'hang')]
      : lift === 'overhead press' || lift === 'one-hand press'
        ? [tall(body, asked, (leg, trunk) => collar(body, leg, trunk)), tall(body, asked, (leg, trunk) => overhead(body, leg, trunk))]
        : [balanced(body, (shin) => bent(body, asked, shin), middleOfFoot(body)), tall(body, asked, () => 'hang')]
  const whole = poses.flatMap((pose) => (pose ? [pose] : []))
  return whole.length === poses.length ? whole : missing('the body cannot balance with its hands at that height')
}
