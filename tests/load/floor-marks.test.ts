import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { floorMarks, markRows, STATURES_CM, type Mark } from '../../src/load/floor-marks.ts'
import { ask, type Inputs } from '../../src/load/model.ts'
import { supportedBody } from '../../src/load/supported-body.ts'
import { isMissing, type Outcome } from '../../src/quantity/outcome.ts'
import { near } from '../quantity/near.ts'
import { ATHLETE } from './athlete.ts'

type Marks = readonly (readonly [number, Outcome<Mark>])[]
const marks = (inputs: Inputs, statures_cm?: readonly number[]): Marks => {
  const outcome = floorMarks(inputs, ATHLETE, statures_cm)
  return isMissing(outcome) ? assert.fail(outcome.missing) : outcome
}
const settled = (inputs: Inputs, statures_cm?: readonly number[]): readonly Mark[] => marks(inputs, statures_cm).map(([stature_cm, mark]) => (isMissing(mark) ? assert.fail(`${stature_cm}: ${mark.missing}`) : mark))
const loadOf = (inputs: Inputs, stature_cm: number): number => {
  const outcome = ask(supportedBody, inputs, { ...ATHLETE, stature_m: stature_cm / 100 })
  return isMissing(outcome) ? assert.fail(outcome.missing) : outcome.load.mid
}

/** The average body, in cm. */
const AVERAGE_CM = 100 * ATHLETE.stature_m

const pressUp = { facing: 'down', feet: 'toes', hands: 'surface' } as const
const bar = { facing: 'up', feet: 'heels', hands: 'bar' } as const
const straps = { facing: 'up', feet: 'heels', hands: 'straps', anchor_height_cm: 240, feet_from_anchor_cm: -60 } as const

/** Each row was worked without this code: with the feet on the ground everything is a share of stature, the average body being 173.8 cm tall. */
const worked = [
  { stature_cm: 150, hands: 51.7837, feet_to_hands: 104.4386, from: 'by hand: 60 × 150/173.8; 0.696257 × 150, as below' },
  {
    stature_cm: 173.8,
    hands: 60,
    feet_to_hands: 121.0096,
    from: 'by hand: ball to palm over stature, woman 1311.667/1735 = 0.756004, man 1390.064/1741 = 0.798428, height 60/173.8 = 0.345224; √(0.756004² − 0.345224²) = 0.672579, √(0.798428² − 0.345224²) = 0.719936; mean 0.696257 × 173.8',
  },
  { stature_cm: 200, hands: 69.0449, feet_to_hands: 139.2515, from: 'by hand: 60 × 200/173.8; 0.696257 × 200' },
]

for (const { stature_cm, hands, feet_to_hands, from } of worked) {
  test(`hands on 60 cm for the average body are hands on ${hands} cm for ${stature_cm} cm — ${from}`, () => {
    const [mark] = settled({ ...pressUp, hand_height_cm: 60 }, [stature_cm])
    assert.ok(mark)
    near(mark.hands_cm, hands, 1e-4) // four decimals are given; the solver keeps to 0.000025 cm
    near(mark.feet_to_hands_cm, feet_to_hands, 2e-4)
    assert.deepEqual([mark.stature_cm, mark.strap_cm], [stature_cm, undefined])
  })
}

