/** A body that stands, squats, lifts or lands: its marks and its facts in words. */
import { rounded } from '../quantity/figure.ts'
import { onceOfEach } from '../quantity/once.ts'
import type { Point, Pose, Prop } from '../load/model.ts'
import { length, minus, plus, point, times, unit } from '../load/vector.ts'
import { amount, say, type Words } from './html.ts'
import { bodyOutlines, frontSide, otherArmOutlines, otherLegOutlines, tenth, written, type Joints } from './pose-body.ts'
import { heldSays, heldUp, hungBefore, hungBehind, isHeldUp } from './pose-hanging.ts'
import { given, ground, high, MARKED } from './pose-leaning.ts'
import { asOne, cm, CM_PER_WEIGHT, disc, felt, fromUpright, halo, haloed, height, jointsOf, label, line, LOWEST_CM, path, pushed, type Mark } from './pose-marks.ts'

/** From this knee angle on a leg counts as straight, and below this lean a trunk as upright. Units deg. */
const STRAIGHT_DEG = 165
const UPRIGHT_DEG = 5
/** Radius of the arc in the hollow of a knee, and where its figure stands. */
const KNEE_ARC = 17
const KNEE_FIGURE = 31

/** How far a box reaches behind and ahead of the place it holds up. */
const BOXES = { surface: [20, 30], seat: [38, 6], 'rear surface': [34, 9], drop: [46, 0], mat: [13, 13], block: [16, 16] } as const
const isBox = (kind: Prop['kind']): kind is keyof typeof BOXES => kind in BOXES

type Facts = { readonly knee_deg: number | undefined; readonly trunk_deg: number | undefined; readonly percent: readonly { readonly words: Words; readonly share: number; readonly of: Pose['forces'][number] }[] }

function factsOf(pose: Pose): Facts {
  const { knee_deg = 180, trunk_deg = 0 } = pose.standing ?? {}
  return {
    knee_deg: knee_deg < STRAIGHT_DEG ? Number(rounded(knee_deg, 'deg')) : undefined,
    trunk_deg: Math.abs(trunk_deg) >= UPRIGHT_DEG ? Math.sign(trunk_deg) * Number(rounded(Math.abs(trunk_deg), 'deg')) : undefined,
    percent: felt(pose).map((force) => ({ of: force, share: length(force.per_weight) * 100, words: amount(length(force.per_weight) * 100, '%') })),
  }
}

/** A box from the ground to the height of what it holds up. */
function box(prop: Prop): Mark[] {
  if (!('at' in prop) || !isBox(prop.kind)) return []
  const [back, front] = BOXES[prop.kind]
  const at = cm(prop.at)
  const [first, last] = [point(at.x - back, 0), point(at.x + front, at.y)]
  return [path('pose-box', `M${written(first)}V${tenth(-last.y)}H${tenth(last.x)}V0Z`, [first, last])]
}

const mass = (prop: Prop): Mark[] => (prop.kind === 'mass' ? [disc('pose-mass', cm(prop.at), Number(tenth(100 * prop.radius_m))), disc('pose-bar', cm(prop.at), 1.4)] : [])

/** How high the feet were in a flight: a line they fell from. */
const flight = (prop: Prop): Mark[] => (prop.kind === 'flight' ? [line('pose-guide', plus(cm(prop.at), point(-16, 0)), plus(cm(prop.at), point(20, 0)))] : [])

/** The body with what it holds and stands on, and no letters; drawn once for all figures of a pose. */
export const standingBody = onceOfEach((pose: Pose): readonly Mark[] => {
  const joints = jointsOf(pose)
  const side = frontSide(joints)
  const [other, arm] = [pose.other_leg, pose.other_arm].map((limb) => Object.fromEntries(Object.entries(limb ?? {}).map(([name, at]) => [name, cm(at)]))) as [Joints, Joints]
  const outlines = [...otherLegOutlines(other, side), ...otherArmOutlines(arm, side), ...bodyOutlines(joints, 'closed')].map(({ of, d }): Mark => path(`pose-${of}`, d))
  const round = [...Object.values(joints), ...Object.values(other), ...Object.values(arm)].flatMap((at) => [plus(at, point(13, 13)), minus(at, point(13, at.y < 13 ? at.y : 13))])
  const dots = MARKED.flatMap((name) => (joints[name] ? [disc('pose-joint', joints[name], name === 'head' ? 1.2 : 1.5)] : []))
  return [asOne([...pose.props.flatMap(box), ...pose.props.flatMap(flight), ...pose.props.flatMap(hungBehind), ...outlines, { svg: '', reach: round }, ...pose.props.flatMap(hungBefore), ...pose.props.flatMap(mass), ...pose.props.flatMap(ground), ...dots])]
})

