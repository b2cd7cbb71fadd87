import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { bodies } from '../../src/load/body.ts'
import { models } from '../../src/load/index.ts'
import { ask, askMiddle, isChoiceKey, isListKey, isNumberKey, type Athlete, type Input, type Inputs, type Key, type LoadModel } from '../../src/load/model.ts'
import { supportedBody } from '../../src/load/supported-body.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { ATHLETE } from './athlete.ts'

/** Solving backwards asks only for the middle of the load; it has to be the middle that is shown. */
const all = models as readonly unknown[] as readonly LoadModel[]

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const athletes: fc.Arbitrary<Athlete> = fc.record({ stature_m: between(1.4, 2.1), mass_kg: between(40, 130) })

/** Any value a key may hold, in its span or a little past it; a list rises, as bands do. */
function valueOf(key: Key): fc.Arbitrary<Input> {
  if (isNumberKey(key)) return between(key.min - 0.02 * (key.max - key.min), key.max)
  if (isChoiceKey(key)) return fc.constantFrom(...key.choices)
  if (isListKey(key)) return key.list === 'pairs' ? fc.constantFrom([[0, 0], [50, 80], [100, 140]] as const, [[0, 10], [400, 300]] as const, [[0, 5], [150, 120], [400, 220]] as const) : fc.constant([1, 2, 3])
  return fc.constantFrom('somewhere', '')
}

/** Any inputs of a model: what has to be given mostly is, what may be left out is every other time. */
const inputsOf = ({ keys }: LoadModel): fc.Arbitrary<Inputs> =>
  fc
    .record(Object.fromEntries(Object.entries<Key>(keys).map(([name, key]) => [name, fc.option(valueOf(key), { nil: undefined, freq: 'optional' in key || 'default' in key ? 2 : 20 })])))
    .map((inputs) => inputs as Inputs) // each key holds a value of its kind

/** Set-ups that most often are computed, where anything at all seldom is. */
const sensible: Readonly<Partial<Record<(typeof models)[number]['name'], fc.Arbitrary<Inputs>>>> = {
  'supported-body': fc.oneof(
    fc.record({ facing: fc.constant('down'), feet: fc.constantFrom('toes', 'flat', 'knees'), hands: fc.constantFrom('surface', 'bar', 'straps'), hand_height_cm: between(0, 130), foot_height_cm: between(0, 60), working_side_percent: between(50, 100), added_mass_percent: between(0, 100) }),
    fc.record({ facing: fc.constant('up'), feet: fc.constantFrom('heels', 'flat'), hands: fc.constant('bar'), lean_deg: between(5, 90), working_side_percent: between(50, 100) }),
    fc.record({ facing: fc.constant('up'), feet: fc.constantFrom('heels', 'flat'), hands: fc.constant('straps'), lean_deg: between(5, 90), anchor_height_cm: between(150, 400), feet_from_anchor_cm: between(-150, 100) }),
  ),
  'lever-hold': fc.oneof(
    fc.record({ hold: fc.constant('front'), feet: fc.constantFrom('toes', 'knees'), rest_on: fc.constantFrom('forearms', 'hands'), reach_cm: between(0, 30), foot_height_cm: between(0, 60) }),
    fc.record({ hold: fc.constant('bridge'), legs: fc.constantFrom('two', 'one'), knee_deg: between(60, 150), foot_height_cm: between(0, 80) }),
    fc.record({ hold: fc.constant('hollow'), leg_deg: between(5, 80) }),
  ),
  'leg-press-of-body': fc.oneof(
    fc.record({ stance: fc.constantFrom('two legs', 'one leg'), added_mass_percent: between(0, 200), knee_deg: between(45, 175) }),
    fc.record({ stance: fc.constantFrom('split', 'step-up'), front_leg_percent: between(50, 100), stance_cm: between(0, 120), foot_height_cm: between(0, 60) }),
  ),
  assisted: fc.record({ exercise: fc.constantFrom('hang', 'dip', 'grip'), counterweight_percent: between(0, 90), added_mass_percent: between(0, 150), working_side_percent: fc.oneof(fc.constant(100), between(50, 100)) }),
  'one-rep-max': fc.oneof(fc.record({ load_kg: between(0.5, 100), one_rep_max_kg: between(100, 600) }), fc.record({ percent_1rm: between(20, 100) })),
  published: fc.record({ percent: between(1, 300), sd_percent: between(0, 20), source: fc.constant('mier2014'), condition: fc.constant('on toes'), working_side_percent: between(50, 100) }),
}

const OF_A_BODY = new RegExp(` \\((${bodies.map(({ name }) => name).join('|')})\\)$`)

/** The same digits, or the same reason; only a body of the interval may be refused where the middle is not. */
function agrees(model: LoadModel, inputs: Inputs, athlete: Athlete): boolean {
  const [whole, middle] = [ask(model, inputs, athlete), askMiddle(model, inputs, athlete)]
  if (!isMissing(whole)) {
    assert.equal(middle, whole.load.mid) // to the last digit
    return true
  }
  if (isMissing(middle)) assert.deepEqual(middle, whole)
  else assert.match(whole.missing, OF_A_BODY)
  return false
}

for (const model of all) {
  const often = sensible[model.name as keyof typeof sensible]
  test(`${model.name}: the middle alone is the middle of the whole, to the last digit, and so is the reason for none`, () => {
    let computed = 0
    const inputs = often ? fc.oneof(inputsOf(model), often, often) : inputsOf(model)
    fc.assert(
      fc.property(inputs, athletes, (asked, athlete) => {
        if (agrees(model, asked, athlete)) computed += 1
      }),
      { numRuns: 200 },
    )
    if (model.name === 'skill') assert.equal(computed, 0)
    else assert.ok(computed >= 20, `only ${computed} were computed`)
  })
}

test('a refusal of the span or of the model is the same either way', () => {
  for (const inputs of [{}, { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: -1 }, { facing: 'down', feet: 'heels', hands: 'surface', hand_height_cm: 0 }, { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 200 }]) {
    const [whole, middle] = [ask(supportedBody, inputs, ATHLETE), askMiddle(supportedBody, inputs, ATHLETE)]
    assert.ok(isMissing(whole))
    assert.deepEqual(middle, whole)
  }
})

test('a set-up that a body of the interval cannot take has no load, and still a middle, which whoever solves must not offer', () => {
  const leaning = { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 125 }
  assert.deepEqual(ask(supportedBody, leaning, ATHLETE), { missing: 'the body stands past its balance, so the hands carry nothing (women, de Leva, short legs)' })
  assert.ok(!isMissing(askMiddle(supportedBody, leaning, ATHLETE)))
})
