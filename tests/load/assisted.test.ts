import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { assisted } from '../../src/load/assisted.ts'
import { ask, type Inputs, type Load } from '../../src/load/model.ts'
import { isMissing, type Outcome } from '../../src/quantity/outcome.ts'
import { interval, type Spread } from '../../src/quantity/spread.ts'
import { near } from '../quantity/near.ts'
import { ATHLETE } from './athlete.ts'

const asked = (inputs: Inputs, mass_kg = ATHLETE.mass_kg): Outcome<Load> => ask(assisted, inputs, { ...ATHLETE, mass_kg })
const settled = (inputs: Inputs, mass_kg?: number): Load => {
  const outcome = asked(inputs, mass_kg)
  return isMissing(outcome) ? assert.fail(outcome.missing) : outcome
}
const figure = (load: Load, name: string): Spread => {
  const value = load.figures.find((each) => each.name === name)?.value ?? assert.fail(name)
  return isMissing(value) ? assert.fail(value.missing) : value
}

const BOTH_START = 'on both arms at the start of the rep'
const BOTH_END = 'on both arms at the end of the rep'

/** 1.8 N a centimetre at first, less and less: a band as it might be measured. */
const SOFT = [
  [0, 0],
  [50, 80],
  [100, 140],
] as const
/** The same 100 N however far it is stretched, like a weight over a pulley. */
const EVEN = [
  [0, 100],
  [40, 100],
  [80, 100],
] as const
/** Twice as stiff as SOFT, so that it may carry more than a light body. */
const STIFF = [
  [0, 0],
  [50, 800],
  [100, 1600],
] as const

type Worked = { readonly name: string; readonly inputs: Inputs; readonly mass_kg?: number; readonly load: number; readonly start: number; readonly end: number; readonly from: string }

/** Each row was worked without this code: % of body weight, mean of the reference woman and man. */
const worked: readonly Worked[] = [
  { name: 'a pull-up with nothing to help', inputs: { exercise: 'hang' }, load: 47.915, start: 95.83, end: 95.83, from: 'by hand: woman 100 − 2 × (1.38 + 0.56) = 96.12, man 100 − 2 × (1.62 + 0.61) = 95.54; mean 95.83, half on each arm' },
  { name: 'a pull-up with a counterweight of 30 %', inputs: { exercise: 'hang', counterweight_percent: 30 }, load: 32.915, start: 65.83, end: 65.83, from: 'by hand: (95.83 − 30) / 2' },
  { name: 'a dip with a tenth of body mass hung on', inputs: { exercise: 'dip', added_mass_percent: 10 }, load: 52.915, start: 105.83, end: 105.83, from: 'by hand: (95.83 + 10) / 2' },
  { name: 'a dip with a counterweight of 20 %, two thirds on one arm', inputs: { exercise: 'dip', counterweight_percent: 20, working_side_percent: 66 }, load: 50.0478, start: 75.83, end: 75.83, from: 'by hand: 0.66 × (95.83 − 20)' },
  { name: 'a pull-up on one arm', inputs: { exercise: 'hang', working_side_percent: 100 }, load: 97.915, start: 97.915, end: 97.915, from: 'by hand: the other arm is carried: woman 100 − 1.94 = 98.06, man 100 − 2.23 = 97.77; mean' },
  { name: 'a hang by the grip of both hands', inputs: { exercise: 'grip' }, load: 49.415, start: 98.83, end: 98.83, from: 'by hand: all but the hands: woman 100 − 1.12 = 98.88, man 100 − 1.22 = 98.78; mean 98.83' },
  { name: 'a hang by one hand, a fifth on a scale under the feet', inputs: { exercise: 'grip', working_side_percent: 100, counterweight_percent: 20 }, load: 79.415, start: 79.415, end: 79.415, from: 'by hand: woman 99.44, man 99.39, mean 99.415; less 20' },
  {
    name: 'a pull-up on a band',
    inputs: { exercise: 'hang', band_points: SOFT, stretch_start_cm: 75, stretch_end_cm: 25 },
    load: 44.7024,
    start: 78.8221,
    end: 89.4048,
    from: 'by hand: a curve through three points leaves no remainder: f = 1.8 x − 0.004 x², 112.5 N at 75 cm, 42.5 N at 25 cm; 67.45 × 9.80665 = 661.4585 N, so 17.0079 and 6.4252 %; 95.83 less either; half the end',
  },
  {
    name: 'a pull-up of a body of 100 kg on the same band',
    inputs: { exercise: 'hang', band_points: SOFT, stretch_start_cm: 75, stretch_end_cm: 25 },
    mass_kg: 100,
    load: 45.7481,
    start: 84.3582,
    end: 91.4962,
    from: 'by hand: 112.5 and 42.5 N of 980.665 N: 11.4718 and 4.3338 %',
  },
  { name: 'a dip on a band that pulls 100 N throughout', inputs: { exercise: 'dip', band_points: EVEN, stretch_start_cm: 60, stretch_end_cm: 10 }, load: 40.3559, start: 80.7119, end: 80.7119, from: 'by hand: 100 / 661.4585 = 15.1181 %; (95.83 − 15.1181) / 2' },
]

