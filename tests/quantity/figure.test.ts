import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { figureText, intervalText, rounded } from '../../src/quantity/figure.ts'
import type { Unit } from '../../src/quantity/unit.ts'

/** What a person would write who rounds half away from zero. Each row was worked by hand. */
const worked: readonly { value: number; unit: Unit; text: string; from: string }[] = [
  { value: 59.5, unit: '% of body weight', text: '60 % of body weight', from: 'half goes up' },
  { value: 59.4999, unit: '% of body weight', text: '59 % of body weight', from: 'less than half goes down' },
  { value: 2.5, unit: 'reps', text: '3 reps', from: 'half goes up, never to the even neighbour' },
  { value: 0.1 + 0.2, unit: 'm', text: '0.30 m', from: 'three tenths, though the sum is stored a little above' },
  { value: 1.005, unit: 'm', text: '1.01 m', from: 'a half cent of a metre, though 1.005 is stored a little below' },
  { value: 0.285, unit: 'ratio', text: '0.29', from: 'a half, though 0.285 × 100 comes out a little below 28.5' },
  { value: 1.25, unit: 'kg', text: '1.3 kg', from: 'half goes up' },
  { value: 4.429, unit: 'm/s', text: '4.4 m/s', from: 'one decimal' },
  { value: 12.5, unit: 'deg', text: '13°', from: 'a degree sign stands close' },
  { value: 99.6, unit: '% of 1RM', text: '100 % of 1RM', from: 'rounding may add a digit' },
  { value: -2.5, unit: 'cm', text: '−3 cm', from: 'half goes away from zero, and the sign is a minus, not a hyphen' },
  { value: -0.4, unit: 'cm', text: '0 cm', from: 'what rounds to nothing has no sign' },
  { value: -0, unit: 'cm', text: '0 cm', from: 'nothing has no sign' },
  { value: 1.04, unit: '× body weight', text: '1.0 × body weight', from: 'the zero stays: it says how finely it was rounded' },
]

for (const { value, unit, text, from } of worked) {
  test(`${value} in ${unit} reads "${text}" — ${from}`, () => assert.equal(figureText(value, unit), text))
}

test('an interval names its unit once', () => assert.equal(intervalText({ low: 65.6, high: 74.4 }, '% of body weight'), '66 to 74 % of body weight'))

test('an interval whose ends round alike is one figure', () => assert.equal(intervalText({ low: 65.6, high: 66.4 }, '% of body weight'), '66 % of body weight'))

test('an interval in degrees puts the sign close, after the second end', () => assert.equal(intervalText({ low: 30, high: 45 }, 'deg'), '30 to 45°'))

const anyUnit = fc.constantFrom<Unit>('cm', 'm', 'm/s', 'N·m/kg')

test('a figure and its opposite read alike but for the sign', () => {
  fc.assert(fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), anyUnit, (value, unit) => assert.equal(rounded(-value, unit).replace('−', ''), rounded(value, unit))))
})

test('a larger number never reads as a smaller one', () => {
  const number = fc.double({ min: -1e6, max: 1e6, noNaN: true })
  const read = (value: number, unit: Unit): number => Number(rounded(value, unit).replace('−', '-'))
  fc.assert(fc.property(number, number, anyUnit, (a, b, unit) => assert.ok(read(Math.min(a, b), unit) <= read(Math.max(a, b), unit))))
})
