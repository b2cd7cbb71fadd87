/** Standing bodies as poses to be drawn: metres, forces over body weight, what stands around them. */
import { degrees } from '../quantity/unit.ts'
import type { Joints, Pose, Prop, Support } from './model.ts'
import { kneeOf, type Leg, type Standing } from './standing-body.ts'
import { minus, plus, point, times } from './vector.ts'
import type { Point } from './model.ts'

/** Cast iron. Value from memory. Units kg/m³. */
const IRON_KG_M3 = 7200
/** From the top of a round weight's ball to the middle of its handle. Chosen by us, so that 12 kg stands 24 cm high. Units m. */
const HANDLE_M = 0.09

/** Radius of a ball of cast iron of that mass. Units kg to m. */
export const ballRadius = (mass_kg: number): number => ((3 * mass_kg) / (4 * Math.PI * IRON_KG_M3)) ** (1 / 3)
/** Height of the handle of a round weight above what it stands on. Units kg to m. */
export const handleHeight = (mass_kg: number): number => 2 * ballRadius(mass_kg) + HANDLE_M

/** What is drawn beside a standing body; places over stature, as the body is. */
export type Around = {
  readonly name: Pose['name']
  readonly forces: readonly { readonly on: Support; readonly at: Point; readonly share: number }[]
  readonly props?: readonly Prop[]
  /** A mass in kilograms, and whether it hangs below the hand. */
  readonly mass?: { readonly kg: number; readonly hangs: boolean }
  readonly chosen?: string | undefined
  readonly force_is?: 'mean'
}

const scaled = (joints: Joints, stature_m: number): Joints => Object.fromEntries(Object.entries(joints).map(([name, at]) => [name, times(at, stature_m)]))
const legJoints = ({ heel, ball, toe, ankle, knee, hip }: Leg): Joints => ({ heel, ball, toe, ankle, knee, hip })

/** A standing body and what is around it as a pose in metres. */
export function standingPose(body: Standing, stature_m: number, { name, forces, props = [], mass, chosen, force_is }: Around): Pose {
  const { leg, other, shoulder, head, elbow, wrist, hand, carried, free } = body
  const up = minus(shoulder, leg.hip)
  const held = mass && massProp(times(carried.at, stature_m), mass)
  return {
    name,
    joints: scaled({ ...legJoints(leg), shoulder, head, elbow, wrist, hand }, stature_m),
    ...(other === leg ? {} : { other_leg: scaled(legJoints(other), stature_m) }),
    ...(free ? { other_arm: scaled({ shoulder, ...free }, stature_m) } : {}),
    props: [{ kind: 'ground', y: 0 }, ...props, ...(held ? [held] : [])],
    forces: forces.map(({ on, at, share }) => ({ on, at: on === 'weight' && held ? held.at : times(at, stature_m), per_weight: point(0, share) })),
    standing: { knee_deg: degrees(kneeOf(leg)), trunk_deg: degrees(Math.atan2(up.x, up.y)), ...(chosen === undefined ? {} : { chosen }), ...(force_is ? { force_is } : {}) },
  }
}

function massProp(at: Point, { kg, hangs }: { readonly kg: number; readonly hangs: boolean }): Prop & { readonly kind: 'mass' } {
  const radius_m = ballRadius(kg)
  return { kind: 'mass', radius_m, at: hangs ? plus(at, point(0, -radius_m - HANDLE_M)) : at }
}
