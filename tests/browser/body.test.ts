import assert from 'node:assert/strict'
import { test } from 'vitest'
import { athleteOf, bodyFrom, bodyIn, bodyText, CM_PER_IN, heightCm, KG_PER_LB, massKg, massText, numberIn, type Typed } from '../../src/browser/body.ts'
import { loadFor } from '../../src/browser/own-loads.ts'
import { platesText, RACK, rackIn, rackText } from '../../src/browser/rack.ts'
import { limbs } from '../../src/load/limbs.ts'
import { AVERAGE } from '../../src/measure/measure.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { near } from '../quantity/near.ts'

const MASS = 'body mass must be a number from 30 to 250 kg (67 to 551 lb)'
const HEIGHT = 'height must be a number from 120 to 220 cm (4 ft 0 in to 7 ft 2 in)'
const empty: Typed = { mass: '', mass_unit: 'kg', cm: '', feet: '', inches: '', height_unit: 'cm' }

test('a pound and an inch are what they were agreed to be', () => {
  assert.equal(KG_PER_LB, 0.45359237)
  assert.equal(CM_PER_IN, 2.54)
  assert.equal(massKg({ unit: 'lb', value: 100 }), 45.359237)
  near(heightCm({ unit: 'ft-in', feet: 6, inches: 1 }), 185.42, 1e-9) // 73 × 2.54
  assert.equal(massKg({ unit: 'kg', value: 72.5 }), 72.5)
  assert.equal(heightCm({ unit: 'cm', value: 178 }), 178)
})

test('a body comes back from being kept as it was typed', () => {
  const typed = [
    { ...empty, mass: '72,5', cm: '178' },
    { ...empty, mass: ' 180 ', mass_unit: 'lb', feet: '5', inches: '11.5', height_unit: 'ft-in' },
    { ...empty, mass: '61' },
    { ...empty, feet: '6', height_unit: 'ft-in' },
  ]
  const words = ['72.5 kg, 178 cm', '180 lb, 5 ft 11.5 in', '61 kg', '6 ft 0 in']
  for (const [index, each] of typed.entries()) {
    const body = bodyFrom(each, undefined)
    assert.ok(!isMissing(body))
    assert.equal(bodyText(body), words[index])
    assert.deepEqual(bodyIn(JSON.parse(JSON.stringify(body))), body)
  }
})

test('what is out of bounds or no number is refused with the bounds', () => {
  for (const mass of ['29.9', '251', '0', '-70', 'seventy', '7e1', '70 kg', '1000']) assert.deepEqual(bodyFrom({ ...empty, mass }, undefined), { missing: MASS }, mass)
  for (const mass of ['66', '552']) assert.deepEqual(bodyFrom({ ...empty, mass, mass_unit: 'lb' }, undefined), { missing: MASS }, mass)
  for (const mass of ['67', '551']) assert.ok(!isMissing(bodyFrom({ ...empty, mass, mass_unit: 'lb' }, undefined)), mass)
  for (const cm of ['119', '221', 'tall']) assert.deepEqual(bodyFrom({ ...empty, cm }, undefined), { missing: HEIGHT }, cm)
  for (const [feet, inches] of [['3', '11'], ['7', '3'], ['5', '12'], ['5.5', '0'], ['', '70'], ['5', 'x']] as const) assert.deepEqual(bodyFrom({ ...empty, feet, inches, height_unit: 'ft-in' }, undefined), { missing: HEIGHT }, `${feet} ft ${inches} in`)
  for (const [feet, inches] of [['4', '0'], ['7', '2']] as const) assert.ok(!isMissing(bodyFrom({ ...empty, feet, inches, height_unit: 'ft-in' }, undefined)), `${feet} ft ${inches} in`)
  assert.deepEqual(bodyFrom(empty, undefined), { missing: 'give a body mass, a height or both' })
})

test('a corrupt record is never believed', () => {
  const sound = { version: 1, mass: { unit: 'kg', value: 70 }, height: { unit: 'cm', value: 175 } }
  assert.ok(!isMissing(bodyIn(sound)))
  for (const value of [null, undefined, 7, 'body', [], [sound]]) assert.deepEqual(bodyIn(value), { missing: 'it is no record of a body' })
  for (const version of [undefined, 0, 2, '1']) assert.deepEqual(bodyIn({ ...sound, version }), { missing: 'it was kept by another edition of this handbook' })
  for (const mass of [null, 70, '70', {}, { unit: 'st', value: 11 }, { unit: 'kg' }, { unit: 'kg', value: '70' }, { unit: 'kg', value: NaN }, { unit: 'kg', value: 1e9 }]) assert.deepEqual(bodyIn({ ...sound, mass }), { missing: MASS })
  for (const height of [null, 175, [], { unit: 'm', value: 1.75 }, { unit: 'cm', value: Infinity }, { unit: 'ft-in', feet: 5 }, { unit: 'ft-in', feet: 5, inches: -1 }]) assert.deepEqual(bodyIn({ ...sound, height }), { missing: HEIGHT })
  assert.deepEqual(bodyIn({ ...sound, rack: { bar_kg: 'heavy' } }), { missing: 'the bar must be a number from 0 to 50 kg' })
})

