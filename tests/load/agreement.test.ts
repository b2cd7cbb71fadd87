import assert from 'node:assert/strict'
import { test } from 'vitest'
import { men, REFERENCE_STATURE_M, women } from '../../src/load/body.ts'
import { agreement, computedFor, differences, heldOut, publishedValues, widthOf, type Measured } from '../../src/load/measured-bodies.ts'
import { sources } from '../../src/load/sources.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { near } from '../quantity/near.ts'
import { held, type SetUp, type Touch } from './supported-rep.ts'

const computed = (row: Measured): number => {
  const outcome = computedFor(row)
  return isMissing(outcome) ? assert.fail(outcome.missing) : outcome
}

const difference = (row: Measured): number => computed(row) - row.percent

/** What the lean-backs give with heels on the floor and the anchor at 240 cm, as the starter ladder sets its straps up. */
const onHeels = {
  setUp: (lean_deg: number): SetUp => ({ facing: 'up', feet: 'heels', hands: 'straps', anchor_height_cm: 240, feet_from_anchor_cm: -10, lean_deg }),
  touch: { direction: 'strap', press: 0.75 } satisfies Touch,
  /** Worked without the code, each reference body at its own stature, in mm as in supported-body.test.ts. */
  rows: [
    {
      lean_deg: 30,
      measured: 37.44,
      computed: 35.92,
      from: 'by hand: woman shoulder (644.72, 1214.79), moment 43632.5 / lever 1192.21 = 36.60; man (681.19, 1278.31), 45437.7 / 1289.54 = 35.24',
    },
    {
      lean_deg: 60,
      measured: 68.08,
      computed: 59.23,
      from: 'by hand: woman shoulder (1165.74, 729.68), moment 81397.5 / lever 1369.81 = 59.42; man (1229.08, 766.45), 84846.7 / 1437.10 = 59.04; 8.8 % of body weight short',
    },
  ],
} as const

for (const row of publishedValues) {
  test(`${row.source}, ${row.condition}: within ${widthOf(row)} % of body weight of ${row.percent}${row.mark === 'M' ? ' (value from memory)' : ''}`, () => near(computedFor(row), row.percent, widthOf(row)))
}

test('over every published value the model is off by 4 % of body weight at most on average, and never by more than 8', () => {
  const off = publishedValues.map((row) => Math.abs(difference(row)))
  assert.ok(off.reduce((sum, each) => sum + each, 0) / off.length <= 4)
  assert.ok(Math.max(...off) <= 8)
})

test('the model errs to neither side by more than 2 % of body weight on average', () => {
  const bias = publishedValues.reduce((sum, row) => sum + difference(row), 0) / publishedValues.length
  near(bias, 0, 2)
})

for (const row of heldOut) {
  test(`${row.source}, ${row.condition}: within 8 % of body weight of ${row.percent}, which nothing was chosen by`, () => near(computed(row), row.percent, 8))
}

for (const { lean_deg, measured, computed: byHand, from } of onHeels.rows) {
  test(`on the heels, under an anchor at 240 cm, a lean of ${lean_deg}° gives ${byHand} where ${measured} was measured — ${from}`, () => {
    const shares = [women, men].map((body) => held(onHeels.setUp(lean_deg), REFERENCE_STATURE_M, body, onHeels.touch, 'start').forces.hands)
    near(50 * shares.reduce((sum, share) => sum + share, 0), byHand, 0.05) // statures of 1735 and 1741 mm by hand, of 1738 mm here
  })
}

/** Mean and SD in % of body weight, typed a second time from the sources. */
const TYPED_AGAIN = {
  mier2014: [[67, 3.8], [74.6, 3.6], [52.5, 3.7], [60.1, 4.5], [65.1, 3.1], [70.3, 3.1], [51.5, 3.1], [56.6, 2.7]],
  suprak2011: [[69.16], [75.04], [53.56], [61.8]],
  ebben2011: [[64], [70], [74], [55], [41]],
  melroseDawes2015: [[37.44, 1.45], [68.08, 1.95], [52.88, 0.59], [79.38, 2.14]],
} as const

for (const [source, typed] of Object.entries(TYPED_AGAIN)) {
  test(`the values of ${source} are the published ones — from: the source, typed a second time`, () => {
    const rows = [...publishedValues, ...heldOut].filter((row) => row.source === source)
    assert.deepEqual(
      rows.map(({ percent, sd_percent }) => (sd_percent === undefined ? [percent] : [percent, sd_percent])),
      typed,
    )
  })
}