/** The angle of the knee, in its hollow. */
function knee(pose: Pose, { knee_deg }: Facts): Mark[] {
  const { hip, knee: at, ankle } = jointsOf(pose)
  if (knee_deg === undefined || !hip || !at || !ankle) return []
  const [up, down] = [unit(minus(hip, at)), unit(minus(ankle, at))]
  const hollow = unit(plus(up, down))
  const arc = `M${written(plus(at, times(up, KNEE_ARC)))}A${KNEE_ARC} ${KNEE_ARC} 0 0 0 ${written(plus(at, times(down, KNEE_ARC)))}`
  return [path('pose-arc', arc), label(amount(knee_deg, 'deg'), plus(at, times(hollow, KNEE_FIGURE)), 'middle')]
}

function trunk(pose: Pose, { trunk_deg }: Facts): Mark[] {
  const { hip, shoulder } = jointsOf(pose)
  return trunk_deg === undefined || !hip || !shoulder ? [] : fromUpright(hip, unit(minus(shoulder, hip)), amount(Math.abs(trunk_deg), 'deg'))
}

/** Heights that are drawn and said: of boxes, of a fall, and of the hands where they take a weight from below. */
function highs({ name, props, standing, other_arm, joints: { hand } }: Pose): { readonly at: Point; readonly side: 'left' | 'right'; readonly says: Words }[] {
  if (standing?.holds !== undefined) return [] // the heights of bars and of what the feet stand on are chosen
  const named = { surface: 'working foot', block: 'the weight begins on a block', seat: name === 'lowest' ? 'hips touch a box' : 'top of the box behind', 'rear surface': 'rear foot', drop: 'fallen from a box', flight: 'fallen from' } as const
  const boxes = props.flatMap((prop) => {
    if (!('at' in prop) || !(prop.kind in named) || prop.at.y * 100 < LOWEST_CM) return []
    const says = named[prop.kind as keyof typeof named]
    return [{ at: cm(prop.at), says: prop.kind === 'flight' ? say`fallen from ${amount(prop.at.y * 100, 'cm')}` : high(says, prop.at.y * 100), side: prop.kind === 'surface' || prop.kind === 'flight' ? ('right' as const) : ('left' as const) }]
  })
  const hanging = props.find((prop) => prop.kind === 'mass')
  const reaching = name === 'start' && hand && hanging && hanging.at.y < hand.y - 0.02 && hand.y < 0.7
  const pressing = props.flatMap((prop) => (prop.kind === 'bar' ? [{ at: cm(prop.at), says: high('hands on a bar', prop.at.y * 100), side: 'right' as const }] : []))
  return [...boxes, ...pressing, ...(reaching ? [{ at: cm(hand), says: high(other_arm ? 'one hand' : 'hands', hand.y * 100), side: 'right' as const }] : [])]
}

function heights(pose: Pose, things: readonly Mark[]): Mark[] {
  const all = highs(pose)
  const lower = things.flatMap(({ reach }) => reach).filter(({ y }) => y <= Math.max(40, ...all.map(({ at }) => at.y)))
  const xs = lower.map(({ x }) => x)
  const edge = { left: Math.min(...xs) - 6, right: Math.max(...xs) + 6 }
  const placed = { left: 0, right: 0 }
  return all.flatMap(({ at, side }) => {
    const x = edge[side] + (side === 'left' ? -44 : 44) * placed[side]
    placed[side] += 1
    return height(x, at.y, side)
  })
}

/** How far the ground falls away: a level line from the foot, and its figure. */
const slope = ({ props }: Pose): Mark[] =>
  props.flatMap((prop) => (prop.kind === 'ground' && prop.slope_deg !== undefined ? [line('pose-guide', point(0, 0), point(62, 0)), label(amount(prop.slope_deg, 'deg'), point(66, 0), 'start')] : []))

