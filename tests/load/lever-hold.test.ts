import assert from 'node:assert/strict'
import fc from 'fast-check'
import { Matrix, solve } from 'ml-matrix'
import { test } from 'vitest'
import { bodies, men } from '../../src/load/body.ts'
import { leverHold } from '../../src/load/lever-hold.ts'
import { bridge } from '../../src/load/lever-pose.ts'
import { ask, type Inputs, type Load, type Point, type Pose } from '../../src/load/model.ts'
import { isMissing, type Outcome } from '../../src/quantity/outcome.ts'
import type { Spread } from '../../src/quantity/spread.ts'
import { near } from '../quantity/near.ts'
import { ATHLETE } from './athlete.ts'
import { ANKLE_HEIGHT, deLevaMen } from './segment-tables.ts'

const asked = (inputs: Inputs, stature_m = ATHLETE.stature_m): Outcome<Load> => ask(leverHold, inputs, { ...ATHLETE, stature_m })
const settled = (inputs: Inputs, stature_m?: number): Load => {
  const outcome = asked(inputs, stature_m)
  return isMissing(outcome) ? assert.fail(outcome.missing) : outcome
}
const figure = (load: Load, name: string): Spread => {
  const value = load.figures.find((each) => each.name === name)?.value ?? assert.fail(name)
  return isMissing(value) ? assert.fail(value.missing) : value
}

/** A spread runs over 21 bodies, three places of pressure each: at elbow or heel, a quarter of the way along forearm or foot, half-way. */
const PRESSES = [0, 0.25, 0.5]
const WOMAN = { body: 0, stature_m: 1.735 }
const MAN = { body: 7, stature_m: 1.741 }
const DEMPSTER = { body: 14, stature_m: 1 }
const one = ({ points }: Spread, { body }: typeof WOMAN, press = 0.25): number => points[PRESSES.length * body + PRESSES.indexOf(press)] ?? assert.fail()

/** The table of the reference woman weighs 99.99 %. Standard gravity 9.80665 m/s². */
type Worked = {
  readonly name: string
  readonly inputs: Inputs
  readonly of: typeof WOMAN
  readonly press?: number
  /** N·m per kg of body mass: at the hips (or the one working hip of a bridge), at the shoulders. */
  readonly hips: number
  readonly shoulders?: number
  /** What hands, forearms or shoulders carry, % of body weight. */
  readonly carry?: readonly [name: string, percent: number]
  readonly from: string
}

const FOREARMS = 'what the forearms carry'
const HANDS = 'what the hands carry'
const SHOULDERS = 'what the shoulders carry'

