import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { loadable, type Loaded, type Rack } from '../../src/load/plates.ts'
import { near } from '../quantity/near.ts'

/** A bar and plates as most gyms have them; every size up to twice a side. */
const gym: Rack = { bar_kg: 20, plates_kg: [1.25, 2.5, 5, 10, 20], pairs: 2 }

/** Each row was worked without this code. */
const worked: readonly { readonly wanted: number; readonly rack?: Rack; readonly kg: number; readonly each: readonly number[]; readonly from: string }[] = [
  { wanted: 20, kg: 20, each: [], from: 'the bar alone' },
  { wanted: 60, kg: 60, each: [20], from: 'by hand: (60 − 20)/2 = 20' },
  { wanted: 62.5, kg: 62.5, each: [20, 1.25], from: 'by hand: 21.25 a side' },
  { wanted: 61, kg: 60, each: [20], from: 'by hand: 60 is 1 away, 62.5 is 1.5' },
  { wanted: 61.25, kg: 60, each: [20], from: 'by hand: 60 and 62.5 are as near; the lighter' },
  { wanted: 61.5, kg: 62.5, each: [20, 1.25], from: 'by hand: 62.5 is 1 away, 60 is 1.5' },
  { wanted: 100, kg: 100, each: [20, 20], from: 'by hand: 40 a side, two of 20 rather than 20 + 10 + 10' },
  { wanted: 77.5, kg: 77.5, each: [20, 5, 2.5, 1.25], from: 'by hand: 28.75 a side' },
  { wanted: 0, kg: 20, each: [], from: 'the bar is the least there is' },
  { wanted: 21, kg: 20, each: [], from: 'by hand: 20 is 1 away, 22.5 is 1.5' },
  { wanted: 1000, kg: 175, each: [20, 20, 10, 10, 5, 5, 2.5, 2.5, 1.25, 1.25], from: 'by hand: everything, 2 × 38.75 = 77.5 a side: 20 + 155' },
  { wanted: 50, rack: { bar_kg: 20, plates_kg: [], pairs: 2 }, kg: 20, each: [], from: 'no plates' },
  { wanted: 50, rack: { ...gym, pairs: 0 }, kg: 20, each: [], from: 'none of any plate' },
  { wanted: 56, rack: { bar_kg: 8, plates_kg: [6, 9], pairs: 3 }, kg: 56, each: [9, 9, 6], from: 'by hand: 24 a side: 9 + 9 + 6, three plates; 6 × 4 is one 6 too many' },
  { wanted: 30, rack: { bar_kg: 10, plates_kg: [4, 6, 9], pairs: 2 }, kg: 30, each: [6, 4], from: 'by hand: 10 a side is 6 + 4; the heaviest first, 9, would have come to 9 and stopped' },
  { wanted: 25.5, rack: { bar_kg: 20, plates_kg: [0.25, 2.5, 2.5], pairs: 1 }, kg: 25.5, each: [2.5, 0.25], from: 'by hand: 2.75 a side; a size named twice is still one size' },
]

for (const { wanted, rack = gym, kg, each, from } of worked) {
  test(`${wanted} kg of ${rack.bar_kg} and ${rack.plates_kg.join(', ') || 'nothing'}: ${kg} kg — ${from}`, () => assert.deepEqual(loadable(wanted, rack), { kg, each_side_kg: each }))
}

/** Every way to load a side, one count for each size: slow, and plain to see. */
function everyWay({ bar_kg, plates_kg, pairs }: Rack): readonly { readonly kg: number; readonly plates: number }[] {
  return [...new Set(plates_kg)].reduce<{ kg: number; plates: number }[]>((ways, size) => ways.flatMap(({ kg, plates }) => Array.from({ length: pairs + 1 }, (_, count) => ({ kg: kg + 2 * size * count, plates: plates + count }))), [{ kg: bar_kg, plates: 0 }])
}

