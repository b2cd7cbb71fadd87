import assert from 'node:assert/strict'
import { test } from 'vitest'
import { dempster, men, women, type Body } from '../../src/load/body.ts'
import { ask, type Inputs, type Load } from '../../src/load/model.ts'
import { supportedBody } from '../../src/load/supported-body.ts'
import { isMissing, type Outcome } from '../../src/quantity/outcome.ts'
import { interval, type Spread } from '../../src/quantity/spread.ts'
import { near } from '../quantity/near.ts'
import { ATHLETE } from './athlete.ts'
import { held, supported, type SetUp, type Touch } from './supported-rep.ts'

const MAN = { body: men, stature_m: 1.741 }
const WOMAN = { body: women, stature_m: 1.735 }
const STRAP: Touch = { direction: 'strap', press: 0.5 }
const ALONG: Touch = { direction: 'along the arm', press: 0.5 }
const UPRIGHT: Touch = { direction: 'vertical', press: 0.5 }

/** Arithmetic of some hundred steps. */
const ROUNDING = 1e-12

const row = { facing: 'up', feet: 'heels', hands: 'straps' } as const
const pressUp = { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 0 } as const
const kneeling = { ...pressUp, feet: 'knees' } as const

type Worked = {
  readonly name: string
  readonly setUp: SetUp
  readonly of: { readonly body: Body; readonly stature_m: number }
  readonly touch: Touch
  readonly at: 'start' | 'end'
  /** % of body weight: on both hands, its upright part, what feet or knees carry. */
  readonly hands: number
  readonly upright: number
  readonly feet: number
  readonly from: string
}

/**
 * Each row was worked without this code, from the published tables, in millimetres and % of body mass.
 *
 * "Along" is measured from the sole up the straight body: man shank 8.66 % at 316.43, thigh 28.32 % at 759.25, trunk 43.46 % at 1225.46,
 * head 6.94 % at 1619.50 (together 87.38 %, moment 88740.0), shoulder 1447.64, both arms 9.88 %, both feet 2.74 %;
 * woman shank 9.62 % at 317.12, thigh 29.56 % at 743.40, trunk 42.57 % at 1186.09, head 6.68 % at 1617.02
 * (together 88.43 %, moment 86319.3), shoulder 1374.40, both arms 8.98 %, both feet 2.58 %.
 * Arms, moment about the shoulder when straight: man 5.42 × 162.60 + 3.24 × 404.69 + 1.22 × 593.70 = 2916.8; woman 2546.9.
 */