/** Each row was worked without this code, from the published tables, in millimetres and % of body mass: distances level, from the far support. */
const worked: readonly Worked[] = [
  {
    name: 'a man’s front plank on forearms and toes',
    inputs: { hold: 'front' },
    of: MAN,
    hips: 1.60084,
    shoulders: 0.373506,
    carry: [FOREARMS, 68.2462],
    from: 'ball 147.68 below the body’s line, 1455.15 from the shoulder, which is 281.7 up: tilt 11.1622° − 5.8248° = 5.3374°; shank 301.3, thigh 742.2, trunk 1206.4, head 1598.7, feet −7.7, shoulder and upper arms 1427.6, forearms 1550.6, hands 1739.6: 102017.8; forearms carry at 1427.6 + 268.9/4 = 1494.85: 68.2462; feet 31.7538 × hip 914.4 − shank 8.66 × 613.0 − thigh 28.32 × 172.1 − feet 2.74 × 922.1 = 16324.0; shoulders 68.2462 × 67.2 − 3.24 × 123.0 − 1.22 × 312.0 = 3808.7; × 9.80665 / 100000',
  },
  {
    name: 'the same, pressing at the elbow',
    inputs: { hold: 'front' },
    of: MAN,
    press: 0,
    hips: 1.31268,
    shoulders: 0.0764079,
    carry: [FOREARMS, 71.4598],
    from: 'as above, carried at 1427.63: 102017.8 / 1427.63; feet 28.5402 × 914.4 less the same legs, 13385.6; shoulders 0 − 779.1',
  },
  {
    name: 'the same, pressing half-way along the forearm',
    inputs: { hold: 'front' },
    of: MAN,
    press: 0.5,
    hips: 1.8642,
    shoulders: 0.784696,
    carry: [FOREARMS, 65.3091],
    from: 'as above, carried at 1427.63 + 134.45 = 1562.08: 102017.8 / 1562.08; feet 34.6909 × 914.4 less the same legs, 19009.5; shoulders 65.3091 × 134.45 − 779.1 = 8001.7',
  },
  {
    name: 'Dempster’s body in a front plank on forearms and toes',
    inputs: { hold: 'front' },
    of: DEMPSTER,
    hips: 0.874402,
    shoulders: 0.205144,
    carry: [FOREARMS, 69.3914],
    from: 'thousandths of stature: ball 84.825 below the line, 822.39 from the shoulder: tilt 13.0715° − 5.9201° = 7.1515°; shank 166.5, thigh 410.1, trunk 658.2, head 891.4, feet −4.6, upper arms 801.1, forearms 863.9, hands 1001.1: 58120.6 / 837.58; feet 30.6086 × 515.3 less 6856.5 = 8916.4; shoulders 69.3914 × 36.5 − 441.0 = 2091.9; × 9.80665 / 100000',
  },
  {
    name: 'a woman’s long-lever front plank, elbows 20 cm ahead',
    inputs: { hold: 'front', reach_cm: 20 },
    of: WOMAN,
    hips: 2.17476,
    shoulders: 1.39927,
    carry: [FOREARMS, 61.2749],
    from: 'shoulder √(275.1² − 200²) = 188.89 up: tilt 1.7423°; shank 312.5, thigh 738.6, trunk 1181.1, head 1611.8, feet −3.2, shoulder 1369.3, upper arms 1484.4, forearms 1689.8, hands 1872.6: 100206.9; carried at 1369.3 + 200 + 264.3/4 = 1635.36; feet 38.7151 × hip 871.6 less the legs = 22176.4; shoulders 61.2749 × 266.1 − 5.10 × 115.1 − 2.76 × 320.5 − 1.12 × 503.3 = 14268.6',
  },
  {
    name: 'a man’s front plank on hands and knees',
    inputs: { hold: 'front', rest_on: 'hands', feet: 'knees' },
    of: MAN,
    hips: 0.741994,
    shoulders: 0.230765,
    carry: [HANDS, 55.8173],
    from: 'knee 50.49 up, shoulder 550.6: tilt asin(500.11/937.7) = 32.2313°; thigh 210.9, trunk 605.3, head 938.6, arms 793.2, hands 836.3: 46680.2 / 836.30; knees 88.60 − 55.8173 = 32.7827 × hip 357.1 − 28.32 × 146.2 = 7566.2; shoulders 55.8173 × 43.1 − 1.22 × 43.1 = 2353.1',
  },
  {
    name: 'a woman’s long plank on hands, feet on 30 cm',
    inputs: { hold: 'front', rest_on: 'hands', reach_cm: 30, foot_height_cm: 30 },
    of: WOMAN,
    hips: 2.43758,
    shoulders: 1.80125,
    carry: [HANDS, 58.4175],
    from: 'arm 539.4, shoulder √(539.4² − 300²) = 448.28 up, 148.28 above the ball: tilt 0.0461°; shank 317.0, thigh 743.3, trunk 1186.0, head 1616.9, feet −0.1, upper arms 1462.3, forearms 1594.3, hands 1713.3: 100085.6 / 1713.28; feet 41.5725 × hip 876.4 less the legs = 24856.4; shoulders 58.4175 × 339.0 − 5.10 × 88.0 − 2.76 × 220.0 − 1.12 × 339.0 = 18367.6',
  },
  {
    name: 'a man’s front plank, a tenth of his mass on the trunk',
    inputs: { hold: 'front', added_mass_percent: 10 },
    of: MAN,
    hips: 1.77386,
    carry: [FOREARMS, 76.3166],
    from: 'as without it, and 10 × 1206.4: 114081.9 / 1494.85; feet 33.6834 × 914.4 less the same legs, 12710.4: 18088.4',
  },
  {
    name: 'a man’s bridge on both legs, knees at 90°',
    inputs: { hold: 'bridge' },
    of: MAN,
    hips: 0.478116,
    carry: [SHOULDERS, 54.6034],
    from: 'ankle 69.64 up, shank and thigh square: shoulder 937.70 along and 440.3 off, 1035.93 from the ankle and 100.11 up: turned by 1.6854° − 25.1526° = −23.4672°; knee 175.3, hip 562.6, shoulder 1035.5; the foot presses a quarter of the way from heel to ball, straight below the ankle: 0; thigh 404.0, shank 98.3, feet −64.7, trunk 831.7, head 1193.1: 56540.7 / 1035.48; feet 90.12 − 54.6034 = 35.5166 × 562.6 − 28.32 × 158.6 − 8.66 × 464.3 − 2.74 × 627.3 = 9750.9; half of it at each hip',
  },
  {
    name: 'the same, pressing half-way from heel to ball',
    inputs: { hold: 'bridge' },
    of: MAN,
    press: 0.5,
    hips: 0.515488,
    carry: [SHOULDERS, 56.2152],
    from: 'as above, pressing at −49.23: (56540.7 + 90.12 × 49.23) / (1035.48 + 49.23) = 60977.0 / 1084.71; feet 33.9048 × (562.62 + 49.23) less the same legs, 10231.4: 10513.0; half of it',
  },
  {
    name: 'a man’s bridge with a fifth of his mass in the lap',
    inputs: { hold: 'bridge', added_mass_percent: 20 },
    of: MAN,
    hips: 0.704878,
    carry: [SHOULDERS, 66.3835],
    from: 'as without it, and a tenth up the trunk, 609.9 from the feet, 20 × 609.9: 68738.7 / 1035.48; feet 43.7365 × 562.6 less the same legs, 10231.4: 14375.5; half of it',
  },
  {
    name: 'a man’s bridge with the feet on 40 cm',
    inputs: { hold: 'bridge', foot_height_cm: 40 },
    of: MAN,
    hips: 0.45776,
    carry: [SHOULDERS, 60.077],
    from: 'ankle 469.64 up: turned by −46.0512°; knee 317.0, hip 610.0, shoulder 967.8; thigh 490.0, shank 177.7, feet −64.7, trunk 813.6, head 1087.0: 58141.1 / 967.78; feet 30.0430 × 610.0 less the legs = 9335.7; half of it',
  },
  {
    name: 'a woman’s bridge on one leg, knee at 100°',
    inputs: { hold: 'bridge', legs: 'one', knee_deg: 100 },
    of: WOMAN,
    hips: 1.45469,
    carry: [SHOULDERS, 57.1309],
    from: 'turned by −22.9419°; knee 238.5, hip 577.9, shoulder 1036.4; working thigh 455.3, shank 134.7, foot −42.6; free thigh 455.3, shank 62.7, foot −229.3, straight along the thigh; trunk 863.0, head 1259.8: 59208.9 / 1036.37; foot 33.8791 × 577.9 − 14.78 × 122.6 − 4.81 × 443.1 − 1.29 × 620.4 = 14833.8, all at the working hip',
  },
  {
    name: 'the same, pressing at the heel',
    inputs: { hold: 'bridge', legs: 'one', knee_deg: 100 },
    of: WOMAN,
    press: 0,
    hips: 1.379,
    carry: [SHOULDERS, 55.4475],
    from: 'as above, pressing at 49.06: (59208.9 − 91.01 × 49.06) / (1036.37 − 49.06) = 54744.2 / 987.32; foot 35.5625 × (577.86 − 49.06) less the same leg, 4743.6: 14061.9',
  },
  {
    name: 'a man’s hollow hold, legs at 20°, arms by his sides',
    inputs: { hold: 'hollow' },
    of: MAN,
    hips: 1.17328,
    shoulders: 0.276294,
    from: 'from the hip, cos 20° of 172.9 for the thigh: 162.5; of 422.2 + 193.5 for the shank: 578.6; feet, square half turned, cos 20° × 862.5 + sin 25° × 113.9 = 858.6: 28.32 × 162.5 + 8.66 × 578.6 + 2.74 × 858.6 = 11964.2; shoulders cos 15° × 2916.8, the straight arms’ moment',
  },
  {
    name: 'a woman’s hollow hold, knees tucked, arms overhead',
    inputs: { hold: 'hollow', knees: 'tucked', arms: 'overhead' },
    of: WOMAN,
    hips: 0.307441,
    shoulders: 0.230757,
    from: 'thighs upright: 0; shanks 190.9 from the hip, feet 438.6 + 91.6 × cos 45° = 503.4: 9.62 × 190.9 + 2.58 × 503.4 = 3135.0; shoulders cos 22.5° × 2546.9',
  },
  {
    name: 'a woman’s hollow hold, legs at 45°',
    inputs: { hold: 'hollow', leg_deg: 45 },
    of: WOMAN,
    hips: 0.79038,
    from: 'cos 45° × 133.1 = 94.1, cos 45° × 559.4 = 395.5; the feet stand upright over the ankles at 0.707107 × 807.1 = 570.7: 29.56 × 94.1 + 9.62 × 395.5 + 2.58 × 570.7 = 8059.6',
  },
]

