import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { ask, type Inputs, type Load } from '../../src/load/model.ts'
import { oneRepMax } from '../../src/load/one-rep-max.ts'
import { isMissing, type Outcome } from '../../src/quantity/outcome.ts'
import { interval, type Spread } from '../../src/quantity/spread.ts'
import { near } from '../quantity/near.ts'
import { ATHLETE } from './athlete.ts'

const asked = (inputs: Inputs): Outcome<Load> => ask(oneRepMax, inputs, ATHLETE)
const settled = (inputs: Inputs): Load => {
  const outcome = asked(inputs)
  return isMissing(outcome) ? assert.fail(outcome.missing) : outcome
}
const figure = (inputs: Inputs, name: string): Outcome<Spread> => settled(inputs).figures.find((each) => each.name === name)?.value ?? assert.fail(name)
const spread = (inputs: Inputs, name: string): Spread => {
  const value = figure(inputs, name)
  return isMissing(value) ? assert.fail(value.missing) : value
}

/** Each row was worked without this code. */
const worked = [
  { inputs: { percent_1rm: 75, one_rep_max_kg: 80 }, load: 60, unit: 'kg', from: 'by hand: 0.75 × 80' },
  { inputs: { percent_1rm: 75 }, load: 75, unit: '% of 1RM', from: 'as given, for want of a maximum' },
  { inputs: { load_kg: 42.5 }, load: 42.5, unit: 'kg', from: 'as given' },
  { inputs: { load_kg: 60, one_rep_max_kg: 80 }, load: 60, unit: 'kg', from: 'as given' },
]

for (const { inputs, load, unit, from } of worked) {
  test(`${JSON.stringify(inputs)} is ${load} ${unit} — ${from}`, () => {
    const { quantity, load: spreadOfLoad } = settled(inputs)
    assert.equal(quantity.unit, unit)
    near(spreadOfLoad.mid, load, 1e-12) // arithmetic
  })
}

/** Repetitions at a share, over the formulas that answer there. Each row was worked without this code. */
const expected = [
  { share: 75, low: 9.5935, mid: 10, high: 17.7577, answers: 5, from: 'by hand: Wathan −ln(26.2/53.8)/0.075 = 9.5935, Epley and Brzycki 10, Mayhew 11.0641, Lombardi 0.75^−10 = 17.7577; O’Conner 13.3 is beyond ten' },
  { share: 80, low: 7.2647, mid: 8.2, high: 10, answers: 6, from: 'by hand: Wathan 7.2647, Mayhew 7.4591, Epley 7.5, Brzycki 8.2, Lombardi 9.3132, O’Conner 10; the upper of the two in the middle' },
  { share: 100, low: 1, mid: 1, high: 1, answers: 2, from: 'only Brzycki and Lombardi give the whole maximum, once' },
]

for (const { share, low, mid, high, answers, from } of expected) {
  test(`at ${share} % of the maximum ${low} to ${high} repetitions are to be expected — ${from}`, () => {
    const repetitions = spread({ percent_1rm: share }, 'repetitions to expect')
    assert.equal(repetitions.points.length, answers)
    near(interval(repetitions).low, low, 1e-4) // four decimals are given
    near(repetitions.mid, mid, 1e-4)
    near(interval(repetitions).high, high, 1e-4)
  })
}

test('where no formula holds, the figure says so and the load still stands', () => {
  assert.deepEqual(figure({ percent_1rm: 30 }, 'repetitions to expect'), { missing: 'no repetition formula holds at this share of the maximum' })
  near(settled({ percent_1rm: 30 }).load.mid, 30, 0)
})

test('a mass without a maximum says nothing of repetitions', () => assert.deepEqual(settled({ load_kg: 20 }).figures, []))

const share = fc.double({ min: 20, max: 100, noNaN: true })
const maximum = fc.double({ min: 1, max: 600, noNaN: true })

test('a share and the mass it comes to are the same lift', () => {
  fc.assert(
    fc.property(share, maximum, (percent_1rm, one_rep_max_kg) => {
      const load_kg = settled({ percent_1rm, one_rep_max_kg }).load.mid
      fc.pre(load_kg >= 0.5 && load_kg <= Math.min(500, one_rep_max_kg))
      near(spread({ load_kg, one_rep_max_kg }, 'share of the maximum').mid, percent_1rm, 1e-9)
    }),
  )
})

test('a lighter share never lets fewer repetitions be expected, formula by formula', () => {
  fc.assert(
    fc.property(fc.double({ min: 80, max: 91, noNaN: true }), fc.double({ min: 80, max: 91, noNaN: true }), (a, b) => {
      const at = (percent_1rm: number) => spread({ percent_1rm }, 'repetitions to expect').points
      const [heavy, light] = [at(Math.max(a, b)), at(Math.min(a, b))] // from 80 to 91 % every formula answers
      assert.deepEqual([heavy.length, light.length], [6, 6])
      for (const [index, reps] of heavy.entries()) assert.ok(reps <= (light[index] ?? 0) + 1e-6)
    }),
  )
})

for (const { inputs, missing } of [
  { inputs: {}, missing: 'neither load_kg nor percent_1rm is given' },
  { inputs: { one_rep_max_kg: 80 }, missing: 'neither load_kg nor percent_1rm is given' },
  { inputs: { load_kg: 60, percent_1rm: 75 }, missing: 'load_kg and percent_1rm are both given; one follows from the other' },
  { inputs: { load_kg: 81, one_rep_max_kg: 80 }, missing: 'the mass is more than the most that can be lifted once' },
  { inputs: { percent_1rm: 101 }, missing: 'percent_1rm is 101; one-rep-max holds from 20 to 100 % of 1RM' },
  { inputs: { load_kg: 0 }, missing: 'load_kg is 0; one-rep-max holds from 0.5 to 500 kg' },
  { inputs: { load_kg: 60, one_rep_max_kg: 601 }, missing: 'one_rep_max_kg is 601; one-rep-max holds from 1 to 600 kg' },
]) {
  test(`says: ${missing} — ${JSON.stringify(inputs)}`, () => assert.deepEqual(asked(inputs), { missing }))
}
