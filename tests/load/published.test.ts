import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { ask, type Inputs, type Load } from '../../src/load/model.ts'
import { published } from '../../src/load/published.ts'
import { interval } from '../../src/quantity/spread.ts'
import { isMissing, type Outcome } from '../../src/quantity/outcome.ts'
import { near } from '../quantity/near.ts'
import { ATHLETE } from './athlete.ts'

const words = { source: 'mier2014', condition: 'press-up on toes, held still, arms straight' }
const asked = (inputs: Inputs): Outcome<Load> => ask(published, inputs, ATHLETE)
const settled = (inputs: Inputs): Load => {
  const outcome = asked({ ...words, ...inputs })
  return isMissing(outcome) ? assert.fail(outcome.missing) : outcome
}

/** Each row was worked without this code. */
const worked = [
  { inputs: { percent: 67, sd_percent: 3.8 }, low: 29.7, mid: 33.5, high: 37.3, from: 'by hand: half of 67.0 − 7.6, 67.0 and 67.0 + 7.6' },
  { inputs: { percent: 67, sd_percent: 3.8, working_side_percent: 75 }, low: 44.55, mid: 50.25, high: 55.95, from: 'by hand: 0.75 × 59.4, 67.0, 74.6' },
  { inputs: { percent: 64, sd_percent: 0 }, low: 32, mid: 32, high: 32, from: 'by hand: no spread leaves one figure' },
]

for (const { inputs, low, mid, high, from } of worked) {
  test(`${JSON.stringify(inputs)} is ${low} to ${high} % of body weight on a hand — ${from}`, () => {
    const ends = interval(settled(inputs).load)
    near(ends.low, low, 1e-9) // arithmetic
    near(ends.mid, mid, 1e-9)
    near(ends.high, high, 1e-9)
  })
}

/** Means and spreads of which two standard deviations leave a load; what does not is refused below. */
const measured = fc
  .tuple(fc.double({ min: 1, max: 300, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
  .map(([mean, part]) => ({ percent: mean, sd_percent: part * Math.min(50, mean / 2) }))
  .filter(({ percent, sd_percent }) => percent - 2 * sd_percent >= 0)

test('with everything on one side, the hand carries what both did', () => {
  fc.assert(
    fc.property(measured, (of) => {
      const { load, figures } = settled({ ...of, working_side_percent: 100 })
      assert.deepEqual(figures[0]?.value, load)
    }),
  )
})

test('one side with everything carries twice what it carries with half', () => {
  fc.assert(
    fc.property(measured, (of) => {
      const [all, half] = [100, 50].map((working_side_percent) => settled({ ...of, working_side_percent }).load)
      near(all?.mid ?? Number.NaN, 2 * (half?.mid ?? Number.NaN), 1e-9)
    }),
  )
})

test('the mean stands in the middle of its interval, four standard deviations wide', () => {
  fc.assert(
    fc.property(measured, (of) => {
      const { low, mid, high } = interval(settled(of).load)
      near((low + high) / 2, mid, 1e-9)
      near(high - low, 2 * of.sd_percent, 1e-9) // on one hand: half of 4 SD
    }),
  )
})

const NEGATIVE = 'two standard deviations below the mean is less than nothing, so the spread is not as declared'

test(`says: ${NEGATIVE} — by hand: 10 − 2 × 8 is no load, 16 − 2 × 8 is nothing and still a load`, () => {
  assert.deepEqual(asked({ ...words, percent: 10, sd_percent: 8 }), { missing: NEGATIVE })
  near(interval(settled({ percent: 16, sd_percent: 8 }).load).low, 0, 0)
})

test('every mean of which two standard deviations leave less than nothing is refused', () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 99, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (mean, part) => {
      const sd_percent = mean / 2 + part * (50 - mean / 2)
      fc.pre(mean - 2 * sd_percent < 0)
      assert.deepEqual(asked({ ...words, percent: mean, sd_percent }), { missing: NEGATIVE })
    }),
  )
})

test('the working names the source and what was measured', () => {
  assert.deepEqual(settled({ percent: 67, sd_percent: 3.8 }).working, [
    {
      says: 'Measured: press-up on toes, held still, arms straight (mier2014)',
      formula: 'mean ± 2 SD',
      numbers: '67 % of body weight ± 2 × 4 % of body weight: 59 to 75 % of body weight',
    },
  ])
})

for (const { inputs, missing } of [
  { inputs: { sd_percent: 3.8, ...words }, missing: 'percent is not given; published needs it' },
  { inputs: { percent: 67, ...words }, missing: 'sd_percent is not given; published needs it' },
  { inputs: { percent: 67, sd_percent: 3.8, condition: words.condition }, missing: 'source is not given; published needs it' },
  { inputs: { percent: 67, sd_percent: 3.8, source: words.source }, missing: 'condition is not given; published needs it' },
  { inputs: { percent: 301, sd_percent: 3.8, ...words }, missing: 'percent is 301; published holds from 1 to 300 % of body weight' },
  { inputs: { percent: 67, sd_percent: -1, ...words }, missing: 'sd_percent is -1; published holds from 0 to 50 % of body weight' },
  { inputs: { percent: 67, sd_percent: 3.8, working_side_percent: 40, ...words }, missing: 'working_side_percent is 40; published holds from 50 to 100 %' },
]) {
  test(`says: ${missing}`, () => assert.deepEqual(asked(inputs), { missing }))
}
