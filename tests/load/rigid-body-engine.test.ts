import assert from 'node:assert/strict'
import { DistanceJoint, RevoluteJoint, RopeJoint, Vec2, WeldJoint, World, type Body as Piece } from 'planck'
import { test } from 'vitest'
import { men, women } from '../../src/load/body.ts'
import { armLumps, carriedAt, shankLumps, thighLumps, trunkLumps, type Lump } from '../../src/load/chain.ts'
import { leverHold } from '../../src/load/lever-hold.ts'
import { plank } from '../../src/load/lever-pose.ts'
import { ask, type Point } from '../../src/load/model.ts'
import { jointMoments, massesOf } from '../../src/load/support-forces.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { near } from '../quantity/near.ts'
import { held, type SetUp, type Touch } from './supported-rep.ts'

/**
 * The statics a third time, by motion. Bodies are built in a general engine for plane rigid bodies (planck, MIT, after Box2D), which knows nothing
 * of levers: it is given masses, a pin at the feet, a weld at the hips and a tie at the hands, lets go out of place, and steps until all is at rest.
 * What the pin, the weld and the tie then carry is read off.
 */
const GRAVITY = 9.80665

/** The reference bodies, in metres and kilograms. */
const REFERENCES = [
  { body: women, stature_m: 1.735, mass_kg: 61.9 },
  { body: men, stature_m: 1.741, mass_kg: 73 },
]
type Reference = (typeof REFERENCES)[number]

/** One pose as the engine is given it, lengths over stature and masses over body mass, and what the model says of it. */
type Pose = {
  readonly lower: readonly Lump[]
  readonly upper: readonly Lump[]
  readonly feet: Point
  readonly hip: Point
  readonly hands: Point
  /** Where the tie at the hands is made fast: a strap to its anchor, anything else far off along the line of the force. */
  readonly fast: Point
  readonly tie: 'rope' | 'rod'
  /** How far the body is turned about the feet before it is let go: up, where a rope then hangs slack. */
  readonly turned_deg: number
  readonly model: { readonly on_hands: Point; readonly at_feet: Point; readonly hip: number }
}

/** Over body weight, and for the moment over body weight and stature: what the engine carries at rest. */
type Settled = { readonly on_hands: Point; readonly at_feet: Point; readonly hip: number; readonly moving: number; readonly turned: number }

/** How far a mass is spread about its own centre. It slows what moves, and is nothing to what rests. */
const SPREAD_M = 0.1

/** A rigid piece of many masses. The engine wants their sum, their centre, and their inertia about its own origin, the feet. */
function piece(world: World, lumps: readonly Lump[], { feet, turned_deg }: Pose, { stature_m, mass_kg }: Reference): Piece {
  const placed = lumps.map(({ mass, at }) => ({ kg: mass * mass_kg, x: (at.x - feet.x) * stature_m, y: (at.y - feet.y) * stature_m }))
  const mass = placed.reduce((sum, { kg }) => sum + kg, 0)
  const centre = new Vec2(placed.reduce((sum, { kg, x }) => sum + kg * x, 0) / mass, placed.reduce((sum, { kg, y }) => sum + kg * y, 0) / mass)
  const body = world.createBody({ type: 'dynamic', angle: (turned_deg * Math.PI) / 180 })
  body.setMassData({ mass, center: centre, I: placed.reduce((sum, { kg, x, y }) => sum + kg * (x * x + y * y + SPREAD_M * SPREAD_M), 0) })
  return body
}

