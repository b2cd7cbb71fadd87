import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { legPressOfBody } from '../../src/load/leg-press-of-body.ts'
import { ask, type Inputs, type Load } from '../../src/load/model.ts'
import { interval } from '../../src/quantity/spread.ts'
import { isMissing, type Outcome } from '../../src/quantity/outcome.ts'
import { near } from '../quantity/near.ts'
import { ATHLETE } from './athlete.ts'

const asked = (inputs: Inputs): Outcome<Load> => ask(legPressOfBody, inputs, ATHLETE)
const settled = (inputs: Inputs): Load => {
  const outcome = asked(inputs)
  return isMissing(outcome) ? assert.fail(outcome.missing) : outcome
}
const knee = (inputs: Inputs): number => settled(inputs).load.mid
const hip = (inputs: Inputs): number => {
  const value = settled(inputs).figures.find(({ name }) => name === 'load at the hip of the working leg')?.value ?? assert.fail()
  return isMissing(value) ? assert.fail(value.missing) : value.mid
}

/** Below the knee: women 4.81 + 1.29 = 6.10 %, men 4.33 + 1.37 = 5.70 %, mean 5.90 %. Below the hip: women 20.88 %, men 19.86 %, mean 20.37 %. */
const worked = [
  { inputs: { stance: 'two legs' }, atKnee: 44.1, atHip: 29.63, from: 'by hand: half of 100 − 2 × 5.90, half of 100 − 2 × 20.37' },
  { inputs: { stance: 'two legs', added_mass_percent: 50 }, atKnee: 69.1, atHip: 54.63, from: 'by hand: half of 150 − 2 × 5.90, half of 150 − 2 × 20.37' },
  { inputs: { stance: 'split', front_leg_percent: 80 }, atKnee: 70.56, atHip: 47.408, from: 'by hand: 0.8 × (100 − 11.80), 0.8 × (100 − 40.74)' },
  { inputs: { stance: 'step-up', front_leg_percent: 90 }, atKnee: 79.38, atHip: 53.334, from: 'by hand: 0.9 × (100 − 11.80), 0.9 × (100 − 40.74)' },
  { inputs: { stance: 'one leg' }, atKnee: 94.1, atHip: 79.63, from: 'by hand: 100 − 5.90: the free leg is carried; 100 − 20.37' },
  { inputs: { stance: 'one leg', added_mass_percent: 20 }, atKnee: 114.1, atHip: 99.63, from: 'by hand: 120 − 5.90, 120 − 20.37' },
]

for (const { inputs, atKnee, atHip, from } of worked) {
  test(`${JSON.stringify(inputs)} loads the knee with ${atKnee} % and the hip with ${atHip} % — ${from}`, () => {
    near(knee(inputs), atKnee, 1e-9) // arithmetic
    near(hip(inputs), atHip, 1e-9)
  })
}

test('the interval spans the three tables of segments — from: below the knee Dempster 0.0465 + 0.0145 and women 4.81 + 1.29 are 6.10 %, men 5.70 %', () => {
  const { low, high } = interval(settled({ stance: 'one leg' }).load)
  near(low, 93.9, 1e-9)
  near(high, 94.3, 1e-9)
})

const added = fc.double({ min: 0, max: 200, noNaN: true })
const share = fc.double({ min: 50, max: 100, noNaN: true })

test('a split stance with half on the front leg is two legs', () => {
  fc.assert(fc.property(added, (added_mass_percent) => assert.deepEqual(settled({ stance: 'split', front_leg_percent: 50, added_mass_percent }).load, settled({ stance: 'two legs', added_mass_percent }).load)))
})

test('one leg carries more than a split stance with everything on the front leg, by the free leg below the knee', () => {
  near(knee({ stance: 'one leg' }) - knee({ stance: 'split', front_leg_percent: 100 }), 5.9, 1e-9) // by hand: (6.10 + 5.70)/2
})

test('an added mass adds its share on one of two legs and the whole of itself on one leg', () => {
  fc.assert(
    fc.property(added, (added_mass_percent) => {
      near(knee({ stance: 'two legs', added_mass_percent }) - knee({ stance: 'two legs' }), added_mass_percent / 2, 1e-9)
      near(knee({ stance: 'one leg', added_mass_percent }) - knee({ stance: 'one leg' }), added_mass_percent, 1e-9)
    }),
  )
})

test('no added mass is the same as none mentioned', () => assert.deepEqual(settled({ stance: 'one leg', added_mass_percent: 0 }), settled({ stance: 'one leg' })))

test('the front leg is loaded in proportion to its share', () => {
  fc.assert(fc.property(share, (front_leg_percent) => near(knee({ stance: 'split', front_leg_percent }) / front_leg_percent, 0.882, 1e-12))) // by hand: 1 − 2 × 0.0590
})

test('the knee always carries more than the hip above it', () => {
  fc.assert(
    fc.property(fc.constantFrom('two legs', 'split', 'one leg'), added, (stance, added_mass_percent) => {
      assert.ok(knee({ stance, added_mass_percent }) > hip({ stance, added_mass_percent }))
    }),
  )
})

for (const { inputs, missing } of [
  { inputs: { stance: 'one leg', front_leg_percent: 80 }, missing: 'front_leg_percent is given, but the stance is one leg, not split' },
  { inputs: { stance: 'two legs', front_leg_percent: 60 }, missing: 'front_leg_percent is given, but the stance is two legs, not split' },
  { inputs: {}, missing: 'stance is not given; leg-press-of-body needs it' },
  { inputs: { stance: 'kneeling' }, missing: 'stance is kneeling; leg-press-of-body knows two legs, split, step-up, one leg' },
  { inputs: { stance: 'split', front_leg_percent: 49 }, missing: 'front_leg_percent is 49; leg-press-of-body holds from 50 to 100 %' },
  { inputs: { stance: 'one leg', added_mass_percent: 201 }, missing: 'added_mass_percent is 201; leg-press-of-body holds from 0 to 200 % of body mass' },
]) {
  test(`says: ${missing}`, () => assert.deepEqual(asked(inputs), { missing }))
}
