import assert from 'node:assert/strict'
import { test } from 'vitest'
import { centimetres, imperialIntervalText, imperialText, kilograms } from '../../src/quantity/imperial.ts'

test('a length is said to the half inch, from a yard on in feet and inches', () => {
  // 45 cm / 2.54 = 17.72 in; 30 / 2.54 = 11.81; 1 / 2.54 = 0.39; 90 / 2.54 = 35.43; 91.44 cm are one yard; 170 / 2.54 = 66.93 = 5 × 12 + 6.93; 182.88 are six feet
  const said = { 45: '17½ in', 30: '12 in', 1: '½ in', 90: '35½ in', 91.44: '3 ft', 170: '5 ft 7 in', 182.88: '6 ft', '-20': '−8 in', 0: '0 in' }
  for (const [cm, text] of Object.entries(said)) assert.equal(imperialText(Number(cm), 'cm'), text)
})

test('a length that rounds up to a yard is said in feet', () => {
  assert.equal(imperialText(91.2, 'cm'), '3 ft')
  assert.equal(imperialText(1.7, 'm'), '5 ft 7 in')
})

test('masses are said in pounds, forces in pounds-force, speeds in feet a second', () => {
  // 70 kg / 0.45359237 = 154.3 lb; 1000 N / 4.4482216 = 224.8 lbf; 3 m/s / 0.3048 = 9.84 ft/s
  assert.deepEqual([imperialText(70, 'kg'), imperialText(1000, 'N'), imperialText(3, 'm/s')], ['154 lb', '225 lbf', '10 ft/s'])
})

test('what has no unit of its own is said as it is', () => {
  for (const unit of ['% of body weight', 'deg', 'reps', 'N·m/kg', 's'] as const) assert.equal(imperialText(1, unit), undefined)
})

test('an interval whose ends are one half inch is one figure', () => {
  assert.equal(imperialIntervalText({ low: 44.8, high: 45 }, 'cm'), '17½ in')
  assert.equal(imperialIntervalText({ low: 30, high: 45 }, 'cm'), '12 in to 17½ in')
  assert.equal(imperialIntervalText({ low: 30, high: 45 }, '%'), undefined)
})

test('pounds and inches turn back into kilograms and centimetres', () => {
  assert.equal(kilograms(100), 45.359237)
  assert.equal(centimetres(10), 25.4)
})