/** Builds the pose, lets go, and reads the joints after twelve seconds, at so many steps a second. */
function settle(pose: Pose, reference: Reference, steps_per_s: number): Settled {
  const { stature_m, mass_kg } = reference
  const world = new World({ gravity: new Vec2(0, -GRAVITY), allowSleep: false })
  const ground = world.createBody()
  const [legs, rest] = [piece(world, pose.lower, pose, reference), piece(world, pose.upper, pose, reference)]
  const at = ({ x, y }: Point): Vec2 => new Vec2((x - pose.feet.x) * stature_m, (y - pose.feet.y) * stature_m)
  const [feet, hip, hands, fast] = [at(pose.feet), at(pose.hip), at(pose.hands), at(pose.fast)]
  const long_m = Vec2.distance(hands, fast)
  const ends = { bodyA: ground, bodyB: rest, localAnchorA: fast, localAnchorB: hands }
  const pin = new RevoluteJoint({ bodyA: ground, bodyB: legs, localAnchorA: feet, localAnchorB: feet })
  const weld = new WeldJoint({ bodyA: legs, bodyB: rest, localAnchorA: hip, localAnchorB: hip, referenceAngle: 0 })
  const tie = pose.tie === 'rope' ? new RopeJoint({ ...ends, maxLength: long_m }) : new DistanceJoint({ ...ends, length: long_m })
  for (const joint of [pin, weld, tie]) world.createJoint(joint)
  for (let step = 0; step < 12 * steps_per_s; step += 1) world.step(1 / steps_per_s, 30, 10)
  const weight = mass_kg * GRAVITY
  const over = (force: Vec2): Point => ({ x: force.x / weight, y: force.y / weight })
  return {
    on_hands: over(tie.getReactionForce(steps_per_s)),
    at_feet: over(pin.getReactionForce(steps_per_s)),
    hip: Math.abs(weld.getReactionTorque(steps_per_s)) / (weight * stature_m),
    moving: Math.max(...[legs, rest].map((body) => Math.abs(body.getAngularVelocity()))),
    turned: Math.max(...[legs, rest].map((body) => Math.abs(body.getAngle()))),
  }
}

/** Statures from hand to where a rod is made fast: so far that the few seconds out of place do not turn its line. */
const FAR = 20

function supportedPose(setUp: SetUp, touch: Touch, at: 'start' | 'end', { body, stature_m }: Reference): Pose {
  const { still, forces } = held(setUp, stature_m, body, touch, at)
  const masses = massesOf(body, still, setUp.feet === 'knees' && setUp.shanks !== 'lifted', (setUp.added_mass_percent ?? 0) / 100, setUp.added_mass_at ?? 'vest')
  const { hands, on_hands, at_feet, contact } = forces
  return {
    lower: [...masses.shanks, ...masses.thighs],
    upper: [...masses.trunk, ...masses.arms],
    feet: contact,
    hip: still.hip,
    hands: still.hand,
    fast: still.anchor ?? { x: still.hand.x - (FAR * on_hands.x) / hands, y: still.hand.y - (FAR * on_hands.y) / hands },
    tie: still.anchor ? 'rope' : 'rod',
    turned_deg: setUp.facing === 'up' && still.anchor ? 2 : 1,
    model: { on_hands, at_feet, hip: jointMoments(still, masses, forces).hip },
  }
}

function plankPose(reach_cm: number, rest_on: 'forearms' | 'hands', { body, stature_m }: Reference): Pose {
  const still = plank(body, 'front', 'toes', rest_on, reach_cm / 100 / stature_m, 0, 0.25)
  const outcome = ask(leverHold, { hold: 'front', rest_on, reach_cm }, { stature_m, mass_kg: 70 })
  assert.ok(!isMissing(still) && !isMissing(outcome))
  const index = 3 * (body === women ? 0 : 7) + 1 // seven bodies a table, three places of pressure each, the second a quarter of the way
  const carried = outcome.figures[0]?.value
  assert.ok(carried && !isMissing(carried))
  const near_share = (carried.points[index] ?? Number.NaN) / 100
  const upper = [...trunkLumps(body, still, carriedAt(body, still, 0, 'vest')), ...armLumps(body, still.shoulder, still.elbow, still.wrist, still.hand)]
  const lower = [...shankLumps(body, still, false), ...thighLumps(body, still)]
  const whole = [...lower, ...upper].reduce((sum, { mass }) => sum + mass, 0)
  return {
    lower,
    upper,
    feet: still.far,
    hip: still.hip,
    hands: still.near,
    fast: { x: still.near.x, y: still.near.y - FAR },
    tie: 'rod',
    turned_deg: 1,
    model: { on_hands: { x: 0, y: near_share }, at_feet: { x: 0, y: whole - near_share }, hip: (outcome.load.points[index] ?? Number.NaN) / (GRAVITY * stature_m) },
  }
}