for (const { name, inputs, mass_kg, load, start, end, from } of worked) {
  test(`${name}: ${load} % of body weight on the working arm — ${from}`, () => {
    const outcome = settled(inputs, mass_kg)
    near(outcome.load.mid, load, 5e-5) // four decimals are given
    near(figure(outcome, BOTH_START).mid, start, 5e-5)
    near(figure(outcome, BOTH_END).mid, end, 5e-5)
  })
}

test('the interval spans the body tables — by hand: woman 96.12, man 95.54, Dempster 100 − 2 × (1.6 + 0.6) = 95.6, half of each', () => {
  const { low, high } = interval(settled({ exercise: 'hang' }).load)
  near(low, 47.77, 1e-9)
  near(high, 48.06, 1e-9)
})

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const exercises = fc.constantFrom('hang', 'dip', 'grip')
const sides = between(50, 100)

// Identities.

test('a counterweight as heavy as what is hung on leaves the plain exercise', () => {
  fc.assert(
    fc.property(exercises, between(0, 90), sides, (exercise, percent, working_side_percent) => {
      const [both, neither] = [settled({ exercise, working_side_percent, counterweight_percent: percent, added_mass_percent: percent }), settled({ exercise, working_side_percent })]
      for (const [index, point] of neither.load.points.entries()) near(both.load.points[index] ?? Number.NaN, point, 1e-9)
    }),
  )
})

test('what is hung on counts in full, times the share of the working arm', () => {
  fc.assert(
    fc.property(exercises, between(0, 150), sides, (exercise, added_mass_percent, working_side_percent) => {
      const [without, carrying] = [settled({ exercise, working_side_percent }), settled({ exercise, working_side_percent, added_mass_percent })]
      near(carrying.load.mid - without.load.mid, (added_mass_percent * working_side_percent) / 100, 1e-9)
    }),
  )
})

test('a band that pulls the same throughout is a counterweight of that weight', () => {
  fc.assert(
    fc.property(between(40, 120), between(0, 80), between(0, 80), (mass_kg, a, b) => {
      const banded = settled({ exercise: 'hang', band_points: EVEN, stretch_start_cm: Math.max(a, b), stretch_end_cm: Math.min(a, b) }, mass_kg)
      const weighed = settled({ exercise: 'hang', counterweight_percent: 10000 / (mass_kg * 9.80665) }, mass_kg)
      near(banded.load.mid, weighed.load.mid, 1e-9)
      near(figure(banded, BOTH_START).mid, figure(weighed, BOTH_START).mid, 1e-9)
    }),
  )
})

test('twice the body with twice the band is the same share', () => {
  const twice = SOFT.map(([stretch, force]) => [stretch, 2 * force] as const)
  const stretched = { exercise: 'hang', stretch_start_cm: 90, stretch_end_cm: 10 }
  near(settled({ ...stretched, band_points: twice }, 120).load.mid, settled({ ...stretched, band_points: SOFT }, 60).load.mid, 1e-9)
})

test('a band helps most where it is longest, at the start of the rep, and a heavier body least', () => {
  fc.assert(
    fc.property(between(40, 110), between(41, 120), between(0, 100), between(0, 100), (mass_kg, heavier_kg, a, b) => {
      const inputs = { exercise: 'hang', band_points: SOFT, stretch_start_cm: Math.max(a, b), stretch_end_cm: Math.min(a, b) }
      const load = settled(inputs, mass_kg)
      assert.ok(figure(load, BOTH_START).mid <= figure(load, BOTH_END).mid + 1e-9)
      if (heavier_kg > mass_kg) assert.ok(settled(inputs, heavier_kg).load.mid >= load.load.mid - 1e-9)
    }),
  )
})

