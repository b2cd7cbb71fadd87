/** A body that leans on hands and feet, or holds itself between two places: its marks and its facts in words. */
import { rounded } from '../quantity/figure.ts'
import { onceOfEach } from '../quantity/once.ts'
import { degrees, radians } from '../quantity/unit.ts'
import type { Point, Pose, Prop, Support } from '../load/model.ts'
import { length, minus, plus, point, unit } from '../load/vector.ts'
import { amount, say, type Words } from './html.ts'
import { bodyOutlines, frontSide, otherLegOutlines, tenth, toeTip, written } from './pose-body.ts'
import { asOne, cm, disc, felt, fromUpright, height, jointsOf, line, LOWEST_CM, near, path, pulled, pushed, type Mark } from './pose-marks.ts'

/** How the hands are held, by what is drawn at them. */
type Hold = 'straps' | 'bar' | 'surface'
const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y
const holdOf = ({ props, joints: { hand } }: Pose): Hold =>
  props.some((prop) => prop.kind === 'strap' && near(prop.to, hand)) ? 'straps' : props.some((prop) => prop.kind === 'bar' && near(prop.at, hand)) ? 'bar' : 'surface'

/** The force named after the feet acts at the knees where those are what the body kneels on. */
function restOf({ forces, joints: { knee } }: Pose): 'feet' | 'knees' {
  const feet = forces.find(({ on }) => on === 'feet')?.at
  return feet && knee && Math.abs(feet.x - knee.x) < 0.01 && knee.y - feet.y < 0.1 ? 'knees' : 'feet'
}

/** The facts of a pose as they are printed, in the picture and in words. */
type Facts = {
  readonly facing: 'down' | 'up' | undefined
  readonly hold: Hold
  readonly rest: 'feet' | 'knees'
  /** Lean of the trunk from upright, in whole degrees; undefined without a trunk. */
  readonly lean_deg: number | undefined
  readonly hand_cm: number | undefined
  readonly foot_cm: number | undefined
  /** What carries the upper body: hands, forearms, or the shoulders of a bridge. */
  readonly arms: Support
  readonly percent: Readonly<Partial<Record<Support, number>>>
}

function factsOf(pose: Pose): Facts {
  const { hip, shoulder, hand } = pose.joints
  const up = hip && shoulder && minus(shoulder, hip)
  const feet = pose.forces.find(({ on }) => on === 'feet')
  return {
    facing: up && (frontSide(pose.joints) === (up.x < 0 ? -1 : 1) ? 'down' : 'up'),
    hold: holdOf(pose),
    rest: restOf(pose),
    lean_deg: up && Number(rounded(degrees(Math.atan2(Math.abs(up.x), up.y)), 'deg')),
    hand_cm: hand && hand.y * 100,
    foot_cm: feet && feet.at.y * 100,
    arms: pose.forces.find(({ on }) => on !== 'feet')?.on ?? 'hands',
    percent: Object.fromEntries(felt(pose).map(({ on, per_weight }) => [on, length(per_weight) * 100])),
  }
}

/** The body leans from upright where it hangs on its hands or they are raised; otherwise it is near enough level. */
const showsLean = ({ facing, hand_cm, lean_deg, percent }: Facts): boolean => lean_deg !== undefined && (facing === 'up' ? percent.hands !== undefined : (hand_cm ?? 0) >= LOWEST_CM)

/** How far a box reaches behind what it holds up and ahead of it, the side the toes or fingers point to. */
const BOX = { hands: [7, 34], knees: [40, 16], feet: [14, 30] } as const

