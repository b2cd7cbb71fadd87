import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { AVERAGE, type MeasuredLadder } from '../../src/measure/measure.ts'
import { missingRung } from '../../src/measure/missing-rung.ts'
import { isMissing, missing, type Outcome } from '../../src/quantity/outcome.ts'
import { near } from '../quantity/near.ts'
import { ladderOf, weights } from './ladders.ts'

/** What is missing between the first two rungs of a ladder. */
function between({ rungs }: MeasuredLadder): ReturnType<typeof missingRung> {
  const [from, to] = rungs
  assert.ok(from && to)
  return missingRung(from, to, AVERAGE)
}

/** Two rungs of what stands under `load`. */
const pair = (...loads: readonly [string, string]): MeasuredLadder => ladderOf({ rungs: loads.map((load, index) => [`r-${index}`, `load: { ${load} }`]) })

const found = <Value>(outcome: Outcome<Value>): Value => {
  assert.ok(!isMissing(outcome as Outcome), JSON.stringify(outcome))
  return outcome as Value
}

const worked = [
  { low: 40, high: 48.4, expect: 44, from: '√(40 × 48.4) = √1936 = 44' },
  { low: 20, high: 45, expect: 30, from: '√(20 × 45) = √900 = 30' },
  { low: 8, high: 32, expect: 16, from: '√(8 × 32) = √256 = 16' },
] as const

for (const { low, high, expect, from } of worked) {
  test(`between ${low} and ${high} kg lies ${expect} kg — ${from}`, () => {
    const { key, value, load } = found(between(ladderOf({ rungs: weights(low, high) })))
    assert.equal(key, 'load_kg')
    near(value, expect, 2e-3) // a load is found to a thousandth
    near(load, expect, 1e-3)
  })
}

test('a coach is told what to set, with its unit', () => {
  const press = (height: number): string => `model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: ${height}`
  const { key, value, says } = found(between(pair(press(95), press(45))))
  assert.equal(key, 'hand_height_cm')
  assert.ok(value > 45 && value < 95)
  assert.ok(says.includes(`${Math.round(value)} cm`), says)
})

/** Where nothing lies between, and why. */
const refusals = [
  { says: 'one rung has no load', loads: ['model: one-rep-max, load_kg: 40', 'model: skill'], why: 'this rung is a skill: what counts is how it is done, not how much it loads' },
  { says: 'the rung below has no load', loads: ['model: skill', 'model: one-rep-max, load_kg: 40'], why: 'this rung is a skill: what counts is how it is done, not how much it loads' },
  { says: 'the two are computed differently', loads: ['model: one-rep-max, load_kg: 40', 'model: leg-press-of-body, stance: two legs'], why: 'the two rungs are computed by different models' },
  { says: 'the two are the same', loads: ['model: one-rep-max, load_kg: 40', 'model: one-rep-max, load_kg: 40'], why: 'the two rungs differ in no measurement that could lie between' },
  { says: 'the two differ in a choice', loads: ['model: lever-hold, hold: front, rest_on: hands, feet: knees', 'model: lever-hold, hold: front, rest_on: hands, feet: toes'], why: 'the two rungs differ in no measurement that could lie between' },
  { says: 'the two differ in two measurements', loads: ['model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: 60', 'model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: 0, foot_height_cm: 30'], why: 'the two rungs differ in hand_height_cm and foot_height_cm; change one at a time' },
] as const

for (const { says, loads, why } of refusals) test(`nothing is missing where ${says}: ${why}`, () => assert.deepEqual(between(pair(loads[0], loads[1])), missing(why)))

test('a default that one rung writes out is no difference', () => {
  const press = 'model: supported-body, facing: down, feet: toes, hands: surface'
  assert.equal(found(between(pair(`${press}, hand_height_cm: 60`, `${press}, hand_height_cm: 0, foot_height_cm: 0`))).key, 'hand_height_cm')
})

/** How many times the load of the rung below each rung of a ladder is. */
const ratios = ({ rungs }: MeasuredLadder): number[] => rungs.flatMap(({ steps }) => steps.map(({ times }) => (isMissing(times) ? Number.NaN : times.mid)))

/** With the rung that is missing put between, both steps are smaller than the one that was, and as steep as one another. */
function splits(load: (value: number) => string, low: number, high: number): void {
  const step = pair(load(low), load(high))
  const { value } = found(between(step))
  const [old = Number.NaN] = ratios(step)
  const [first = Number.NaN, second = Number.NaN] = ratios(ladderOf({ rungs: [low, value, high].map((each, index) => [`r-${index}`, `load: { ${load(each)} }`]) }))
  assert.ok(old > 1 && first > 1 && first < old && second > 1 && second < old, `${old}: ${first}, ${second}`)
  near(first / second, 1, 5e-3)
}

test('a weight between splits the step into two smaller ones, equally steep', () => {
  fc.assert(fc.property(fc.integer({ min: 5, max: 100 }), fc.integer({ min: 4, max: 100 }), (low, percent) => splits((kg) => `model: one-rep-max, load_kg: ${kg}`, low, low * (1 + percent / 100))), { numRuns: 60, seed: 7 })
})

test('a height of the hands between splits the step into two smaller ones, equally steep', () => {
  fc.assert(
    fc.property(fc.integer({ min: 60, max: 95 }), fc.integer({ min: 0, max: 45 }), (above, under) => splits((height) => `model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: ${height}`, above, under)),
    { numRuns: 12, seed: 7 },
  )
})

test('a share of the front leg between splits the step into two smaller ones, equally steep', () => {
  fc.assert(fc.property(fc.integer({ min: 50, max: 65 }), fc.integer({ min: 75, max: 92 }), (low, high) => splits((percent) => `model: leg-press-of-body, stance: split, front_leg_percent: ${percent}`, low, high)), { numRuns: 30, seed: 7 })
})
