import assert from 'node:assert/strict'
import { test } from 'vitest'
import { legPressOfBody } from '../../src/load/leg-press-of-body.ts'
import { landing } from '../../src/load/landing.ts'
import { assisted } from '../../src/load/assisted.ts'
import { askDrawn } from '../../src/load/drawn.ts'
import { ask, type Inputs, type Joints, type Load, type LoadModel, type Point, type Pose } from '../../src/load/model.ts'
import { oneRepMax } from '../../src/load/one-rep-max.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { near } from '../quantity/near.ts'
import { ATHLETE } from './athlete.ts'
import { deLevaMen as men } from './segment-tables.ts'

const asked = (model: LoadModel, inputs: Inputs): Load => {
  const outcome = askDrawn(model, inputs, ATHLETE)
  return isMissing(outcome) ? assert.fail(outcome.missing) : outcome
}
const leg = legPressOfBody as unknown as LoadModel
const fall = landing as unknown as LoadModel
const lift = oneRepMax as unknown as LoadModel
const hang = assisted as unknown as LoadModel
/** A band that pulls 400 N at the start of a pull-up and 200 N at its end. */
const BAND = { band_points: [[20, 100], [50, 200], [80, 300], [110, 400]], stretch_start_cm: 110, stretch_end_cm: 50 } as const
const posesOf = (model: LoadModel, inputs: Inputs): readonly Pose[] => {
  const { poses, assumes } = asked(model, inputs)
  assert.ok(poses.length > 0, assumes.join(' '))
  return poses
}

/** Every kind of standing picture, at its ordinary settings and near the ends of them. */
const drawn: readonly (readonly [LoadModel, Inputs])[] = [
  [leg, { stance: 'two legs' }],
  ...[30, 45, 60].map((seat_height_cm) => [leg, { stance: 'two legs', seat_height_cm }] as const),
  [leg, { stance: 'two legs', knee_deg: 55, added_mass_percent: 40, added_mass_at: 'back' }],
  [leg, { stance: 'two legs', knee_deg: 60, added_mass_percent: 10 }],
  ...[30, 45, 60].map((seat_height_cm) => [leg, { stance: 'one leg', seat_height_cm }] as const),
  [leg, { stance: 'one leg', knee_deg: 50 }],
  ...[15, 30, 40].map((foot_height_cm) => [leg, { stance: 'one leg', foot_height_cm, added_mass_percent: 10, added_mass_at: 'hands' }] as const),
  ...[50, 61, 70].map((front_leg_percent) => [leg, { stance: 'split', front_leg_percent, stance_cm: 80 }] as const),
  [leg, { stance: 'split', front_leg_percent: 80, rear_foot_height_cm: 30, stance_cm: 75 }],
  [leg, { stance: 'split', front_leg_percent: 92, seat_height_cm: 60, stance_cm: 10 }],
  [leg, { stance: 'step-up', front_leg_percent: 69, foot_height_cm: 15, stance_cm: 35 }],
  [leg, { stance: 'step-up', front_leg_percent: 92, foot_height_cm: 15, stance_cm: 0, other_foot: 'heel' }],
  [leg, { stance: 'two legs', rise: 'heels' }],
  [leg, { stance: 'two legs', rise: 'heels', foot_height_cm: 2 }],
  [leg, { stance: 'one leg', rise: 'heels', foot_height_cm: 15, added_mass_percent: 20, added_mass_at: 'hands' }],
  ...[15, 25, 40].map((travel_cm) => [fall, { drop_height_cm: 30, travel_cm }] as const),
  [fall, { drop_height_cm: 10, travel_cm: 20, stance: 'one leg', from: 'ground' }],
  [lift, { load_kg: 12, lift: 'floor lift', block_cm: 20, knee_deg: 130 }],
  [lift, { load_kg: 32, lift: 'floor lift' }],
  [lift, { load_kg: 6, lift: 'one-leg floor lift', block_cm: 15 }],
  [lift, { load_kg: 18, lift: 'overhead press' }],
  [lift, { load_kg: 24, lift: 'carry' }],
  [lift, { load_kg: 14, lift: 'suitcase lift' }],
  [lift, { load_kg: 7, lift: 'one-hand press' }],
  [leg, { stance: 'split', rise: 'heels', front_leg_percent: 58 }],
  [leg, { stance: 'split', rise: 'heels', front_leg_percent: 68, stance_cm: -13 }],
  [leg, { stance: 'split', rise: 'heels', front_leg_percent: 90, stance_cm: -5, foot_height_cm: 0 }],
  [leg, { stance: 'split', rise: 'heels', front_leg_percent: 92, bar_height_cm: 95 }],
  [hang, { exercise: 'hang' }],
  [hang, { exercise: 'hang', top: 'chest', added_mass_percent: 10 }],
  [hang, { exercise: 'hang', counterweight_percent: 60 }],
  [hang, { exercise: 'hang', ...BAND }],
  ...[70, 45, 30].map((counterweight_percent) => [hang, { exercise: 'hang', does: 'hold', help_from: 'feet', counterweight_percent }] as const),
  [hang, { exercise: 'grip', does: 'hold', help_from: 'toes', counterweight_percent: 15 }],
  [hang, { exercise: 'hang', does: 'hold', help_from: 'feet', counterweight_percent: 40, working_side_percent: 100 }],
  [hang, { exercise: 'dip' }],
  [hang, { exercise: 'dip', counterweight_percent: 33 }],
  [hang, { exercise: 'dip', added_mass_percent: 20 }],
]

