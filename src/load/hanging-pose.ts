/**
 * Hangs, pull-ups and dips: a body below a bar or above two of them, in balance on all that carries it.
 * Lengths are shares of stature, forces and masses of the body's; the hands are at the origin, the athlete looks to +x.
 */
import { radians } from '../quantity/unit.ts'
import type { Body } from './body.ts'
import { ankleFromHeel, joined, type Lump } from './chain.ts'
import type { Point } from './model.ts'
import { root } from './root.ts'
import { centreOf, footOn, legTo, middleOfFoot, standing, straightLeg, tuckedLeg, upright, type Leg, type Standing } from './standing-body.ts'
import { between, minus, plus, point, times } from './vector.ts'

/** Help from below or from a belt, over body weight. */
export type Help = { readonly share: number; readonly from: 'belt' | 'band' | 'feet' | 'toes' }

/** What the body does at its hands, how much hangs on it, and what helps it. */
export type Hanging = {
  readonly at: 'straight arms' | 'chin' | 'chest' | 'support' | 'level arms'
  readonly added: number
  readonly help: Help | undefined
  readonly free_arm: boolean
}

/** How far a trunk may lean to find its balance. */
const LEAN_MOST = radians(75)
/** The chin from the middle of the head, and over the bar; the shoulders behind a bar at the throat. Chosen by us. */
const CHIN = { below: 0.057, over: 0.012, behind: 0.06 } as const
/** A bar at the upper breastbone: so far below the shoulders and ahead of them. Chosen by us. */
const BREASTBONE = { below: 0.025, behind: 0.078 } as const
/** In a dip the thighs stay in line with the trunk and the shanks level behind. Chosen by us. */
const LEVEL = radians(90)
/** A weight hangs from the belt between the thighs. Chosen by us. */
const BELOW_BELT = 0.19
/** The heel of a foot that only touches with its toes. Chosen by us. */
const ON_TOES = radians(48)
/** Knees under a hang with the feet on a scale: from here at three tenths of the body to there at seven tenths. Chosen by us. */
const KNEES = { from: radians(92), to: radians(140) } as const
/** A free hand waits so far below and ahead of the bar. Chosen by us. */
const READY = { x: 0.055, y: -0.035 } as const

const armOf = ({ upper_arm, forearm, hand }: Body): number => upper_arm.length + forearm.length + hand.length / 2

/** The angle of the knees over a scale that shows a share of the body. */
const kneesOver = (share: number): number => KNEES.from + (KNEES.to - KNEES.from) * Math.min(1, Math.max(0, (share - 0.3) / 0.4))

/** Where the shoulder is, by the lean of the trunk. */
function shoulderOf(body: Body, { at }: Hanging, lean: number): Point {
  if (at === 'chin') return point(-CHIN.behind, CHIN.over + CHIN.below - body.head.above_shoulder * Math.cos(lean))
  if (at === 'chest') return point(-BREASTBONE.behind, BREASTBONE.below)
  if (at === 'support') return point(0, armOf(body))
  return at === 'level arms' ? point(body.upper_arm.length, body.forearm.length + body.hand.length / 2) : times(upright(lean), -armOf(body))
}

/** A leg whose foot stands straight under the hands, on its sole or on its toes. */
function footUnder(body: Body, hip: Point, { share, from }: Help): Leg | undefined {
  const flat = from === 'feet'
  const bare = footOn(body, point(flat ? body.ball_length - ankleFromHeel(body) - middleOfFoot(body) : 0, 0), flat ? 0 : ON_TOES)
  const [thigh, shank, angle] = [body.thigh.length, body.shank.length, kneesOver(share)]
  const long = Math.sqrt(thigh * thigh + shank * shank - 2 * thigh * shank * Math.cos(angle)) // law of cosines
  const across = bare.ankle.x - hip.x
  if (Math.abs(across) > long) return undefined
  const down = point(0, hip.y - Math.sqrt(long * long - across * across) - bare.ankle.y)
  const foot = { heel: plus(bare.heel, down), ball: plus(bare.ball, down), toe: plus(bare.toe, down), ankle: plus(bare.ankle, down) }
  return legTo(body, foot, hip)
}

/** A straight leg whose sole stands in a band that hangs from the bar. */
function legInBand(body: Body, hip: Point): Leg | undefined {
  const [down, ahead] = [body.thigh.length + body.shank.length + body.ankle_height, middleOfFoot(body)]
  const sine = -hip.x / Math.hypot(down, ahead)
  const angle = Math.asin(Math.max(-1, Math.min(1, sine))) - Math.atan2(ahead, down)
  return Math.abs(sine) > 1 ? undefined : straightLeg(body, hip, point(Math.sin(angle), -Math.cos(angle)))
}

function legOf(body: Body, { at, help }: Hanging, hip: Point, lean: number): Leg | undefined {
  if (help?.from === 'feet' || help?.from === 'toes') return footUnder(body, hip, help)
  if (help?.from === 'band') return legInBand(body, hip)
  return at === 'support' || at === 'level arms' ? tuckedLeg(body, hip, -lean, LEVEL - lean) : straightLeg(body, hip, times(upright(lean), -1))
}

/** The free arm of a body that hangs by one hand. */
function freeArm(body: Body, shoulder: Point): NonNullable<Standing['free']> {
  const hand = point(READY.x, READY.y)
  const far = body.forearm.length + body.hand.length / 2
  const elbow = joined(shoulder, hand, body.upper_arm.length, far, 'right')
  return { elbow, hand, wrist: between(elbow, hand, body.forearm.length / far) }
}

/** The whole body by the lean of its trunk. */
function leaning(body: Body, asked: Hanging, lean: number): Standing | undefined {
  const shoulder = shoulderOf(body, asked, lean)
  const hip = minus(shoulder, times(upright(lean), body.trunk.length))
  const leg = legOf(body, asked, hip, lean)
  const whole = leg && standing(body, leg, leg, lean, { to: point(0, 0) }, { mass: 0, at: 'hands' })
  if (!whole) return undefined
  const carried: Lump = { mass: asked.added, at: plus(hip, point(0, -BELOW_BELT)) }
  return { ...whole, carried, ...(asked.free_arm ? { free: freeArm(body, shoulder) } : {}) }
}

/** Where help takes hold: the belt, the middle of the sole, the ball of the foot. */
export function helpedAt({ leg }: Standing, from: Help['from']): Point {
  return from === 'belt' ? leg.hip : from === 'toes' ? leg.ball : between(leg.heel, leg.ball, 0.5)
}

/** How far the middle of all masses lies ahead of where hands and help hold it. */
function off(body: Body, { added, help }: Hanging, pose: Standing | undefined): number | undefined {
  if (!pose) return undefined
  const held = help === undefined ? 0 : (help.share / (1 + added)) * helpedAt(pose, help.from).x
  return centreOf(body, pose).x - held
}

/** The body in balance, or undefined where there is none. */
export function hangingPose(body: Body, asked: Hanging): Standing | undefined {
  const lean = root((angle) => off(body, asked, leaning(body, asked, angle)), -LEAN_MOST, LEAN_MOST)
  return lean === undefined ? undefined : leaning(body, asked, lean)
}