/** How close the load of every stature comes to that of the average body, in % of body weight. */
const SAME = 1e-4

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** What can be moved, and where the mark says it went. */
const moved: readonly { readonly name: string; readonly setUps: fc.Arbitrary<Inputs>; readonly at: (inputs: Inputs, mark: Mark) => Inputs }[] = [
  {
    name: 'hands on a surface',
    setUps: fc.record({ ...asConstants(pressUp), feet: fc.constantFrom('toes', 'knees', 'flat'), hand_height_cm: between(0, 70), working_side_percent: between(50, 100), added_mass_percent: between(0, 50) }),
    at: (inputs, { hands_cm }) => ({ ...inputs, hand_height_cm: hands_cm }),
  },
  { name: 'the lean in a press-up', setUps: fc.record({ ...asConstants(pressUp), lean_deg: between(35, 73) }), at: (inputs, { lean_deg }) => ({ ...inputs, lean_deg }) },
  { name: 'the lean at a bar', setUps: fc.record({ ...asConstants(bar), lean_deg: between(20, 50) }), at: (inputs, { lean_deg }) => ({ ...inputs, lean_deg }) },
  { name: 'the lean on straps', setUps: fc.record({ ...asConstants(straps), lean_deg: between(25, 70), anchor_height_cm: between(230, 280) }), at: (inputs, { lean_deg }) => ({ ...inputs, lean_deg }) },
  { name: 'the length of the straps', setUps: fc.record({ ...asConstants(straps), strap_cm: between(100, 160) }), at: (inputs, { strap_cm }) => ({ ...inputs, strap_cm }) },
]

function asConstants<Of extends Record<string, string | number>>(inputs: Of): { [name in keyof Of]: fc.Arbitrary<string | number> } {
  return Object.fromEntries(Object.entries(inputs).map(([name, value]) => [name, fc.constant(value)])) as { [name in keyof Of]: fc.Arbitrary<string | number> } // the same names
}

for (const { name, setUps, at } of moved) {
  test(`moving ${name}: each stature gets the load of the average body`, () => {
    let compared = 0
    fc.assert(
      fc.property(setUps, fc.uniqueArray(between(150, 200), { minLength: 1, maxLength: 4 }), (inputs, statures_cm) => {
        const target = loadOf(inputs, AVERAGE_CM)
        for (const [stature_cm, mark] of marks(inputs, statures_cm)) {
          if (isMissing(mark)) continue
          near(loadOf(at(inputs, mark), stature_cm), target, SAME)
          compared += 1
        }
      }),
      { numRuns: 25 },
    )
    assert.ok(compared > 25, `only ${compared} marks were given`)
  })
}

// Identities.

test('with the feet on the ground, the hands rise with the stature, and so does the way from feet to hands', () => {
  fc.assert(
    fc.property(fc.constantFrom('toes', 'knees', 'flat'), between(0, 55), (feet, hand_height_cm) => {
      for (const { stature_cm, hands_cm, feet_to_hands_cm, lean_deg } of settled({ ...pressUp, feet, hand_height_cm })) {
        const [average] = settled({ ...pressUp, feet, hand_height_cm }, [AVERAGE_CM])
        assert.ok(average)
        near(hands_cm / stature_cm, average.hands_cm / AVERAGE_CM, 1e-6)
        near(feet_to_hands_cm / stature_cm, average.feet_to_hands_cm / AVERAGE_CM, 1e-6)
        near(lean_deg, average.lean_deg, 1e-4)
      }
    }),
    { numRuns: 10 },
  )
})

test('at a bar everyone leans the same, and the bar stands at a share of stature', () => {
  const all = settled({ ...bar, lean_deg: 45 })
  for (const { stature_cm, lean_deg, hands_cm } of all) {
    near(lean_deg, 45, 1e-4)
    near(hands_cm / stature_cm, (all[0]?.hands_cm ?? Number.NaN) / 150, 1e-6)
  }
})

test('the average body is told what was asked', () => {
  near(settled({ ...pressUp, hand_height_cm: 45 }, [AVERAGE_CM])[0]?.hands_cm ?? Number.NaN, 45, 1e-4)
  near(settled({ ...straps, lean_deg: 45 }, [AVERAGE_CM])[0]?.lean_deg ?? Number.NaN, 45, 1e-4)
  near(settled({ ...straps, strap_cm: 120 }, [AVERAGE_CM])[0]?.strap_cm ?? Number.NaN, 120, 1e-4)
})

