import assert from 'node:assert/strict'
import { Matrix, solve } from 'ml-matrix'
import { test } from 'vitest'
import { dempster, men, women, type Body } from '../../src/load/body.ts'
import { ask, type Load, type Point, type Pose } from '../../src/load/model.ts'
import { supportedBody } from '../../src/load/supported-body.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { near } from '../quantity/near.ts'
import { ATHLETE } from './athlete.ts'
import { ANKLE_HEIGHT, deLevaMen, deLevaWomen, winter, type SegmentTable } from './segment-tables.ts'
import { held, supported, type SetUp, type Touch } from './supported-rep.ts'

/**
 * The statics a second time. Only the places of the joints are the model's. Masses and centres are summed here from the published tables,
 * typed a second time; the three equations of plane statics are written about the shoulder, where the model writes one about the feet,
 * and solved for the force on the hands and both parts of the force at the feet by a general library, ml-matrix (MIT).
 * Where the feet would need more than their grip, the direction at the hands is unknown and the friction is known: three equations again.
 */
type Weighed = { readonly mass: number; readonly at: Point }
type Joints = Readonly<Record<'heel' | 'ball' | 'toe' | 'ankle' | 'knee' | 'hip' | 'shoulder' | 'elbow' | 'wrist' | 'hand', Point>>
type Reference = { readonly body: Body; readonly table: SegmentTable; readonly ankle_height: number }

const WOMAN: Reference = { body: women, table: deLevaWomen, ankle_height: ANKLE_HEIGHT.deLeva }
const MAN: Reference = { body: men, table: deLevaMen, ankle_height: ANKLE_HEIGHT.deLeva }
const DEMPSTER: Reference = { body: dempster, table: winter, ankle_height: ANKLE_HEIGHT.winter }
const REFERENCES = [WOMAN, MAN, DEMPSTER]

const toward = (from: Point, to: Point, share: number): Point => ({ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) })
const direction = (from: Point, to: Point): Point => {
  const far = Math.sqrt((to.x - from.x) ** 2 + (to.y - from.y) ** 2)
  return { x: (to.x - from.x) / far, y: (to.y - from.y) / far }
}

/** How far the middle of the head's mass stands above the shoulder, over stature: what is left of the stature, less the way down from the vertex. */
function headAboveShoulder({ table, ankle_height }: Reference): number {
  const [, head_mm, centre_percent] = table.head
  const shoulder_mm = ankle_height * table.stature_mm + table.shank[1] + table.thigh[1] + table.trunk[1]
  return (table.stature_mm - (centre_percent / 100) * head_mm - shoulder_mm) / table.stature_mm
}

/** Every mass of the body in % of body mass, from the feet to the hands. The hands' mass is where they hold on. */
function weighed(reference: Reference, joints: Joints, shanksRest: boolean): readonly Weighed[] {
  const { table } = reference
  const { heel, toe, ankle, knee, hip, shoulder, elbow, wrist, hand } = joints
  const both = (segment: keyof typeof table & ('foot' | 'shank' | 'thigh' | 'upper_arm' | 'forearm'), from: Point, to: Point): Weighed => ({ mass: 2 * table[segment][0], at: toward(from, to, table[segment][2] / 100) })
  const up = direction(hip, shoulder)
  const high = headAboveShoulder(reference)
  return [
    ...(shanksRest ? [] : [both('foot', heel, toe), both('shank', knee, ankle)]),
    both('thigh', hip, knee),
    { mass: table.trunk[0], at: toward(shoulder, hip, table.trunk[2] / 100) },
    { mass: table.head[0], at: { x: shoulder.x + high * up.x, y: shoulder.y + high * up.y } },
    both('upper_arm', shoulder, elbow),
    both('forearm', elbow, wrist),
    { mass: 2 * table.hand[0], at: hand },
  ]
}

const times = (arm: Point, force: Point): number => arm.x * force.y - arm.y * force.x
const from = (origin: Point, to: Point): Point => ({ x: to.x - origin.x, y: to.y - origin.y })