test('a dip is a hang the other way up, and grip alone carries the forearms too', () => {
  const at = (exercise: string): number => settled({ exercise }).load.mid
  near(at('dip'), at('hang'), 0)
  near(at('grip') - at('hang'), 1.5, 1e-9) // by hand: half of 2 × (1.38 + 1.62) / 2
})

test('the less arms work, the more one carries', () => {
  fc.assert(
    fc.property(exercises, between(50, 99.9), between(50, 99.9), (exercise, a, b) => {
      const at = (working_side_percent: number): number => settled({ exercise, working_side_percent }).load.mid
      assert.ok(at(Math.min(a, b)) <= at(Math.max(a, b)) && at(Math.max(a, b)) < at(100))
    }),
  )
})

// What a coach gets.

test('the working shows the band at both ends, then the load', () => {
  const { working } = settled({ exercise: 'hang', band_points: SOFT, stretch_start_cm: 75, stretch_end_cm: 25 })
  const band = { says: 'Force of the band, by least squares through the measured points', formula: 'f = a + b x + c x²' }
  assert.equal(working.length, 3)
  assert.deepEqual(working.slice(0, 2).map(({ says, formula }) => ({ says, formula })), [band, band])
  assert.match(working[0]?.numbers ?? '', /^-?0\.00 \+ 1\.8000 × 75 \+ -0\.004000 × 75² = 113 N$/) // by hand: 112.5 N, half rounded up
  assert.match(working[1]?.numbers ?? '', /^-?0\.00 \+ 1\.8000 × 25 \+ -0\.004000 × 25² = 43 N$/) // 42.5 N
  assert.deepEqual(working[2], {
    says: 'Load on one working arm at the end of the rep, mean of the reference woman and man',
    formula: 'q = s (1 + a − n m − h)',
    numbers: '50 % × (1 + 0 − 0.0417 − 0.0643) = 45 % of body weight', // by hand: 2 × (1.94 + 2.23) / 2 = 4.17 %
  })
})

test('the working of a counterweight is one line', () => {
  assert.deepEqual(
    settled({ exercise: 'grip', counterweight_percent: 30, added_mass_percent: 10 }).working.map(({ numbers }) => numbers),
    ['50 % × (1 + 0.1 − 0.0117 − 0.3000) = 39 % of body weight'],
  )
})

const BRISK = 'Slow movement: a brisk pull-up peaks at about one and a half times this (Emerson 2014: 1.51 times body weight at the bar).'
const BANDED = { band_points: SOFT, stretch_start_cm: 75, stretch_end_cm: 25 }
for (const { inputs, assumes, cautions } of [
  { inputs: { exercise: 'hang' }, assumes: [BRISK], cautions: [] },
  { inputs: { exercise: 'dip', counterweight_percent: 10 }, assumes: ['Slow movement or none.'], cautions: [] },
  { inputs: { exercise: 'grip' }, assumes: ['Slow movement or none.'], cautions: [] },
  {
    inputs: { exercise: 'hang', ...BANDED },
    assumes: [BRISK, 'The band pulls straight up on a body of 67.5 kg; a heavier body gets less help from it.'],
    cautions: ['A band that slips or snaps strikes: check it before every set, and stand clear of its line.'],
  },
]) {
  test(`${inputs.exercise}${'band_points' in inputs ? ' on a band' : ''}: what is assumed and cautioned stands beside the number`, () => {
    const load = settled(inputs)
    assert.deepEqual(load.assumes, assumes)
    assert.deepEqual(load.cautions, cautions)
    assert.deepEqual(load.quantity, { name: 'force on one working arm', unit: '% of body weight', repeats: true })
    assert.deepEqual(load.poses, [])
  })
}

// Refusals.

