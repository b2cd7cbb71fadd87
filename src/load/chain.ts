import type { Body } from './body.ts'
import type { Point } from './model.ts'
import { between, minus, plus, point, times, turned, unit } from './vector.ts'

/** What the body rests on, besides the hands. */
export type Contact = 'toes' | 'heels' | 'flat' | 'knees'
export type Facing = 'down' | 'up'

/** Joints from the ground to the head. Stature = 1, the pivot at the origin, hip to shoulder along +x. */
export type Chain = Readonly<Record<'heel' | 'ball' | 'toe' | 'ankle' | 'knee' | 'hip' | 'shoulder' | 'head', Point>>

/** The ankle stands a quarter of the heel-to-ball length before the heel. Value from memory. */
const ANKLE_FROM_HEEL = 0.25
/** Height of the knee joint above the floor when kneeling, over stature. Chosen by us: 5 cm at 174 cm. */
export const KNEE_HEIGHT = 0.029

/**
 * The body as a rigid chain about its pivot: the ball of the foot, the back of the heel, the ankle of a flat foot, or the knee.
 *
 * Shape   body, contact, facing, knee angle (radians, π straight) to joints in the frame of the trunk.
 * Assumes the foot square to the shank on toes and heels; a flat foot stays on the floor and is placed by `planted`.
 */
export function chain(body: Body, contact: Contact, facing: Facing, knee_angle: number): Chain {
  const front = facing === 'down' ? -1 : 1 // +y is the side the chest looks to, times this
  const bend = Math.PI - knee_angle
  const shankward = point(-Math.cos(bend), -front * Math.sin(bend)) // from knee to ankle, flexion draws the heel behind
  const knee = point(0, 0)
  const ankle = times(shankward, body.shank.length)
  const toeward = front === 1 ? turned(shankward, -Math.PI / 2) : turned(shankward, Math.PI / 2)
  const heel = plus(plus(ankle, times(shankward, body.ankle_height)), times(toeward, -ankleFromHeel(body)))
  const ball = plus(heel, times(toeward, body.ball_length))
  const toe = plus(heel, times(toeward, body.foot.length))
  const hip = plus(knee, point(body.thigh.length, 0))
  const shoulder = plus(hip, point(body.trunk.length, 0))
  const head = plus(shoulder, point(body.head.above_shoulder, 0))
  const pivot = { toes: ball, heels: heel, flat: ankle, knees: knee }[contact]
  const joints = { heel, ball, toe, ankle, knee, hip, shoulder, head }
  return mapChain(joints, (joint) => minus(joint, pivot))
}

/** Applies one change to every joint. */
export function mapChain(joints: Chain, change: (joint: Point) => Point): Chain {
  const { heel, ball, toe, ankle, knee, hip, shoulder, head } = joints
  return {
    heel: change(heel),
    ball: change(ball),
    toe: change(toe),
    ankle: change(ankle),
    knee: change(knee),
    hip: change(hip),
    shoulder: change(shoulder),
    head: change(head),
  }
}

/** Where the pivot stands above what the feet rest on. */
export const pivotHeight = (body: Body, contact: Contact): number => ({ toes: 0, heels: 0, flat: body.ankle_height, knees: KNEE_HEIGHT })[contact]

/** How far the ankle stands before the back of the heel, over stature. */
export const ankleFromHeel = (body: Body): number => ANKLE_FROM_HEEL * body.ball_length

/** Puts the foot of a flat stance back on the floor under its ankle, toes to the side the athlete looks to when upright. */
export function planted(joints: Chain, body: Body, facing: Facing): Chain {
  const toeward = facing === 'down' ? 1 : -1
  const heel = plus(joints.ankle, point(-toeward * ankleFromHeel(body), -body.ankle_height))
  return { ...joints, heel, ball: plus(heel, point(toeward * body.ball_length, 0)), toe: plus(heel, point(toeward * body.foot.length, 0)) }
}

