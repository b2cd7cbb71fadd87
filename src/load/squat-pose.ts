/**
 * Squats on two legs and on one, split squats and step-ups at both ends of the rep, in balance on their feet.
 * Lengths are shares of stature; the ground is y = 0, the working ankle x = 0, the athlete looks to +x.
 */
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { radians } from '../quantity/unit.ts'
import { ahead, balanced } from './balance.ts'
import type { Body } from './body.ts'
import { joined, KNEE_HEIGHT } from './chain.ts'
import type { Point } from './model.ts'
import { root } from './root.ts'
import { centreOf, flatFoot, footOn, freeLeg, legOn, legTo, middleOfFoot, standing, upright, type Arms, type Held, type Leg, type Standing } from './standing-body.ts'
import { length, minus, plus, point, times } from './vector.ts'

/** What a squat is asked by: heights and the length of the stance over stature, the knee in radians. */
export type Squat = {
  readonly stance: 'two legs' | 'split' | 'step-up' | 'one leg'
  readonly foot: number
  readonly rear_foot: number
  /** Front heel to the toes of the other foot, or to its heel where it stands on that. */
  readonly apart: number
  readonly other_foot: 'toes' | 'heel'
  readonly seat: number | undefined
  readonly knee: number | undefined
  /** Share of the force on the ground under the working foot. */
  readonly front: number
  readonly held: Held
}

/** How far the hip joint lies above what the hips touch: as thick as the thigh is drawn. Chosen by us. */
export const SEAT = 0.05
/** A folded mat under a knee; the bend of a knee that is nearly straight; the heel of a free leg off the ground. Chosen by us. */
export const MAT = 0.023
const SOFT = radians(6)
const REAR_SOFT = radians(14)
const FREE_HEEL = 0.058
/** How far the heel of a rear foot on its toes is raised: at the lowest point, and on the floor in a step-up. Chosen by us. */
const REAR_TILT = radians(62)
const PUSH_TILT = radians(35)
/** Heels of a rear foot tried at the top of a split squat, the lowest first. */
const REAR_TILTS = [25, 35, 45, 55, 62].map(radians)
/** A foot higher than this above its place is in the air. */
const LIFTED = 0.06
/** A foot that lies on its laces, and one that stands on its heel. Chosen by us. */
const LACES = 0.029
const LACES_TILT = radians(165)
const TOES_UP = radians(-20)
const DEFAULT_BEND = radians(90)

/** Feet of a squat on one place, and the legs over them. */
const otherOf = (body: Body, { stance, foot }: Squat, leg: Leg): Leg => (stance === 'one leg' ? freeLeg(body, leg.hip, foot > 0 ? 0 : FREE_HEEL) : leg)

/** The bend of a knee that brings the hip to a height over a leaning shin, or undefined where it cannot come there. */
function bendTo(body: Body, ankle: Point, shin: number, height: number): number | undefined {
  const rise = (height - ankle.y - body.shank.length * Math.cos(shin)) / body.thigh.length
  return Math.abs(rise) > 1 ? undefined : shin + Math.acos(rise)
}

/** Both ends of a squat on one place: standing, and at its depth. */
function onOnePlace(body: Body, asked: Squat): Outcome<readonly [Standing, Standing]> {
  const { foot, stance, seat, knee, held } = asked
  const under = flatFoot(body, foot)
  const arms: Arms = held.mass > 0 ? (held.at === 'hands' ? 'hang' : 'chest') : foot > 0 ? 'chest' : 'ahead'
  const lowered = stance === 'one leg' && foot > 0 && seat === undefined && knee === undefined
  const height = lowered ? body.ankle_height + body.shank.length + body.thigh.length : seat === undefined ? undefined : seat + SEAT
  const make = (bend: (shin: number) => number | undefined) =>
    balanced(
      body,
      (shin, trunk) => {
        const bent = bend(shin)
        const leg = bent === undefined ? undefined : legOn(body, under, shin, bent)
        return leg && standing(body, leg, otherOf(body, asked, leg), trunk, arms, held)
      },
      middleOfFoot(body),
    )
  const start = make(() => SOFT)
  const lowest = make((shin) => (height === undefined ? (knee === undefined ? DEFAULT_BEND : Math.PI - knee) : bendTo(body, under.ankle, shin, height)))
  return start && lowest ? [start, lowest] : missing('the body cannot balance at that depth')
}

/** A point of a circle about another, `angle` from upright. */
const round = (about: Point, radius: number, angle: number): Point => plus(about, times(upright(angle), radius))

/** The length of a leg from ankle to hip at a bend of the knee. */
const legLength = ({ shank, thigh }: Body, bend: number): number => Math.hypot(shank.length + thigh.length * Math.cos(bend), thigh.length * Math.sin(bend))

/** Two feet, the curve the hip lies on by an angle, and the span of it. */
type Stance = { readonly rear: Omit<Leg, 'knee' | 'hip'>; readonly hipAt: (angle: number) => Point | undefined; readonly span: readonly [number, number] }

/** A body between two feet with its hip at a place; the trunk leans as the working shin does unless it is given. */
function over(body: Body, asked: Squat, rear: Omit<Leg, 'knee' | 'hip'>, hip: Point | undefined, trunk?: number): Standing | undefined {
  const leg = hip && legTo(body, flatFoot(body, asked.foot), hip)
  const other = hip && legTo(body, rear, hip)
  if (!leg || !other) return undefined
  const shin = Math.atan2(leg.knee.x - leg.ankle.x, leg.knee.y - leg.ankle.y)
  const arms = asked.held.mass > 0 && asked.held.at === 'hands' ? 'hang' : 'chest'
  return standing(body, leg, other, trunk ?? Math.max(shin, 0), arms, asked.held)
}

