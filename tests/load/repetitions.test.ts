import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { holdingAt, MOST_REPS, possibleReps, repetitionFormulas, type RepetitionFormula } from '../../src/load/repetitions.ts'
import { sources } from '../../src/load/sources.ts'
import { near } from '../quantity/near.ts'

const formula = (name: string): RepetitionFormula => repetitionFormulas.find((each) => each.name === name) ?? assert.fail(name)
const reps = (by: RepetitionFormula, fraction: number): number => {
  const possible = possibleReps(by, fraction)
  return typeof possible === 'number' ? possible : assert.fail(possible)
}

/** Load over 1RM at which so many repetitions are possible. Each row was worked without this code. */
const worked = [
  { name: 'Epley', at: 5, expect: 0.857143, from: 'by hand: 1 / (1 + 5/30) = 30/35' },
  { name: 'Epley', at: 10, expect: 0.75, from: 'by hand: 1 / (1 + 10/30) = 3/4' },
  { name: 'Brzycki', at: 5, expect: 0.888889, from: 'by hand: (37 − 5)/36 = 32/36' },
  { name: 'Brzycki', at: 10, expect: 0.75, from: 'by hand: 27/36' },
  { name: "O'Conner", at: 5, expect: 0.888889, from: 'by hand: 1 / 1.125' },
  { name: "O'Conner", at: 10, expect: 0.8, from: 'by hand: 1 / 1.25' },
  { name: 'Lombardi', at: 5, expect: 0.85134, from: 'by hand: log₁₀ 5 = 0.698970; 10^−0.069897' },
  { name: 'Lombardi', at: 20, expect: 0.741134, from: 'by hand: log₁₀ 20 = 1.301030; 10^−0.130103' },
  { name: 'Mayhew', at: 5, expect: 0.840261, from: 'by hand: e^−0.275 = 0.759572; (52.2 + 41.9 × 0.759572)/100' },
  { name: 'Mayhew', at: 20, expect: 0.661473, from: 'by hand: e^−1.1 = 0.332871; (52.2 + 41.9 × 0.332871)/100' },
  { name: 'Wathan', at: 5, expect: 0.857762, from: 'by hand: e^−0.375 = 0.687289; (48.8 + 53.8 × 0.687289)/100' },
  { name: 'Wathan', at: 20, expect: 0.608044, from: 'by hand: e^−1.5 = 0.223130; (48.8 + 53.8 × 0.223130)/100' },
]

for (const { name, at, expect, from } of worked) {
  test(`${name}: ${at} repetitions at ${expect} — ${from}`, () => near(formula(name).fraction(at), expect, 1e-6)) // six decimals are given
}

/** Repetitions possible at a share of the maximum. Each row was worked without this code. */
const inverse = [
  { name: 'Epley', share: 0.8, expect: 7.5, from: 'by hand: 30 (1/0.8 − 1)' },
  { name: 'Brzycki', share: 0.8, expect: 8.2, from: 'by hand: 37 − 36 × 0.8' },
  { name: "O'Conner", share: 0.9, expect: 4.444444, from: 'by hand: (1/0.9 − 1)/0.025' },
  { name: 'Lombardi', share: 0.8, expect: 9.313226, from: 'by hand: 1.25¹⁰ = 9.313226' },
  { name: 'Mayhew', share: 0.75, expect: 11.064096, from: 'by hand: −ln((75 − 52.2)/41.9)/0.055 = 0.608525/0.055' },
  { name: 'Wathan', share: 0.75, expect: 9.593521, from: 'by hand: −ln((75 − 48.8)/53.8)/0.075 = 0.719514/0.075' },
]

for (const { name, share, expect, from } of inverse) {
  test(`${name}: at ${share} of the maximum ${expect} repetitions — ${from}`, () => near(reps(formula(name), share), expect, 1e-6)) // six decimals are given
}

