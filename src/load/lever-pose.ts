/**
 * Where the joints lie in a held position: planks on the front and side, the hip bridge and the hollow hold.
 * Lengths are shares of stature; the floor is y = 0.
 */
import { missing, type Outcome } from '../quantity/outcome.ts'
import type { Body } from './body.ts'
import { chain, KNEE_HEIGHT, laidDown, mapChain, planted, type Chain } from './chain.ts'
import type { Point } from './model.ts'
import { minus, plus, point, polar, times, turning, unit } from './vector.ts'

/** A held body: its joints, its arms, and the two places that carry it, level with each other or not. */
export type Held = Chain & { readonly elbow: Point; readonly wrist: Point; readonly hand: Point; readonly far: Point; readonly near: Point }

/** Half the thickness of the trunk at the shoulders when lying on the back, over stature. Chosen by us: 10 cm at 174 cm. */
const BACK = 0.0575

/** A plank: a straight body on feet (or the side of the foot, or knees) and on forearms or hands, which reach past the shoulders by `reach`. */
export function plank(body: Body, hold: 'front' | 'side', feet: 'toes' | 'knees', on: 'forearms' | 'hands', reach: number, foot_height: number, press: number): Outcome<Held> {
  const onSide = hold === 'side'
  const contact = onSide && feet === 'toes' ? 'flat' : feet // a side plank turns about the ankle, and presses there
  const joints = chain(body, contact, 'down', Math.PI)
  const { upper_arm, forearm, hand } = body
  const whole = on === 'forearms' ? upper_arm.length : upper_arm.length + forearm.length
  if (reach >= whole) return missing('the arms do not reach that far')
  const rest = feet === 'knees' ? KNEE_HEIGHT : onSide ? body.ankle_height / 2 : 0
  const pivot = point(0, foot_height + rest)
  const shoulder_height = Math.sqrt(whole * whole - reach * reach)
  const sine = (shoulder_height - pivot.y) / Math.hypot(joints.shoulder.x, joints.shoulder.y)
  if (Math.abs(sine) > 1) return missing('the shoulders cannot come to that height')
  const turn = Math.asin(sine) - Math.atan2(joints.shoulder.y, joints.shoulder.x)
  const turnedBody = mapChain(joints, turning(turn, pivot))
  const set = feet === 'knees' ? (onSide ? withShanksBehind(turnedBody) : laidDown(turnedBody, body, 'down')) : onSide ? onItsEdge(turnedBody, body) : turnedBody
  const down = point(set.shoulder.x + reach, 0)
  const elbow = on === 'forearms' ? down : plus(set.shoulder, times(minus(down, set.shoulder), upper_arm.length / whole))
  const wrist = onSide || on === 'hands' ? down : plus(down, point(forearm.length, 0)) // on its side, the forearm lies across the body, under the shoulder
  const near = onSide ? down : on === 'forearms' ? plus(down, point(press * forearm.length, 0)) : plus(down, point(hand.length / 2, 0))
  const far = contact === 'toes' ? set.ball : point(pivot.x, foot_height)
  return withArms(set, { elbow, wrist, hand: onSide ? down : plus(wrist, point(hand.length / 2, 0)), far, near })
}

/** Written out: spread into another, a pose takes as long as all the rest of it. */
const withArms = ({ heel, ball, toe, ankle, knee, hip, shoulder, head }: Chain, { elbow, wrist, hand, far, near }: Omit<Held, keyof Chain>): Held => ({ heel, ball, toe, ankle, knee, hip, shoulder, head, elbow, wrist, hand, far, near })

/** A foot on its outer edge, square to the leg: seen from the front it ends at its sole, and points out of the picture. */
function onItsEdge(joints: Chain, body: Body): Chain {
  const sole = plus(joints.ankle, times(unit(minus(joints.ankle, joints.knee)), body.ankle_height))
  return { ...joints, heel: sole, ball: sole, toe: sole }
}

/** Kneeling on the side, the shanks lie behind the body: seen from the front they point out of the picture. */
const withShanksBehind = (joints: Chain): Chain => ({ ...joints, ankle: joints.knee, heel: joints.knee, ball: joints.knee, toe: joints.knee })

/** A hip bridge: shoulders on the floor, knees over the feet, hips lifted into line. A free leg lies straight along the thigh. */
export function bridge(body: Body, knee: number, foot_height: number, press: number): Outcome<Held> {
  const joints = chain(body, 'flat', 'up', knee)
  const shoulder_height = BACK
  const rise = shoulder_height - (body.ankle_height + foot_height)
  const radius = Math.hypot(joints.shoulder.x, joints.shoulder.y)
  if (Math.abs(rise) > radius) return missing('the shoulders cannot come down to the floor')
  const turn = Math.asin(rise / radius) - Math.atan2(joints.shoulder.y, joints.shoulder.x)
  const pivot = point(0, body.ankle_height + foot_height)
  const set = planted(mapChain(joints, turning(turn, pivot)), body, 'up')
  if (set.hip.y < BACK) return missing('the hips would lie on the floor')
  const elbow = plus(set.shoulder, point(-body.upper_arm.length, 0))
  const wrist = plus(elbow, point(-body.forearm.length, 0))
  const far = plus(set.heel, times(minus(set.ball, set.heel), press))
  return withArms(set, { elbow, wrist, hand: plus(wrist, point(-body.hand.length / 2, 0)), far, near: point(set.shoulder.x, 0) })
}

/** A hollow hold: on the small of the back, legs lifted by `legs` from level, straight or with the shanks level, arms along the body or overhead. */
export function hollow(body: Body, legs: number, tucked: boolean, overhead: boolean): Held {
  const hip = point(0, BACK)
  const shoulder = plus(hip, polar(body.trunk.length, Math.PI / 12))
  const thighward = Math.PI - (tucked ? Math.PI / 2 : legs)
  const knee = plus(hip, polar(body.thigh.length, thighward))
  const shankward = tucked ? Math.PI : thighward
  const ankle = plus(knee, polar(body.shank.length, shankward))
  const toe = plus(ankle, polar(body.foot.length, shankward - Math.PI / 4))
  const head = plus(shoulder, polar(body.head.above_shoulder, Math.PI / 6))
  const armward = overhead ? Math.PI / 8 : Math.PI - Math.PI / 12
  const elbow = plus(shoulder, polar(body.upper_arm.length, armward))
  const wrist = plus(elbow, polar(body.forearm.length, armward))
  return { heel: ankle, ball: toe, toe, ankle, knee, hip, shoulder, head, elbow, wrist, hand: plus(wrist, polar(body.hand.length / 2, armward)), far: point(0, 0), near: point(0, 0) }
}
