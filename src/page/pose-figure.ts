/**
 * A pose drawn to scale: the body, what it holds and stands on, and the forces on hands and feet.
 *
 * One unit of the drawing is a centimetre, y down, the ground at 0. Every figure has one scale, so that the rungs of a ladder compare.
 */
import { rounded } from '../quantity/figure.ts'
import { degrees } from '../quantity/unit.ts'
import type { Point, Pose, Prop, Support } from '../load/model.ts'
import { length, minus, plus, point, times, unit } from '../load/vector.ts'
import { amount, html, joined, raw, say, type Html, type Part, type Words } from './html.ts'
import { bodyOutlines, frontSide, tenth, toeTip, written, type Joints } from './pose-body.ts'
import { ENGLISH } from './tongue.ts'
import { spoken } from './written.ts'

/** Pixels to a metre of the drawing. */
const PX_PER_M = 120
/** Centimetres of arrow for a force of one body weight, on every figure. */
const CM_PER_WEIGHT = 50
/** Room under the ground for the forces, so that the ground lies at one height in a row of figures. */
const BELOW_GROUND = 66
const MARGIN = 6
/** A height that rounds to no centimetre is the ground. */
const LOWEST_CM = 0.5
/** Height of the letters and width of one, in units of the drawing. */
const LETTER = { high: 11, wide: 6.2 }
/** Length of the arc that shows the lean, and of an arrow's head. */
const ARC = 52
const ARROWHEAD = 7

/** One thing drawn, with the points the frame has to hold. */
type Mark = { readonly svg: Part; readonly reach: readonly Point[]; readonly words?: true }
/** The part of the plane that is shown, y down. */
type Frame = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number }

const cm = (at: Point): Point => times(at, 100)
const jointsOf = ({ joints }: Pose): Joints => Object.fromEntries(Object.entries(joints).map(([name, at]) => [name, cm(at)]))
const path = (name: string, d: string, reach: readonly Point[] = []): Mark => ({ svg: raw(`<path class="${name}" d="${d}"/>`), reach })
const line = (name: string, from: Point, to: Point): Mark => path(name, `M${written(from)}L${written(to)}`, [from, to])
const disc = (name: string, at: Point, radius: number): Mark => ({
  svg: raw(`<circle class="${name}" cx="${tenth(at.x)}" cy="${tenth(-at.y)}" r="${radius}"/>`),
  reach: [plus(at, point(radius, radius)), minus(at, point(radius, radius))],
})

/** A line of text whose middle, start or end stands at a point, half-way up its letters. */
function label(words: Words, at: Point, anchor: 'start' | 'middle' | 'end'): Mark {
  const wide = spoken(words, ENGLISH).length * LETTER.wide
  const left = at.x - { start: 0, middle: wide / 2, end: wide }[anchor]
  return {
    svg: html`<text x="${tenth(at.x)}" y="${tenth(LETTER.high * 0.36 - at.y)}" text-anchor="${anchor}">${words}</text>`,
    reach: [point(left, at.y + LETTER.high / 2), point(left + wide, at.y - LETTER.high / 2)],
    words: true,
  }
}

/** How the hands are held, by what is drawn at them. */
type Hold = 'straps' | 'bar' | 'surface'
const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y
const near = (a: Point, b: Point | undefined): boolean => b !== undefined && length(minus(a, b)) < 0.01
const holdOf = ({ props, joints: { hand } }: Pose): Hold =>
  props.some((prop) => prop.kind === 'strap' && near(prop.to, hand)) ? 'straps' : props.some((prop) => prop.kind === 'bar' && near(prop.at, hand)) ? 'bar' : 'surface'

/** Forces that round to no percent are neither drawn nor said. */
const felt = ({ forces }: Pose): Pose['forces'] => forces.filter(({ per_weight }) => length(per_weight) >= 0.005)

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

/** The body leans from upright where it faces up or the hands are raised; otherwise it is near enough level. */
const showsLean = ({ facing, hand_cm, lean_deg }: Facts): boolean => lean_deg !== undefined && (facing === 'up' || (hand_cm ?? 0) >= LOWEST_CM)

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
const ground = (prop: Prop): Mark[] => (prop.kind === 'ground' ? [path('pose-ground', `M-999 ${tenth(-100 * prop.y)}h1998v3h-1998Z`, [point(0, 100 * prop.y)])] : [])

/** A label half-way over the ground moves under it. */
const offGround = (at: Point): Point => (at.y > -9 && at.y < 5.5 ? point(at.x, -9.5) : at)

/** An arrow whose head touches the limb where it is pushed. */
function pushed({ at, per_weight }: Pose['forces'][number], words: Words): Mark[] {
  const tail = minus(cm(at), times(per_weight, CM_PER_WEIGHT))
  const beyond = times(unit(per_weight), -9)
  return [...arrow(tail, cm(at)), label(words, offGround(plus(tail, point(beyond.x, -9))), 'middle')]
}