test('Epley and Brzycki agree at ten repetitions, at 75 %, and nowhere else below', () => {
  near(formula('Epley').fraction(10), 0.75, 1e-12)
  near(formula('Brzycki').fraction(10), 0.75, 1e-12)
  for (let at = 1; at < 10; at += 1) assert.ok(formula('Brzycki').fraction(at) > formula('Epley').fraction(at), `${at}`)
})

test('only Brzycki and Lombardi give the whole maximum for one repetition', () => {
  const whole = repetitionFormulas.filter(({ fraction }) => Math.abs(fraction(1) - 1) < 1e-12).map(({ name }) => name)
  assert.deepEqual(whole, ['Brzycki', 'Lombardi'])
})

test('Brzycki has nothing left to lift at 37 repetitions, far beyond where it is asked', () => {
  near(formula('Brzycki').fraction(37), 0, 1e-12)
  assert.ok(formula('Brzycki').reps.max < 37)
})

test('linear equations are asked for ten repetitions at most, as Reynolds 2006 advises', () => {
  for (const name of ['Epley', 'Brzycki', "O'Conner"]) assert.equal(formula(name).reps.max, 10)
  assert.deepEqual(
    holdingAt(10).map(({ name }) => name),
    ['Epley', 'Brzycki', "O'Conner", 'Lombardi', 'Mayhew', 'Wathan'],
  )
  assert.deepEqual(
    holdingAt(11).map(({ name }) => name),
    ['Lombardi', 'Mayhew', 'Wathan'],
  )
  assert.deepEqual(holdingAt(MOST_REPS + 1), [])
  assert.deepEqual(holdingAt(0), [])
})

/** 1RM = 1.1307 w₅ + 0.6999 kg, chest press, measured; standard error of estimate 2.98 kg. Reynolds 2006. */
for (const { w5_kg, expect } of [
  { w5_kg: 40, expect: 0.8709 },
  { w5_kg: 80, expect: 0.8776 },
  { w5_kg: 120, expect: 0.8799 },
]) {
  test(`the measured share at five repetitions of ${w5_kg} kg, ${expect}, lies among the formulas`, () => {
    near(w5_kg / (1.1307 * w5_kg + 0.6999), expect, 5e-5) // the row's own arithmetic
    const shares = repetitionFormulas.map(({ fraction }) => fraction(5))
    assert.ok(Math.min(...shares) < expect && expect < Math.max(...shares), shares.join(' '))
  })
}

/** The training-load chart, Haff & Triplett 2016, ch. 17: value from memory. */
const CHART = [100, 95, 93, 90, 87, 85, 83, 80, 77, 75, 70, 67]
test('the formulas stay within four hundredths of the training-load chart (value from memory)', () => {
  for (const [index, percent] of CHART.entries()) {
    const nearest = Math.min(...holdingAt(index + 1).map(({ fraction }) => Math.abs(fraction(index + 1) - percent / 100)))
    assert.ok(nearest < 0.04, `${index + 1} repetitions: ${nearest}`)
  }
})

for (const each of repetitionFormulas) {
  const { min, max } = each.reps
  const within = fc.double({ min, max, noNaN: true })

  test(`${each.name}: what is possible at a share leads back to the repetitions it came from`, () => {
    fc.assert(fc.property(within, (at) => near(reps(each, each.fraction(at)), at, 1e-9)))
  })

  test(`${each.name}: more repetitions never allow a larger share`, () => {
    fc.assert(fc.property(within, within, (a, b) => assert.ok(each.fraction(Math.max(a, b)) <= each.fraction(Math.min(a, b)))))
  })

  test(`${each.name}: says "none" above its heaviest share and "beyond" below its lightest`, () => {
    assert.equal(possibleReps(each, each.fraction(min) + 1e-9), 'none')
    assert.equal(possibleReps(each, each.fraction(max) - 1e-9), 'beyond')
    near(reps(each, each.fraction(min)), min, 1e-9)
    near(reps(each, each.fraction(max)), max, 1e-9)
  })

  test(`${each.name}: names a source that is in the list`, () => assert.ok(sources[each.source].cite.length > 0))
}