const worked: readonly Worked[] = [
  {
    name: 'a man level on his heels under an upright strap',
    setUp: { ...row, anchor_height_cm: 240, feet_from_anchor_cm: 144.764, lean_deg: 90 },
    of: MAN,
    touch: STRAP,
    at: 'start',
    hands: 71.1798,
    upright: 71.1798,
    feet: 28.8202,
    from: 'level distances from the heel are the distances along: (88740.0 + 9.88 × 1447.64 + feet 2.74 × 0) / 1447.64 = 103042.7 / 1447.64',
  },
  {
    name: 'a woman level on her heels under an upright strap',
    setUp: { ...row, anchor_height_cm: 300, feet_from_anchor_cm: 137.44, lean_deg: 90 },
    of: WOMAN,
    touch: STRAP,
    at: 'start',
    hands: 71.7851,
    upright: 71.7851,
    feet: 28.2049,
    from: '(86319.3 + 8.98 × 1374.40) / 1374.40 = 98661.4 / 1374.40; the table weighs 99.99 %',
  },
  {
    name: 'Dempster’s body level on its heels under an upright strap',
    setUp: { ...row, anchor_height_cm: 200, feet_from_anchor_cm: 81.8, lean_deg: 90 },
    of: { body: dempster, stature_m: 1 },
    touch: STRAP,
    at: 'start',
    hands: 72.3458,
    upright: 72.3458,
    feet: 27.6542,
    from: 'thousandths of stature: 9.3 × 178.48 + 20 × 423.92 + 49.7 × 674 + 8.1 × 909 + 10 × 818 = 59178.9; / 818',
  },
  {
    name: 'a man who leans back 30° under the anchor',
    setUp: { ...row, anchor_height_cm: 240, feet_from_anchor_cm: 0, lean_deg: 30 },
    of: MAN,
    touch: STRAP,
    at: 'start',
    hands: 36.5966,
    upright: 31.2803,
    feet: 68.7197,
    from: 'the ankle stands 0.25 × 0.1131 × 1741 = 49.23 before the heel, so places are along × (0.5, 0.86603) + 49.23 × (−0.86603, 0.5): shoulder (681.19, 1278.31); to the anchor (0, 2400): (−0.519067, 0.854733); moment 0.5 × 88740.0 − 42.63 × 87.38 − 2.74 × 0.86603 × 113.95 + 9.88 × 681.19 − 0.519067 × 2916.8 = 45590.6; lever 681.19 × 0.854733 + 1278.31 × 0.519067 = 1245.76',
  },
  {
    name: 'a woman who leans back 60° under the anchor',
    setUp: { ...row, anchor_height_cm: 240, feet_from_anchor_cm: 0, lean_deg: 60 },
    of: WOMAN,
    touch: STRAP,
    at: 'start',
    hands: 59.3192,
    upright: 48.6438,
    feet: 51.3462,
    from: 'along × (0.86603, 0.5) + 49.06 × (−0.5, 0.86603): shoulder (1165.74, 729.68); to the anchor (−0.572314, 0.820035); moment 0.86603 × 86319.3 − 24.53 × 88.43 − 2.58 × 0.5 × 91.64 + 8.98 × 1165.74 − 0.572314 × 2546.9 = 81478.1; lever 1373.55',
  },
  ...(
    [
      { press: 0, hands: 57.7721, upright: 37.0806, feet: 62.9194, from: 'C = 0: 76035.1 / 1316.12' },
      { press: 0.75, hands: 64.3579, upright: 41.3077, feet: 58.6923, from: 'C = −0.75 × 196.91: (76035.1 + 147.68 × 100) / (1316.12 + 147.68 × 0.641843)' },
      { press: 1, hands: 66.3608, upright: 42.5932, feet: 57.4068, from: 'C = −196.91: (76035.1 + 196.91 × 100) / (1316.12 + 196.91 × 0.641843)' },
    ] as const
  ).map(
    ({ press, hands, upright, feet, from }): Worked => ({
      name: `a man on flat feet who leans back 60° and presses ${press} of the way from heel to ball`,
      setUp: { ...row, feet: 'flat', anchor_height_cm: 180, feet_from_anchor_cm: -10, lean_deg: 60 },
      of: MAN,
      touch: { direction: 'strap', press },
      at: 'start',
      hands,
      upright,
      feet,
      from: `ankle at (−49.23, 69.64), places along − 69.64 × (0.86603, 0.5) from there: shoulder (1144.16, 758.64); to the anchor (−100, 1800): (−0.766836, 0.641843); moment about the heel 0.86603 × 88740.0 − 109.54 × 87.38 − 2.74 × 113.95 + 9.88 × 1144.16 − 0.766836 × 2916.8 = 76035.1; ${from}`,
    }),
  ),
  {
    name: 'a man at a bar who leans back 45°',
    setUp: { ...row, hands: 'bar', lean_deg: 45 },
    of: MAN,
    touch: ALONG,
    at: 'start',
    hands: 46.3415,
    upright: 31.6358,
    feet: 68.3642,
    from: 'straight arms stand square to the line heel to shoulder, √(1447.64² + 49.23²) = 1448.48, which is the lever; shoulder (988.83, 1058.44), arms point (−0.730729, 0.682667); moment 0.707107 × 88740.0 − 34.81 × 87.38 − 2.74 × 0.707107 × 113.95 + 9.88 × 988.83 − 0.730729 × 2916.8 = 67124.5',
  },
  {
    name: 'a man’s press-up, arms straight, the floor pushing straight up',
    setUp: pressUp,
    of: MAN,
    touch: UPRIGHT,
    at: 'start',
    hands: 68.2271,
    upright: 68.2271,
    feet: 31.7729,
    from: 'the ball lies 147.68 below the body’s line and level with the floor; shoulder 550.6 up, 1455.15 away: tilt 22.2333° − 5.8248° = 16.4085°; level distances along × 0.959276 − 147.68 × 0.282484: shank 261.8, thigh 686.6, trunk 1133.8, head 1511.8, feet −23.4, upper arms 1347.0, forearms 1366.4, hands 1390.1: 94840.0 / 1390.06',
  },
  {
    name: 'a man’s press-up, arms straight, the floor pushing along the arm',
    setUp: pressUp,
    of: MAN,
    touch: ALONG,
    at: 'start',
    hands: 68.4358,
    upright: 68.2271,
    feet: 31.7729,
    from: 'as above; from the middle of the palm, 43.1 ahead of the wrist, to the shoulder (−0.07804, 0.99695): lever 1390.06 × 0.99695 = 1385.82; 94840.0 / 1385.82. Feet and hands are level, so the upright part does not depend on the direction',
  },
  {
    name: 'a man’s press-up, arms bent',
    setUp: pressUp,
    of: MAN,
    touch: ALONG,
    at: 'end',
    hands: 71.8007,
    upright: 71.4744,
    feet: 28.5256,
    from: 'elbow 70°: reach² = 272.33² + 281.7² − 2 × 272.33 × 281.7 × cos 70°, reach 317.87; with sides 1455.15 and 1390.06 the shoulder stands at 12.5595°: tilt 6.7346°; level distances: shank 296.9, thigh 736.7, trunk 1199.7, head 1591.0, feet −9.7, upper arms 1280.8, forearms 1274.1, hands 1390.1: 99354.0; arm points (0.09522, 0.99546): lever 1383.75',
  },
  {
    name: 'a woman’s press-up, arms bent',
    setUp: pressUp,
    of: WOMAN,
    touch: ALONG,
    at: 'end',
    hands: 72.9719,
    upright: 72.4926,
    feet: 27.4974,
    from: 'ball 147.17 below the line, 1382.26 from the shoulder, 1311.67 from the palm; elbow 70°: reach 311.10 from 267.16 and 275.1; the shoulder stands at 12.9197°: tilt 6.8078°; level distances: shank 297.4, thigh 720.7, trunk 1160.3, head 1588.2, feet −12.4, upper arms 1209.7, forearms 1199.9, hands 1311.7: 95086.2; arm points (0.11442, 0.99343): lever 1303.05; feet 99.99 − 72.4926',
  },
  {
    name: 'a woman’s press-up from the knees, arms straight, shanks at rest',
    setUp: kneeling,
    of: WOMAN,
    touch: ALONG,
    at: 'start',
    hands: 56.1032,
    upright: 55.9571,
    feet: 31.8329,
    from: 'knee 0.029 × 1735 = 50.32 above the floor; knee to shoulder 866.4; tilt asin((539.4 − 50.32)/866.4) = 34.3678°; level distances: thigh 194.3, trunk 559.7, head 915.4, upper arms 715.2, forearms 732.7, hands 754.2: 42200.3; lever 754.15 × 0.99740 = 752.19; knees 87.79 − 55.9571',
  },
  {
    name: 'a man’s press-up from the knees, arms bent, shanks at rest',
    setUp: kneeling,
    of: MAN,
    touch: UPRIGHT,
    at: 'end',
    hands: 61.6031,
    upright: 61.6031,
    feet: 26.9969,
    from: 'sides 937.70, 837.83 and reach 317.87: tilt 19.6027° − 3.4548° = 16.1479°; level distances: thigh 239.5, trunk 687.3, head 1065.8, upper arms 753.0, forearms 731.3, hands 836.3: 51518.8 / 836.30; knees 88.60 − 61.6031',
  },
  {
    name: 'a man’s press-up from the knees, arms straight, shanks held up at 120°',
    setUp: { ...kneeling, shanks: 'lifted', knee_deg: 120 },
    of: MAN,
    touch: UPRIGHT,
    at: 'start',
    hands: 52.5426,
    upright: 52.5426,
    feet: 47.4574,
    from: 'tilt 32.2313°; thigh, trunk and head 45857.3 × 0.845900 = 38790.8; shank centre 193.51 from the knee at 60° behind the thigh’s line: −171.2 level, −1482.8; feet −481.4 level, −1318.9; arms 7952.5: 43941.5 / 836.30',
  },
  {
    name: 'a man’s press-up with hands on 60 cm, arms straight',
    setUp: { ...pressUp, hand_height_cm: 60 },
    of: MAN,
    touch: ALONG,
    at: 'start',
    hands: 49.1975,
    upright: 42.586,
    feet: 57.414,
    from: 'the whole body of the press-up on the floor turned by asin(600/1390.06) = 25.5714°, tilt 41.9798°; lever still 1385.82; level distances: shank 136.4, thigh 465.6, trunk 812.2, head 1105.1, feet −55.5, upper arms 1047.6, forearms 1168.9, hands 1253.9: 68179.1; upright part × 0.86561',
  },
  {
    name: 'a man’s press-up with feet on 30 cm, arms bent',
    setUp: { ...pressUp, foot_height_cm: 30 },
    of: MAN,
    touch: ALONG,
    at: 'end',
    hands: 73.6821,
    upright: 71.6987,
    feet: 28.3013,
    from: 'arms bent as on the floor, turned by −asin(300/1390.06) = −12.4635°, tilt −5.7288°; level distances: shank 329.6, thigh 770.2, trunk 1234.1, head 1626.2, feet 8.3, upper arms 1300.9, forearms 1264.4, hands 1357.3: 102411.2. Along the arm, lever still 1383.75: 74.010, upright × 0.95145 = 70.417, level 22.782, friction 22.782 / 29.583 = 0.770, more than 0.6. So Fx = 0.6 (100 − Fy) and 1357.30 Fy + 300 Fx = 102411.2: (1357.30 − 180) Fy = 102411.2 − 18000, Fy = 71.6987, Fx = 16.9808',
  },
  {
    name: 'a woman’s press-up with feet on 60 cm, arms straight',
    setUp: { ...pressUp, foot_height_cm: 60 },
    of: WOMAN,
    touch: ALONG,
    at: 'start',
    hands: 78.804,
    upright: 77.6563,
    feet: 22.3337,
    from: 'ball to palm on the floor 1311.67, turned by −asin(600/1311.67) = −27.2216°, tilt −10.3647°; level distances: shank 338.4, thigh 757.7, trunk 1193.2, head 1617.1, feet 18.8, upper arms 1306.0, forearms 1213.7, hands 1166.39: 98617.9. Along the arm friction would be 0.965, more than 0.6. So Fx = 0.6 (99.99 − Fy) and 1166.39 Fy + 600 Fx = 98617.9: (1166.39 − 360) Fy = 98617.9 − 35996.4, Fy = 77.6563, Fx = 13.4002',
  },
  {
    name: 'a man at a bar who leans back 65°',
    setUp: { ...row, hands: 'bar', lean_deg: 65 },
    of: MAN,
    touch: ALONG,
    at: 'start',
    hands: 62.073,
    upright: 55.3332,
    feet: 44.6668,
    from: 'as at 45°: shoulder (1291.20, 656.41), arms point (−0.453175, 0.891421); moment 0.906308 × 88740.0 − 20.80 × 87.38 − 2.74 × 0.422618 × 113.95 + 9.88 × 1291.20 − 0.453175 × 2916.8 = 89911.2. Along the arm 89911.2 / 1448.48 = 62.073, upright × 0.891421',
  },
  ...(
    [
      { where: 'vest', hands: 76.3838, from: 'at the trunk’s centre, 1225.46 along: 10 × 1133.83' },
      { where: 'back', hands: 77.0277, from: 'three quarters up the trunk, 1318.77 along: 10 × 1223.34' },
      { where: 'lap', hands: 74.7153, from: 'a tenth up the trunk, 983.69 along: 10 × 901.91' },
    ] as const
  ).map(
    ({ where, hands, from }): Worked => ({
      name: `a man’s press-up, arms straight, a tenth of his mass added (${where})`,
      setUp: { ...pressUp, added_mass_percent: 10, added_mass_at: where },
      of: MAN,
      touch: UPRIGHT,
      at: 'start',
      hands,
      upright: hands,
      feet: 110 - hands,
      from: `as without it, 94840.0, and ${from}; sum / 1390.06; feet 110 − ${hands}`,
    }),
  ),
]

