/**
 * The outline of a body in profile, laid round the joints of a pose.
 *
 * Everything is in centimetres with y up; `written` turns y down for SVG. Limbs are capsules of two radii
 * whose ends are circles about the joints; trunk and head are smooth outlines in a frame between two joints.
 * Girths are those of no one in particular: chosen by us so that a figure reads as an athletic adult.
 */
import { between, cross, length, minus, plus, point, times, turned, unit } from '../load/vector.ts'
import type { Point, Pose } from '../load/model.ts'

/** The joints of a pose in centimetres. */
export type Joints = Pose['joints']

/** One closed outline, ready for a path. `arm` lies over the trunk and is set off from it; `far` is the leg behind the other. */
export type Outline = { readonly of: 'body' | 'arm' | 'far'; readonly d: string }

/** What the hands do: lie flat on something, or close round a bar or a handle. */
export type Grasp = 'flat' | 'closed'

/** A number of centimetres to a tenth, never "-0". */
export const tenth = (value: number): string => String(Math.round(value * 10) / 10 + 0)

/** "12.5 -30": a point as a path writes it. */
export const written = ({ x, y }: Point): string => `${tenth(x)} ${tenth(-y)}`

/** Frame of a body part: where it starts, which way it runs, and which way its front looks. */
export type Frame = { readonly at: Point; readonly along: Point; readonly front: Point }

/** A place in a frame: so far along, so far to the front. */
export const placed = ({ at, along, front }: Frame, [far, ahead]: readonly [number, number]): Point => plus(at, plus(times(along, far), times(front, ahead)))

/** A closed curve through every point (Catmull and Rom), whose control points mirror each other, so that S can write it. */
export function smooth(points: readonly Point[]): string {
  const at = (index: number): Point => points[(index + points.length) % points.length] ?? point(0, 0)
  const lead = (index: number): Point => times(minus(at(index + 1), at(index - 1)), 1 / 6)
  const rest = points.map((_, index) => `${index === 0 ? `C${written(plus(at(0), lead(0)))} ` : 'S'}${written(minus(at(index + 1), lead(index + 1)))} ${written(at(index + 1))}`)
  return `M${written(at(0))}${rest.join('')}Z`
}

/** Radii of a limb at its two ends, and how far its sides swell at the front and at the back. */
type Girth = { readonly near: number; readonly far: number; readonly front: number; readonly back: number }

/** A limb that points out of the picture has no length in it. Units cm. */
const END_ON = 0.1

/** A limb seen from its end. */
const round = (at: Point, radius: number): string => {
  const [left, right] = [minus(at, point(radius, 0)), plus(at, point(radius, 0))]
  const arc = `A${tenth(radius)} ${tenth(radius)} 0 1 1 `
  return `M${written(left)}${arc}${written(right)}${arc}${written(left)}Z`
}

/** A capsule from one joint to the next: a circle about each, joined by tangents that may swell. */
export function capsule(from: Point, to: Point, girth: Girth, side: 1 | -1): string {
  const { near, far } = girth
  if (length(minus(to, from)) < END_ON) return round(from, Math.max(near, far))
  const along = unit(minus(to, from))
  const tilt = (near - far) / length(minus(to, from))
  const normal = (way: 1 | -1): Point => plus(times(along, tilt), times(turned(along, (way * Math.PI) / 2), Math.sqrt(1 - tilt * tilt)))
  const [left, right] = [normal(1), normal(-1)]
  const edge = (way: Point, swell: number): Point => plus(between(plus(from, times(way, near)), plus(to, times(way, far)), 0.45), times(way, 2 * swell))
  const [leftSwell, rightSwell] = side === 1 ? [girth.front, girth.back] : [girth.back, girth.front]
  const arc = (radius: number, wide: boolean, end: Point): string => `A${tenth(radius)} ${tenth(radius)} 0 ${wide ? 1 : 0} 1 ${written(end)}`
  return [
    `M${written(plus(from, times(left, near)))}`,
    `Q${written(edge(left, leftSwell))} ${written(plus(to, times(left, far)))}`,
    arc(far, far > near, plus(to, times(right, far))),
    `Q${written(edge(right, rightSwell))} ${written(plus(from, times(right, near)))}`,
    `${arc(near, near > far, plus(from, times(left, near)))}Z`,
  ].join('')
}