/** Forces in % of body weight: both parts at the hands, both parts at the feet. */
type Solution = { readonly hands: Point; readonly feet: Point }

/** The three equations with three unknowns, each unknown a force at a place: Σ F_x = 0, Σ F_y = 0, Σ M = 0 about the shoulder. */
function balanced(masses: readonly Weighed[], shoulder: Point, unknowns: readonly { readonly at: Point; readonly way: Point }[]): readonly number[] {
  const weight = masses.reduce((sum, { mass }) => sum + mass, 0)
  const turning = masses.reduce((sum, { mass, at }) => sum + times(from(shoulder, at), { x: 0, y: -mass }), 0)
  const equations = new Matrix([unknowns.map(({ way }) => way.x), unknowns.map(({ way }) => way.y), unknowns.map(({ at, way }) => times(from(shoulder, at), way))])
  return solve(equations, Matrix.columnVector([0, weight, -turning])).to1DArray()
}

const LEVEL = { x: 1, y: 0 }
const UP = { x: 0, y: 1 }

/** Force on the hands along `way`; level and upright force at the feet. */
function solved(masses: readonly Weighed[], shoulder: Point, hand: Point, way: Point, contact: Point): Solution {
  const [hands = Number.NaN, level = Number.NaN, upright = Number.NaN] = balanced(masses, shoulder, [
    { at: hand, way },
    { at: contact, way: LEVEL },
    { at: contact, way: UP },
  ])
  return { hands: { x: hands * way.x, y: hands * way.y }, feet: { x: level, y: upright } }
}

/** The friction the model takes the feet to give, and no more. */
const FEET_GRIP = 0.6

/** Level and upright force on the hands, unknown both; at the feet one unknown, leaning from upright as friction at its limit does. */
function gripping(masses: readonly Weighed[], shoulder: Point, hand: Point, contact: Point, toward: number): Solution {
  const way = { x: toward * FEET_GRIP, y: 1 }
  const [level = Number.NaN, upright = Number.NaN, normal = Number.NaN] = balanced(masses, shoulder, [
    { at: hand, way: LEVEL },
    { at: hand, way: UP },
    { at: contact, way },
  ])
  return { hands: { x: level, y: upright }, feet: { x: normal * way.x, y: normal } }
}

const needed = ({ feet }: Solution): number => Math.abs(feet.x) / feet.y

/** Along the arm, unless the feet would slip: then friction at its limit. */
function likely(masses: readonly Weighed[], shoulder: Point, hand: Point, way: Point, contact: Point): Solution {
  const along = solved(masses, shoulder, hand, way, contact)
  if (needed(along) <= FEET_GRIP && along.feet.y > 0) return along
  return gripping(masses, shoulder, hand, contact, Math.sign(-way.x))
}

type Still = Joints & { readonly anchor: Point | undefined }

/** Which way the hands are pushed: up the strap, straight up, or between hand and shoulder: away from a surface, toward a bar. */
function wayOf(still: Still, { facing }: SetUp, { direction: said }: Touch): Point {
  if (said === 'vertical') return { x: 0, y: 1 }
  if (said === 'strap') return direction(still.hand, still.anchor ?? assert.fail('no anchor'))
  return facing === 'down' ? direction(still.hand, still.shoulder) : direction(still.shoulder, still.hand)
}

/** Where the feet press. Knees press on what they kneel on, straight below the joint. */
function contactOf(still: Still, { feet, foot_height_cm = 0 }: SetUp, { press }: Touch, stature_cm: number): Point {
  if (feet === 'toes') return still.ball
  if (feet === 'heels') return still.heel
  if (feet === 'flat') return toward(still.heel, still.ball, press)
  return { x: still.knee.x, y: foot_height_cm / stature_cm }
}

const restsOnShanks = ({ feet, shanks = 'rest' }: SetUp): boolean => feet === 'knees' && shanks === 'rest'

const pressUp = { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 0 } as const
const row = { facing: 'up', feet: 'heels', hands: 'straps', anchor_height_cm: 240, feet_from_anchor_cm: -60 } as const