test('what stands beside a sound body in the record goes no further', () => {
  assert.deepEqual(bodyIn({ version: 1, mass: { unit: 'kg', value: 70, note: 'x' }, name: 'x' }), { version: 1, mass: { unit: 'kg', value: 70 }, height: undefined, rack: undefined })
})

test('without a body, or for what is not given, the average body of the build stands in', () => {
  assert.deepEqual(athleteOf(undefined), AVERAGE)
  assert.deepEqual(athleteOf({ version: 1, mass: { unit: 'kg', value: 90 }, height: undefined, rack: undefined }), { ...AVERAGE, mass_kg: 90 })
})

test('who thinks in pounds is told kilograms and pounds', () => {
  assert.equal(massText(45.359237, 'lb'), '45.4 kg (100.0 lb)')
  assert.equal(massText(45.359237, 'kg'), '45.4 kg')
  assert.ok(Number.isNaN(numberIn('')))
})

test('a rack is bounded, and told in words', () => {
  assert.deepEqual(rackIn(RACK), RACK)
  assert.equal(rackText(RACK), 'a bar of 6 kg, and 2 pairs each of 0.5, 1, 1.25, 2.5, 5, 10 and 20 kg')
  assert.equal(rackText({ bar_kg: 20, plates_kg: [5], pairs: 1 }), 'a bar of 20 kg, and 1 pair of 5 kg')
  for (const plates_kg of [[], 'many', [0], [0.3], [60], Array.from({ length: 13 }, () => 1)]) assert.deepEqual(rackIn({ ...RACK, plates_kg }), { missing: 'plates must be 1 to 12 numbers from 0.25 to 50 kg, in steps of 0.25 kg' })
  for (const pairs of [0, 7, 1.5, '2']) assert.deepEqual(rackIn({ ...RACK, pairs }), { missing: 'pairs of each plate must be a whole number from 1 to 6' })
  assert.ok(isMissing(rackIn(null)))
})

test('plates are told for each end, with what they come to where that is another mass', () => {
  assert.equal(platesText(12.5, RACK), '1.25 + 1 + 1 kg on each end of the bar of 6 kg')
  assert.equal(platesText(6, RACK), 'the bar of 6 kg alone')
  assert.equal(platesText(4, RACK), 'less than the bar of 6 kg: take a lighter bar or a weight for one hand')
  assert.equal(platesText(23, { bar_kg: 20, plates_kg: [5], pairs: 2 }), 'the bar of 20 kg alone, which is 20 kg: the nearest this rack makes')
})

/** The models give the force on both hands or arms by themselves; both legs of a split carry what both legs of a squat carry. */
test('both limbs together are what the models say of both', () => {
  for (const [model, inputs, name] of [
    ['supported-body', { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 0, working_side_percent: 58 }, 'force on both hands at the end of the rep'],
    ['supported-body', { facing: 'up', feet: 'heels', hands: 'bar', hand_height_cm: 90 }, 'force on both hands at the start of the rep'],
    ['assisted', { exercise: 'hang', counterweight_percent: 20, working_side_percent: 60 }, 'on both arms at the end of the rep'],
  ] as const) {
    const load = loadFor({ model, inputs }, athleteOf(undefined))
    assert.ok(!isMissing(load))
    const said = load.figures.find((figure) => figure.name === name)?.value
    assert.ok(said && !isMissing(said))
    const { both, one, other } = limbs({ model, inputs }, load.load)
    near(both?.mid ?? NaN, said.mid, 1e-9)
    near(one.mid + (other?.mid ?? one.mid), said.mid, 1e-9)
  }
  const legs = (inputs: Readonly<Record<string, unknown>>) => {
    const load = loadFor({ model: 'leg-press-of-body', inputs }, athleteOf(undefined))
    assert.ok(!isMissing(load))
    return limbs({ model: 'leg-press-of-body', inputs }, load.load)
  }
  for (const stance of ['split', 'step-up']) near(legs({ stance, front_leg_percent: 80 }).both?.mid ?? NaN, legs({ stance: 'two legs' }).both?.mid ?? 0, 1e-9)
  assert.equal(legs({ stance: 'one leg' }).both, undefined)
})