export const THIGH: Girth = { near: 8.6, far: 5.6, front: 1, back: 0.9 }
export const SHANK: Girth = { near: 5.2, far: 3.5, front: 0, back: 1.9 }
export const UPPER_ARM: Girth = { near: 6, far: 4.1, front: 0.3, back: 0.3 }
export const FOREARM: Girth = { near: 4.2, far: 2.6, front: 0.5, back: 0.5 }
export const NECK: Girth = { near: 6.6, far: 5.8, front: 0, back: 0 }
export const FOOT_END_ON: Girth = { near: 3.5, far: 4.6, front: 0, back: 0 }
export const FIST: Girth = { near: 2.8, far: 4.2, front: 0, back: 0 }

/** Share of the way from hip to shoulder, centimetres to the front: up the front, down the back. */
const TRUNK = [[-0.12, 6], [0.06, 8.6], [0.3, 8.6], [0.5, 9.4], [0.74, 12], [0.92, 10], [1.08, 4.5], [1.13, -3], [1.02, -8.2], [0.8, -11], [0.52, -9], [0.3, -8.2], [0.04, -11], [-0.16, -9.6], [-0.3, -6.5], [-0.26, 2]] as const
/** Centimetres above the middle of the head, and to the front: throat, face, crown, nape. */
const HEAD = [[-8.4, 3], [-9.9, 7], [-8.6, 9.3], [-5.6, 9.1], [-2.8, 11.5], [0.8, 9.5], [4.5, 9.8], [9.3, 6.6], [11.8, 0], [9.8, -6.6], [4, -9.8], [-3.5, -8.4], [-8, -4.5]] as const

/** Which side of the way from hip to knee the athlete's front is: 1 left, -1 right. The foot points to it. */
export function frontSide({ heel, toe, ankle, knee }: Joints): 1 | -1 {
  return heel && toe && ankle && knee && cross(minus(ankle, knee), minus(toe, heel)) < 0 ? -1 : 1
}

/** Unit vector to the front of a part that runs upward from one joint to the next. */
const frontOf = (from: Point, to: Point, side: 1 | -1): Point => times(turned(unit(minus(to, from)), Math.PI / 2), -side)

function trunkAndHead({ hip, shoulder, head }: Joints, side: 1 | -1): string[] {
  if (!hip || !shoulder) return []
  const tall = length(minus(shoulder, hip))
  const trunk: Frame = { at: hip, along: unit(minus(shoulder, hip)), front: frontOf(hip, shoulder, side) }
  const outline = smooth(TRUNK.map(([share, ahead]) => placed(trunk, [share * tall, ahead])))
  if (!head) return [outline]
  const skull: Frame = { at: head, along: unit(minus(head, shoulder)), front: frontOf(shoulder, head, side) }
  const neck = capsule(between(shoulder, head, 0.2), placed(skull, [-4.5, -1.4]), NECK, side)
  return [outline, neck, smooth(HEAD.map((place) => placed(skull, place)))]
}

/** Where the tip of the toes is drawn: bent along the ground where a foot stands on its ball, as the model's foot has no toe joint. */
export function toeTip({ ball, toe, heel }: Joints, side: 1 | -1): Point | undefined {
  if (!ball || !toe || !heel) return undefined
  const onBall = heel.y > ball.y + 1 && toe.y < ball.y - 0.1 && side * (toe.x - ball.x) > 0
  return onBall ? plus(ball, point(side * length(minus(toe, ball)), 0)) : toe
}