for (const { name, setUp, of, touch, at, hands, upright, feet, from } of worked) {
  test(`${name}: ${hands} % of body weight on the hands — ${from}`, () => {
    const { forces } = held(setUp, of.stature_m, of.body, touch, at)
    near(100 * forces.hands, hands, 5e-4) // hand values carry seven figures
    near(100 * forces.on_hands.y, upright, 5e-4)
    near(100 * forces.at_feet.y, feet, 5e-4)
    near(forces.on_hands.x + forces.at_feet.x, 0, 1e-12) // nothing else pushes along the floor
  })
}

const asked = (inputs: Inputs): Outcome<Load> => ask(supportedBody, inputs, ATHLETE)
const settled = (inputs: Inputs): Load => {
  const outcome = asked(inputs)
  return isMissing(outcome) ? assert.fail(outcome.missing) : outcome
}
const figure = (load: Load, name: string): Spread => {
  const value = load.figures.find((each) => each.name === name)?.value ?? assert.fail(name)
  return isMissing(value) ? assert.fail(value.missing) : value
}

// Identities.

test('under an upright strap the height of the anchor does not matter', () => {
  const level = { ...row, feet_from_anchor_cm: 144.764, lean_deg: 90 }
  const at = (anchor_height_cm: number): number => held({ ...level, anchor_height_cm }, MAN.stature_m, men, STRAP, 'start').forces.hands
  for (const anchor_height_cm of [150, 300, 600]) near(at(anchor_height_cm), at(240), ROUNDING)
})