const pressUp = { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 0 } as const
const row = { facing: 'up', feet: 'heels', hands: 'straps', anchor_height_cm: 240, feet_from_anchor_cm: -60 } as const
const ALONG: Touch = { direction: 'along the arm', press: 0.5 }
const UPRIGHT: Touch = { direction: 'vertical', press: 0.5 }
const STRAP: Touch = { direction: 'strap', press: 0.5 }

const poses: readonly { readonly name: string; readonly of: (reference: Reference) => Pose }[] = [
  { name: 'a press-up, arms bent', of: (reference) => supportedPose(pressUp, ALONG, 'end', reference) },
  { name: 'a press-up, arms straight, the floor pushing straight up', of: (reference) => supportedPose(pressUp, UPRIGHT, 'start', reference) },
  { name: 'a press-up with the feet on 45 cm, the feet’s grip at its limit', of: (reference) => supportedPose({ ...pressUp, foot_height_cm: 45 }, ALONG, 'end', reference) },
  { name: 'a press-up with the hands on 60 cm, with a fifth of body mass on the back', of: (reference) => supportedPose({ ...pressUp, hand_height_cm: 60, added_mass_percent: 20, added_mass_at: 'back' }, ALONG, 'end', reference) },
  { name: 'a press-up from the knees', of: (reference) => supportedPose({ ...pressUp, feet: 'knees' }, ALONG, 'end', reference) },
  { name: 'a row on straps, leaning 45°', of: (reference) => supportedPose({ ...row, lean_deg: 45 }, STRAP, 'start', reference) },
  { name: 'a row on straps, pulled up from 60°', of: (reference) => supportedPose({ ...row, lean_deg: 60 }, STRAP, 'end', reference) },
  { name: 'a row at a bar, leaning 50°', of: (reference) => supportedPose({ facing: 'up', feet: 'heels', hands: 'bar', lean_deg: 50 }, ALONG, 'start', reference) },
  { name: 'a front plank', of: (reference) => plankPose(0, 'forearms', reference) },
  { name: 'a long-lever plank on the hands', of: (reference) => plankPose(30, 'hands', reference) },
]

/**
 * The engine's own error is what halving its step changes: less than a thousand-millionth of body weight for every pose here, once all is at rest.
 * The model is held to that.
 */
const ENGINE = 1e-9

const differences = (one: Settled, other: Omit<Settled, 'moving' | 'turned'>): readonly number[] => [one.on_hands.x - other.on_hands.x, one.on_hands.y - other.on_hands.y, one.at_feet.x - other.at_feet.x, one.at_feet.y - other.at_feet.y, one.hip - other.hip]

for (const { name, of } of poses) {
  test(`${name}, let go out of place in a rigid-body engine, comes to rest with the forces and the moment at the hips that the model gives`, () => {
    for (const reference of REFERENCES) {
      const pose = of(reference)
      const [coarse, fine] = [60, 120].map((steps_per_s) => settle(pose, reference, steps_per_s))
      assert.ok(coarse && fine)
      for (const { moving, turned } of [coarse, fine]) {
        near(moving, 0, ENGINE) // at rest
        near(turned, 0, ENGINE) // where the model has the body
      }
      for (const error of differences(coarse, fine)) near(error, 0, ENGINE)
      for (const error of differences(fine, pose.model)) near(error, 0, 2 * ENGINE)
    }
  })
}

test('the engine would show a wrong model: a hand moved by a centimetre changes what it reads by more than a thousandth of body weight', () => {
  const [, man] = REFERENCES
  assert.ok(man)
  const pose = supportedPose(pressUp, UPRIGHT, 'start', man)
  const aside = 0.01 / man.stature_m
  const moved = settle({ ...pose, hands: { ...pose.hands, x: pose.hands.x + aside }, fast: { ...pose.fast, x: pose.fast.x + aside } }, man, 60)
  assert.ok(pose.model.on_hands.y - moved.on_hands.y > 0.001)
})