const at = (joints: Joints, name: keyof Joints): Point => joints[name] ?? assert.fail(`${name} is not given`)
const along = (a: Point, b: Point, percent: number): Point => ({ x: a.x + ((b.x - a.x) * percent) / 100, y: a.y + ((b.y - a.y) * percent) / 100 })

type Weighed = readonly { readonly mass: number; readonly at: Point }[]
const legWeights = (joints: Joints): Weighed => [
  { mass: men.thigh[0] / 100, at: along(at(joints, 'hip'), at(joints, 'knee'), men.thigh[2]) },
  { mass: men.shank[0] / 100, at: along(at(joints, 'knee'), at(joints, 'ankle'), men.shank[2]) },
  { mass: men.foot[0] / 100, at: along(at(joints, 'heel'), at(joints, 'toe'), men.foot[2]) },
]

const armWeights = (joints: Joints): Weighed => [
  { mass: men.upper_arm[0] / 100, at: along(at(joints, 'shoulder'), at(joints, 'elbow'), men.upper_arm[2]) },
  { mass: men.forearm[0] / 100, at: along(at(joints, 'elbow'), at(joints, 'wrist'), men.forearm[2]) },
  { mass: men.hand[0] / 100, at: at(joints, 'hand') },
]

/** The masses of the second copy of the tables on the joints as drawn, what is held among them. */
function weights({ joints, other_leg, other_arm, forces }: Pose): Weighed {
  return [
    ...legWeights(joints),
    ...legWeights(other_leg ?? joints),
    { mass: men.trunk[0] / 100, at: along(at(joints, 'shoulder'), at(joints, 'hip'), men.trunk[2]) },
    { mass: men.head[0] / 100, at: at(joints, 'head') },
    ...armWeights(joints),
    ...armWeights(other_arm ?? joints),
    ...forces.filter(({ on }) => on === 'weight').map(({ at: place, per_weight }) => ({ mass: -per_weight.y, at: place })),
  ]
}
const middle = (all: Weighed, axis: 'x' | 'y'): number => all.reduce((sum, { mass, at: place }) => sum + mass * place[axis], 0) / all.reduce((sum, { mass }) => sum + mass, 0)

/** The foot of the model has no toe joint: under a raised heel its toes are drawn along the ground. */
const raised = ({ heel, ball }: Joints): boolean => heel !== undefined && ball !== undefined && heel.y > ball.y

/** What carries the body; at touch-down nothing does yet. */
const supports = ({ forces }: Pose): Pose['forces'] => forces.filter(({ on }) => on !== 'weight')

