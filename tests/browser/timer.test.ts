import assert from 'node:assert/strict'
import { test } from 'vitest'
import { clock, left } from '../../src/browser/timer.ts'

test('a timer shows whole seconds, and never less than nothing', () => {
  assert.deepEqual([left(90_000, 0), left(90_000, 1), left(90_000, 89_001), left(90_000, 90_000), left(90_000, 200_000)], [90, 90, 1, 0, 0])
})

test('from a minute on a timer shows minutes and seconds', () => {
  assert.deepEqual([clock(0), clock(59), clock(60), clock(90), clock(605)], ['0', '59', '1:00', '1:30', '10:05'])
})