for (const { name, inputs, of, press, hips, shoulders, carry, from } of worked) {
  test(`${name}: ${hips} N·m/kg — ${from}`, () => {
    const load = settled(inputs, of.stature_m)
    near(one(load.load, of, press), hips, 5e-6) // six figures are given
    if (shoulders !== undefined) near(one(figure(load, 'moment at the shoulders'), of, press), shoulders, 5e-6)
    if (carry) near(one(figure(load, carry[0]), of, press), carry[1], 5e-4)
  })
}

/** The man whom a pose shows, from the balance of three equations and from the far side of each joint. */
const poseOf = (load: Load): Pose => load.poses[0] ?? assert.fail('no pose')
const toward = (from: Point, to: Point, share: number): Point => ({ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) })

/** Masses in % of body mass at their level places, from the table typed a second time; head and trunk first, then the arms. */
function upperBody({ joints }: Pose, armsRest: boolean): readonly { readonly mass: number; readonly x: number }[] {
  const { shoulder, hip, elbow, wrist, hand } = joints
  assert.ok(shoulder && hip && elbow && wrist && hand)
  const { trunk, head, upper_arm, forearm, hand: palm, stature_mm } = deLevaMen
  const shoulder_mm = ANKLE_HEIGHT.deLeva * stature_mm + deLevaMen.shank[1] + deLevaMen.thigh[1] + trunk[1]
  const beyond = (stature_mm - (head[2] / 100) * head[1] - shoulder_mm) / trunk[1] // of the trunk's length, past the shoulder
  return [
    { mass: trunk[0], x: toward(shoulder, hip, trunk[2] / 100).x },
    { mass: head[0], x: toward(shoulder, hip, -beyond).x },
    ...(armsRest
      ? []
      : [
          { mass: 2 * upper_arm[0], x: toward(shoulder, elbow, upper_arm[2] / 100).x },
          { mass: 2 * forearm[0], x: toward(elbow, wrist, forearm[2] / 100).x },
          { mass: 2 * palm[0], x: hand.x },
        ]),
  ]
}

