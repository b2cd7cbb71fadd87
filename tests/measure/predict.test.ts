import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { predictedReps, reaches, repsText, type Reps } from '../../src/measure/predict.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { exactly, interval, type Spread } from '../../src/quantity/spread.ts'

const ALL = ['Epley', 'Brzycki', "O'Conner", 'Lombardi', 'Mayhew', 'Wathan']
const CURVED = ['Lombardi', 'Mayhew', 'Wathan']

const predicted = (times: Spread, reps: number) => {
  const outcome = predictedReps(interval(times), reps)
  return isMissing(outcome) ? assert.fail(outcome.missing) : outcome
}

/** Each row was worked without this code: for every formula p(r), times the load, and the formula turned round. */
const worked = [
  { times: 1, reps: 10, low: 10, high: 10, formulas: ALL, from: 'definition: the same load allows the same repetitions' },
  { times: 1, reps: 12, low: 12, high: 12, formulas: CURVED, from: 'definition; exactly twelve, not eleven' },
  {
    times: 1.1,
    reps: 10,
    low: 3,
    high: 7,
    formulas: ALL,
    from: "by hand: Epley p = 1/(1 + 10/30) = 0.75, × 1.1 = 0.825, r = 30 (1/0.825 − 1) = 6.36; Brzycki 37 − 1.1 × 27 = 7.30; O'Conner p = 0.8, 0.88, 40 (1/0.88 − 1) = 5.45; Lombardi 10 / 1.1¹⁰ = 10 / 2.59374 = 3.86; Mayhew p = 0.763742, 0.840116, 5.01; Wathan p = 0.742133, 0.816347, 6.58",
  },
  {
    times: 1.1,
    reps: 7,
    low: 2,
    high: 4,
    formulas: ALL,
    from: "by hand: Brzycki 37 − 1.1 × 30 = 4 exactly; Epley 30 ((37/30)/1.1 − 1) = 3.64; O'Conner 40 (1.175/1.1 − 1) = 2.73; Lombardi 7 / 2.59374 = 2.70; Mayhew p = 0.807109, 0.887820, 2.47; Wathan p = 0.806257, 0.886882, 3.99",
  },
  {
    times: 1.1,
    reps: 14,
    low: 5,
    high: 9,
    formulas: CURVED,
    from: 'by hand: Lombardi 14 / 2.59374 = 5.40; Mayhew p = 0.522 + 0.419 e^−0.77 = 0.716002, 0.787603, 8.29; Wathan p = 0.488 + 0.538 e^−1.05 = 0.676267, 0.743893, 9.91. Epley would say 30 ((44/30)/1.1 − 1) = 10 exactly, Brzycki 37 − 1.1 × 23 = 11.7: linear equations end at 10',
  },
  {
    times: 1.2,
    reps: 12,
    low: 1,
    high: 5,
    formulas: CURVED,
    from: 'by hand: Lombardi 12 / 1.2¹⁰ = 12 / 6.19174 = 1.94; Mayhew p = 0.738561, 0.886273, 2.54; Wathan p = 0.706734, 0.848081, 5.35',
  },
  {
    times: 1.1,
    reps: 5,
    low: 0,
    high: 2,
    formulas: ALL,
    from: "by hand: O'Conner p = 1/1.125, × 1.1 = 0.97778, more than p(1) = 1/1.025 = 0.97561, so none; Mayhew p = 0.840261, 0.924287, more than p(1) = 0.918580, so none; Lombardi 5 / 2.59374 = 1.93; Epley 30 ((35/30)/1.1 − 1) = 1.82; Brzycki 37 − 1.1 × 32 = 1.80; Wathan p = 0.857762, 0.943538, 2.22",
  },
  { times: 2, reps: 5, low: 0, high: 0, formulas: ALL, from: 'by hand: every p(5) lies above 0.84, so twice the load is more than can be lifted once' },
  {
    times: 0.9,
    reps: 10,
    low: 14,
    high: 'beyond',
    formulas: CURVED,
    from: 'by hand: Wathan p = 0.742133, 0.667920, 14.60; Mayhew p = 0.763742, 0.687368, 16.90; Lombardi 10 / 0.9¹⁰ = 10 / 0.348678 = 28.7, past 20. Epley 14.4 and Brzycki 12.7 lie past the 10 at which they end',
  },
  { times: 0.5, reps: 20, low: 'beyond', high: 'beyond', formulas: CURVED, from: 'definition: half the load at which 20 are possible allows more than 20 by every formula' },
] as const

for (const { times, reps, low, high, formulas, from } of worked) {
  test(`${times} times the load of ${reps} repetitions allows ${repsText({ low, high })} — ${from}`, () => assert.deepEqual(predicted(exactly(times), reps), { low, high, formulas }))
}

test('the fewest come from the heaviest body tried, the most from the lightest', () => {
  // by hand: at 1.05 Brzycki gives 37 − 1.05 × 27 = 8.65, the most; at 1.1 Lombardi gives 3.86, the fewest
  assert.deepEqual(predicted({ mid: 1.075, points: [1.1, 1.05], over: 'two bodies' }, 10), { low: 3, high: 8, formulas: ALL })
})

for (const reps of [0, 0.5, 21, 25, 205]) {
  test(`no formula holds at ${reps} repetitions, and that is said`, () => {
    assert.deepEqual(predictedReps(interval(exactly(1.1)), reps), { missing: `no repetition formula holds at ${reps} repetitions; they hold from 1 to 20` })
  })
}

const asNumber = (reps: Reps): number => (reps === 'beyond' ? Infinity : reps)

test('more load never allows more repetitions, and a repetition more here never means fewer there', () => {
  const times = fc.double({ min: 0.5, max: 2, noNaN: true })
  fc.assert(
    fc.property(times, fc.double({ min: 0, max: 0.5, noNaN: true }), fc.integer({ min: 1, max: 19 }), (load, more, reps) => {
      const [here, heavier, longer] = [predicted(exactly(load), reps), predicted(exactly(load + more), reps), predicted(exactly(load), reps + 1)]
      for (const end of ['low', 'high'] as const) {
        assert.ok(asNumber(heavier[end]) <= asNumber(here[end]), `heavier, ${end}`)
        assert.ok(asNumber(longer[end]) >= asNumber(here[end]) - (reps === 10 ? 2 : 0), `longer, ${end}`) // past 10 the linear equations fall silent
      }
      assert.ok(asNumber(here.low) <= asNumber(here.high))
    }),
    { numRuns: 500 },
  )
})

test('beyond reaches whatever is wanted, and a number itself', () => {
  assert.deepEqual([reaches('beyond', 20), reaches(5, 5), reaches(4, 5), reaches(0, 1)], [true, true, false, false])
})

test('repetitions are said with both ends, or with one where both are the same', () => {
  assert.deepEqual(
    [repsText({ low: 5, high: 8 }), repsText({ low: 6, high: 6 }), repsText({ low: 14, high: 'beyond' }), repsText({ low: 'beyond', high: 'beyond' })],
    ['5 to 8', '6', '14 to more than 20', 'more than 20'],
  )
})