test('an anchor out of sight pulls straight up, so that nothing pushes along the floor', () => {
  const { forces } = held({ ...row, anchor_height_cm: 1e9, feet_from_anchor_cm: 0, lean_deg: 50 }, MAN.stature_m, men, STRAP, 'start')
  near(forces.friction, 0, 1e-6)
})

/** The grip of the feet that the direction of the force is turned for, as the model states it. */
const FEET_GRIP = 0.6

for (const { name, setUp, leans, apart_deg } of [
  { name: 'at a bar, up to 50°', setUp: { ...row, hands: 'bar' }, leans: [25, 30, 35], apart_deg: 15 },
  { name: 'at a bar, from 75°', setUp: { ...row, hands: 'bar' }, leans: [80, 82.5, 85], apart_deg: 5 },
  { name: 'in a press-up', setUp: { facing: 'down', feet: 'toes', hands: 'surface' }, leans: [40, 50, 60], apart_deg: 15 },
] as const) {
  test(`${name} the straight body turns as one piece, so the load runs with the sine of the lean, as the grip of the feet is not limiting`, () => {
    const at = (lean_deg: number): number => {
      const { forces } = held({ ...setUp, lean_deg }, 1.738, women, ALONG, 'start')
      assert.ok(forces.friction < FEET_GRIP)
      return forces.hands
    }
    for (const lean_deg of leans) near(at(lean_deg - apart_deg) + at(lean_deg + apart_deg), 2 * Math.cos((apart_deg * Math.PI) / 180) * at(lean_deg), ROUNDING) // sin(a − b) + sin(a + b) = 2 cos b sin a
  })
}

for (const { name, setUp, at } of [
  { name: 'a press-up with feet on 45 cm', setUp: { ...pressUp, foot_height_cm: 45 }, at: 'end' },
  { name: 'a press-up with feet on 90 cm', setUp: { ...pressUp, foot_height_cm: 90 }, at: 'end' },
] as const) {
  test(`${name}: the force is turned upright until the feet need a grip of 0.6, and no farther`, () => {
    for (const body of [women, men, dempster]) {
      const { forces, still } = held(setUp, 1.738, body, ALONG, at)
      near(forces.friction, FEET_GRIP, 1e-12)
      const lean = (x: number, y: number): number => Math.atan2(Math.abs(x), Math.abs(y)) // from upright
      const arm = lean(still.shoulder.x - still.hand.x, still.shoulder.y - still.hand.y)
      const force = lean(forces.on_hands.x, forces.on_hands.y)
      assert.ok(force > 0 && force < arm)
      assert.ok(forces.on_hands.x * (still.shoulder.x - still.hand.x) > 0) // to the arm's side of upright
    }
  })
}

test('the load does not jump as feet rise past the height at which their grip begins to limit', () => {
  const at = (foot_height_cm: number) => held({ ...pressUp, foot_height_cm }, 1.738, men, ALONG, 'end').forces
  const heights = Array.from({ length: 61 }, (_, index) => index)
  const forces = heights.map(at)
  assert.ok((forces[0]?.friction ?? 1) < FEET_GRIP && (forces.at(-1)?.friction ?? 0) > FEET_GRIP - 1e-9)
  for (const [index, { hands }] of forces.entries()) assert.ok(Math.abs(hands - (forces[index - 1]?.hands ?? hands)) < 0.004) // a centimetre is worth 0.4 % of body weight at most
})

test('at a bar the load rises with the lean and never jumps, and so does each end of its interval where upright can hold', () => {
  for (const body of [women, men, dempster]) {
    const loads = Array.from({ length: 700 }, (_, index) => held({ ...row, hands: 'bar', lean_deg: 20 + index / 10 }, 1.738, body, ALONG, 'start').forces.hands)
    for (const [index, load] of loads.entries()) {
      const rise = load - (loads[index - 1] ?? load)
      assert.ok(rise >= 0 && rise < 0.0013, `${20 + index / 10}°: ${rise}`) // d(sin a)/da is at most 1, times 0.7 of body weight, times 0.1°
    }
  }
})

test('feet raised so far that the weight lies past the hands have no load, and up to there it does not jump', () => {
  const at = (foot_height_cm: number) => supported({ ...pressUp, foot_height_cm }, 1.738, men, ALONG)
  const loads = Array.from({ length: 12501 }, (_, index) => at(index / 100)).map((rep) => (isMissing(rep) || isMissing(rep.end) ? undefined : rep.end.forces.hands))
  const first = loads.indexOf(undefined)
  assert.ok(first > 6000 && loads.slice(first).every((load) => load === undefined), `${first}`)
  for (const [index, load] of loads.slice(0, first).entries()) assert.ok(Math.abs((load ?? 0) - (loads[index - 1] ?? load ?? 0)) < 0.01, `${index / 100} cm`) // a tenth of a millimetre; at the end every millimetre brings the weight closer over the hands
  assert.deepEqual(at(125), { missing: 'the weight of the body lies past its hands, and would tip it over them' })
})