function lowerBody({ joints }: Pose, shanksRest: boolean): readonly { readonly mass: number; readonly x: number }[] {
  const { hip, knee, ankle, heel, toe } = joints
  assert.ok(hip && knee && ankle && heel && toe)
  const { thigh, shank, foot } = deLevaMen
  return [
    { mass: 2 * thigh[0], x: toward(hip, knee, thigh[2] / 100).x },
    ...(shanksRest
      ? []
      : [
          { mass: 2 * shank[0], x: toward(knee, ankle, shank[2] / 100).x },
          { mass: 2 * foot[0], x: toward(heel, toe, foot[2] / 100).x },
        ]),
  ]
}

for (const { name, inputs, shanksRest = false, armsRest = false, sides = 1 } of [
  { name: 'front plank', inputs: { hold: 'front' } },
  { name: 'front plank on hands, reaching ahead', inputs: { hold: 'front', rest_on: 'hands', reach_cm: 35 } },
  { name: 'front plank from the knees', inputs: { hold: 'front', feet: 'knees' }, shanksRest: true },
  { name: 'front plank with the feet on 50 cm', inputs: { hold: 'front', foot_height_cm: 50 } },
  { name: 'side plank', inputs: { hold: 'side' } },
  { name: 'side plank from the knees', inputs: { hold: 'side', feet: 'knees' }, shanksRest: true },
  { name: 'bridge', inputs: { hold: 'bridge', knee_deg: 80 }, armsRest: true, sides: 2 },
  { name: 'bridge with the feet on 30 cm', inputs: { hold: 'bridge', foot_height_cm: 30 }, armsRest: true, sides: 2 },
] as const) {
  test(`${name}: both supports solved elsewhere carry the same, and the moment at the hips is the same counted from the head’s side`, () => {
    const stature_m = 1.741
    const load = settled(inputs, stature_m)
    const pose = poseOf(load)
    const [arms, legs] = pose.forces
    const { hip } = pose.joints
    assert.ok(arms && legs && hip)
    const above = upperBody(pose, armsRest)
    const all = [...above, ...lowerBody(pose, shanksRest)]
    const weight = all.reduce((sum, { mass }) => sum + mass, 0)
    const turning = all.reduce((sum, { mass, x }) => sum + mass * (x - hip.x), 0)
    const balance = new Matrix([
      [1, 1],
      [arms.at.x - hip.x, legs.at.x - hip.x],
    ])
    const [carried = Number.NaN, rest = Number.NaN] = solve(balance, Matrix.columnVector([weight, turning])).to1DArray()
    near(100 * arms.per_weight.y, carried, 1e-9)
    near(100 * legs.per_weight.y, rest, 1e-9)
    for (const { per_weight } of pose.forces) near(per_weight.x, 0, 0) // both push straight up
    const fromAbove = Math.abs(carried * (arms.at.x - hip.x) - above.reduce((sum, { mass, x }) => sum + mass * (x - hip.x), 0))
    near(one(load.load, MAN), (fromAbove * 9.80665) / 100 / sides, 1e-9)
  })
}