/** A box from the ground to the height of what it holds up. */
function box(at: Point, pose: Pose): Mark {
  const joints = jointsOf(pose)
  const side = frontSide(joints)
  const holds = near(at, joints.hand) ? 'hands' : restOf(pose)
  const sole = [joints.heel, joints.ball, toeTip(joints, side)].flatMap((joint) => (joint ? [joint] : []))
  const held = (holds === 'feet' && sole.length > 0 ? sole : [at]).map(({ x }) => side * x)
  const [back, ahead] = BOX[holds]
  const first = point(side * (Math.min(...held) - back), 0)
  const last = point(side * (Math.max(...held) + ahead), at.y)
  return path('pose-box', `M${written(first)}V${tenth(-last.y)}H${tenth(last.x)}V0Z`, [first, last])
}

const strap = (from: Point, to: Point): Mark[] => [
  line('pose-strap', from, to),
  line('pose-beam', plus(from, point(-13, 4)), plus(from, point(13, 4))),
  disc('pose-ring', from, 3),
]

const bar = (at: Point): Mark[] => [line('pose-post', point(at.x, 0), at), line('pose-post', point(at.x - 14, 1), point(at.x + 14, 1))]

/** What stands behind the body, and what stands before it: the ground last, as everything stands on it. */
const behind = (prop: Prop): Mark[] => (prop.kind === 'strap' ? strap(cm(prop.from), cm(prop.to)) : prop.kind === 'bar' ? bar(cm(prop.at)) : [])
const before = (prop: Prop, pose: Pose): Mark[] => (prop.kind === 'surface' ? [box(cm(prop.at), pose)] : prop.kind === 'bar' ? [disc('pose-bar', cm(prop.at), 2)] : [])
export function ground(prop: Prop): Mark[] {
  if (prop.kind !== 'ground') return []
  const rise = 999 * Math.tan(radians(prop.slope_deg ?? 0))
  const d = prop.slope_deg === undefined ? `M-999 ${tenth(-100 * prop.y)}h1998v3h-1998Z` : `M-999 ${tenth(-rise)}L999 ${tenth(rise)}v3L-999 ${tenth(3 - rise)}Z`
  return [path('pose-ground', d, [point(0, 100 * prop.y)])]
}

function forces(pose: Pose, { percent }: Facts): Mark[] {
  const { shoulder, elbow } = pose.joints
  return felt(pose).flatMap((force) => {
    const words = amount(percent[force.on] ?? 0, '%')
    const pulls = force.on === 'hands' && shoulder && dot(minus(shoulder, force.at), force.per_weight) < 0
    return pulls ? pulled(force, words, elbow) : pushed(force, words)
  })
}

/** Heights of hands and feet: each clear of all that lies lower, the hands' on the side they reach to. */
function heights(pose: Pose, { hand_cm = 0, foot_cm = 0, hold, facing, arms }: Facts, marks: readonly Mark[]): Mark[] {
  const { hand } = jointsOf(pose)
  const lower = marks.flatMap(({ reach }) => reach).filter(({ y }) => y < Math.max(hand_cm, foot_cm, 100))
  const left = Math.min(...lower.map(({ x }) => x)) - 6
  const feet = foot_cm >= LOWEST_CM ? height(left, foot_cm, 'left') : []
  if (!hand || hand_cm < LOWEST_CM || arms === 'shoulders') return feet
  const side = facing === 'down' ? 'right' : 'left'
  const x = side === 'right' ? hand.x + 40 : Math.min(left - (feet.length > 0 ? 44 : 0), hand.x - 44)
  const guide = hold === 'surface' ? [] : [line('pose-guide', point(side === 'right' ? x - 4 : x + 4, hand_cm), plus(hand, point(side === 'right' ? 5 : -5, 0)))]
  return [...feet, ...guide, ...height(x, hand_cm, side)]
}

/** The lean: an upright line from the lowest joint in line with the trunk, and the arc from it to the body. */
function lean(pose: Pose, facts: Facts): Mark[] {
  const { hip, shoulder, knee, ankle } = jointsOf(pose)
  if (!showsLean(facts) || facts.lean_deg === undefined || !hip || !shoulder || !knee) return []
  const along = unit(minus(shoulder, hip))
  const straight = ankle && Math.abs(along.x * (hip.y - ankle.y) - along.y * (hip.x - ankle.x)) < 3
  return fromUpright(straight ? ankle : knee, along, amount(facts.lean_deg, 'deg'))
}

