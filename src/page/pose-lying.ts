/** A body that lies on its side, seen from the front: its marks and its facts in words. */
import { rounded } from '../quantity/figure.ts'
import { onceOfEach } from '../quantity/once.ts'
import { degrees } from '../quantity/unit.ts'
import { men } from '../load/body.ts'
import { joined } from '../load/chain.ts'
import type { Point, Pose } from '../load/model.ts'
import { between, length, minus, plus, point, times, turned, unit } from '../load/vector.ts'
import { amount, say, type Words } from './html.ts'
import { capsule, FIST, FOOT_END_ON, FOREARM, NECK, placed, SHANK, smooth, tenth, THIGH, UPPER_ARM, written, type Frame, type Joints } from './pose-body.ts'
import { given, ground, high, MARKED } from './pose-leaning.ts'
import { asOne, cm, disc, felt, height, jointsOf, LOWEST_CM, path, pushed, type Mark } from './pose-marks.ts'

/** Half of what lies between the two shoulders, hips, knees and ankles of a body seen from the front. Chosen by us. Units cm. */
const HALF = { shoulder: 15, hip: 9.5, knee: 4.5, ankle: 4 } as const
/** Share of the way from the middle of the hips to that of the shoulders, and half the breadth there. */
const TRUNK = [[-0.17, 7], [-0.06, 15.5], [0.08, 17], [0.3, 14.6], [0.48, 13.8], [0.7, 15.4], [0.88, 17], [1.02, 17], [1.12, 9], [1.16, 5]] as const
/** Centimetres above the middle of the head, and half its breadth: chin, jaw, ear, temple, crown. */
const HEAD = [[-11.6, 3], [-7, 6.2], [-2.5, 7.4], [-1.6, 8.7], [2, 8.7], [3, 7.8], [8, 6.8], [11.6, 2.8]] as const

/** The upper side of the body: what is not beside the working joints but above them. */
type Upper = { readonly leg: Joints; readonly shoulder: Point; readonly elbow: Point; readonly hand: Point; readonly wrist: Point }
type Front = { readonly joints: Required<Joints>; readonly upper: Upper; readonly spine: Frame; readonly head: Point; readonly tall: number }

const all = (joints: Joints): joints is Required<Joints> => (['heel', 'ankle', 'knee', 'hip', 'shoulder', 'head', 'elbow', 'wrist', 'hand'] as const).every((name) => joints[name])

/** What the pose knows of the lower side, and the upper side above it. */
function frontOf(pose: Pose): Front | undefined {
  const joints = jointsOf(pose)
  if (!all(joints)) return undefined
  const { hip, shoulder, head } = joints
  const up = turned(unit(minus(shoulder, hip)), Math.PI / 2)
  const [lowHip, lowShoulder] = [plus(hip, times(up, HALF.hip)), plus(shoulder, times(up, HALF.shoulder))]
  const along = unit(minus(lowShoulder, lowHip))
  const tall = length(minus(shoulder, hip))
  const upper = { leg: upperLeg(joints, up, pose.lies?.top_leg ?? 'stacked', tall), ...upperArm(plus(hip, times(up, 2 * HALF.hip)), plus(shoulder, times(up, 2 * HALF.shoulder)), along, tall) }
  const spine = { at: lowHip, along, front: turned(along, Math.PI / 2) }
  return { joints, upper, spine, head: plus(lowShoulder, times(along, length(minus(head, shoulder)))), tall: length(minus(lowShoulder, lowHip)) }
}

/** A length of the reference man, in this drawing. */
const long = (share: number, tall: number): number => (share / men.trunk.length) * tall

/** The upper leg: on the lower one, with its foot ahead of the lower on the floor, or held in line above it. */
function upperLeg({ hip, knee, ankle, shoulder }: Required<Joints>, up: Point, does: 'stacked' | 'ahead' | 'lifted', tall: number): Joints {
  const from = plus(hip, times(up, 2 * HALF.hip))
  const kneels = length(minus(ankle, knee)) < 1
  const at = (way: Point): Joints => {
    const [thigh, shank, foot] = [men.thigh.length, men.shank.length, men.ankle_height].map((share) => long(share, tall)) as [number, number, number]
    const [bent, end] = [plus(from, times(way, thigh)), plus(from, times(way, thigh + shank))]
    const sole = plus(end, times(way, foot))
    return kneels && does !== 'lifted' ? { hip: from, knee: bent } : { hip: from, knee: bent, ankle: end, heel: sole }
  }
  if (does === 'lifted') return at(unit(minus(hip, shoulder)))
  const low = kneels ? knee : ankle
  return at(unit(minus(does === 'ahead' ? low : plus(low, times(up, 2 * (kneels ? HALF.knee : HALF.ankle))), from)))
}

/** The upper hand on the upper hip, its elbow up. */
function upperArm(hip: Point, shoulder: Point, along: Point, tall: number): Omit<Upper, 'leg'> {
  const hand = plus(hip, plus(times(along, 9), times(turned(along, Math.PI / 2), 3)))
  const [near, far] = [long(men.upper_arm.length, tall), long(men.forearm.length + men.hand.length / 2, tall)]
  const elbow = joined(shoulder, hand, near, far, 'right')
  return { shoulder, elbow, hand, wrist: between(elbow, hand, long(men.forearm.length, tall) / far) }
}

