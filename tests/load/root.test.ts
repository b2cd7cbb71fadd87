import { expect, test } from 'vitest'
import { root, rootWithin } from '../../src/load/root.ts'

/** A function, and how often it was asked. */
function counted(of: (value: number) => number | undefined) {
  const asked: number[] = []
  return { asked, of: (value: number) => (asked.push(value), of(value)) }
}

test('the lowest of several roots is found, to the last digits', () => {
  expect(root((value) => (value - 1 / 3) * (value - 0.7) * (value - 0.9), 0, 1)).toBeCloseTo(1 / 3, 12)
})

test('a smooth function is asked a few times after its change of sign is seen', () => {
  const { asked, of } = counted((value) => Math.cos(value) - value)
  expect(rootWithin(of, { at: 0, gives: 1 }, { at: 1, gives: Math.cos(1) - 1 }, 1e-12)).toBeCloseTo(0.7390851332151607, 12) // Dottie number
  expect(asked.length).toBeLessThanOrEqual(12) // halving would ask forty times
})

test('a jump from below to above is closed in on, as where a sign changes', () => {
  expect(rootWithin((value) => (value < 0.3 ? -1 : 5), { at: 0, gives: -1 }, { at: 1, gives: 5 }, 1e-9)).toBeCloseTo(0.3, 8)
})

test('a root at an end of the stretch is that end', () => {
  expect(rootWithin((value) => value - 2, { at: 2, gives: 0 }, { at: 3, gives: 1 }, 1e-9)).toBe(2)
  expect(rootWithin((value) => value - 3, { at: 2, gives: -1 }, { at: 3, gives: 0 }, 1e-9)).toBe(3)
})

test('there is no root where the sign never changes, or the function has a gap on the way', () => {
  expect(root((value) => value * value + 1, -1, 1)).toBeUndefined()
  expect(rootWithin((value) => (Math.abs(value - 0.5) < 0.1 ? undefined : value - 0.5), { at: 0, gives: -0.5 }, { at: 1, gives: 0.5 }, 1e-9)).toBeUndefined()
})