test('hands raised as high as a lean brings them give the load of that lean', () => {
  const byLean = held({ facing: 'down', feet: 'toes', hands: 'surface', lean_deg: 50 }, 1.738, men, ALONG, 'start')
  const hand_height_cm = 173.8 * byLean.still.hand.y
  near(held({ ...pressUp, hand_height_cm }, 1.738, men, ALONG, 'start').forces.hands, byLean.forces.hands, ROUNDING)
})

test('a strap as long as a lean makes it gives the load of that lean', () => {
  const anchor = { ...row, anchor_height_cm: 240, feet_from_anchor_cm: -40 } as const
  const byLean = held({ ...anchor, lean_deg: 50 }, 1.738, men, STRAP, 'start')
  const { anchor: tied, hand } = byLean.still
  assert.ok(tied)
  const strap_cm = 173.8 * Math.hypot(tied.x - hand.x, tied.y - hand.y)
  near(held({ ...anchor, strap_cm }, 1.738, men, STRAP, 'start').forces.hands, byLean.forces.hands, ROUNDING)
})

test('hands and feet raised by the same height change nothing', () => {
  const onFloor = held(pressUp, 1.738, women, ALONG, 'end').forces
  const onBoxes = held({ ...pressUp, hand_height_cm: 40, foot_height_cm: 40 }, 1.738, women, ALONG, 'end').forces
  near(onBoxes.hands, onFloor.hands, ROUNDING)
  near(onBoxes.friction, onFloor.friction, ROUNDING)
})

test('an added mass counts in proportion: twice the mass adds twice the load', () => {
  const at = (added_mass_percent: number): number => held({ ...pressUp, added_mass_percent }, 1.738, men, ALONG, 'end').forces.hands
  near(at(40) - at(0), 2 * (at(20) - at(0)), 1e-12)
})

test('shanks held up take load off the hands, since they lie behind the knees', () => {
  const lifted = held({ ...kneeling, shanks: 'lifted', knee_deg: 120 }, 1.738, women, ALONG, 'end').forces.hands
  assert.ok(lifted < held(kneeling, 1.738, women, ALONG, 'end').forces.hands)
})

test('the elbow of a straight arm lies on the line from shoulder to hand, to the last digits', () => {
  for (const body of [women, men, dempster]) {
    const atBar = held({ ...row, hands: 'bar', lean_deg: 45 }, 1.738, body, ALONG, 'start').still
    const onStraps = held({ ...row, anchor_height_cm: 240, feet_from_anchor_cm: -60, lean_deg: 45 }, 1.738, body, STRAP, 'start').still
    for (const { shoulder, elbow, hand } of [atBar, onStraps]) {
      near((hand.x - shoulder.x) * (elbow.y - shoulder.y) - (hand.y - shoulder.y) * (elbow.x - shoulder.x), 0, 1e-15)
    }
  }
})

test('a straight elbow is the start of the rep, nearly', () => {
  const start = held(pressUp, 1.738, men, UPRIGHT, 'start').forces.hands
  near(held({ ...pressUp, elbow_deg: 170 }, 1.738, men, UPRIGHT, 'end').forces.hands, start, 0.001) // by hand: a straight arm on a flat palm has 180° − atan(43.1/268.9) = 170.9° from upper arm to palm, reach 552.28 mm; 551.92 at 170°
})

// What a coach gets.

test('the load is the mean of the reference woman and man, on one hand, at the lowest point of the rep', () => {
  const mean = (at: 'start' | 'end', setUp: SetUp, touch: Touch): number => (held(setUp, 1.738, women, touch, at).forces.hands + held(setUp, 1.738, men, touch, at).forces.hands) / 2
  near(settled(pressUp).load.mid, 50 * mean('end', pressUp, ALONG), 1e-12)
  const lean = { ...row, anchor_height_cm: 240, feet_from_anchor_cm: -60, lean_deg: 45 } as const
  near(settled(lean).load.mid, 50 * mean('start', lean, STRAP), 1e-12)
  near(settled({ ...pressUp, working_side_percent: 75 }).load.mid, 75 * mean('end', pressUp, ALONG), 1e-12)
})

test('the interval holds every body tried under every assumption', () => {
  const { load } = settled({ ...pressUp, hand_height_cm: 60 })
  assert.equal(load.points.length, 21 * 6)
  const { low, high } = interval(load)
  for (const body of [women, men, dempster]) {
    for (const touch of [ALONG, UPRIGHT]) {
      const share = 50 * held({ ...pressUp, hand_height_cm: 60 }, 1.738, body, touch, 'end').forces.hands
      assert.ok(low <= share && share <= high)
    }
  }
})

test('a flat foot widens the interval from heel to ball', () => {
  const flat = { ...row, feet: 'flat', anchor_height_cm: 200, feet_from_anchor_cm: -40, lean_deg: 50 } as const
  const { low, high } = interval(settled(flat).load)
  for (const press of [0, 0.5, 1]) {
    const share = 50 * held(flat, 1.738, men, { direction: 'strap', press }, 'start').forces.hands
    assert.ok(low <= share && share <= high)
  }
})

test('two spreads of this model run over the same bodies, so rungs can be compared body by body', () => {
  const [one, other] = [settled(pressUp).load, settled({ ...row, anchor_height_cm: 240, lean_deg: 50 }).load]
  assert.equal(one.over, other.over)
  assert.equal(one.points.length, other.points.length)
})