/** The nearest, of two as near the lighter, of two as heavy the one of fewer plates. Quarters of a kilogram come out exact. */
function byForce(wanted: number, rack: Rack): { readonly kg: number; readonly plates: number } {
  const [best] = everyWay(rack).toSorted((a, b) => Math.abs(a.kg - wanted) - Math.abs(b.kg - wanted) || a.kg - b.kg || a.plates - b.plates)
  return best ?? assert.fail()
}

const quarters = (min: number, max: number) => fc.integer({ min: 4 * min, max: 4 * max }).map((count) => count / 4)
const racks: fc.Arbitrary<Rack> = fc.record({ bar_kg: quarters(0, 25), plates_kg: fc.array(quarters(0.25, 25), { maxLength: 5 }), pairs: fc.integer({ min: 0, max: 3 }) })
const wishes = quarters(0, 300)

test('what is loaded is the best of every way there is', () => {
  fc.assert(
    fc.property(wishes, racks, (wanted, rack) => {
      const { kg, each_side_kg } = loadable(wanted, rack)
      const best = byForce(wanted, rack)
      assert.equal(kg, best.kg)
      assert.equal(each_side_kg.length, best.plates)
    }),
    { numRuns: 500 },
  )
})

test('a wish between the quarters is met as near as one on them', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 300, noNaN: true }), racks, (wanted, rack) => {
      const { kg } = loadable(wanted, rack)
      near(Math.abs(kg - wanted), Math.abs(byForce(wanted, rack).kg - wanted), 1e-9)
    }),
  )
})

// Identities.

const sum = (each: readonly number[]): number => each.reduce((total, size) => total + size, 0)

test('the mass is the bar and both sides, and the sides are heaviest first', () => {
  fc.assert(
    fc.property(wishes, racks, (wanted, rack) => {
      const { kg, each_side_kg } = loadable(wanted, rack)
      assert.equal(kg, rack.bar_kg + 2 * sum(each_side_kg))
      assert.deepEqual(
        each_side_kg,
        each_side_kg.toSorted((a, b) => b - a),
      )
    }),
  )
})

test('no plate is used that is not at hand, nor more often than it is', () => {
  fc.assert(
    fc.property(wishes, racks, (wanted, rack) => {
      const { each_side_kg } = loadable(wanted, rack)
      for (const size of each_side_kg) {
        assert.ok(rack.plates_kg.includes(size))
        assert.ok(each_side_kg.filter((other) => other === size).length <= rack.pairs)
      }
    }),
  )
})

test('what was loaded can be loaded again, exactly', () => {
  fc.assert(
    fc.property(wishes, racks, (wanted, rack) => {
      const once: Loaded = loadable(wanted, rack)
      assert.deepEqual(loadable(once.kg, rack), once)
    }),
  )
})

test('a heavier wish is never met by a lighter bar', () => {
  fc.assert(
    fc.property(wishes, wishes, racks, (a, b, rack) => {
      assert.ok(loadable(Math.min(a, b), rack).kg <= loadable(Math.max(a, b), rack).kg)
    }),
  )
})

test('another pair never takes the bar farther from the wish', () => {
  fc.assert(
    fc.property(wishes, racks, (wanted, rack) => {
      const off = (pairs: number): number => Math.abs(loadable(wanted, { ...rack, pairs }).kg - wanted)
      assert.ok(off(rack.pairs + 1) <= off(rack.pairs))
    }),
  )
})

test('a plate that is no whole number of quarters is weighed as it is', () => {
  assert.deepEqual(loadable(22.2, { bar_kg: 20, plates_kg: [1.1], pairs: 1 }), { kg: 22.2, each_side_kg: [1.1] }) // by hand: 20 + 2 × 1.1 = 22.2
  assert.deepEqual(loadable(20.2, { bar_kg: 20, plates_kg: [0.1], pairs: 1 }), { kg: 20.2, each_side_kg: [0.1] }) // by hand
})