const SURFACE: readonly Touch[] = [
  { direction: 'along the arm', press: 0.5 },
  { direction: 'vertical', press: 0.5 },
]
const STRAP: readonly Touch[] = [{ direction: 'strap', press: 0.5 }]
const FLAT = (of: Touch['direction']): readonly Touch[] => [0, 0.5, 0.75, 1].map((press) => ({ direction: of, press }))

const poses: readonly { readonly name: string; readonly setUp: SetUp; readonly touches: readonly Touch[] }[] = [
  { name: 'press-up on the floor', setUp: pressUp, touches: SURFACE },
  { name: 'press-up, hands on 30 cm', setUp: { ...pressUp, hand_height_cm: 30 }, touches: SURFACE },
  { name: 'press-up, hands on 90 cm', setUp: { ...pressUp, hand_height_cm: 90 }, touches: SURFACE },
  { name: 'press-up, feet on 45 cm', setUp: { ...pressUp, foot_height_cm: 45 }, touches: SURFACE },
  { name: 'press-up, hands and feet raised, elbows at 100°', setUp: { ...pressUp, hand_height_cm: 20, foot_height_cm: 50, elbow_deg: 100 }, touches: SURFACE },
  { name: 'press-up, feet on 90 cm', setUp: { ...pressUp, foot_height_cm: 90 }, touches: SURFACE },
  { name: 'press-up on flat feet, raised', setUp: { ...pressUp, feet: 'flat', foot_height_cm: 50 }, touches: FLAT('along the arm') },
  { name: 'press-up from the knees, shanks at rest', setUp: { ...pressUp, feet: 'knees' }, touches: SURFACE },
  { name: 'press-up from the knees on a mat, shanks held up at 110°', setUp: { ...pressUp, feet: 'knees', foot_height_cm: 6, shanks: 'lifted', knee_deg: 110 }, touches: SURFACE },
  { name: 'leaning on a wall on flat feet', setUp: { ...pressUp, feet: 'flat', hand_height_cm: 80 }, touches: FLAT('along the arm') },
  { name: 'press-up in straps that run ahead', setUp: { ...pressUp, hands: 'straps', hand_height_cm: 40, anchor_height_cm: 260, feet_from_anchor_cm: 150 }, touches: STRAP },
  { name: 'row on the heels, 30°', setUp: { ...row, lean_deg: 30 }, touches: STRAP },
  { name: 'row on the heels, 60°', setUp: { ...row, lean_deg: 60 }, touches: STRAP },
  { name: 'row on the heels, level, feet raised', setUp: { ...row, lean_deg: 88, foot_height_cm: 40, feet_from_anchor_cm: 60 }, touches: STRAP },
  { name: 'row by the length of the strap', setUp: { ...row, strap_cm: 90 }, touches: STRAP },
  { name: 'row with bent knees on flat feet', setUp: { ...row, feet: 'flat', knee_deg: 100, lean_deg: 70, feet_from_anchor_cm: 20 }, touches: FLAT('strap') },
  { name: 'row at a bar, 75°', setUp: { facing: 'up', feet: 'heels', hands: 'bar', lean_deg: 75 }, touches: SURFACE },
  { name: 'row at a bar, 65°', setUp: { facing: 'up', feet: 'heels', hands: 'bar', lean_deg: 65 }, touches: SURFACE.slice(0, 1) },
  { name: 'row at a bar, 56°, where straight up holds some bodies only', setUp: { facing: 'up', feet: 'heels', hands: 'bar', lean_deg: 56 }, touches: SURFACE.slice(0, 1) },
  { name: 'row at a bar at chest height, 40°', setUp: { facing: 'up', feet: 'heels', hands: 'bar', lean_deg: 40 }, touches: SURFACE.slice(0, 1) },
  { name: 'row at a bar on flat feet, 60°', setUp: { facing: 'up', feet: 'flat', hands: 'bar', lean_deg: 60 }, touches: FLAT('along the arm') },
  { name: 'row at a low bar', setUp: { facing: 'up', feet: 'flat', hands: 'bar', hand_height_cm: 85 }, touches: SURFACE },
]

