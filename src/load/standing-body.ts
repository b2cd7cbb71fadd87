/**
 * A body that stands: feet on the ground or a box, legs, trunk and arms above them, for poses to be drawn.
 * Lengths are shares of stature, angles radians from upright, forwards positive; the athlete looks to +x.
 *
 * Source  deLeva1996 for segments, as in `body.ts`; mechanics for where the middle of the masses stands.
 */
import type { Body } from './body.ts'
import { ankleFromHeel, armLumps, joined, trunkLumps, type Lump } from './chain.ts'
import type { Point } from './model.ts'
import { angleOpposite, between, length, minus, plus, point, times, turned, turning } from './vector.ts'

/** One leg from the ground to the hip. */
export type Leg = Readonly<Record<'heel' | 'ball' | 'toe' | 'ankle' | 'knee' | 'hip', Point>>
/** A whole body on two legs, of which `other` may be the same as `leg`. */
export type Standing = Readonly<Record<'shoulder' | 'head' | 'elbow' | 'wrist' | 'hand', Point>> & {
  readonly leg: Leg
  readonly other: Leg
  readonly carried: Lump
  /** The other arm, where it is not beside the working one. */
  readonly free?: Readonly<Record<'elbow' | 'wrist' | 'hand', Point>>
}

/** What the arms do: reach level ahead, hang, fold at the breastbone, or reach to a place. */
export type Arms = 'ahead' | 'hang' | 'chest' | { readonly to: Point }
/** A mass over body mass, and where it is held. */
export type Held = { readonly mass: number; readonly at: 'chest' | 'hands' | 'back' }

/** A direction so far forwards of upright. */
export const upright = (lean: number): Point => point(Math.sin(lean), Math.cos(lean))

/** How far the middle of a flat foot lies ahead of the ankle: half-way from heel to ball. */
export const middleOfFoot = (body: Body): number => body.ball_length / 2 - ankleFromHeel(body)

/** Heel, ball and toe of a foot whose heel is raised by `tilt` about the ball, or about the heel where the toes are up, from its ball. */
export function footOn(body: Body, ball: Point, tilt: number): Omit<Leg, 'knee' | 'hip'> {
  const turn = turning(-tilt, ball)
  const at = (x: number, y: number): Point => turn(point(x, y))
  const { ball_length, foot, ankle_height } = body
  return { ball, heel: at(-ball_length, 0), toe: at(foot.length - ball_length, 0), ankle: at(ankleFromHeel(body) - ball_length, ankle_height) }
}

/** The foot flat on what it rests on, its ankle above x = 0. */
export const flatFoot = (body: Body, height: number): Omit<Leg, 'knee' | 'hip'> => footOn(body, point(body.ball_length - ankleFromHeel(body), height), 0)

/** A leg above its foot, by the lean of its shin and the bend of its knee. */
export function legOn(body: Body, foot: Omit<Leg, 'knee' | 'hip'>, shin: number, bend: number): Leg {
  const knee = plus(foot.ankle, times(upright(shin), body.shank.length))
  return { ...foot, knee, hip: plus(knee, times(upright(shin - bend), body.thigh.length)) }
}

/** A leg between its foot and a hip, the knee to the front, or undefined where it does not reach. */
export function legTo(body: Body, foot: Omit<Leg, 'knee' | 'hip'>, hip: Point): Leg | undefined {
  const apart = length(minus(hip, foot.ankle))
  if (apart > body.shank.length + body.thigh.length || apart < Math.abs(body.shank.length - body.thigh.length)) return undefined
  return { ...foot, hip, knee: joined(foot.ankle, hip, body.shank.length, body.thigh.length, 'right') }
}

/** A straight leg that hangs from the hip one way, the foot square to it. */
export function straightLeg(body: Body, hip: Point, way: Point): Leg {
  const ankle = plus(hip, times(way, body.thigh.length + body.shank.length))
  const toeward = turned(way, Math.PI / 2)
  const heel = plus(plus(ankle, times(way, body.ankle_height)), times(toeward, -ankleFromHeel(body)))
  return { hip, ankle, heel, knee: plus(hip, times(way, body.thigh.length)), ball: plus(heel, times(toeward, body.ball_length)), toe: plus(heel, times(toeward, body.foot.length)) }
}