/** Both sides of an outline that is the same on either side of its line. */
const mirrored = (frame: Frame, half: readonly (readonly [number, number])[]): string => smooth([...half, ...half.toReversed().map(([far, out]) => [far, -out] as const)].map((place) => placed(frame, place)))

/** A leg seen from the front: its foot points out of the picture. */
const leg = ({ hip, knee, ankle, heel }: Joints): string[] => [
  ...(ankle && heel && length(minus(heel, ankle)) > 1 ? [capsule(ankle, heel, FOOT_END_ON, 1)] : []),
  ...(knee && ankle ? [capsule(knee, ankle, SHANK, 1)] : []),
  ...(hip && knee ? [capsule(hip, knee, THIGH, 1)] : []),
]

/** A fist or a flat hand on the floor, its fingers towards who looks. */
const handOn = ({ x, y }: Point): string => `M${written(point(x - 5, y))}H${tenth(x + 5)}Q${written(point(x + 6, y + 7))} ${written(point(x, y + 7))}Q${written(point(x - 6, y + 7))} ${written(point(x - 5, y))}Z`

function outlines({ joints, upper, spine, head, tall }: Front): Mark[] {
  const skull: Frame = { ...spine, at: head }
  const body = [
    ...leg(joints),
    ...leg(upper.leg),
    mirrored(spine, TRUNK.map(([share, out]) => [share * tall, out])),
    capsule(plus(spine.at, times(spine.along, tall * 1.02)), placed(skull, [-5, 0]), { ...NECK, near: 6.4, far: 5.6 }, 1),
    mirrored(skull, HEAD),
  ]
  const { shoulder, elbow, wrist, hand } = joints
  const arm = [
    capsule(shoulder, elbow, UPPER_ARM, 1),
    capsule(elbow, wrist, FOREARM, 1),
    handOn(hand),
    capsule(upper.shoulder, upper.elbow, UPPER_ARM, 1),
    capsule(upper.elbow, upper.wrist, FOREARM, 1),
    capsule(upper.wrist, upper.hand, FIST, 1),
  ]
  const round = [...Object.values(joints), ...Object.values(upper.leg), upper.elbow, head].flatMap((at) => [plus(at, point(13, 13)), minus(at, point(13, at.y < 13 ? at.y : 13))])
  return [...body.map((d) => path('pose-body', d)), ...arm.map((d) => path('pose-arm', d)), { svg: '', reach: round }]
}

/** A box under the lower foot. */
const box = (at: Point): Mark => path('pose-box', `M${written(point(at.x - 22, 0))}V${tenth(-at.y)}H${tenth(at.x + 16)}V0Z`, [point(at.x - 22, 0), point(at.x + 16, at.y)])

/** The body with what it rests on, and no letters; drawn once for all figures of a pose. */
export const lyingBody = onceOfEach((pose: Pose): readonly Mark[] => {
  const front = frontOf(pose)
  const dots = front ? MARKED.map((name) => (name === 'head' ? disc('pose-joint', front.head, 1.2) : disc('pose-joint', front.joints[name], 1.5))) : []
  return [asOne([...(front ? outlines(front) : []), ...pose.props.flatMap((prop) => (prop.kind === 'surface' ? [box(cm(prop.at))] : [])), ...pose.props.flatMap(ground), ...dots])]
})

/** How high the lower foot rests. Units cm. */
const footHeight = ({ forces }: Pose): number => 100 * (forces.find(({ on }) => on === 'feet')?.at.y ?? 0)

/** Everything of a lying pose. */
export function lyingMarks(pose: Pose): Mark[] {
  const things = lyingBody(pose)
  const foot_cm = footHeight(pose)
  const left = Math.min(...things.flatMap(({ reach }) => reach).map(({ x }) => x)) - 6
  const pushes = felt(pose).flatMap((force) => pushed(force, amount(length(force.per_weight) * 100, '%')))
  return [...things, ...(foot_cm >= LOWEST_CM ? height(left, foot_cm, 'left') : []), ...pushes]
}

const DOES = { stacked: 'legs together', ahead: 'top foot ahead', lifted: 'top leg lifted' } as const

/** "10° from level": the line through the joints of the lower side. */
function slope({ hip, shoulder }: Pose['joints']): Words | undefined {
  if (!hip || !shoulder) return undefined
  const level_deg = degrees(Math.atan2(shoulder.y - hip.y, Math.abs(shoulder.x - hip.x)))
  const away = amount(Math.abs(level_deg), 'deg')
  return rounded(Math.abs(level_deg), 'deg') === '0' ? 'level' : level_deg > 0 ? say`${away} from level` : say`${away} below level`
}

/** What a lying pose shows: where it is, then the forces on it. */
export function lyingFacts(pose: Pose): Words[][] {
  const { knee, ankle } = pose.joints
  const arm = pose.forces.some(({ on }) => on === 'forearms') ? 'forearm' : 'hand'
  const rest = knee && ankle && length(minus(ankle, knee)) < 0.01 ? 'knee' : 'foot'
  const place = given<Words>(['on the side, seen from the front', slope(pose.joints), high(`one ${arm}`, 0), high(`the side of the lower ${rest}`, footHeight(pose)), pose.lies && DOES[pose.lies.top_leg]])
  const carried = felt(pose).map(({ on, per_weight }): Words => say`force on ${on === 'feet' ? `the lower ${rest}` : `the ${arm}`} ${amount(length(per_weight) * 100, '% of body weight')}`)
  return [place, carried]
}