test('straps put on the anchor what the hands carry, and twice that when loaded suddenly', () => {
  const load = settled({ facing: 'down', feet: 'toes', hands: 'straps', hand_height_cm: 30 })
  const still = figure(load, 'force on the anchor, held still')
  near(still.mid, figure(load, 'force on both hands at the end of the rep').mid, 1e-12) // arms bent is the heavier end here
  near(figure(load, 'force on the anchor, loaded suddenly').mid, 2 * still.mid, 1e-12)
})

test('a row puts the heavier of its two ends on the anchor', () => {
  const load = settled({ ...row, anchor_height_cm: 240, feet_from_anchor_cm: -60, lean_deg: 60 })
  near(figure(load, 'force on the anchor, held still').mid, figure(load, 'force on both hands at the end of the rep').mid, 1e-12)
  assert.ok(figure(load, 'force on both hands at the end of the rep').mid > figure(load, 'force on both hands at the start of the rep').mid)
})

for (const { setUp, why } of [
  { setUp: { feet_from_anchor_cm: 0, lean_deg: 30 }, why: 'the line of the force passes too near the feet to settle how much the hands carry' },
  { setUp: { feet_from_anchor_cm: 0, lean_deg: 20 }, why: 'the arms cannot bend that far in this position' },
]) {
  test(`where the end of a row is not settled, no force on the anchor is given, but a reason and whom to ask: ${why}`, () => {
    const load = settled({ ...row, anchor_height_cm: 240, ...setUp })
    const valueOf = (of: string) => load.figures.find(({ name }) => name === of)?.value
    assert.deepEqual(valueOf('force on both hands at the end of the rep'), { missing: why })
    assert.deepEqual(valueOf('force on the anchor, held still'), { missing: `the end of the rep is not settled (${why}); a competent person must say what the anchor has to hold` })
    assert.deepEqual(valueOf('force on the anchor, loaded suddenly'), { missing: `the end of the rep is not settled (${why}); a competent person must say what the anchor has to hold` })
  })
}

test('the working can be followed from the balance of moments to the load', () => {
  const { working } = settled(pressUp)
  assert.equal(working.length, 4)
  for (const { says, numbers } of working.slice(0, 2)) {
    assert.match(says, /^Force on both hands at the end of the rep, reference (woman|man): moments about the feet, lengths over stature$/)
    const [moment = Number.NaN, lever = Number.NaN, share = Number.NaN] = numbers.split(/ [/=] /).map(Number)
    near(moment / lever, share, 1e-4) // four decimals are printed
  }
})

test('what is assumed stands beside the number', () => {
  assert.deepEqual(settled({ ...kneeling, shanks: 'lifted', knee_deg: 120 }).assumes, [
    'The body is held still, in one plane; fast repetitions load more.',
    'The load is taken at the lowest point of the rep.',
    'A rigid surface leaves the direction of the force open: along the arm is taken as likely, turned upright as far as the feet need for their grip; quite upright is the other end of the interval.',
    'The shanks are held off the floor.',
    'The interval spans two tables of body segments and the 5th to 95th percentile of leg, trunk and arm length.',
  ])
  assert.deepEqual(settled({ ...row, feet: 'flat', anchor_height_cm: 240, lean_deg: 50 }).assumes.slice(2, 4), ['The force on the hands lies along the strap.', 'A flat foot may press anywhere from heel to ball.'])
  assert.deepEqual(settled(kneeling).assumes[3], 'The shanks rest on the floor and carry themselves.')
})

const GRIP = 'The feet need good grip here: set them against a wall or on a mat that cannot slide.'
const ANCHOR = 'Use an anchor rated by a competent person for at least the sudden force.'
test('feet that need more than dry-shoe friction are cautioned, and so is every anchor', () => {
  assert.deepEqual(settled(pressUp).cautions, [])
  assert.deepEqual(settled({ ...pressUp, foot_height_cm: 60 }).cautions, [GRIP])
  assert.deepEqual(settled({ ...row, anchor_height_cm: 240, feet_from_anchor_cm: 0, lean_deg: 30 }).cautions, [ANCHOR])
  assert.deepEqual(settled({ ...row, anchor_height_cm: 240, feet_from_anchor_cm: 0, lean_deg: 60 }).cautions, [GRIP, ANCHOR])
})

test('the set-up stands beside the load: how high, how far, how steep', () => {
  const onFloor = settled(pressUp)
  near(figure(onFloor, 'hands above the floor').mid, 0, 1e-9)
  near(figure(onFloor, 'feet to hands, along the floor').mid, 135.08, 0.005) // by hand: ball to palm, woman 1311.67/1735, man 1390.06/1741; mean 0.777216 × 173.8
  near(figure(onFloor, 'lean of the body at the start').mid, 73.367, 0.001) // by hand: 90° less the tilts of 16.8569° and 16.4085°
  near(figure(settled({ ...pressUp, hand_height_cm: 60 }), 'hands above the floor').mid, 60, 1e-9)
  near(figure(settled({ ...row, anchor_height_cm: 240, feet_from_anchor_cm: -60, lean_deg: 47 }), 'lean of the body at the start').mid, 47, 1e-9)
  near(figure(settled({ ...row, anchor_height_cm: 240, feet_from_anchor_cm: -60, strap_cm: 100 }), 'strap from anchor to grip').mid, 100, 1e-9)
})

// The pictures.

test('a press-up on the floor shows ground alone, raised hands a surface, a bar a bar, a strap its strap', () => {
  const kinds = (inputs: Inputs): string[] => settled(inputs).poses[0]?.props.map(({ kind }) => kind) ?? []
  assert.deepEqual(kinds(pressUp), ['ground'])
  assert.deepEqual(kinds({ ...pressUp, hand_height_cm: 40, foot_height_cm: 30 }), ['ground', 'surface', 'surface'])
  assert.deepEqual(kinds({ ...row, hands: 'bar', lean_deg: 75 }), ['ground', 'bar'])
  assert.deepEqual(kinds({ ...row, anchor_height_cm: 240, lean_deg: 50 }), ['ground', 'strap'])
})