/** Lays the shanks of a kneeling body on the floor behind its knees, the foot stretched out. */
export function laidDown(joints: Chain, body: Body, facing: Facing): Chain {
  const behind = facing === 'down' ? -1 : 1
  const ankle = plus(joints.knee, point(behind * body.shank.length, 0))
  const heel = plus(ankle, point(behind * ankleFromHeel(body), body.ankle_height / 2))
  return { ...joints, ankle, heel, ball: plus(ankle, point(behind * body.ball_length, -KNEE_HEIGHT / 2)), toe: plus(ankle, point(behind * body.foot.length, -KNEE_HEIGHT / 2)) }
}

/** A mass, as a share of body mass, at a place. */
export type Lump = { readonly mass: number; readonly at: Point }

/** Both feet and shanks where they lie. Shanks that rest on the floor carry themselves and are left out. */
export const shankLumps = (body: Body, { heel, toe, ankle, knee }: Chain, shanksRest: boolean): Lump[] =>
  shanksRest
    ? []
    : [
        { mass: 2 * body.foot.mass, at: between(heel, toe, body.foot.centre) },
        { mass: 2 * body.shank.mass, at: between(knee, ankle, body.shank.centre) },
      ]

/** Both thighs where they lie. */
export const thighLumps = (body: Body, { hip, knee }: Chain): Lump[] => [{ mass: 2 * body.thigh.mass, at: between(hip, knee, body.thigh.centre) }]

/** Trunk, head and what is carried. */
export const trunkLumps = (body: Body, { hip, shoulder, head }: Pick<Chain, 'hip' | 'shoulder' | 'head'>, added: Lump): Lump[] => [
  { mass: body.trunk.mass, at: between(hip, shoulder, body.trunk.centre) },
  { mass: body.head.mass, at: head },
  ...(added.mass > 0 ? [added] : []),
]

/** Where a carried mass rides: a vest on the middle of the trunk, a pack or plate below the shoulders, a weight in the lap. */
export type Carried = 'vest' | 'back' | 'lap'

/** How far up the trunk a carried mass rides. The vest sits on the trunk's own centre; the others are chosen by us. */
export const carriedAt = (body: Body, { hip, shoulder }: Chain, mass: number, where: Carried): Lump => ({
  mass,
  at: between(hip, shoulder, { vest: body.trunk.centre, back: 0.75, lap: 0.1 }[where]),
})

/** Adds up the masses of some parts of the body, in their order, and their moments about the vertical through `x`. */
export function weightAbout(parts: readonly (readonly Lump[])[], x: number): { readonly mass: number; readonly first_moment: number } {
  let mass = 0
  let first_moment = 0
  for (const lumps of parts) {
    for (const lump of lumps) {
      mass += lump.mass
      first_moment += lump.mass * (lump.at.x - x)
    }
  }
  return { mass, first_moment }
}

/** Both arms' masses, hanging between shoulder, elbow, wrist and hand. */
export const armLumps = (body: Body, shoulder: Point, elbow: Point, wrist: Point, hand: Point): Lump[] => [
  { mass: 2 * body.upper_arm.mass, at: between(shoulder, elbow, body.upper_arm.centre) },
  { mass: 2 * body.forearm.mass, at: between(elbow, wrist, body.forearm.centre) },
  { mass: 2 * body.hand.mass, at: hand },
]

/** Of a straight arm rounding leaves a square this small, over that of its length: its root would be a hundred million times the rounding. */
const STRAIGHT = 1e-13

/** A joint at `near` from `from` and `far` from `to`, on the left of the way from one to the other, or on the right. */
export function joined(from: Point, to: Point, near: number, far: number, side: 'left' | 'right'): Point {
  const gap = minus(to, from)
  const apart = Math.hypot(gap.x, gap.y)
  const along = (near * near - far * far + apart * apart) / (2 * apart)
  const square = near * near - along * along
  const off = square > STRAIGHT * near * near ? Math.sqrt(square) : 0 // the sides were chosen to close
  const forward = unit(gap)
  const across = turned(forward, side === 'left' ? Math.PI / 2 : -Math.PI / 2)
  return plus(from, plus(times(forward, along), times(across, off)))
}
