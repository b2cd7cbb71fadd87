import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { exactly, interval, mapSpread, ratio, type Spread } from '../../src/quantity/spread.ts'

const three: Spread = { mid: 2, points: [3, 1, 2], over: 'three people' }

test('a figure that is the same for everybody has one point', () => assert.deepEqual(exactly(7), { mid: 7, points: [7], over: 'one value' }))

test('an interval runs from the lowest point to the highest, whatever their order', () => assert.deepEqual(interval(three), { low: 1, mid: 2, high: 3 }))

test('an interval always holds its middle, even where every point lies to one side', () => {
  assert.deepEqual(interval({ mid: 0, points: [4, 5], over: 'two' }), { low: 0, mid: 0, high: 5 })
})

test('a change reaches the middle and every point, and keeps what they run over', () => {
  assert.deepEqual(
    mapSpread(three, (value) => value * 10),
    { mid: 20, points: [30, 10, 20], over: 'three people' },
  )
})

test('two spreads over the same people are divided person by person', () => {
  const above: Spread = { mid: 3, points: [6, 4, 2], over: 'three people' }
  assert.deepEqual(ratio(above, three), { mid: 1.5, points: [2, 4, 1], over: 'three people' }) // by hand: 6/3, 4/1, 2/2
})

test('spreads over different people are divided in every pair', () => {
  const above: Spread = { mid: 6, points: [6, 12], over: 'two others' }
  assert.deepEqual(ratio(above, three), { mid: 3, points: [2, 6, 3, 4, 12, 6], over: 'two others against three people' })
})

test('spreads of one name but unlike length are divided in every pair', () => {
  assert.equal(ratio({ mid: 1, points: [1, 1], over: 'three people' }, three).points.length, 6)
})

const refused = new Error('bug: ratio over a load of zero')
test('a ratio over a middle of zero is a bug of the caller', () => assert.throws(() => ratio(three, { mid: 0, points: [1, 1, 1], over: 'three people' }), refused))
test('a ratio over a point of zero is a bug of the caller', () => assert.throws(() => ratio(three, { mid: 1, points: [1, 0, 1], over: 'three people' }), refused))

const spread = fc.record({
  mid: fc.double({ min: 0.01, max: 1000, noNaN: true }),
  points: fc.array(fc.double({ min: 0.01, max: 1000, noNaN: true }), { minLength: 1, maxLength: 8 }),
  over: fc.constantFrom('a', 'b'),
})

test('over itself a spread is 1 for everybody', () => {
  fc.assert(fc.property(spread, (of) => assert.deepEqual(ratio(of, of), { mid: 1, points: of.points.map(() => 1), over: of.over })))
})

test('doubling both halves of a ratio changes nothing', () => {
  const twice = (value: number): number => 2 * value
  fc.assert(fc.property(spread, spread, (above, below) => assert.deepEqual(ratio(mapSpread(above, twice), mapSpread(below, twice)), ratio(above, below))))
})