// Identities.

test('the legs of a hollow hold turn as one piece, so the moment runs with the cosine of an angle', () => {
  const at = (leg_deg: number): number => one(settled({ hold: 'hollow', leg_deg }).load, MAN)
  for (const leg_deg of [25, 35, 45]) near(at(leg_deg - 15) + at(leg_deg + 15), 2 * Math.cos(Math.PI / 12) * at(leg_deg), 1e-12) // cos(a − b) + cos(a + b) = 2 cos b cos a
})

test('where the arms lie in a hollow hold is nothing to the hips, and legs are nothing to the shoulders', () => {
  const [sides, overhead, tucked] = [{}, { arms: 'overhead' }, { knees: 'tucked' }].map((inputs) => settled({ hold: 'hollow', ...inputs }))
  assert.ok(sides && overhead && tucked)
  assert.deepEqual(overhead.load, sides.load)
  assert.deepEqual(figure(tucked, 'moment at the shoulders'), figure(sides, 'moment at the shoulders'))
  assert.ok(tucked.load.mid < sides.load.mid / 3)
})

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const fronts = fc.record({ hold: fc.constant('front'), rest_on: fc.constantFrom('forearms', 'hands'), feet: fc.constantFrom('toes', 'knees'), reach_cm: between(0, 20), foot_height_cm: between(0, 40), added_mass_percent: between(0, 100) })
const sides = fc.record({ hold: fc.constant('side'), rest_on: fc.constantFrom('forearms', 'hands'), feet: fc.constantFrom('toes', 'knees'), foot_height_cm: between(0, 40), added_mass_percent: between(0, 100) })
const bridges = fc.record({ hold: fc.constant('bridge'), legs: fc.constantFrom('two', 'one'), knee_deg: between(60, 150), foot_height_cm: between(0, 50), added_mass_percent: between(0, 100) })
const hollows = fc.record({ hold: fc.constant('hollow'), leg_deg: between(5, 80), arms: fc.constantFrom('sides', 'overhead') })
const holds: fc.Arbitrary<Inputs> = fc.oneof(fronts, sides, bridges, hollows)
const statures = between(1.4, 2.1)

test('a body and its surroundings scaled together keep every share, and the moment grows with the stature', () => {
  fc.assert(
    fc.property(holds, between(0.9, 1.15), (inputs, scale) => {
      const scaled = { ...inputs, ...Object.fromEntries(['reach_cm', 'foot_height_cm'].flatMap((key) => (typeof inputs[key] === 'number' ? [[key, inputs[key] * scale]] : []))) }
      const [small, large] = [asked(inputs), asked(scaled, ATHLETE.stature_m * scale)]
      if (isMissing(small) || isMissing(large)) return
      near(large.load.mid, scale * small.load.mid, 1e-9)
      for (const [index, point] of small.load.points.entries()) near(large.load.points[index] ?? Number.NaN, scale * point, 1e-9)
    }),
  )
})

test('what carries a plank or a bridge carries the whole body and what it wears, less what lies on the floor by itself', () => {
  fc.assert(
    fc.property(fc.oneof(fronts, sides, bridges), statures, (inputs, stature_m) => {
      const outcome = asked(inputs, stature_m)
      if (isMissing(outcome)) return
      const lying = inputs.hold === 'bridge' ? 9.88 : inputs.feet === 'knees' ? 11.4 : 0 // by hand: a man’s arms 2 × 4.94, shanks and feet 2 × 5.70
      const carried = poseOf(outcome).forces.reduce((sum, { per_weight }) => sum + per_weight.y, 0)
      near(100 * carried, 100 + inputs.added_mass_percent - lying, 1e-9)
    }),
  )
})

test('an added mass counts in proportion: twice the mass adds twice to the moment', () => {
  for (const inputs of [{ hold: 'front' }, { hold: 'side' }, { hold: 'bridge' }, { hold: 'bridge', legs: 'one' }]) {
    const at = (added_mass_percent: number): number => settled({ ...inputs, added_mass_percent }).load.mid
    near(at(40) - at(0), 2 * (at(20) - at(0)), 1e-12)
    assert.ok(at(20) > at(0))
  }
})

