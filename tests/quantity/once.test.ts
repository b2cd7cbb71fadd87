import { expect, test } from 'vitest'
import { lastOfEach, once, onceOfEach } from '../../src/quantity/once.ts'

test('what is made once is made when it is first wanted', () => {
  let made = 0
  const number = once(() => (made += 1))
  expect(made).toBe(0)
  expect([number(), number(), made]).toEqual([1, 1, 1])
})

test('what is made once of each value is made again of another that looks the same', () => {
  let made = 0
  const doubled = onceOfEach(({ of }: { readonly of: number }) => ((made += 1), of * 2))
  const three = { of: 3 }
  expect([doubled(three), doubled(three), made]).toEqual([6, 6, 1])
  expect([doubled({ of: 3 }), made]).toEqual([6, 2])
})

test('nothing, once made, is not made again', () => {
  let made = 0
  const nothing = onceOfEach((): undefined => void (made += 1))
  const of = {}
  expect([nothing(of), nothing(of), made]).toEqual([undefined, undefined, 1])
})

test('what was last made of a value is made again when something else it is made from is another, more or less', () => {
  const last = lastOfEach<number>()
  let made = 0
  const [rung, other] = [{}, {}]
  const of = (value: object, ...from: readonly unknown[]): number => last(value, from, () => (made += 1))
  expect([of(rung, 'en', other), of(rung, 'en', other)]).toEqual([1, 1])
  expect([of(rung, 'es', other), of(rung, 'es'), of(rung, 'es', other, other), of(rung, 'es', {}, other)]).toEqual([2, 3, 4, 5])
  expect([of(other, 'en'), of(rung, 'es', {}, other)]).toEqual([6, 7])
})