test('a rep shows its start, then its end, in metres, and only what is settled', () => {
  assert.deepEqual(
    settled(pressUp).poses.map(({ name }) => name),
    ['start', 'end'],
  )
  assert.deepEqual(
    settled({ ...row, anchor_height_cm: 240, feet_from_anchor_cm: 0, lean_deg: 20 }).poses.map(({ name }) => name),
    ['start'],
  )
  const [start, end] = settled({ ...row, anchor_height_cm: 240, feet_from_anchor_cm: -60, lean_deg: 50 }).poses
  assert.ok((start?.joints.shoulder?.y ?? 0) < (end?.joints.shoulder?.y ?? 0)) // a row rises
  near(start?.joints.heel?.y ?? Number.NaN, 0, 1e-12)
})

test('the elbows of a press-up point to the feet, those of a row behind the back', () => {
  const { still: down } = held(pressUp, 1.738, men, ALONG, 'end')
  assert.ok(down.elbow.x < Math.min(down.hand.x, down.shoulder.x))
  const { still: up } = held({ ...row, anchor_height_cm: 240, feet_from_anchor_cm: -60, lean_deg: 60 }, 1.738, men, STRAP, 'end')
  const [along, out] = [{ x: up.shoulder.x - up.hip.x, y: up.shoulder.y - up.hip.y }, { x: up.elbow.x - up.hip.x, y: up.elbow.y - up.hip.y }]
  const { x, y } = { x: up.hand.x - up.hip.x, y: up.hand.y - up.hip.y }
  const side = (of: { x: number; y: number }): number => along.x * of.y - along.y * of.x
  assert.ok(side(out) < side({ x, y })) // the hands are before the chest, the elbows farther back
})

test('kneeling, resting shanks lie level with the knees, and shanks held up rise behind them', () => {
  const { knee, ankle } = held(kneeling, 1.738, men, ALONG, 'start').still
  near(ankle.y, knee.y, 1e-12)
  assert.ok(ankle.x < knee.x)
  const lifted = held({ ...kneeling, shanks: 'lifted' }, 1.738, men, ALONG, 'start').still
  assert.ok(lifted.ankle.y > lifted.knee.y)
})

test('a body on its toes is drawn with the toes bent, along the floor towards the hands', () => {
  const { ball, toe, hand } = settled(pressUp).poses[0]?.joints ?? {}
  assert.ok(ball && toe && hand)
  near(ball.y, 0, 1e-12)
  near(toe.y, 0, 1e-12)
  assert.ok(toe.x > ball.x && toe.x < hand.x && toe.x - ball.x < 0.08)
})

// Refusals.

