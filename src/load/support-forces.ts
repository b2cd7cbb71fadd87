/**
 * The statics of a body that leans on its feet and its hands: balance of moments about the feet.
 *
 *     F = Σ mᵢ (xᵢ − x_C) / [(H − C) × u]                              (1)
 *     N = Σ mᵢ − F u_y                                                 (2)
 *     μ = |F u_x| / N                                                  (3)
 *
 * F is the force on both hands over body weight, u its direction, H the hands, C the point of
 * contact at the feet, mᵢ and xᵢ each segment's share of body mass and its level place,
 * N what the feet carry, μ the friction they need.
 *
 * Source  mechanics: plane statics of one rigid body, (H − C) × u being the moment of a unit force.
 * Assumes the pose is held still; each strap is a two-force member, so its force lies along it.
 */
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import type { Body } from './body.ts'
import { armLumps, carriedAt, shankLumps, thighLumps, trunkLumps, weightAbout, type Carried, type Contact, type Lump } from './chain.ts'
import type { Point } from './model.ts'
import type { Still } from './support-pose.ts'
import { between, cross, minus, point, unit } from './vector.ts'

/** Which way the force on the hands points. `strap` is known; the others are an assumption for a rigid surface or bar. */
export type Direction = 'strap' | 'along the arm' | 'vertical'

/** Forces over body weight: on both hands, at the feet, and the friction the feet need. */
export type Forces = { readonly hands: number; readonly on_hands: Point; readonly at_feet: Point; readonly contact: Point; readonly friction: number }

/** Where the feet press: a flat foot anywhere from heel to ball, `share` of the way. */
export function contactPoint(still: Still, feet: Contact, share: number, foot_height: number): Point {
  if (feet === 'toes') return still.ball
  if (feet === 'heels') return still.heel
  if (feet === 'flat') return between(still.heel, still.ball, share)
  return point(still.knee.x, foot_height)
}

/** What the feet's grip surely gives: a dry shoe or foot on a gym floor. Value from memory. */
const GRIP = 0.6

/**
 * Turns the force from along the arm towards upright, just as far as the grip of the feet asks.
 *
 *     |m_C u_x| = μ [M (H − C) × u − m_C u_y]        with u = (1 − t) arm + t upright, linear in t      (5)
 *
 * m_C is the first moment of the masses about the contact, M their sum.
 * Missing when the weight lies past the hands: only the grip of the feet would keep the body from tipping over them.
 */
function gripped(arm: Point, reach: Point, mass: number, first_moment: number): Outcome<Point> {
  const upright = GRIP * (mass * reach.x - first_moment)
  const spare = Math.abs(first_moment * arm.x) - (upright * arm.y - GRIP * mass * reach.y * arm.x) // eq. 5 at t = 0
  if (upright <= 0) return missing('the weight of the body lies past its hands, and would tip it over them')
  if (spare <= 0) return arm
  const t = spare / (spare + upright)
  return unit(point((1 - t) * arm.x, (1 - t) * arm.y + t))
}

function along(still: Still, direction: Direction): Point {
  if (direction === 'vertical') return point(0, 1)
  if (direction === 'strap' && still.anchor) return unit(minus(still.anchor, still.hand))
  const reach = unit(minus(still.shoulder, still.hand))
  return still.pulls ? point(-reach.x, -reach.y) : reach // hands push the body off a surface, and pull it to a bar
}

/** The masses of one still, part by part. */
export type Masses = { readonly shanks: readonly Lump[]; readonly thighs: readonly Lump[]; readonly trunk: readonly Lump[]; readonly arms: readonly Lump[] }

/** Every mass of the body where it lies in this still, with what it carries. */
export function massesOf(body: Body, still: Still, shanksRest: boolean, added: number, where: Carried): Masses {
  return {
    shanks: shankLumps(body, still, shanksRest),
    thighs: thighLumps(body, still),
    trunk: trunkLumps(body, still, carriedAt(body, still, added, where)),
    arms: armLumps(body, still.shoulder, still.elbow, still.wrist, still.hand),
  }
}

/** A lever shorter than this, over stature, turns centimetres of doubt into tenths of body weight. Chosen by us: 26 cm at 174 cm. */
const SHORTEST_ARM = 0.15

/**
 * Forces that hold the pose still.
 *
 * Units   shares of body weight.
 * Missing when the hands would have to pull the body down, or the feet would leave the ground.
 */
export function supportForces(still: Still, { shanks, thighs, trunk, arms }: Masses, contact: Point, direction: Direction): Outcome<Forces> {
  const { mass, first_moment } = weightAbout([shanks, thighs, trunk, arms], contact.x)
  const reach = minus(still.hand, contact)
  const straight = along(still, direction)
  const way = direction === 'along the arm' && !still.pulls ? gripped(straight, reach, mass, first_moment) : straight // a bar is pulled along the arm, and the grip this asks is told
  if (isMissing(way)) return way
  const arm = cross(reach, way)
  if (Math.abs(arm) < SHORTEST_ARM) return missing('the line of the force passes too near the feet to settle how much the hands carry')
  const hands = first_moment / arm // eq. 1
  if (hands < 0) return missing('the body stands past its balance, so the hands carry nothing')
  const normal = mass - hands * way.y // eq. 2
  if (normal <= 0) return missing('the hands would carry more than the whole body, so the feet would leave the ground')
  const friction = Math.abs(hands * way.x) / normal // eq. 3
  return { hands, on_hands: point(hands * way.x, hands * way.y), at_feet: point(-hands * way.x, normal), contact, friction }
}

/** Moments the muscles hold at one side of a joint, over body weight and stature. */
export type Moments = { readonly shoulder: number; readonly hip: number; readonly knee: number }

/**
 * The moments at the joints: of the force on the hands and of every mass beyond the joint, seen from the hands.
 *
 *     M_J = (H − J) × F − Σ mᵢ (xᵢ − x_J)                              (4)
 *
 * Shape   a still, its masses and its forces to three magnitudes, both sides of the body together.
 */
export function jointMoments(still: Still, { thighs, trunk, arms }: Masses, { on_hands }: Forces): Moments {
  return {
    shoulder: momentAbout(still.shoulder, still.hand, on_hands, [arms]),
    hip: momentAbout(still.hip, still.hand, on_hands, [arms, trunk]),
    knee: momentAbout(still.knee, still.hand, on_hands, [arms, trunk, thighs]),
  }
}

/** Eq. 4 at one joint. */
const momentAbout = (joint: Point, hand: Point, on_hands: Point, beyond: readonly (readonly Lump[])[]): number => Math.abs(cross(minus(hand, joint), on_hands) - weightAbout(beyond, joint.x).first_moment)