/** The body between two feet whose masses stand where the shares of the feet ask. */
function shared(body: Body, asked: Squat, { rear, hipAt, span }: Stance): Standing | undefined {
  const x = asked.front * middleOfFoot(body) + (1 - asked.front) * rearPress(asked, rear).x
  const angle = root((value) => ahead(body, over(body, asked, rear, hipAt(value)), x), span[0], span[1])
  return angle === undefined ? undefined : over(body, asked, rear, hipAt(angle))
}

/** The other foot behind the front heel: on its toes, on its heel with the toes up, or on a box with its laces down. */
function rearFoot(body: Body, { apart, rear_foot, other_foot }: Squat, tilt: number): Omit<Leg, 'knee' | 'hip'> {
  const at = flatFoot(body, 0).heel.x - apart
  const toes = body.foot.length - body.ball_length
  if (rear_foot > 0) return footOn(body, point(at + toes, rear_foot + LACES), LACES_TILT)
  if (other_foot === 'toes') return footOn(body, point(at - toes, 0), tilt)
  const up = footOn(body, point(0, 0), TOES_UP)
  return footOn(body, minus(point(at, 0), up.heel), TOES_UP)
}

/** Where the other foot presses. */
const rearPress = ({ other_foot }: Squat, { ball, heel }: Omit<Leg, 'knee' | 'hip'>): Point => (other_foot === 'heel' ? heel : ball)

/** The curve on which the hip of a split squat lies at its lowest: the rear knee on a mat, the front thigh level, or as deep as is asked. */
function lowestHip(body: Body, { seat, knee, foot, rear_foot }: Squat, rear: Omit<Leg, 'knee' | 'hip'>): Stance {
  const front = flatFoot(body, foot)
  if (seat !== undefined) return { rear, hipAt: (x) => point(x, seat + SEAT), span: [-0.4, 0.1] }
  const span = [-0.9, 0.9] as const
  if (knee !== undefined) return { rear, hipAt: (angle) => round(front.ankle, legLength(body, Math.PI - knee), angle), span }
  if (rear_foot > 0) return { rear, hipAt: (angle) => plus(round(front.ankle, body.shank.length, angle), point(-body.thigh.length, 0)), span }
  const down = KNEE_HEIGHT + MAT - rear.ankle.y
  const rearKnee = plus(rear.ankle, point(Math.sqrt(Math.max(0, body.shank.length ** 2 - down ** 2)), down))
  return { rear, hipAt: (angle) => round(rearKnee, body.thigh.length, angle), span }
}

/** Split squats. The share on the front foot is the one at the lowest point; at the top it follows where the legs are straight and cannot keep it. */
function split(body: Body, asked: Squat): Outcome<readonly [Standing, Standing]> {
  const lowest = shared(body, asked, lowestHip(body, asked, rearFoot(body, asked, REAR_TILT)))
  if (!lowest) return missing('the stance does not close in balance')
  const start = kept(body, asked) ?? straight(body, asked, Math.atan2(lowest.shoulder.x - lowest.leg.hip.x, lowest.shoulder.y - lowest.leg.hip.y))
  return start ? [start, lowest] : missing('the stance is too long for these legs')
}

/** The top of a split squat with the share of the lowest point, the front knee nearly straight. */
function kept(body: Body, asked: Squat): Standing | undefined {
  const { ankle } = flatFoot(body, asked.foot)
  for (const tilt of REAR_TILTS) {
    const found = shared(body, asked, { rear: rearFoot(body, asked, tilt), hipAt: (angle) => round(ankle, legLength(body, SOFT), angle), span: [-0.5, 0.2] })
    if (found) return found
  }
  return undefined
}

/** The top of a long split stance: both knees nearly straight, the trunk as at the lowest point. */
function straight(body: Body, asked: Squat, trunk: number): Standing | undefined {
  const rear = rearFoot(body, asked, PUSH_TILT)
  const { ankle } = flatFoot(body, asked.foot)
  const [near, far] = [legLength(body, REAR_SOFT), legLength(body, SOFT)]
  return length(minus(ankle, rear.ankle)) < near + far ? over(body, asked, rear, joined(rear.ankle, ankle, near, far, 'left'), trunk) : undefined
}

/** Step-ups with the other foot on the floor: the push from below, and standing on the box. */
function stepUp(body: Body, asked: Squat): Outcome<readonly [Standing, Standing]> {
  const rear = rearFoot(body, asked, PUSH_TILT)
  const low = shared(body, asked, { rear, hipAt: (angle) => round(rear.ankle, legLength(body, REAR_SOFT), angle), span: [-0.4, 0.9] })
  const up = onOnePlace(body, { ...asked, stance: 'one leg', seat: undefined, knee: Math.PI - SOFT })
  return low && !isMissing(up) ? [low, up[0]] : missing('the step does not close in balance')
}

/** How much of the force on the ground the working foot carries: what balance asks of this pose. */
export function frontShare(body: Body, asked: Squat, pose: Standing): number {
  if (pose.other === pose.leg || asked.stance === 'two legs' || asked.stance === 'one leg' || pose.other.ball.y > asked.rear_foot + LIFTED) return 1
  const [front, rear] = [pose.leg.ankle.x + middleOfFoot(body), rearPress(asked, pose.other).x]
  return (centreOf(body, pose).x - rear) / (front - rear)
}

/** Where the body is at the start and at the lowest point of a squat, or at the start and the top of a step-up; or why it cannot be drawn. */
export function squatPoses(body: Body, asked: Squat): Outcome<readonly [Standing, Standing]> {
  if (asked.stance === 'split') return split(body, asked)
  return asked.stance === 'step-up' ? stepUp(body, asked) : onOnePlace(body, asked)
}