for (const [model, inputs] of drawn) {
  const name = JSON.stringify(inputs)
  test(`${name}: the masses of the second table stand where the forces on the feet hold them`, () => {
    for (const pose of posesOf(model, inputs)) {
      const held = supports(pose)
      if (held.length === 0) continue
      const up = held.reduce((sum, { per_weight }) => sum + per_weight.y, 0)
      const press = held.reduce((sum, { per_weight, at: place }) => sum + (per_weight.y / up) * place.x, 0)
      near(middle(weights(pose), 'x'), press, 0.0005) // the mean woman's lower leg sets the shares of a split stance, the man's the pose: 0.2 % of a metre
    }
  })

  test(`${name}: limbs are as long as the table has them, on both legs`, () => {
    const metres = (mm: number): number => (mm / men.stature_mm) * ATHLETE.stature_m
    const long = (joints: Joints, a: keyof Joints, b: keyof Joints): number => Math.hypot(at(joints, a).x - at(joints, b).x, at(joints, a).y - at(joints, b).y)
    for (const { joints, other_leg, other_arm } of posesOf(model, inputs)) {
      for (const one of [joints, other_leg ?? joints]) {
        near(long(one, 'hip', 'knee'), metres(men.thigh[1]), 1e-9)
        near(long(one, 'knee', 'ankle'), metres(men.shank[1]), 1e-9)
        near(long(one, 'heel', 'toe'), metres(men.foot[1]), 1e-9)
      }
      for (const arm of [joints, other_arm ?? joints]) {
        near(long(arm, 'shoulder', 'elbow'), metres(men.upper_arm[1]), 1e-9)
        near(long(arm, 'elbow', 'wrist'), metres(men.forearm[1]), 1e-9)
      }
      near(long(joints, 'hip', 'shoulder'), metres(men.trunk[1]), 1e-9)
    }
  })

  test(`${name}: nothing of the body is under the ground, and the feet of two legs carry all of it`, () => {
    for (const pose of posesOf(model, inputs)) {
      for (const joints of [pose.joints, pose.other_leg ?? {}]) for (const [joint, place] of Object.entries(joints)) assert.ok(place.y > -1e-9 || (joint === 'toe' && raised(joints)), `${joint} at ${place.y}`)
      const carried = weights(pose).reduce((sum, { mass }) => sum + mass, 0)
      if (pose.standing?.force_is !== 'mean' && supports(pose).length > 0) near(supports(pose).reduce((sum, { per_weight }) => sum + per_weight.y, 0), carried, 1e-9)
    }
  })
}

test('hands on a bar take what the scale under the working foot leaves — by hand: 0.92 × 88.2 + 5.9 = 87.0 %, so 13.0 %', () => {
  for (const { forces } of posesOf(leg, { stance: 'split', rise: 'heels', front_leg_percent: 92, bar_height_cm: 95 })) {
    assert.deepEqual(forces.map(({ on }) => on), ['feet', 'hands'])
    near(forces[1]?.per_weight.y ?? 0, 0.13, 0.0006)
  }
})

test('feet side by side are seen as one, and say so; half a foot apart each has its own force', () => {
  const forces = (inputs: Inputs): Pose['forces'] => posesOf(leg, { stance: 'split', rise: 'heels', ...inputs })[0]?.forces ?? []
  assert.deepEqual(forces({ front_leg_percent: 58 }).map(({ on, per_weight }) => [on, per_weight.y]), [['feet', 1]])
  const [front, rear] = forces({ front_leg_percent: 68, stance_cm: -13 })
  near((front?.at.x ?? 0) - (rear?.at.x ?? 0), (men.foot[1] / men.stature_mm) * ATHLETE.stature_m - 0.13, 1e-9)
})

test('a suitcase stands beside the ankle, and its free arm hangs; a one-hand press holds the free arm apart', () => {
  const [start] = posesOf(lift, { load_kg: 12, lift: 'suitcase lift' })
  near(at(start?.joints ?? {}, 'hand').x, at(start?.joints ?? {}, 'ankle').x, 1e-9)
  near(at(start?.other_arm ?? {}, 'hand').x, at(start?.joints ?? {}, 'shoulder').x, 1e-9)
  for (const { joints, other_arm } of posesOf(lift, { load_kg: 6, lift: 'one-hand press' })) assert.ok(at(other_arm ?? {}, 'hand').y < at(joints, 'shoulder').y - 0.4)
})

test('a hang shows at the hands what the scale under the feet leaves, by hand: 100 − 45 = 55 %, 100 + 10 − 0 = 110 %', () => {
  const on = (inputs: Inputs, which: number): Record<string, number> => Object.fromEntries((posesOf(hang, inputs)[which]?.forces ?? []).map((force) => [force.on, force.per_weight.y]))
  const held = on({ exercise: 'hang', does: 'hold', help_from: 'feet', counterweight_percent: 45 }, 0)
  near(held.hands ?? 0, 0.55, 1e-12)
  near(held.feet ?? 0, 0.45, 1e-12)
  near(on({ exercise: 'hang', added_mass_percent: 10 }, 1).hands ?? 0, 1.1, 1e-12)
  near(on({ exercise: 'dip', counterweight_percent: 33 }, 1).belt ?? 0, 0.33, 1e-12)
})

test('a band lends more at the start than at the end, by hand: its points lie on a line, 400 and 200 N over 67.45 kg × 9.80665', () => {
  const [start, end] = posesOf(hang, { exercise: 'hang', ...BAND }).map(({ forces }) => forces.find(({ on }) => on === 'band')?.per_weight.y ?? 0)
  near(start ?? 0, 400 / (67.45 * 9.80665), 1e-4)
  near(end ?? 0, 200 / (67.45 * 9.80665), 1e-4)
})