test('elbows farther ahead ask more of hips and shoulders', () => {
  fc.assert(
    fc.property(fronts, between(0, 20), (inputs, reach_cm) => {
      const [less, more] = [Math.min(inputs.reach_cm, reach_cm), Math.max(inputs.reach_cm, reach_cm)].map((reach) => asked({ ...inputs, reach_cm: reach }))
      if (!less || !more || isMissing(less) || isMissing(more)) return
      assert.ok(more.load.mid >= less.load.mid - 1e-9)
      assert.ok(figure(more, 'moment at the shoulders').mid >= figure(less, 'moment at the shoulders').mid - 1e-9)
    }),
  )
})

test('the knees take from a plank, and a second leg from a bridge', () => {
  const at = (inputs: Inputs): number => settled(inputs).load.mid
  assert.ok(at({ hold: 'front', feet: 'knees' }) < at({ hold: 'front' }))
  assert.ok(at({ hold: 'side', feet: 'knees' }) < at({ hold: 'side' }))
  assert.ok(at({ hold: 'bridge' }) < at({ hold: 'bridge', legs: 'one' }) / 2)
})

test('every hold gives finite moments that are not negative, over 21 bodies and three places of pressure, or a reason', () => {
  fc.assert(
    fc.property(holds, statures, (inputs, stature_m) => {
      const outcome = asked(inputs, stature_m)
      if (isMissing(outcome)) return assert.match(outcome.missing, /^the (arms do not reach that far|shoulders cannot come (to that height|down to the floor)|hips would lie on the floor)( \([^)]+\))?$/)
      assert.equal(outcome.load.points.length, bodies.length * PRESSES.length)
      for (const value of [outcome.load, ...outcome.figures.map(({ name }) => figure(outcome, name))]) for (const point of [value.mid, ...value.points]) assert.ok(Number.isFinite(point) && point >= 0)
    }),
  )
})

test('in a side plank the arm lies across the body, under the shoulder, and puts no moment on it', () => {
  const load = settled({ hold: 'side' }, MAN.stature_m)
  near(one(figure(load, 'moment at the shoulders'), MAN), 0, 1e-12)
  for (const joint of ['elbow', 'wrist', 'hand'] as const) near(poseOf(load).joints[joint]?.x ?? Number.NaN, poseOf(load).joints.shoulder?.x ?? Number.NaN, 1e-12)
})

test('in a side plank the foot ends at its sole, in line with the leg, and points out of the picture', () => {
  const { ball, toe, heel, ankle, knee } = poseOf(settled({ hold: 'side' })).joints
  assert.ok(ball && toe && heel && ankle && knee)
  assert.deepEqual([ball, toe], [heel, heel])
  near((heel.y - ankle.y) / (heel.x - ankle.x), (ankle.y - knee.y) / (ankle.x - knee.x), 1e-9)
  assert.ok(heel.y > 0)
})

// What a coach gets.

test('the middle is the mean of the reference woman and man, pressing a quarter of the way along', () => {
  for (const inputs of [{ hold: 'front' }, { hold: 'side' }, { hold: 'bridge' }, { hold: 'hollow' }]) {
    const { load } = settled(inputs)
    near(load.mid, (one(load, WOMAN) + one(load, MAN)) / 2, 1e-12)
    assert.equal(load.over, 'bodies, pressure under arm or foot')
  }
})

for (const { hold, name, figures } of [
  { hold: 'front', name: 'moment at the hips', figures: [FOREARMS, 'moment at the shoulders'] },
  { hold: 'side', name: 'moment at the hips', figures: [FOREARMS, 'moment at the shoulders'] },
  { hold: 'bridge', name: 'moment at one working hip', figures: [SHOULDERS] },
  { hold: 'hollow', name: 'moment at the hips', figures: ['moment at the shoulders'] },
] as const) {
  test(`a ${hold} hold is known by its ${name}, which is held and not repeated`, () => {
    const load = settled({ hold })
    assert.deepEqual(load.quantity, { name, unit: 'N·m/kg', repeats: false })
    assert.deepEqual(
      load.figures.map((each) => each.name),
      figures,
    )
    assert.deepEqual(load.cautions, [])
  })
}

test('a plank on hands says so', () => {
  assert.deepEqual(
    settled({ hold: 'front', rest_on: 'hands' }).figures.map(({ name }) => name),
    [HANDS, 'moment at the shoulders'],
  )
})

