import fc from 'fast-check'
import { test } from 'vitest'
import { degrees, radians, STANDARD_GRAVITY } from '../../src/quantity/unit.ts'
import { near } from './near.ts'

/** Each row was worked without this code. */
const worked = [
  { deg: 0, rad: 0, from: 'no turn' },
  { deg: 60, rad: 1.0471975512, from: 'by hand: π / 3, π = 3.14159265359' },
  { deg: 150, rad: 2.617993878, from: 'by hand: 5 π / 6' },
  { deg: -45, rad: -0.7853981634, from: 'an eighth of a turn back is −π / 4' },
]

for (const { deg, rad, from } of worked) {
  test(`${deg}° is ${rad} — ${from}`, () => near(radians(deg), rad, 5e-11)) // ten decimals are given
}

test('turning degrees to radians and back changes nothing', () => {
  fc.assert(fc.property(fc.double({ min: -720, max: 720, noNaN: true }), (deg) => near(degrees(radians(deg)), deg, 1e-11)))
})

test('standard gravity is the value fixed in 1901', () => near(STANDARD_GRAVITY, 9.80665, 0))