const STATURE_M = 1.738

/** The forces of one still, by the rule that its direction is found by. */
function elsewhere(masses: readonly Weighed[], still: Still, setUp: SetUp, touch: Touch): Solution {
  const rule = touch.direction === 'along the arm' && setUp.facing === 'down' ? likely : solved // a bar is pulled along the arm
  return rule(masses, still.shoulder, still.hand, wayOf(still, setUp, touch), contactOf(still, setUp, touch, 100 * STATURE_M))
}

for (const { name, setUp, touches } of poses) {
  test(`${name}: three equations solved elsewhere give the same forces`, () => {
    let compared = 0
    for (const reference of REFERENCES) {
      for (const touch of touches) {
        const rep = supported(setUp, STATURE_M, reference.body, touch)
        assert.ok(!isMissing(rep), JSON.stringify(rep))
        for (const at of [rep.start, rep.end]) {
          if (isMissing(at)) continue
          const { still, forces } = at
          const masses = weighed(reference, still, restsOnShanks(setUp))
          const solution = elsewhere(masses, still, setUp, touch)
          near(100 * forces.hands, Math.sqrt(solution.hands.x ** 2 + solution.hands.y ** 2), 1e-9)
          near(100 * forces.on_hands.x, solution.hands.x, 1e-9)
          near(100 * forces.on_hands.y, solution.hands.y, 1e-9)
          near(100 * forces.at_feet.x, solution.feet.x, 1e-9)
          near(100 * forces.at_feet.y, solution.feet.y, 1e-9)
          near(forces.friction, needed(solution), 1e-9)
          compared += 1
        }
      }
    }
    assert.ok(compared >= REFERENCES.length * touches.length, `only ${compared} stills were settled`) // at least the lowest point of every rep
  })
}

test('the poses above hold both: stills where the direction along the arm is kept, and stills where friction is at its limit', () => {
  const limited = poses.flatMap(({ setUp, touches }) =>
    touches.flatMap((touch) => {
      const rep = touch.direction === 'along the arm' ? supported(setUp, STATURE_M, men, touch) : undefined
      if (!rep || isMissing(rep)) return []
      return [rep.start, rep.end].flatMap((at) => (isMissing(at) ? [] : [Math.abs(at.forces.friction - FEET_GRIP) < 1e-9]))
    }),
  )
  assert.ok(limited.filter((each) => each).length >= 5 && limited.filter((each) => !each).length >= 5)
})

/** Standard gravity times stature turns a share of body weight and stature into N·m per kg. */
const MOMENT = 9.80665 * STATURE_M

/** The moment about a joint of everything on the feet's side of it, where the model counts the hands' side; % of body weight times stature. */
function footwards(joint: Point, below: readonly Weighed[], contact: Point, feet: Point): number {
  const weights = below.reduce((sum, { mass, at }) => sum + times(from(joint, at), { x: 0, y: -mass }), 0)
  return Math.abs(times(from(joint, contact), feet) + weights)
}

for (const { name, setUp } of poses) {
  test(`${name}: the moments at shoulders, hips and knees are the same counted from the feet`, () => {
    const touch: Touch = { direction: setUp.hands === 'straps' ? 'strap' : 'along the arm', press: 0.5 }
    const lowest = setUp.facing === 'down' ? 'end' : 'start'
    const both = [WOMAN, MAN].map((reference) => {
      const { still } = held(setUp, STATURE_M, reference.body, touch, lowest)
      const masses = weighed(reference, still, restsOnShanks(setUp))
      const contact = contactOf(still, setUp, touch, 100 * STATURE_M)
      const { feet } = elsewhere(masses, still, setUp, touch)
      const below = (parts: number): readonly Weighed[] => masses.slice(0, parts)
      const legs = restsOnShanks(setUp) ? 0 : 2 // foot and shank come first
      return {
        knees: footwards(still.knee, below(legs), contact, feet),
        hips: footwards(still.hip, below(legs + 1), contact, feet),
        shoulders: footwards(still.shoulder, below(legs + 3), contact, feet), // thigh, trunk and head besides
      }
    })
    for (const joint of ['shoulders', 'hips', 'knees'] as const) {
      const { value } = loadOf(setUp).figures.find((figure) => figure.name === `moment at the ${joint} at the ${lowest} of the rep`) ?? assert.fail(joint)
      assert.ok(!isMissing(value))
      near(value.mid, (MOMENT * both.reduce((sum, each) => sum + each[joint], 0)) / 200, 1e-9)
    }
  })
}