test('the working turns a share into the moment, for her and for him', () => {
  const { working, load } = settled({ hold: 'front' })
  const [hers, his] = [one(load, WOMAN), one(load, MAN)]
  assert.deepEqual(working, [
    { says: 'moment at the hips, reference woman: share of body weight times stature, made a moment', formula: 'M/m = |R_far (x_hip − x_far) − Σ_legs mᵢ (x_hip − xᵢ)| × g × stature', numbers: `${(hers / 9.80665 / 1.738).toFixed(4)} × 9.80665 m/s² × 1.74 m = ${hers.toFixed(2)} N·m/kg` },
    { says: 'moment at the hips, reference man: share of body weight times stature, made a moment', formula: 'M/m = |R_far (x_hip − x_far) − Σ_legs mᵢ (x_hip − xᵢ)| × g × stature', numbers: `${(his / 9.80665 / 1.738).toFixed(4)} × 9.80665 m/s² × 1.74 m = ${his.toFixed(2)} N·m/kg` },
  ])
})

const STILL = 'The body is held still; what carries it pushes straight up.'
const SECONDS = 'How long a position can be held does not follow from its moment: the standard in seconds is the coach’s.'
for (const { hold, assumes } of [
  { hold: 'front', assumes: [STILL, SECONDS] },
  { hold: 'hollow', assumes: [STILL, SECONDS] },
  { hold: 'bridge', assumes: [STILL, 'The arms rest on the floor and carry themselves; the head is weighed as held up with the trunk.', SECONDS] },
  { hold: 'side', assumes: [STILL, 'The upper arm counts as if it were beside the lower.', 'The picture is seen from the front: the joints of the lower side lie where they were computed, the upper side above them by breadths chosen by us, with its hand on the hip.', SECONDS] },
]) {
  test(`what a ${hold} hold assumes stands beside the number`, () => assert.deepEqual(settled({ hold }).assumes, assumes))
}

/** Lengths of the man's bones over his stature, from the table. */
const BONES = [
  { from: 'knee', to: 'ankle', length: 440.3 / 1741 },
  { from: 'hip', to: 'knee', length: 422.2 / 1741 },
  { from: 'shoulder', to: 'hip', length: 515.5 / 1741 },
  { from: 'shoulder', to: 'elbow', length: 281.7 / 1741 },
  { from: 'elbow', to: 'wrist', length: 268.9 / 1741 },
] as const

for (const inputs of [{ hold: 'front' }, { hold: 'front', rest_on: 'hands', reach_cm: 20 }, { hold: 'side' }, { hold: 'bridge' }, { hold: 'bridge', knee_deg: 70, foot_height_cm: 30 }, { hold: 'hollow' }, { hold: 'hollow', knees: 'tucked', arms: 'overhead' }]) {
  test(`${JSON.stringify(inputs)} shows one still in metres, on the ground, with no bone stretched`, () => {
    const { poses } = settled(inputs)
    assert.deepEqual(
      poses.map(({ name }) => name),
      ['hold'],
    )
    const { joints, props } = poses[0] ?? assert.fail()
    assert.deepEqual(props[0], { kind: 'ground', y: 0 })
    for (const { from, to, length } of BONES) {
      if ('hold' in inputs && inputs.hold === 'side' && from === 'elbow') continue // it points out of the picture
      const [one, other] = [joints[from], joints[to]]
      assert.ok(one && other)
      near(Math.sqrt((one.x - other.x) ** 2 + (one.y - other.y) ** 2), 1.738 * length, 1e-9)
    }
    for (const joint of ['ankle', 'knee', 'hip', 'shoulder', 'elbow', 'wrist'] as const) assert.ok((joints[joint]?.y ?? -1) >= -1e-9) // a rigid foot, or a head in line with the trunk, may point into the floor
  })
}

test('raised feet stand on a surface, and a hollow hold has no force drawn', () => {
  assert.deepEqual(
    poseOf(settled({ hold: 'front', foot_height_cm: 30 })).props.map(({ kind }) => kind),
    ['ground', 'surface'],
  )
  assert.deepEqual(poseOf(settled({ hold: 'hollow' })).forces, [])
})

for (const { inputs, on } of [
  { inputs: { hold: 'front' }, on: ['forearms', 'feet'] },
  { inputs: { hold: 'front', rest_on: 'hands' }, on: ['hands', 'feet'] },
  { inputs: { hold: 'bridge' }, on: ['shoulders', 'feet'] },
]) {
  test(`${JSON.stringify(inputs)} draws its forces on ${on.join(' and ')}`, () =>
    assert.deepEqual(
      poseOf(settled(inputs)).forces.map((force) => force.on),
      on,
    ))
}

// Refusals.

