import assert from 'node:assert/strict'
import { test } from 'vitest'
import { onceUnder } from '../../src/quantity/once.ts'

test('what stands under a name is made once, though it be nothing', () => {
  const kept = onceUnder<string | undefined>(10)
  const made: string[] = []
  const ask = (name: string, value: string | undefined) => kept(name, () => (made.push(name), value))
  assert.deepEqual([ask('a', 'one'), ask('b', undefined), ask('a', 'two'), ask('b', 'three')], ['one', undefined, 'one', undefined])
  assert.deepEqual(made, ['a', 'b'])
})

test('more than it may keep is forgotten, and made again', () => {
  const kept = onceUnder<number>(2)
  let times = 0
  const ask = (name: string) => kept(name, () => (times += 1))
  for (const name of ['a', 'b', 'a', 'b']) ask(name)
  assert.equal(times, 2)
  for (const name of ['c', 'a', 'b']) ask(name)
  assert.equal(times, 5)
})