/** Joints that get a mark on the body; wrist and hand are ends of an outline, and the sole runs through heel, ball and toe. */
export const MARKED = ['ankle', 'knee', 'hip', 'shoulder', 'head', 'elbow'] as const

/** The body with what it holds and stands on, and no letters; drawn once for all figures of a pose. */
export const bodyMarks = onceOfEach((pose: Pose): readonly Mark[] => {
  const joints = jointsOf(pose)
  const other = Object.fromEntries(Object.entries(pose.other_leg ?? {}).map(([name, at]) => [name, cm(at)]))
  const outlines = [...otherLegOutlines(other, frontSide(joints)), ...bodyOutlines(joints, holdOf(pose) === 'surface' ? 'flat' : 'closed')].map(({ of, d }): Mark => path(`pose-${of}`, d))
  const round = [...Object.values(joints), ...Object.values(other)].flatMap((at) => [plus(at, point(13, 13)), minus(at, point(13, at.y < 13 ? at.y : 13))])
  const dots = MARKED.flatMap((name) => (joints[name] ? [disc('pose-joint', joints[name], name === 'head' ? 1.2 : 1.5)] : []))
  return [asOne([...pose.props.flatMap(behind), ...outlines, { svg: '', reach: round }, ...pose.props.flatMap((prop) => before(prop, pose)), ...pose.props.flatMap(ground), ...dots])]
})

/** Everything of a leaning pose. */
export function leaningMarks(pose: Pose): Mark[] {
  const facts = factsOf(pose)
  const things = [...bodyMarks(pose), ...lean(pose, facts)]
  return [...things, ...heights(pose, facts, things), ...forces(pose, facts)]
}

/** "leaning 50° from upright (40° from level)", "4° below level". */
function slope(facts: Facts): Words | undefined {
  if (facts.lean_deg === undefined) return undefined
  const level_deg = 90 - facts.lean_deg
  const away = amount(Math.abs(level_deg), 'deg')
  const level = level_deg === 0 ? 'level' : level_deg > 0 ? say`${away} from level` : say`${away} below level`
  return showsLean(facts) ? say`leaning ${amount(facts.lean_deg, 'deg')} from upright (${level})` : level
}

export const high = (limb: string, height_cm: number): Words => (height_cm < LOWEST_CM ? say`${limb} on the ground` : say`${limb} ${amount(height_cm, 'cm')} above the ground`)

export const given = <Value>(values: readonly (Value | undefined)[]): Value[] => values.filter((value) => value !== undefined)

/** What a leaning pose shows: where it is, then the forces on it. */
export function leaningFacts(pose: Pose): Words[][] {
  const facts = factsOf(pose)
  const { hand_cm, foot_cm, hold, rest, percent, arms } = facts
  const hands = hand_cm === undefined ? undefined : arms === 'shoulders' ? high('shoulders', 0) : high(arms !== 'hands' ? arms : hold === 'surface' ? 'hands' : hold === 'bar' ? 'hands on a bar' : 'hands on straps', hand_cm)
  const place = given([facts.facing && (facts.facing === 'down' ? 'face down' : 'face up'), slope(facts), hands, foot_cm === undefined ? undefined : high(rest, foot_cm), pose.other_leg && (facts.facing === 'down' ? 'one foot lifted' : 'one leg free, in line with the trunk')])
  const force = (limb: string, share: number | undefined): Words | undefined => (share === undefined ? undefined : say`force on ${limb} ${amount(share, '% of body weight')}`)
  const carried = given([force(`${arms === 'shoulders' ? 'the' : 'both'} ${arms}`, percent[arms]), force(pose.other_leg ? 'the foot' : `the ${rest}`, percent.feet)])
  return [place, carried]
}