const GIVEN = {
  rest_on: 'hands',
  feet: 'knees',
  legs: 'one',
  reach_cm: 10,
  foot_height_cm: 10,
  knee_deg: 100,
  leg_deg: 30,
  knees: 'tucked',
  arms: 'overhead',
  added_mass_percent: 10,
} as const
for (const { hold, idle } of [
  { hold: 'front', idle: ['legs', 'knee_deg', 'leg_deg', 'knees', 'arms'] },
  { hold: 'side', idle: ['legs', 'reach_cm', 'knee_deg', 'leg_deg', 'knees', 'arms'] },
  { hold: 'bridge', idle: ['rest_on', 'feet', 'reach_cm', 'leg_deg', 'knees', 'arms'] },
  { hold: 'hollow', idle: ['rest_on', 'feet', 'legs', 'reach_cm', 'foot_height_cm', 'knee_deg', 'added_mass_percent'] },
]) {
  for (const [key, value] of Object.entries(GIVEN)) {
    if (idle.includes(key)) test(`says: ${key} is given, but a ${hold} hold does not ask it`, () => assert.deepEqual(asked({ hold, [key]: value }), { missing: `${key} is given, but a ${hold} hold does not ask it` }))
    else test(`a ${hold} hold asks ${key}, and it counts`, () => assert.notDeepEqual(settled({ hold, [key]: value }), settled({ hold })))
  }
}

for (const { inputs, stature_m, missing } of [
  { inputs: { hold: 'bridge', other_leg: 'lifted' }, missing: 'other_leg is given, but a bridge hold does not ask it' },
  { inputs: { hold: 'hollow', other_leg: 'lifted' }, missing: 'other_leg is given, but a hollow hold does not ask it' },
  { inputs: { hold: 'front', other_leg: 'stacked' }, missing: 'other_leg is stacked, but a front hold is on toes' },
  { inputs: { hold: 'front', feet: 'knees', other_leg: 'lifted' }, missing: 'other_leg is lifted, but a front hold is on knees' },
  { inputs: {}, missing: 'hold is not given; lever-hold needs it' },
  { inputs: { hold: 'back' }, missing: 'hold is back; lever-hold knows front, side, bridge, hollow' },
  { inputs: { hold: 'front', rest_on: 'head' }, missing: 'rest_on is head; lever-hold knows forearms, hands' },
  { inputs: { hold: 'front', feet: 'heels' }, missing: 'feet is heels; lever-hold knows toes, knees' },
  { inputs: { hold: 'bridge', legs: 'none' }, missing: 'legs is none; lever-hold knows two, one' },
  { inputs: { hold: 'hollow', knees: 'bent' }, missing: 'knees is bent; lever-hold knows straight, tucked' },
  { inputs: { hold: 'hollow', arms: 'crossed' }, missing: 'arms is crossed; lever-hold knows sides, overhead' },
  { inputs: { hold: 'front', reach_cm: 46 }, missing: 'reach_cm is 46; lever-hold holds from 0 to 45 cm' },
  { inputs: { hold: 'front', foot_height_cm: 81 }, missing: 'foot_height_cm is 81; lever-hold holds from 0 to 80 cm' },
  { inputs: { hold: 'bridge', knee_deg: 151 }, missing: 'knee_deg is 151; lever-hold holds from 60 to 150 deg' },
  { inputs: { hold: 'hollow', leg_deg: 4 }, missing: 'leg_deg is 4; lever-hold holds from 5 to 80 deg' },
  { inputs: { hold: 'front', added_mass_percent: 101 }, missing: 'added_mass_percent is 101; lever-hold holds from 0 to 100 % of body mass' },
  { inputs: { hold: 'hollow', knees: 'tucked', leg_deg: 30 }, missing: 'leg_deg is given, but the knees are tucked' },
  { inputs: { hold: 'front', reach_cm: 30 }, missing: 'the arms do not reach that far' },
  { inputs: { hold: 'front', reach_cm: 27 }, missing: 'the arms do not reach that far (women, de Leva, short arms)' },
  { inputs: { hold: 'side', feet: 'knees', foot_height_cm: 80 }, stature_m: 1.2, missing: 'the shoulders cannot come to that height' },
  { inputs: { hold: 'bridge', knee_deg: 60, foot_height_cm: 80 }, missing: 'the shoulders cannot come down to the floor' },
]) {
  test(`says: ${missing} — ${JSON.stringify(inputs)}`, () => assert.deepEqual(asked(inputs, stature_m), { missing }))
}

test('says, of knees almost straight, that the hips would lie on the floor', () => {
  assert.deepEqual(bridge(men, (179 * Math.PI) / 180, 0, 0.25), { missing: 'the hips would lie on the floor' })
})