/** A straight free leg ahead of the body, its heel at a height; hanging where the height is out of reach. */
export function freeLeg(body: Body, hip: Point, height: number): Leg {
  const down = Math.min(1, (hip.y - height - body.ankle_height) / (body.thigh.length + body.shank.length))
  return straightLeg(body, hip, point(Math.sqrt(1 - down * down), -down))
}

/** A free leg whose foot is held up behind, by the lean of its thigh and the bend of its knee. */
export function tuckedLeg(body: Body, hip: Point, thigh: number, bend: number): Leg {
  const knee = minus(hip, times(upright(-thigh), body.thigh.length))
  const whole = straightLeg(body, plus(knee, times(upright(bend - thigh), body.thigh.length)), times(upright(bend - thigh), -1))
  return { ...whole, hip, knee }
}

/** The angle of a knee, π straight. */
export const kneeOf = ({ ankle, knee, hip }: Leg): number => angleOpposite(length(minus(hip, ankle)), length(minus(knee, ankle)), length(minus(hip, knee))) ?? Math.PI

/** Where folded hands are: in front of the breastbone. Shares of the trunk and of stature, chosen by us. */
const BREASTBONE = { up: 0.8, ahead: 0.12 } as const
/** A bar on the back lies behind the top of the trunk. Chosen by us. */
const NAPE = { up: 1.02, behind: 0.06 } as const

/** A place beside the trunk. */
const beside = (hip: Point, shoulder: Point, up: number, ahead: number): Point => {
  const along = minus(shoulder, hip)
  return plus(between(hip, shoulder, up), times(turned(along, -Math.PI / 2), ahead / length(along)))
}

function armsOf(body: Body, hip: Point, shoulder: Point, arms: Arms): Pick<Standing, 'elbow' | 'wrist' | 'hand'> | undefined {
  const [near, far] = [body.upper_arm.length, body.forearm.length + body.hand.length / 2]
  const straight = (way: Point) => ({ elbow: plus(shoulder, times(way, near)), wrist: plus(shoulder, times(way, near + body.forearm.length)), hand: plus(shoulder, times(way, near + far)) })
  if (arms === 'ahead') return straight(point(1, 0))
  if (arms === 'hang') return straight(point(0, -1))
  const hand = arms === 'chest' ? beside(hip, shoulder, BREASTBONE.up, BREASTBONE.ahead) : arms.to
  if (length(minus(hand, shoulder)) > near + far + 1e-9) return undefined
  const elbow = joined(shoulder, hand, near, far, 'right')
  return { elbow, hand, wrist: between(elbow, hand, body.forearm.length / far) }
}

/** A body on its legs, trunk leaning forwards, or undefined where an arm does not reach. */
export function standing(body: Body, leg: Leg, other: Leg, trunk: number, arms: Arms, held: Held): Standing | undefined {
  const shoulder = plus(leg.hip, times(upright(trunk), body.trunk.length))
  const reach = armsOf(body, leg.hip, shoulder, arms)
  if (!reach) return undefined
  const at = held.at === 'back' ? beside(leg.hip, shoulder, NAPE.up, -NAPE.behind) : reach.hand
  return { leg, other, shoulder, head: plus(shoulder, times(upright(trunk), body.head.above_shoulder)), ...reach, carried: { mass: held.mass, at } }
}

const legLumps = (body: Body, { heel, toe, ankle, knee, hip }: Leg): Lump[] => [
  { mass: body.foot.mass, at: between(heel, toe, body.foot.centre) },
  { mass: body.shank.mass, at: between(knee, ankle, body.shank.centre) },
  { mass: body.thigh.mass, at: between(hip, knee, body.thigh.centre) },
]

/** The middle of all masses, what is held among them. */
export function centreOf(body: Body, { leg, other, shoulder, head, elbow, wrist, hand, carried, free }: Standing): Point {
  const arms = armLumps(body, shoulder, elbow, wrist, hand)
  const apart = free && [...arms, ...armLumps(body, shoulder, free.elbow, free.wrist, free.hand)].map(({ mass, at }) => ({ mass: mass / 2, at }))
  const lumps = [...legLumps(body, leg), ...legLumps(body, other), ...trunkLumps(body, { ...leg, shoulder, head }, carried), ...(apart ?? arms)]
  const mass = lumps.reduce((sum, lump) => sum + lump.mass, 0)
  return times(lumps.reduce((sum, lump) => plus(sum, times(lump.at, lump.mass)), point(0, 0)), 1 / mass)
}