/** An arrow whose tail is where the limb is pulled; its label keeps off the forearm. */
function pulled({ at, per_weight }: Pose['forces'][number], words: Words, elbow: Point | undefined): Mark[] {
  const tail = cm(at)
  const way = elbow && elbow.x < at.x - 0.04 ? 1 : -1
  return [...arrow(tail, plus(tail, times(per_weight, CM_PER_WEIGHT))), label(words, plus(tail, point(way * 8, -7)), way === 1 ? 'start' : 'end')]
}

function arrow(tail: Point, tip: Point): Mark[] {
  const way = unit(minus(tip, tail))
  const neck = minus(tip, times(way, ARROWHEAD))
  const wing = times(point(-way.y, way.x), ARROWHEAD / 2.2)
  return [line('pose-force', tail, neck), path('pose-tip', `M${written(tip)}L${written(plus(neck, wing))}L${written(minus(neck, wing))}Z`, [tip])]
}

function forces(pose: Pose, { percent }: Facts): Mark[] {
  const { shoulder, elbow } = pose.joints
  return felt(pose).flatMap((force) => {
    const words = amount(percent[force.on] ?? 0, '%')
    const pulls = force.on === 'hands' && shoulder && dot(minus(shoulder, force.at), force.per_weight) < 0
    return pulls ? pulled(force, words, elbow) : pushed(force, words)
  })
}

/** A height as a dimension line from the ground, with its figure beside it. */
function height(x: number, high: number, side: 'left' | 'right'): Mark[] {
  const way = side === 'left' ? -1 : 1
  const tick = (y: number): string => `M${written(point(x - 3, y))}h6`
  return [
    path('pose-size', `M${written(point(x, 0))}V${tenth(-high)}${tick(0)}${tick(high)}`, [point(x - 3, 0), point(x + 3, high)]),
    label(amount(high, 'cm'), point(x + way * 5, high / 2), side === 'left' ? 'end' : 'start'),
  ]
}

/** Heights of hands and feet: each clear of all that lies lower, the hands' on the side they reach to. */
function heights(pose: Pose, { hand_cm = 0, foot_cm = 0, hold, facing }: Facts, marks: readonly Mark[]): Mark[] {
  const { hand } = jointsOf(pose)
  const lower = marks.flatMap(({ reach }) => reach).filter(({ y }) => y < Math.max(hand_cm, foot_cm, 100))
  const left = Math.min(...lower.map(({ x }) => x)) - 6
  const feet = foot_cm >= LOWEST_CM ? height(left, foot_cm, 'left') : []
  if (!hand || hand_cm < LOWEST_CM) return feet
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
  const from = straight ? ankle : knee
  const top = plus(from, point(0, ARC))
  const onBody = plus(from, times(along, ARC))
  const arc = `M${written(top)}A${ARC} ${ARC} 0 0 ${along.x > 0 ? 1 : 0} ${written(onBody)}`
  return [line('pose-guide', from, plus(top, point(0, 8))), path('pose-arc', arc, [top]), label(amount(facts.lean_deg, 'deg'), plus(top, point(along.x > 0 ? -4 : 4, 0)), along.x > 0 ? 'end' : 'start')]
}

/** Joints that get a mark on the body; wrist and hand are ends of an outline, and the sole runs through heel, ball and toe. */
const MARKED = ['ankle', 'knee', 'hip', 'shoulder', 'head', 'elbow'] as const

function body(pose: Pose, { hold }: Facts): { outlines: Mark[]; dots: Mark[] } {
  const joints = jointsOf(pose)
  const outlines = bodyOutlines(joints, hold === 'surface' ? 'flat' : 'closed').map(({ of, d }): Mark => path(`pose-${of}`, d))
  const round = Object.values(joints).flatMap((at) => [plus(at, point(13, 13)), minus(at, point(13, at.y < 13 ? at.y : 13))])
  const dots = MARKED.flatMap((name) => (joints[name] ? [disc('pose-joint', joints[name], name === 'head' ? 1.2 : 1.5)] : []))
  return { outlines: [...outlines, { svg: '', reach: round }], dots }
}

/** Everything of a pose in the order it is painted, labels last. */
function marksOf(pose: Pose): Mark[] {
  const facts = factsOf(pose)
  const { outlines, dots } = body(pose, facts)
  const things = [...pose.props.flatMap(behind), ...outlines, ...pose.props.flatMap((prop) => before(prop, pose)), ...pose.props.flatMap(ground)]
  const leaning = lean(pose, facts)
  const marks = [...things, ...dots, ...leaning, ...heights(pose, facts, [...things, ...leaning]), ...forces(pose, facts)]
  return [...marks.filter(({ words }) => !words), ...marks.filter(({ words }) => words)]
}

/** The least frame that holds every pose, with one depth below the ground. */
function frameOf(marks: readonly Mark[], below = BELOW_GROUND): Frame {
  const reach = marks.flatMap((mark) => mark.reach)
  const xs = reach.map(({ x }) => x)
  const ys = reach.map(({ y }) => -y)
  return {
    left: Math.floor(Math.min(...xs) - MARGIN),
    top: Math.floor(Math.min(...ys) - MARGIN),
    right: Math.ceil(Math.max(...xs) + MARGIN),
    bottom: Math.ceil(Math.max(below, ...ys.map((y) => y + MARGIN))),
  }
}

