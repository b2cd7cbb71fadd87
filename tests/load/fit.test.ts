import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { fit, fittedKey, type Fit } from '../../src/load/fit.ts'
import { modelNamed, models, type ModelName } from '../../src/load/index.ts'
import { ask, askMiddle, isNumberKey, type Inputs, type LoadModel } from '../../src/load/model.ts'
import { isMissing, type Outcome } from '../../src/quantity/outcome.ts'
import { near } from '../quantity/near.ts'
import { ATHLETE } from './athlete.ts'

const named = (name: ModelName): LoadModel => modelNamed(name) ?? assert.fail(name)
const fitted = (name: ModelName, inputs: Inputs, key: string, load: number): Outcome<Fit> => fit(named(name), inputs, key, load, ATHLETE)
const found = (name: ModelName, inputs: Inputs, key: string, load: number): Fit => {
  const outcome = fitted(name, inputs, key, load)
  return isMissing(outcome) ? assert.fail(outcome.missing) : outcome
}
const at = (name: ModelName, inputs: Inputs): Outcome => askMiddle(named(name), inputs, ATHLETE)

const floor = { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 0 } as const
const bar = { facing: 'up', feet: 'heels', hands: 'bar', lean_deg: 40 } as const

/** Each row was worked without this code: what gives the load follows from the model's own equation. */
const worked = [
  { model: 'landing', inputs: {}, key: 'drop_height_cm', load: 45, value: 45, from: 'definition: a straight drop on the flat is its own height' },
  { model: 'landing', inputs: { slope_deg: 30 }, key: 'drop_height_cm', load: 60, value: 80, from: 'by hand: 60 / cos² 30° = 60 / 0.75' },
  { model: 'assisted', inputs: { exercise: 'hang' }, key: 'counterweight_percent', load: 30, value: 35.83, from: 'by hand: 95.83 − 2 × 30' },
  { model: 'assisted', inputs: { exercise: 'dip' }, key: 'added_mass_percent', load: 60, value: 24.17, from: 'by hand: 2 × 60 − 95.83' },
  { model: 'leg-press-of-body', inputs: { stance: 'two legs' }, key: 'added_mass_percent', load: 60, value: 31.8, from: 'by hand: both knees carry 100 less shanks and feet, 88.2 on average of her 87.80 and his 88.60; 120 − 88.2' },
  { model: 'leg-press-of-body', inputs: { stance: 'split' }, key: 'front_leg_percent', load: 66.15, value: 75, from: 'by hand: 66.15 / 88.2' },
  { model: 'one-rep-max', inputs: { one_rep_max_kg: 80 }, key: 'percent_1rm', load: 60, value: 75, from: 'by hand: 60 / 80' },
  { model: 'one-rep-max', inputs: {}, key: 'load_kg', load: 72.5, value: 72.5, from: 'definition: the load is the mass' },
  { model: 'supported-body', inputs: floor, key: 'working_side_percent', load: 50, value: 69.0738, from: 'by hand: arms bent, both hands carry 71.8007 of him and 72.9719 of her (both worked in supported-body.test.ts), 72.3863 on average; 50 / 0.723863' },
] as const satisfies readonly { model: ModelName; inputs: Inputs; key: string; load: number; value: number; from: string }[]

