import assert from 'node:assert/strict'
import { existsSync } from 'node:fs'
import { test } from 'vitest'
import { modelNamed, models } from '../../src/load/index.ts'
import { ask, isChoiceKey, isNumberKey, loadModel, type Inputs, type Key, type Load } from '../../src/load/model.ts'
import { skill } from '../../src/load/skill.ts'
import { sources } from '../../src/load/sources.ts'
import { missing, type Outcome } from '../../src/quantity/outcome.ts'
import { exactly, type Spread } from '../../src/quantity/spread.ts'
import { ATHLETE } from './athlete.ts'

const loaded = (load: Spread, figure: Outcome<Spread> = exactly(1)): Load => ({
  quantity: { name: 'mass lifted', unit: 'kg', repeats: true },
  load,
  figures: [{ name: 'a figure', value: figure, unit: 'kg' }],
  poses: [],
  working: [],
  assumes: [],
  cautions: [],
})

/** One key of every kind. It hands back what it was asked, so that a test can see it. */
const keys = {
  weight_kg: { unit: 'kg', min: 1, max: 10, says: 'a number that is needed' },
  height_cm: { unit: 'cm', min: 0, max: 5, default: 2, says: 'a number with a default' },
  angle_deg: { unit: 'deg', min: -1, max: 1, optional: true, says: 'a number that may be left out' },
  side: { choices: ['left', 'right'], says: 'a choice that is needed' },
  grip: { choices: ['wide', 'narrow'], default: 'wide', says: 'a choice with a default' },
  note: { words: true, optional: true, says: 'words that may be left out' },
  plates: { list: 'numbers', units: ['kg'], min: 0, max: 9, most: 2, optional: true, says: 'a list that may be left out' },
} as const

function asking(inputs: Inputs): { outcome: Outcome<Load>; received: unknown } {
  let received: unknown
  const probe = loadModel({
    ...skill,
    name: 'probe',
    keys,
    compute(input) {
      received = input
      return loaded(exactly(input.weight_kg))
    },
  })
  return { outcome: ask(probe, inputs, ATHLETE), received }
}

test('a model receives every key, defaults filled in, and nothing it did not ask for', () => {
  const { received } = asking({ weight_kg: 3, side: 'left', unheard_of_cm: 4 })
  assert.deepEqual(received, { weight_kg: 3, height_cm: 2, angle_deg: undefined, side: 'left', grip: 'wide', note: undefined, plates: undefined })
})

test('what is given stands before the default, even zero', () => {
  assert.deepEqual(asking({ weight_kg: 3, side: 'left', height_cm: 0, grip: 'narrow', angle_deg: 0, note: '', plates: [0, 9] }).received, {
    weight_kg: 3,
    height_cm: 0,
    angle_deg: 0,
    side: 'left',
    grip: 'narrow',
    note: '',
    plates: [0, 9],
  })
})

test('a span is closed: both of its ends are answered', () => {
  for (const weight_kg of [1, 10]) assert.deepEqual(asking({ weight_kg, side: 'left' }).outcome, loaded(exactly(weight_kg)))
})

for (const { inputs, why } of [
  { inputs: { side: 'left' }, why: 'weight_kg is not given; probe needs it' },
  { inputs: { weight_kg: 3 }, why: 'side is not given; probe needs it' },
  { inputs: { weight_kg: 10.001, side: 'left' }, why: 'weight_kg is 10.001; probe holds from 1 to 10 kg' },
  { inputs: { weight_kg: Number.NaN, side: 'left' }, why: 'weight_kg is NaN; probe holds from 1 to 10 kg' },
  { inputs: { weight_kg: Number.POSITIVE_INFINITY, side: 'left' }, why: 'weight_kg is Infinity; probe holds from 1 to 10 kg' },
  { inputs: { weight_kg: '3', side: 'left' }, why: 'weight_kg is 3; probe holds from 1 to 10 kg' },
  { inputs: { weight_kg: 3, side: 'up' }, why: 'side is up; probe knows left, right' },
  { inputs: { weight_kg: 3, side: 'left', grip: 'loose' }, why: 'grip is loose; probe knows wide, narrow' },
  { inputs: { weight_kg: 3, side: 'left', plates: [] }, why: 'plates must hold 1 to 2 numbers from 0 to 9' },
  { inputs: { weight_kg: 3, side: 'left', plates: [1, 2, 3] }, why: 'plates must hold 1 to 2 numbers from 0 to 9' },
  { inputs: { weight_kg: 3, side: 'left', plates: [1, 9.5] }, why: 'plates must hold 1 to 2 numbers from 0 to 9' },
  { inputs: { weight_kg: 3, side: 'left', plates: 5 }, why: 'plates must hold 1 to 2 numbers from 0 to 9' },
  { inputs: { weight_kg: 3, side: 'left', angle_deg: -2 }, why: 'angle_deg is -2; probe holds from -1 to 1 deg' },
]) {
  test(`refuses without computing: ${why} — ${JSON.stringify(inputs)}`, () => assert.deepEqual(asking(inputs), { outcome: { missing: why }, received: undefined }))
}

const giving = (outcome: Outcome<Load>): Outcome<Load> => ask(loadModel({ ...skill, name: 'probe', compute: () => outcome }), {}, ATHLETE)

test('a reason of the model itself is passed on', () => assert.deepEqual(giving(missing('nobody knows')), { missing: 'nobody knows' }))

test('a figure that is missing is no bug', () => assert.deepEqual(giving(loaded(exactly(1), missing('nobody knows'))), loaded(exactly(1), missing('nobody knows'))))

for (const { of, outcome } of [
  { of: 'a load that is not a number', outcome: loaded(exactly(Number.NaN)) },
  { of: 'one point that is not a number', outcome: loaded({ mid: 1, points: [1, Number.NaN], over: 'two' }) },
  { of: 'an endless figure', outcome: loaded(exactly(1), exactly(Number.POSITIVE_INFINITY)) },
]) {
  test(`${of} is our bug, and is thrown`, () => assert.throws(() => giving(outcome), new Error('bug: probe gave a number that is not finite for {}')))
}

test('every model can be found by its name, and no other can', () => {
  for (const model of models) assert.equal(modelNamed(model.name), model)
  assert.equal(modelNamed('constructor'), undefined)
})

test('no two models share a name', () => assert.equal(new Set(models.map(({ name }) => name)).size, models.length))

for (const model of models) {
  test(`${model.name} stands in a file of its name and cites listed sources, each at a place`, () => {
    assert.match(model.name, /^[a-z]+(-[a-z]+)*$/)
    assert.ok(existsSync(new URL(`../../src/load/${model.name}.ts`, import.meta.url)))
    assert.ok(model.cites.length > 0)
    for (const { source, at } of model.cites) assert.ok(source in sources && at.length > 0)
  })

  for (const [name, key] of Object.entries<Key>(model.keys)) {
    test(`${model.name} asks for ${name} in words, within a span that holds its default`, () => {
      assert.ok(key.says.length > 0)
      if (isNumberKey(key)) {
        assert.ok(key.min < key.max)
        if (key.default !== undefined) assert.ok(key.default >= key.min && key.default <= key.max)
      }
      if (isChoiceKey(key) && key.default !== undefined) assert.ok(key.choices.includes(key.default))
    })
  }
}