for (const { inputs, mass_kg, missing } of [
  { inputs: {}, missing: 'exercise is not given; assisted needs it' },
  { inputs: { exercise: 'row' }, missing: 'exercise is row; assisted knows hang, dip, grip' },
  { inputs: { exercise: 'hang', counterweight_percent: 91 }, missing: 'counterweight_percent is 91; assisted holds from 0 to 90 % of body mass' },
  { inputs: { exercise: 'hang', added_mass_percent: 151 }, missing: 'added_mass_percent is 151; assisted holds from 0 to 150 % of body mass' },
  { inputs: { exercise: 'hang', working_side_percent: 49 }, missing: 'working_side_percent is 49; assisted holds from 50 to 100 %' },
  { inputs: { exercise: 'hang', ...BANDED, stretch_start_cm: 401 }, missing: 'stretch_start_cm is 401; assisted holds from 0 to 400 cm' },
  { inputs: { exercise: 'hang', ...BANDED, stretch_end_cm: -1 }, missing: 'stretch_end_cm is -1; assisted holds from 0 to 400 cm' },
  { inputs: { exercise: 'hang', ...BANDED, band_points: [] }, missing: 'band_points must hold 1 to 30 pairs from 0 to 2000' },
  { inputs: { exercise: 'hang', ...BANDED, band_points: [[0, 2001]] as const }, missing: 'band_points must hold 1 to 30 pairs from 0 to 2000' },
  { inputs: { exercise: 'hang', ...BANDED, band_points: [0, 50] }, missing: 'band_points must hold pairs of numbers' },
  { inputs: { exercise: 'hang', ...BANDED, counterweight_percent: 10 }, missing: 'counterweight_percent and band_points are both given; give one' },
  { inputs: { exercise: 'hang', stretch_start_cm: 10 }, missing: 'a stretch is given, but no band_points' },
  { inputs: { exercise: 'hang', stretch_end_cm: 10, counterweight_percent: 10 }, missing: 'a stretch is given, but no band_points' },
  { inputs: { exercise: 'hang', band_points: SOFT }, missing: 'stretch_start_cm and stretch_end_cm are needed with band_points' },
  { inputs: { exercise: 'hang', band_points: SOFT, stretch_start_cm: 50 }, missing: 'stretch_start_cm and stretch_end_cm are needed with band_points' },
  { inputs: { exercise: 'hang', band_points: SOFT, stretch_start_cm: 20, stretch_end_cm: 30 }, missing: 'the band is longer at the end of the rep than at its start, so it would not help' },
  { inputs: { exercise: 'hang', ...BANDED, band_points: SOFT.slice(0, 2) }, missing: 'a band needs at least 3 measured points with different stretches' },
  { inputs: { exercise: 'hang', ...BANDED, band_points: [[0, 100], [50, 60], [100, 0]] as const }, missing: 'the measured force of the band falls as it is stretched; measure it again' },
  { inputs: { exercise: 'hang', band_points: SOFT, stretch_start_cm: 120, stretch_end_cm: 30 }, missing: 'the band was measured from 0 to 100 cm; the rep stretches it from 30 to 120 cm' },
  { inputs: { exercise: 'hang', band_points: [[20, 30], [50, 80], [100, 140]] as const, stretch_start_cm: 90, stretch_end_cm: 10 }, missing: 'the band was measured from 20 to 100 cm; the rep stretches it from 10 to 90 cm' },
  { inputs: { exercise: 'hang', band_points: STIFF, stretch_start_cm: 60, stretch_end_cm: 0 }, missing: 'the band pulls more than the body weighs' },
  { inputs: { exercise: 'hang', band_points: STIFF, stretch_start_cm: 60, stretch_end_cm: 0 }, mass_kg: 97, missing: 'the band pulls more than the body weighs' },
  { inputs: { exercise: 'hang', band_points: STIFF, stretch_start_cm: 60, stretch_end_cm: 0 }, mass_kg: 99, missing: 'the help is more than the arms would carry' },
  { inputs: { exercise: 'hang', band_points: STIFF, stretch_start_cm: 41.3, stretch_end_cm: 41 }, missing: 'the help is more than the arms would carry' },
]) {
  test(`says: ${missing} — ${JSON.stringify(inputs)}${mass_kg === undefined ? '' : `, ${mass_kg} kg`}`, () => assert.deepEqual(asked(inputs, mass_kg), { missing }))
}

test('no counterweight is the same as one of nothing, and there is always something left to carry', () => {
  assert.deepEqual(settled({ exercise: 'hang', counterweight_percent: 0 }), settled({ exercise: 'hang' }))
  fc.assert(
    fc.property(exercises, between(0, 90), sides, (exercise, counterweight_percent, working_side_percent) => {
      for (const point of settled({ exercise, counterweight_percent, working_side_percent }).load.points) assert.ok(Number.isFinite(point) && point > 0)
    }),
  )
})