/** Whether two lines of text would lie on one another. */
function overlap(one: Mark, other: Mark): boolean {
  const [a, b, c, d] = [...one.reach, ...other.reach]
  return a !== undefined && b !== undefined && c !== undefined && d !== undefined && a.x < d.x && c.x < b.x && b.y < c.y && d.y < a.y
}

/** The pull of a weight, its figure clear of the ball and of the figures that stand already. */
function hung({ at, per_weight }: Pose['forces'][number], words: Words, standing: readonly Mark[]): Mark[] {
  const from = cm(at)
  const high = from.y < 12 ? 6 : 0
  const places = [label(words, plus(from, point(13, high)), 'start'), label(words, plus(from, point(-13, high)), 'end')]
  const free = places.find((place) => !standing.some((other) => other.words === true && overlap(place, other))) ?? places[0]
  return [...haloed(from, plus(from, times(per_weight, CM_PER_WEIGHT))), ...(free ? [free] : [])]
}

/** Feet so near that the figure of the rear one would lie on the arrow of the other. */
const CLOSE_M = 0.25

function forces({ percent }: Facts, pose: Pose, standing: readonly Mark[]): Mark[] {
  const front = percent.find(({ of }) => of.on === 'feet')?.of.at
  const close = ({ on, at }: Pose['forces'][number]): boolean => on === 'rear foot' && front !== undefined && front.x - at.x < CLOSE_M
  return percent.flatMap(({ of, words }) => (of.on === 'weight' ? hung(of, words, standing) : isHeldUp(of, pose) ? heldUp(of, words) : [...(of.on === 'hands' ? [halo(minus(cm(of.at), times(of.per_weight, CM_PER_WEIGHT)), cm(of.at))] : []), ...pushed(of, words, close(of) ? 'end' : 'middle')]))
}

/** Everything of a standing pose. */
export function standingMarks(pose: Pose): Mark[] {
  const facts = factsOf(pose)
  const things = standingBody(pose)
  const angles = [...trunk(pose, facts), ...knee(pose, facts), ...slope(pose)]
  const pushes = forces(facts, pose, angles)
  return [...things, ...angles, ...heights(pose, [...things, ...pushes]), ...pushes]
}

/** What a standing pose shows: its angles and heights, then the forces on it. */
export function standingFacts(pose: Pose): Words[][] {
  const { knee_deg, trunk_deg, percent } = factsOf(pose)
  const split = percent.some(({ of }) => of.on === 'rear foot')
  const { heel, ball } = pose.joints
  const tiptoe = pose.standing?.holds !== undefined && heel !== undefined && ball !== undefined && heel.y > ball.y + 0.02
  const limb = (on: string): string => (tiptoe ? 'the toes' : on === 'rear foot' ? 'the rear foot' : split ? 'the front foot' : pose.other_leg ? 'the foot' : 'the feet')
  const place = given<Words>([
    pose.standing?.holds,
    knee_deg === undefined ? 'knee nearly straight' : say`knee at ${amount(knee_deg, 'deg')}`,
    trunk_deg === undefined ? 'trunk upright' : trunk_deg < 0 ? say`trunk leaning back ${amount(-trunk_deg, 'deg')} from upright` : say`trunk leaning ${amount(trunk_deg, 'deg')} from upright`,
    ...pose.props.flatMap((prop) => (prop.kind === 'ground' && prop.slope_deg !== undefined ? [say`on ground that falls away by ${amount(prop.slope_deg, 'deg')}`] : [])),
    ...highs(pose).map(({ says }) => says),
    pose.other_arm && pose.standing?.holds === undefined ? 'the weight in one hand' : undefined,
    pose.name === 'lowest' && pose.props.some(({ kind }) => kind === 'mat') ? (pose.standing?.holds === undefined ? 'rear knee on a mat' : 'knees at the mats') : undefined,
  ])
  const mean = pose.standing?.force_is === 'mean'
  const carried = percent.map(({ of, share }): Words => {
    const held = heldSays(of, pose)
    if (held) return held
    const weight = amount(share, '% of body weight')
    if (of.on === 'weight') return say`the weight pulls with ${weight}`
    return mean ? say`mean force on ${limb(of.on)} ${weight}` : say`force on ${limb(of.on)} ${weight}`
  })
  return [place, carried]
}