test('a value carries the mark its source has in the list of sources', () => {
  for (const { source, mark } of [...publishedValues, ...heldOut]) assert.equal(sources[source].seen, mark === 'S' ? 'seen' : 'from memory')
})

test('every row says which choices the model was given', () => {
  for (const { choices } of [...publishedValues, ...heldOut]) assert.ok(choices.length > 20)
})

test('a press-up loads more with bent arms than with straight, as both laboratories measured', () => {
  for (const source of ['mier2014', 'suprak2011'] as const) {
    const rows = publishedValues.filter((row) => row.source === source)
    for (const [index, row] of rows.entries()) {
      const before = rows[index - 1]
      if (row.at === 'end' && before) assert.ok(computed(row) > computed(before))
    }
  }
})

test('hands raised step by step load less, as Ebben 2011 measured', () => {
  const [flat, , , low, high] = publishedValues.filter(({ source }) => source === 'ebben2011').map(computed)
  assert.ok(flat !== undefined && low !== undefined && high !== undefined && flat > low && low > high)
})

test('feet raised from the floor to 30 to 61 cm load more at every step, as Ebben 2011 measured', () => {
  const [flat, low, high] = publishedValues.filter(({ source }) => source === 'ebben2011').map(computed)
  assert.ok(flat !== undefined && low !== undefined && high !== undefined && flat < low && low < high) // measured: 64, 70, then 74
})

test('the width is two standard deviations, or 6 % where the source gives none', () => {
  const [mier, suprak] = ['mier2014', 'suprak2011'].map((source) => publishedValues.find((row) => row.source === source) ?? assert.fail(source))
  assert.ok(mier && suprak)
  near(widthOf(mier), 7.6, 1e-12) // by hand: 2 × 3.8
  near(widthOf(suprak), 6, 0)
})

test('a value that is computed is the very still of the very body the row names', () => {
  const toes = { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 0 } as const
  const touch: Touch = { direction: 'along the arm', press: 0.5 }
  const both = (at: 'start' | 'end', key: 'hands' | 'upright') =>
    [women, men].map((body) => {
      const { hands, on_hands } = held({ ...toes, foot_height_cm: 30.48 }, REFERENCE_STATURE_M, body, touch, at).forces
      return 100 * (key === 'hands' ? hands : on_hands.y)
    })
  const row: Measured = { source: 'ebben2011', condition: 'feet raised', percent: 70, mark: 'M', body: 'mean of reference woman and man', quantity: 'upright part of the force on both hands', at: 'start', setUp: { ...toes, foot_height_cm: 30.48 }, touch, choices: 'none' }
  const [hers = Number.NaN, his = Number.NaN] = both('start', 'upright')
  near(computedFor(row), (hers + his) / 2, 1e-12)
  near(computedFor({ ...row, body: 'reference man' }), his, 1e-12)
  near(computedFor({ ...row, body: 'reference woman' }), hers, 1e-12)
  near(computedFor({ ...row, body: 'reference man', at: 'end' }), both('end', 'upright')[1] ?? Number.NaN, 1e-12)
  near(computedFor({ ...row, body: 'reference man', quantity: 'force along the strap' }), both('start', 'hands')[1] ?? Number.NaN, 1e-12)
})

test('a set-up that is not computed has a reason for its value and for its difference, and is left out of the mean', () => {
  const [row] = publishedValues
  assert.ok(row)
  const impossible: Measured = { ...row, setUp: { ...row.setUp, hand_height_cm: 200 } }
  const why = { missing: 'the hands cannot be reached from the feet: the height is more than the body spans' }
  assert.deepEqual(agreement([impossible]), [{ measured: impossible, computed: why, difference: why }])
  assert.deepEqual(differences(agreement([impossible])), { mean: 0, worst: 0 })
  assert.deepEqual(differences(agreement([impossible, row])), differences(agreement([row])))
})

test('the mean and the worst are those of the differences, whichever side they lie to', () => {
  const rows = [...publishedValues, ...heldOut]
  const off = rows.map((row) => Math.abs(difference(row)))
  const { mean, worst } = differences(agreement(rows))
  near(mean, off.reduce((sum, each) => sum + each, 0) / rows.length, 1e-12)
  near(worst, Math.max(...off), 0)
})