const loadOf = (setUp: SetUp): Load => {
  const load = ask(supportedBody, setUp, { ...ATHLETE, stature_m: STATURE_M })
  return isMissing(load) ? assert.fail(load.missing) : load
}

for (const { name, setUp } of poses) {
  test(`${name}: the picture shows the reference man in metres, and the forces beside it hold the mean body up`, () => {
    const touch: Touch = { direction: setUp.hands === 'straps' ? 'strap' : 'along the arm', press: 0.5 }
    for (const pose of loadOf(setUp).poses) {
      if (pose.name !== 'start' && pose.name !== 'end') assert.fail('neither end of the rep')
      const his = held(setUp, STATURE_M, men, touch, pose.name)
      const hers = held(setUp, STATURE_M, women, touch, pose.name)
      for (const [joint, at] of Object.entries(pose.joints) as [keyof Pose['joints'], Point][]) {
        if (joint === 'toe' && setUp.feet === 'toes') continue // drawn bent along the floor, weighed as one piece with the foot
        near(at.x, STATURE_M * his.still[joint].x, 1e-12)
        near(at.y, STATURE_M * his.still[joint].y, 1e-12)
      }
      const [hands, feet] = pose.forces
      near(hands?.per_weight.y ?? Number.NaN, (his.forces.on_hands.y + hers.forces.on_hands.y) / 2, 1e-12)
      near(feet?.per_weight.y ?? Number.NaN, (his.forces.at_feet.y + hers.forces.at_feet.y) / 2, 1e-12)
      near((hands?.per_weight.x ?? Number.NaN) + (feet?.per_weight.x ?? Number.NaN), 0, 1e-12)
    }
  })
}

/** Lengths of the man's bones over his stature, from the table. */
const BONES = [
  { bone: 'shank', from: 'knee', to: 'ankle', length: 440.3 / 1741 },
  { bone: 'thigh', from: 'hip', to: 'knee', length: 422.2 / 1741 },
  { bone: 'trunk', from: 'shoulder', to: 'hip', length: 515.5 / 1741 },
  { bone: 'upper arm', from: 'shoulder', to: 'elbow', length: 281.7 / 1741 },
  { bone: 'forearm', from: 'elbow', to: 'wrist', length: 268.9 / 1741 },
  { bone: 'foot', from: 'heel', to: 'toe', length: 258.1 / 1741 },
] as const

for (const { name, setUp, touches } of poses) {
  test(`${name}: no bone is stretched, the hands stay where they hold on, the strap keeps its length`, () => {
    const [touch] = touches
    const rep = supported(setUp, STATURE_M, men, touch ?? assert.fail())
    assert.ok(!isMissing(rep))
    const far = (a: Point, b: Point): number => Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2)
    const stills = [rep.start, rep.end].flatMap((at) => (isMissing(at) ? [] : [at.still]))
    for (const still of stills) {
      for (const { bone, from: one, to: other, length } of BONES) {
        const laidDown = bone === 'foot' && restsOnShanks(setUp) // a stretched-out foot is drawn, not weighed
        if (!laidDown) near(far(still[one], still[other]), length, 1e-9)
      }
    }
    const [start, end] = stills
    if (!start || !end) return
    if (start.anchor && end.anchor) near(far(end.anchor, end.hand), far(start.anchor, start.hand), 1e-9)
    if (setUp.hands !== 'straps' || setUp.facing === 'down') near(far(start.hand, end.hand), 0, 1e-9)
  })
}