test('at the end of a pull-up the chin is over the bar, or the upper breastbone at it; at the lowest point of a dip the upper arms are level', () => {
  const end = (inputs: Inputs): Joints => posesOf(hang, inputs)[1]?.joints ?? {}
  const chin = end({ exercise: 'hang' })
  const over = 0.012 * ATHLETE.stature_m
  near(at(chin, 'head').y - 0.057 * ATHLETE.stature_m - at(chin, 'hand').y, over, 1e-9)
  const chest = end({ exercise: 'hang', top: 'chest' })
  assert.ok(at(chest, 'shoulder').y > at(chest, 'hand').y && at(chest, 'hand').y > at(chest, 'hip').y)
  const dip = end({ exercise: 'dip' })
  near(at(dip, 'elbow').y, at(dip, 'shoulder').y, 1e-9)
  near(at(dip, 'elbow').x, at(dip, 'hand').x, 1e-9)
})

test('one hand hangs while the other waits just below the bar', () => {
  const [pose] = posesOf(hang, { exercise: 'hang', does: 'hold', counterweight_percent: 50, help_from: 'feet', working_side_percent: 100 })
  const free = at(pose?.other_arm ?? {}, 'hand')
  const bar = at(pose?.joints ?? {}, 'hand')
  assert.ok(free.y < bar.y && bar.y - free.y < 0.1)
})

test('the middle of the body sinks by the travel of a landing', () => {
  for (const travel_cm of [15, 25, 40]) {
    const [touch, deepest] = posesOf(fall, { drop_height_cm: 30, travel_cm })
    assert.ok(touch && deepest)
    near(middle(weights(touch), 'y') - middle(weights(deepest), 'y'), travel_cm / 100, 1e-6)
  }
})

test('where the ground falls away the force stands square to it, goes through the middle of the body, which sinks along it by the travel', () => {
  const slope_deg = 20
  const along = { x: Math.cos((slope_deg * Math.PI) / 180), y: -Math.sin((slope_deg * Math.PI) / 180) }
  const across = { x: -along.y, y: along.x }
  const on = (axis: Point, place: Point): number => axis.x * place.x + axis.y * place.y
  const inputs = { drop_height_cm: 60, slope_deg, level_speed_m_s: 1, travel_cm: 30 }
  const [touch, deepest] = posesOf(fall, inputs)
  assert.ok(touch && deepest)
  const centre = (pose: Pose): Point => ({ x: middle(weights(pose), 'x'), y: middle(weights(pose), 'y') })
  const force = deepest.forces[0] ?? assert.fail('no force')
  near(on(along, force.per_weight), 0, 1e-9)
  const { figures } = asked(fall, inputs)
  const computed = figures.find(({ unit }) => unit === '× body weight')?.value
  assert.ok(computed && !isMissing(computed))
  near(on(across, force.per_weight), computed.mid, 1e-9)
  near(on(along, centre(deepest)), on(along, force.at), 0.0005)
  near(on(across, centre(touch)) - on(across, centre(deepest)), 0.3, 1e-6)
  for (const pose of [touch, deepest]) for (const [joint, place] of Object.entries(pose.joints)) assert.ok(on(across, place) > -1e-9 || joint === 'toe', joint)
  const { shoulder, hip } = deepest.joints
  near(deepest.standing?.trunk_deg ?? 0, (Math.atan2((shoulder?.x ?? 0) - (hip?.x ?? 0), (shoulder?.y ?? 0) - (hip?.y ?? 0)) * 180) / Math.PI, 1e-6)
})

test('the hips touch the box: 8.7 cm over its top at 1.738 m, by hand 0.05 of stature', () => {
  const [, lowest] = posesOf(leg, { stance: 'two legs', seat_height_cm: 45 })
  near(at(lowest?.joints ?? {}, 'hip').y, 0.45 + 0.05 * ATHLETE.stature_m, 1e-6)
})

test('the knee is bent as far as it is asked', () => {
  for (const knee_deg of [55, 90, 120]) near(posesOf(leg, { stance: 'two legs', knee_deg })[1]?.standing?.knee_deg ?? 0, knee_deg, 1e-6)
})

test('a scale under the front foot of a split squat reads its share of what is above the knees and its own lower leg — by hand: 0.61 × 88.2 + 5.9 = 59.7 %, 0.92 × 88.2 + 5.9 = 87.0 %', () => {
  const front = (inputs: Inputs): number => posesOf(leg, inputs)[1]?.forces.find(({ on }) => on === 'feet')?.per_weight.y ?? 0
  near(front({ stance: 'split', front_leg_percent: 61 }), 0.597, 0.0006) // the tables' halves differ by 0.2 % between man and mean
  near(front({ stance: 'split', front_leg_percent: 92, seat_height_cm: 60, stance_cm: 10 }), 0.8704, 0.0006)
})