/** Sole from heel over ball to toes, instep, ankle, heel. */
function foot(joints: Joints, side: 1 | -1): string[] {
  const { heel, ball, ankle } = joints
  const tip = toeTip(joints, side)
  if (!heel || !ball || !ankle || !tip) return []
  if (length(minus(ball, heel)) < END_ON) return [capsule(ankle, heel, FOOT_END_ON, side)]
  const sole: Frame = { at: heel, along: unit(minus(ball, heel)), front: times(turned(unit(minus(ball, heel)), Math.PI / 2), side) }
  const toes: Frame = { at: tip, along: unit(minus(tip, ball)), front: times(turned(unit(minus(tip, ball)), Math.PI / 2), side) }
  const shin: Frame = { ...sole, at: ankle }
  const top = [placed(toes, [1.6, 3.6]), placed(toes, [-2.4, 4.2]), placed(sole, [length(minus(ball, heel)) - 4, 7.4]), placed(shin, [3.6, 1.5])]
  return [
    `M${written(heel)}L${written(ball)}L${written(tip)}Q${top.slice(0, 2).map(written).join(' ')}Q${top.slice(2).map(written).join(' ')}` +
      `L${written(placed(shin, [-3.4, 1]))}Q${written(placed(sole, [0.9, 5.5]))} ${written(placed(sole, [-0.6, 3]))}Q${written(placed(sole, [-0.6, 0.5]))} ${written(heel)}Z`,
  ]
}

/** A hand laid flat, fingers ahead of the body, or a fist. */
function hand({ elbow, wrist, hand: palm }: Joints, grasp: Grasp, side: 1 | -1): string[] {
  if (!elbow || !wrist || !palm) return []
  if (grasp === 'closed') return [capsule(wrist, palm, FIST, side)]
  const flat: Frame = { at: palm, along: point(side, 0), front: point(0, 1) }
  const at = (far: number, high: number): string => written(placed(flat, [far, high]))
  return [`M${at(-4.6, 0)}L${at(12.5, 0)}Q${at(13.5, 1.6)} ${at(11.5, 1.8)}Q${at(5, 2.4)} ${at(2.6, 4.6)}L${at(-3, 4)}Q${at(-5.6, 2)} ${at(-4.6, 0)}Z`]
}

/**
 * Every outline of a body, the farthest first.
 *
 * Shape   joints (centimetres) to closed paths; a limb whose joints are not given is left out.
 */
export function bodyOutlines(joints: Joints, grasp: Grasp): Outline[] {
  const side = frontSide(joints)
  const { shoulder, elbow, wrist } = joints
  const body = [...legOf(joints, side), ...trunkAndHead(joints, side)]
  const arm = [...limb(shoulder, elbow, UPPER_ARM, side), ...limb(elbow, wrist, FOREARM, side), ...hand(joints, grasp, side)]
  return [...body.map((d) => ({ of: 'body', d }) as const), ...arm.map((d) => ({ of: 'arm', d }) as const)]
}

/** The other arm, drawn behind the body. */
export const otherArmOutlines = ({ shoulder, elbow, wrist, ...arm }: Joints, side: 1 | -1): Outline[] =>
  [...limb(shoulder, elbow, UPPER_ARM, side), ...limb(elbow, wrist, FOREARM, side), ...hand({ ...arm, elbow, wrist } as Joints, 'closed', side)].map((d) => ({ of: 'far', d }))

const limb = (from: Point | undefined, to: Point | undefined, girth: Girth, side: 1 | -1): string[] => (from && to ? [capsule(from, to, girth, side)] : [])

const legOf = (joints: Joints, side: 1 | -1): string[] => [...foot(joints, side), ...limb(joints.knee, joints.ankle, SHANK, side), ...limb(joints.hip, joints.knee, THIGH, side)]

/** The other leg, drawn behind the body, as thick as the one before it. */
export const otherLegOutlines = (leg: Joints, side: 1 | -1): Outline[] => legOf(leg, side).map((d) => ({ of: 'far', d }))