const straps = { ...row, anchor_height_cm: 240 }
const NOT_ON_STRAPS = 'an anchor or a strap is given, but the hands are not on straps'
for (const { inputs, missing } of [
  { inputs: {}, missing: 'facing is not given; supported-body needs it' },
  { inputs: { ...pressUp, facing: 'sideways' }, missing: 'facing is sideways; supported-body knows down, up' },
  { inputs: { ...pressUp, feet: 'forearms' }, missing: 'feet is forearms; supported-body knows toes, heels, flat, knees' },
  { inputs: { ...pressUp, hands: 'rope' }, missing: 'hands is rope; supported-body knows surface, bar, straps' },
  { inputs: { ...pressUp, shanks: 'crossed' }, missing: 'shanks is crossed; supported-body knows rest, lifted' },
  { inputs: { ...pressUp, hand_height_cm: -1 }, missing: 'hand_height_cm is -1; supported-body holds from 0 to 250 cm' },
  { inputs: { ...pressUp, foot_height_cm: 151 }, missing: 'foot_height_cm is 151; supported-body holds from 0 to 150 cm' },
  { inputs: { ...pressUp, knee_deg: 181 }, missing: 'knee_deg is 181; supported-body holds from 60 to 180 deg' },
  { inputs: { ...pressUp, elbow_deg: 39 }, missing: 'elbow_deg is 39; supported-body holds from 40 to 170 deg' },
  { inputs: { ...pressUp, working_side_percent: 49 }, missing: 'working_side_percent is 49; supported-body holds from 50 to 100 %' },
  { inputs: { ...pressUp, added_mass_percent: 101 }, missing: 'added_mass_percent is 101; supported-body holds from 0 to 100 % of body mass' },
  { inputs: { ...straps, lean_deg: 91 }, missing: 'lean_deg is 91; supported-body holds from 0 to 90 deg' },
  { inputs: { ...straps, anchor_height_cm: 49 }, missing: 'anchor_height_cm is 49; supported-body holds from 50 to 600 cm' },
  { inputs: { ...straps, feet_from_anchor_cm: 301 }, missing: 'feet_from_anchor_cm is 301; supported-body holds from -300 to 300 cm' },
  { inputs: { ...straps, strap_cm: 19 }, missing: 'strap_cm is 19; supported-body holds from 20 to 500 cm' },
  { inputs: { ...row, hands: 'bar', lean_deg: 45, feet_from_anchor_cm: 10 }, missing: 'feet_from_anchor_cm is given, but the hands are not on straps' },
  { inputs: { ...pressUp, hands: 'straps', strap_cm: 90 }, missing: 'strap_cm is given, but facing down the height of the hands says where they are' },
  { inputs: { ...pressUp, shanks: 'lifted' }, missing: 'shanks is given, but the body does not kneel' },
  { inputs: { ...straps, feet: 'toes', lean_deg: 45 }, missing: 'facing up, the feet rest on heels or flat, not on toes' },
  { inputs: { ...straps, hands: 'surface', lean_deg: 45 }, missing: 'facing up, the hands hold a bar or straps, not a surface' },
  { inputs: { ...pressUp, feet: 'heels' }, missing: 'facing down, the feet rest on toes or flat, not on heels' },
  { inputs: { ...pressUp, feet: 'heels', hands: 'straps' }, missing: 'facing down, the feet rest on toes or flat, not on heels' },
  { inputs: { ...pressUp, anchor_height_cm: 240 }, missing: NOT_ON_STRAPS },
  { inputs: { ...pressUp, strap_cm: 100 }, missing: NOT_ON_STRAPS },
  { inputs: { ...pressUp, hands: 'bar', anchor_height_cm: 240 }, missing: NOT_ON_STRAPS },
  { inputs: { ...row, hands: 'bar', lean_deg: 45, strap_cm: 100 }, missing: NOT_ON_STRAPS },
  { inputs: { ...row, hands: 'bar', lean_deg: 45, anchor_height_cm: 240 }, missing: NOT_ON_STRAPS },
  { inputs: { ...row, lean_deg: 45 }, missing: 'anchor_height_cm is not given; straps need it' },
  { inputs: straps, missing: 'neither strap_cm nor lean_deg is given; one of them sets the position' },
  { inputs: { ...straps, strap_cm: 100, lean_deg: 45 }, missing: 'strap_cm and lean_deg are both given; one of them follows from the other' },
  { inputs: { facing: 'down', feet: 'toes', hands: 'surface' }, missing: 'neither hand_height_cm nor lean_deg is given; one of them sets the position' },
  { inputs: { ...pressUp, lean_deg: 45 }, missing: 'hand_height_cm and lean_deg are both given; one of them follows from the other' },
  { inputs: { ...pressUp, hand_height_cm: 200 }, missing: 'the hands cannot be reached from the feet: the height is more than the body spans' },
  { inputs: { ...row, hands: 'bar', hand_height_cm: 220 }, missing: 'the hands cannot be reached from the feet: the height is more than the body spans' },
  { inputs: { ...straps, anchor_height_cm: 600, strap_cm: 50 }, missing: 'the hands cannot be reached from the feet: the height is more than the body spans' },
  { inputs: { ...straps, anchor_height_cm: 150, feet_from_anchor_cm: 30, lean_deg: 20 }, missing: 'the anchor is nearer than the arms are long, so no strap fits between' },
  { inputs: { ...kneeling, foot_height_cm: 120 }, missing: 'the hands cannot be reached from the feet: the height is more than the body spans' },
  { inputs: { ...straps, strap_cm: 300 }, missing: 'the shoulders would be below the hands or the floor' },
  { inputs: { ...pressUp, elbow_deg: 170, hand_height_cm: 130 }, missing: 'the body stands past its balance, so the hands carry nothing' },
  { inputs: { ...straps, feet_from_anchor_cm: 60, lean_deg: 10 }, missing: 'the hands would carry more than the whole body, so the feet would leave the ground' },
  { inputs: { ...straps, feet_from_anchor_cm: 60, lean_deg: 20 }, missing: 'the line of the force passes too near the feet to settle how much the hands carry' },
]) {
  test(`says: ${missing} — ${JSON.stringify(inputs)}`, () => assert.deepEqual(asked(inputs), { missing }))
}

test('says, of the end of a row, that the arms cannot bend that far in this position', () => {
  const load = settled({ ...straps, feet_from_anchor_cm: 0, lean_deg: 20 })
  assert.deepEqual(load.figures.find(({ name }) => name === 'force on both hands at the end of the rep')?.value, { missing: 'the arms cannot bend that far in this position' })
})

test('says that arms can be longer than the part of the body that leans', () => {
  const longArms: Body = { ...men, upper_arm: { ...men.upper_arm, length: 0.6 }, forearm: { ...men.forearm, length: 0.5 } }
  assert.deepEqual(supported(kneeling, 1.738, longArms, ALONG), { missing: 'the arms are longer than the part of the body that leans' })
})

test('a bar at chest height is computed along the arms, for straight up cannot hold the pose', () => {
  const atBar = { ...row, hands: 'bar', lean_deg: 50 } as const
  assert.deepEqual(supported(atBar, 1.738, women, UPRIGHT), { missing: 'the hands would carry more than the whole body, so the feet would leave the ground' })
  const along = (body: Body): number => held(atBar, 1.738, body, ALONG, 'start').forces.hands
  near(along(women), 0.5, 0.05) // near half, where the bar stands at 138 cm
  const { load } = settled(atBar)
  near(load.mid, 25 * (along(women) + along(men)), 1e-12)
  assert.deepEqual(load.points.slice(0, 6), Array.from({ length: 6 }, () => 50 * along(women))) // the likely direction stands in for the one that holds nothing
})

test('where straight up does hold the pose, it stands in the interval', () => {
  const upright = held({ ...row, hands: 'bar', lean_deg: 75 }, 1.738, women, UPRIGHT, 'start').forces.hands
  const { points } = settled({ ...row, hands: 'bar', lean_deg: 75 }).load
  near(points[3] ?? Number.NaN, 50 * upright, 1e-12)
  assert.notEqual(points[0], points[3])
})

test('every row at a bar from 20 to 80 degrees of lean is computed', () => {
  for (let lean_deg = 20; lean_deg <= 80; lean_deg += 1) {
    const { load } = settled({ ...row, hands: 'bar', lean_deg })
    const { low, high } = interval(load)
    assert.ok(low > 0 && high <= 50) // nobody hangs with more than the whole body on both hands
  }
})