function drawn(marks: readonly Mark[], { left, top, right, bottom }: Frame, title: Words): Html {
  const [wide, high] = [right - left, bottom - top]
  const px = (units: number): string => tenth((units * PX_PER_M) / 100)
  return html`<svg class="pose-drawing" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${title}" viewBox="${left} ${top} ${wide} ${high}" width="${px(wide)}" height="${px(high)}" font-size="${LETTER.high}">${marks.map(({ svg }) => svg)}</svg>`
}

/**
 * One pose as an SVG.
 *
 * Shape   a pose and a name for it to one drawing; the same bytes for the same pose.
 * Units   1 unit of the drawing is 1 cm; 120 px a metre; 50 cm of arrow for a body weight.
 */
export function poseFigure(pose: Pose, title: string): Html {
  const marks = marksOf(pose)
  return drawn(marks, frameOf(marks), title)
}

const NAMES = { start: 'Start', end: 'End', hold: 'Hold' } as const

/** "leaning 50° from upright (40° from level)", "4° below level". */
function slope(facts: Facts): Words | undefined {
  if (facts.lean_deg === undefined) return undefined
  const level_deg = 90 - facts.lean_deg
  const away = amount(Math.abs(level_deg), 'deg')
  const level = level_deg === 0 ? 'level' : level_deg > 0 ? say`${away} from level` : say`${away} below level`
  return showsLean(facts) ? say`leaning ${amount(facts.lean_deg, 'deg')} from upright (${level})` : level
}

const high = (limb: string, height_cm: number): Words => (height_cm < LOWEST_CM ? say`${limb} on the ground` : say`${limb} ${amount(height_cm, 'cm')} above the ground`)

const given = <Value>(values: readonly (Value | undefined)[]): Value[] => values.filter((value) => value !== undefined)

/**
 * The facts of the drawing in a sentence: which way the body faces, its slope, heights of hands and feet, the force on them.
 *
 * Units   deg, cm, % of body weight; the hands' force is that on both.
 */
function poseSays(pose: Pose): Part {
  const facts = factsOf(pose)
  const { hand_cm, foot_cm, hold, rest, percent, arms } = facts
  const hands = hand_cm === undefined ? undefined : high(arms !== 'hands' ? arms : hold === 'surface' ? 'hands' : hold === 'bar' ? 'hands on a bar' : 'hands on straps', hand_cm)
  const place = given([facts.facing && (facts.facing === 'down' ? 'face down' : 'face up'), slope(facts), hands, foot_cm === undefined ? undefined : high(rest, foot_cm)])
  const force = (limb: string, share: number | undefined): Words | undefined => (share === undefined ? undefined : say`force on ${limb} ${amount(share, '% of body weight')}`)
  const carried = given([force(`${arms === 'shoulders' ? 'the' : 'both'} ${arms}`, percent[arms]), force(`the ${rest}`, percent.feet)])
  const said = joined([place, carried].filter((part) => part.length > 0).map((part) => joined(part, ', ')), '; ')
  return place.length + carried.length === 0 ? say`${NAMES[pose.name]}.` : [NAMES[pose.name], ': ', said, '.']
}

/** The same in English. */
export const poseInWords = (pose: Pose): string => spoken(poseSays(pose), ENGLISH)

/** Every pose of a rung, each with its facts in words below it, in one frame so that start and end lie alike. */
export function poseFigures(poses: readonly Pose[], ladderTitle: string, rungTitle: string): Html {
  const marks = poses.map(marksOf)
  const frame = frameOf(marks.flat())
  return html`${poses.map(
    (pose, index) => html`<figure class="pose">${drawn(marks[index] ?? [], frame, say`${ladderTitle}, ${rungTitle}: ${pose.name}`)}<figcaption>${poseSays(pose)}</figcaption></figure>
`,
  )}`
}

/** The body with what it holds and stands on. */
function bodyMarks(pose: Pose): Mark[] {
  const { outlines, dots } = body(pose, factsOf(pose))
  return [...pose.props.flatMap(behind), ...outlines, ...pose.props.flatMap((prop) => before(prop, pose)), ...pose.props.flatMap(ground), ...dots]
}

/** Every pose of a rung as a picture alone, in one frame: no forces, sizes or letters, for a card too small to print them on. */
export function posePictures(poses: readonly Pose[], rungTitle: string): Html {
  const marks = poses.map(bodyMarks)
  const frame = frameOf(marks.flat(), MARGIN)
  return html`${poses.map((pose, index) => html`<figure class="pose">${drawn(marks[index] ?? [], frame, say`${rungTitle}: ${pose.name}`)}<figcaption>${NAMES[pose.name]}</figcaption></figure>`)}`
}