test('a deeper squat, a box or a longer stance moves the picture and not the load', () => {
  const load = (inputs: Inputs): unknown => asked(leg, inputs).load
  assert.deepEqual(load({ stance: 'two legs', knee_deg: 55 }), load({ stance: 'two legs' }))
  assert.deepEqual(load({ stance: 'two legs', seat_height_cm: 30 }), load({ stance: 'two legs' }))
  assert.deepEqual(load({ stance: 'split', front_leg_percent: 61, stance_cm: 60 }), load({ stance: 'split', front_leg_percent: 61 }))
  assert.deepEqual(asked(lift, { load_kg: 12, lift: 'floor lift' }).load, asked(lift, { load_kg: 12 }).load)
  assert.deepEqual(asked(fall, { drop_height_cm: 30, stance: 'one leg' }).load, asked(fall, { drop_height_cm: 30 }).load)
})

for (const [model, inputs, missing] of [
  [leg, { stance: 'two legs', stance_cm: 40 }, 'stance_cm is given, but the stance is two legs, not split'],
  [leg, { stance: 'one leg', rear_foot_height_cm: 30 }, 'rear_foot_height_cm is given, but the stance is one leg, not split'],
  [leg, { stance: 'two legs', rise: 'heels', seat_height_cm: 45 }, 'seat_height_cm is given, but the heels rise and the knees stay straight'],
  [leg, { stance: 'split', stance_cm: -8 }, 'stance_cm is -8, but only in a heel raise the rear toes stand ahead of the front heel'],
  [leg, { stance: 'two legs', rise: 'heels', bar_height_cm: 95 }, 'bar_height_cm is given, but no hands help a heel raise here'],
  [leg, { stance: 'split', rise: 'heels', bar_height_cm: 95, stance_cm: 10 }, 'bar_height_cm is given, so the other foot is off the ground'],
  [leg, { stance: 'two legs', added_mass_at: 'back' }, 'added_mass_at is given, but no mass is added'],
  [hang, { exercise: 'dip', top: 'chin' }, 'top is given, but the exercise is dip'],
  [hang, { exercise: 'dip', does: 'hold' }, 'does is given, but the exercise is dip'],
  [hang, { exercise: 'dip', counterweight_percent: 20, help_from: 'feet' }, 'help_from is feet, but the exercise is dip'],
  [hang, { exercise: 'hang', does: 'hold', top: 'chin' }, 'top is given, but the hang is only held'],
  [hang, { exercise: 'hang', does: 'hold', help_from: 'feet' }, 'help_from is given, but no counterweight_percent'],
  [hang, { exercise: 'hang', counterweight_percent: 20, help_from: 'toes' }, 'help_from is toes, but the hang is pulled up'],
] as const) {
  test(`says: ${missing}`, () => assert.deepEqual(ask(model, inputs, ATHLETE), { missing }))
}

for (const [model, inputs, why] of [
  [leg, { stance: 'step-up', rise: 'heels' }, 'No picture: a heel raise in a step-up is not drawn.'],
  [leg, { stance: 'split', rise: 'heels', front_leg_percent: 79, stance_cm: 26, other_foot: 'toes' }, 'No picture: without a turn of the hips, which is not drawn, the other foot does not reach so far back.'],
  [leg, { stance: 'split', rise: 'heels', front_leg_percent: 92, bar_height_cm: 60 }, 'No picture: the hands do not reach the bar in balance.'],
  [leg, { stance: 'split', front_leg_percent: 100, stance_cm: 120 }, 'No picture: the stance does not close in balance.'],
  [leg, { stance: 'two legs', seat_height_cm: 90 }, 'No picture: the body cannot balance at that depth.'],
  [fall, { drop_height_cm: 30, travel_cm: 80 }, 'No picture: the legs cannot sink so far in balance.'],
  [hang, { exercise: 'dip', ...BAND }, 'No picture: a band under a dip is not drawn.'],
  [lift, { percent_1rm: 70, lift: 'floor lift' }, 'No picture: the mass is not known in kilograms.'],
  [lift, { load_kg: 12, lift: 'floor lift', block_cm: 80 }, 'No picture: the body cannot balance with its hands at that height.'],
] as const) {
  test(`keeps the load, and says: ${why}`, () => {
    const { poses, assumes } = asked(model, inputs)
    assert.equal(poses.length, 0)
    assert.ok(assumes.includes(why), assumes.join(' '))
  })
}