for (const { model, inputs, key, load, value, from } of worked) {
  test(`${model}: ${key} ${value} gives ${load} — ${from}`, () => {
    const answer = found(model, inputs, key, load)
    assert.equal(answer.key, key)
    near(answer.value, value, 2e-4) // a ten-millionth of the span, and the rounding of the row
    near(answer.load, load, 1e-3)
  })
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

type Case = { readonly model: ModelName; readonly key: string; readonly inputs: fc.Arbitrary<Inputs>; readonly value: readonly [min: number, max: number] }

const SOFT = [
  [0, 0],
  [50, 80],
  [100, 140],
] as const

/** Measurements along which the load only rises or only falls, so that one value gives one load. */
const monotone: readonly Case[] = [
  { model: 'landing', key: 'drop_height_cm', inputs: fc.record({ slope_deg: between(0, 45), level_speed_m_s: fc.constant(0), travel_cm: between(5, 80) }), value: [1, 150] },
  { model: 'landing', key: 'drop_height_cm', inputs: fc.record({ slope_deg: between(1, 10), level_speed_m_s: between(0, 2) }), value: [10, 150] },
  { model: 'leg-press-of-body', key: 'front_leg_percent', inputs: fc.record({ stance: fc.constant('split'), added_mass_percent: between(0, 200) }), value: [50, 100] },
  { model: 'leg-press-of-body', key: 'added_mass_percent', inputs: fc.record({ stance: fc.constantFrom('two legs', 'split', 'one leg') }), value: [0, 200] },
  { model: 'assisted', key: 'counterweight_percent', inputs: fc.record({ exercise: fc.constantFrom('hang', 'dip', 'grip'), added_mass_percent: between(0, 150), working_side_percent: between(50, 100) }), value: [0, 90] },
  { model: 'assisted', key: 'added_mass_percent', inputs: fc.record({ exercise: fc.constantFrom('hang', 'dip', 'grip'), counterweight_percent: between(0, 90) }), value: [0, 150] },
  { model: 'assisted', key: 'working_side_percent', inputs: fc.record({ exercise: fc.constantFrom('hang', 'dip', 'grip'), added_mass_percent: between(0, 150) }), value: [50, 98] },
  { model: 'one-rep-max', key: 'load_kg', inputs: fc.constant({}), value: [0.5, 500] },
  { model: 'one-rep-max', key: 'percent_1rm', inputs: fc.record({ one_rep_max_kg: between(1, 600) }), value: [20, 100] },
  { model: 'lever-hold', key: 'leg_deg', inputs: fc.record({ hold: fc.constant('hollow'), arms: fc.constantFrom('sides', 'overhead') }), value: [5, 80] },
  { model: 'lever-hold', key: 'reach_cm', inputs: fc.record({ hold: fc.constant('front'), feet: fc.constantFrom('toes', 'knees'), foot_height_cm: between(0, 20) }), value: [0, 25] },
  { model: 'lever-hold', key: 'added_mass_percent', inputs: fc.record({ hold: fc.constantFrom('front', 'side', 'bridge') }), value: [0, 100] },
  { model: 'supported-body', key: 'hand_height_cm', inputs: fc.record({ facing: fc.constant('down'), feet: fc.constantFrom('toes', 'knees', 'flat'), hands: fc.constant('surface'), working_side_percent: between(50, 100), added_mass_percent: between(0, 100) }), value: [0, 40] },
  { model: 'supported-body', key: 'working_side_percent', inputs: fc.record({ facing: fc.constant('down'), feet: fc.constant('toes'), hands: fc.constant('surface'), hand_height_cm: between(0, 100) }), value: [50, 100] },
  { model: 'supported-body', key: 'added_mass_percent', inputs: fc.record({ facing: fc.constant('down'), feet: fc.constant('toes'), hands: fc.constant('surface'), hand_height_cm: between(0, 60), added_mass_at: fc.constantFrom('vest', 'back', 'lap') }), value: [0, 100] },
  { model: 'supported-body', key: 'lean_deg', inputs: fc.record({ facing: fc.constant('up'), feet: fc.constant('heels'), hands: fc.constant('straps'), anchor_height_cm: between(220, 300), feet_from_anchor_cm: between(-120, -30) }), value: [30, 80] },
  { model: 'supported-body', key: 'strap_cm', inputs: fc.record({ facing: fc.constant('up'), feet: fc.constant('heels'), hands: fc.constant('straps'), anchor_height_cm: between(220, 240), feet_from_anchor_cm: between(-70, -40) }), value: [120, 180] },
]

/** Each asks a model some seventy times. */
const RUNS = 30

for (const { model, key, inputs, value: [min, max] } of monotone) {
  test(`${model}: what was asked forwards by ${key} is found backwards`, () => {
    let answered = 0
    fc.assert(
      fc.property(inputs, between(min, max), (rest, value) => {
        const load = at(model, { ...rest, [key]: value })
        if (isMissing(load)) return
        answered += 1
        const answer = found(model, { ...rest, [key]: value }, key, load)
        near(answer.load, load, 1e-3)
        near(at(model, { ...rest, [key]: answer.value }), answer.load, 0) // the load that is told is the load of the value that is told
        const spec = named(model).keys[key]
        assert.ok(spec && isNumberKey(spec))
        near(answer.value, value, 1e-6 * (spec.max - spec.min)) // found to a ten-millionth of the span
      }),
      { numRuns: RUNS },
    )
    assert.ok(answered > RUNS / 2, `only ${answered} have a load`)
  })
}

test('assisted: the stretch of a band that gives a load is found, though the band was measured over less than the span', () => {
  const banded = { exercise: 'hang', band_points: SOFT, stretch_start_cm: 90 }
  fc.assert(
    fc.property(between(0, 80), (stretch_end_cm) => {
      const load = at('assisted', { ...banded, stretch_end_cm })
      assert.ok(!isMissing(load))
      near(found('assisted', { ...banded, stretch_end_cm }, 'stretch_end_cm', load).value, stretch_end_cm, 1e-4)
    }),
  )
})

/** Any set-up a coach might fit, along any measurement, rising or falling or both. */
const anySetUp: fc.Arbitrary<Inputs> = fc.oneof(
  fc.record({ facing: fc.constant('down'), feet: fc.constantFrom('toes', 'flat', 'knees'), hands: fc.constantFrom('surface', 'straps'), hand_height_cm: between(0, 120), foot_height_cm: between(0, 60) }),
  fc.record({ facing: fc.constant('up'), feet: fc.constantFrom('heels', 'flat'), hands: fc.constant('bar'), lean_deg: between(10, 90), foot_height_cm: between(0, 40) }),
  fc.record({ facing: fc.constant('up'), feet: fc.constantFrom('heels', 'flat'), hands: fc.constant('straps'), anchor_height_cm: between(180, 300), feet_from_anchor_cm: between(-100, 60), lean_deg: between(15, 90) }),
)

test('whatever is found does give the load that was asked, and what is not found says how near it comes', () => {
  fc.assert(
    fc.property(anySetUp, fc.constantFrom(...named('supported-body').solves), between(5, 60), (inputs, key, load) => {
      const answer = fitted('supported-body', inputs, key, load)
      if (isMissing(answer)) return assert.match(answer.missing, new RegExp(`^no ${key} gives (a load with the rest of this set-up|that load; the nearest is \\d+\\.\\d at \\d+\\.\\d (cm|deg|%|% of body mass))$`))
      near(answer.load, load, 1e-3)
      near(at('supported-body', { ...inputs, [key]: answer.value }), answer.load, 0)
    }),
  )
})

test('of two set-ups that give the load, the one nearer to what stood there is found', () => {
  const strapped = { facing: 'up', feet: 'heels', hands: 'straps', anchor_height_cm: 240, feet_from_anchor_cm: 60 } as const // past the anchor the load falls and rises again with the lean
  const [low, high] = [30, 75].map((lean_deg) => at('supported-body', { ...strapped, lean_deg }))
  assert.ok(low !== undefined && high !== undefined && !isMissing(low) && !isMissing(high))
  const load = Math.min(low, high)
  const [before, after] = [31, 74].map((lean_deg) => found('supported-body', { ...strapped, lean_deg }, 'lean_deg', load))
  assert.ok(before && after && before.value < 45 && after.value > 45)
  near(before.load, load, 1e-3)
  near(after.load, load, 1e-3)
})

test('a measurement that was not given is sought from the low end of its span', () => {
  const strapped = { facing: 'up', feet: 'heels', hands: 'straps', anchor_height_cm: 240, feet_from_anchor_cm: 60 } as const
  const load = at('supported-body', { ...strapped, lean_deg: 31 })
  assert.ok(!isMissing(load))
  const lowest = found('supported-body', strapped, 'lean_deg', load)
  near(lowest.load, load, 1e-3)
  assert.ok(lowest.value < 2) // hardly leaning, the strap pulls her and him back as much as at 31 degrees
  near(found('supported-body', { ...strapped, lean_deg: 30 }, 'lean_deg', load).value, 31, 1e-4)
})

test('both ends of the span can be the answer', () => {
  near(found('landing', {}, 'drop_height_cm', 0).value, 0, 1e-4)
  near(found('landing', {}, 'drop_height_cm', 150).value, 150, 1e-4)
  near(found('supported-body', floor, 'hand_height_cm', Number(at('supported-body', floor))).value, 0, 1e-4)
})

test('an end of the span is the answer even where the last digits of the load lie past it', () => {
  const side = { hold: 'side' }
  const most = at('lever-hold', { ...side, added_mass_percent: 100 })
  assert.ok(!isMissing(most))
  for (const load of [most + 1e-12, most - 1e-12, most]) near(found('lever-hold', side, 'added_mass_percent', load).value, 100, 1e-4)
  assert.deepEqual(fitted('lever-hold', side, 'added_mass_percent', most + 0.002), { missing: `no added_mass_percent gives that load; the nearest is ${most.toFixed(1)} at 100.0 % of body mass` })
})

test('where the load jumps, what lies between is given by nothing, and nothing is said to give it', () => {
  const onOneArm = { exercise: 'hang' } // by hand: 95.83 % just before one arm takes all, 97.915 % when it does
  assert.deepEqual(fitted('assisted', onOneArm, 'working_side_percent', 97), { missing: 'no working_side_percent gives that load; the nearest is 97.9 at 100.0 %' })
  near(found('assisted', onOneArm, 'working_side_percent', 95.7).value, 99.8643, 1e-3) // by hand: 95.7 / 0.9583
})

// Refusals: what `rungbook fit` prints after "no such geometry:".

const straps = { facing: 'up', feet: 'heels', hands: 'straps', anchor_height_cm: 240, feet_from_anchor_cm: -60 } as const
for (const { model, inputs, key, load, missing } of [
  { model: 'supported-body', inputs: floor, key: 'elbows', load: 30, missing: 'supported-body has no measurement "elbows" to solve for' },
  { model: 'supported-body', inputs: floor, key: 'feet', load: 30, missing: 'supported-body has no measurement "feet" to solve for' },
  { model: 'supported-body', inputs: floor, key: 'toString', load: 30, missing: 'supported-body has no measurement "toString" to solve for' },
  { model: 'assisted', inputs: { exercise: 'hang' }, key: 'band_points', load: 30, missing: 'assisted has no measurement "band_points" to solve for' },
  { model: 'published', inputs: {}, key: 'condition', load: 30, missing: 'published has no measurement "condition" to solve for' },
  { model: 'skill', inputs: {}, key: 'lean_deg', load: 30, missing: 'skill has no measurement "lean_deg" to solve for' },
  { model: 'supported-body', inputs: floor, key: 'lean_deg', load: 30, missing: 'no lean_deg gives a load with the rest of this set-up' }, // the height is given already
  { model: 'supported-body', inputs: straps, key: 'hand_height_cm', load: 30, missing: 'no hand_height_cm gives a load with the rest of this set-up' },
  { model: 'leg-press-of-body', inputs: { stance: 'one leg', front_leg_percent: 60 }, key: 'added_mass_percent', load: 90, missing: 'no added_mass_percent gives a load with the rest of this set-up' },
  { model: 'supported-body', inputs: floor, key: 'hand_height_cm', load: 60, missing: 'no hand_height_cm gives that load; the nearest is 36.2 at 0.0 cm' }, // half of 72.386
  { model: 'assisted', inputs: { exercise: 'hang' }, key: 'counterweight_percent', load: 60, missing: 'no counterweight_percent gives that load; the nearest is 47.9 at 0.0 % of body mass' }, // half of 95.83
  { model: 'landing', inputs: {}, key: 'drop_height_cm', load: 151, missing: 'no drop_height_cm gives that load; the nearest is 150.0 at 150.0 cm' },
  { model: 'landing', inputs: {}, key: 'drop_height_cm', load: -1, missing: 'no drop_height_cm gives that load; the nearest is 0.0 at 0.0 cm' },
  { model: 'one-rep-max', inputs: { one_rep_max_kg: 100 }, key: 'percent_1rm', load: 10, missing: 'no percent_1rm gives that load; the nearest is 20.0 at 20.0 % of 1RM' },
] as const satisfies readonly { model: ModelName; inputs: Inputs; key: string; load: number; missing: string }[]) {
  test(`says: ${missing} — ${model}, ${JSON.stringify(inputs)}`, () => assert.deepEqual(fitted(model, inputs, key, load), { missing }))
}

test('a load given only between the last place tried that is possible and where it stops being possible is found', () => {
  const near_edge = { ...floor, hand_height_cm: 121 } // heights 5.2 cm apart are tried: at 119.8 there is a load for every body, at 125.0 none
  const load = at('supported-body', near_edge)
  assert.ok(!isMissing(load) && !isMissing(ask(named('supported-body'), near_edge, ATHLETE)))
  const found = fitted('supported-body', floor, 'hand_height_cm', load)
  assert.ok(!isMissing(found), JSON.stringify(found))
  near(found.value, 121, 1e-3)
})

test('a measurement that some body of the interval cannot take is never offered', () => {
  const leaning = { ...floor, hand_height_cm: 125 }
  const load = at('supported-body', leaning)
  assert.ok(!isMissing(load) && isMissing(ask(named('supported-body'), leaning, ATHLETE))) // the middle answers, one body does not
  const found = fitted('supported-body', floor, 'hand_height_cm', load)
  assert.ok(isMissing(found))
  assert.match(found.missing, /^no hand_height_cm gives that load; the nearest is \d+\.\d at 12[0-4]\.\d cm$/)
})

test('the key a rung is fitted by is the first of the model’s own order that the coach gave', () => {
  const body = named('supported-body')
  assert.equal(fittedKey(body, floor), 'hand_height_cm')
  assert.equal(fittedKey(body, { ...bar, added_mass_percent: 10, foot_height_cm: 20 }), 'lean_deg')
  assert.equal(fittedKey(body, { ...straps, strap_cm: 90, foot_height_cm: 20 }), 'strap_cm')
  assert.equal(fittedKey(body, { facing: 'down' }), undefined)
  assert.equal(fittedKey(body, { lean_deg: '40' }), undefined) // words are no measurement
  assert.equal(fittedKey(named('published'), { percent: 60, working_side_percent: 50 }), undefined)
})

for (const model of models) {
  test(`${model.name} is solved only for numbers it asks for`, () => {
    for (const key of model.solves) {
      const spec = (model as unknown as LoadModel).keys[key]
      assert.ok(spec && isNumberKey(spec))
    }
  })
}