test('where the straps hang from one anchor, a taller athlete gets a shorter strap', () => {
  const lengths = settled({ ...straps, strap_cm: 120 }).map(({ strap_cm }) => strap_cm ?? assert.fail())
  for (const [index, length] of lengths.entries()) assert.ok(index === 0 || length < (lengths[index - 1] ?? 0))
})

test('the mark says where hands, feet and body are as the model does', () => {
  const [mark] = settled({ ...straps, lean_deg: 45 }, [165])
  assert.ok(mark)
  const outcome = ask(supportedBody, { ...straps, lean_deg: mark.lean_deg }, { ...ATHLETE, stature_m: 1.65 })
  assert.ok(!isMissing(outcome))
  const said = (name: string): number => {
    const value = outcome.figures.find((figure) => figure.name === name)?.value
    return value === undefined || isMissing(value) ? assert.fail(name) : value.mid
  }
  near(said('hands above the floor'), mark.hands_cm, 1e-6)
  near(said('feet to hands, along the floor'), mark.feet_to_hands_cm, 1e-6)
  near(said('strap from anchor to grip'), mark.strap_cm ?? Number.NaN, 1e-6)
})

test('unless others are asked for, marks are given for eleven statures from 150 to 200 cm', () => {
  assert.deepEqual(STATURES_CM, [150, 155, 160, 165, 170, 175, 180, 185, 190, 195, 200])
  assert.deepEqual(
    marks({ ...pressUp, hand_height_cm: 30 }).map(([stature_cm]) => stature_cm),
    STATURES_CM,
  )
})

const MARK: Mark = { stature_cm: 170, hands_cm: 59.6, feet_to_hands_cm: -120.4, lean_deg: 44.6, strap_cm: 99.6 }

test('a coach marks hands and the way to them, and with straps the lean and their length', () => {
  const said = (inputs: Inputs, mark: Mark = MARK) => markRows(inputs).map(({ name, of }) => [name, of(mark)])
  const apart = ['feet to hands, along the floor', '120 cm'] // whichever way the hands lie
  for (const inputs of [pressUp, bar]) assert.deepEqual(said(inputs), [['hands above the floor', '60 cm'], apart])
  assert.deepEqual(said(straps), [['lean from upright', '45°'], ['strap, anchor to grip', '100 cm'], apart])
  assert.deepEqual(said(straps, { ...MARK, strap_cm: undefined })[1], ['strap, anchor to grip', '–'])
})

// Refusals.

for (const { inputs, missing } of [
  { inputs: { ...pressUp }, missing: 'nothing in this set-up can be moved' },
  { inputs: { ...pressUp, foot_height_cm: 30, added_mass_percent: 10 }, missing: 'nothing in this set-up can be moved' },
  { inputs: { ...pressUp, hand_height_cm: '30' }, missing: 'nothing in this set-up can be moved' },
  { inputs: { ...pressUp, hand_height_cm: 200 }, missing: 'the hands cannot be reached from the feet: the height is more than the body spans' },
  { inputs: { ...pressUp, hand_height_cm: 251 }, missing: 'hand_height_cm is 251; supported-body holds from 0 to 250 cm' },
  { inputs: { ...pressUp, hand_height_cm: 30, lean_deg: 60 }, missing: 'hand_height_cm and lean_deg are both given; one of them follows from the other' },
]) {
  test(`says, for all: ${missing} — ${JSON.stringify(inputs)}`, () => assert.deepEqual(floorMarks(inputs, ATHLETE), { missing }))
}

test('says, of those too tall for feet on a box of one height, that no height of the hands gives the load, and marks the others', () => {
  const outcome = marks({ ...pressUp, hand_height_cm: 0, foot_height_cm: 30 }, [160, 190])
  const [shorter, taller] = outcome.map(([, mark]) => mark)
  assert.ok(shorter && !isMissing(shorter) && shorter.hands_cm > 0)
  assert.deepEqual(taller, { missing: 'no hand_height_cm gives that load; the nearest is 37.1 at 0.0 cm' })
})
