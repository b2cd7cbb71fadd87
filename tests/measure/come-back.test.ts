import assert from 'node:assert/strict'
import { test } from 'vitest'
import { comeBack } from '../../src/measure/come-back.ts'

const SHORT = { begin: 'the rung you were on', less_percent: [], says: 'Less than two weeks: carry on, a few repetitions short of your last.' }
const SAYS = 'After two weeks or more: at least 50, 30, 20 and 10 % less volume in the first four weeks.'
const MIDDLE = { begin: 'the rung you were on, tested first with one easy set', less_percent: [50, 30, 20, 10], says: SAYS }
const LONG = { begin: 'the rung before the one you were on, tested first with one easy set', less_percent: [50, 30, 20, 10], says: SAYS }

const worked = [
  { weeks: 0, expect: SHORT, from: 'no time off' },
  { weeks: 1.9, expect: SHORT, from: 'less than two weeks' },
  { weeks: 2, expect: MIDDLE, from: 'two weeks: the volume of caterisano2019' },
  { weeks: 5.9, expect: MIDDLE, from: 'less than six weeks' },
  { weeks: 6, expect: LONG, from: 'six weeks: strength itself is less, a rung lower' },
  { weeks: 520, expect: LONG, from: 'ten years' },
] as const

for (const { weeks, expect, from } of worked) test(`after ${weeks} weeks off one begins on ${expect.begin} — ${from}`, () => assert.deepEqual(comeBack(weeks), expect))

test('week by week the volume comes back, and never more than all of it was taken away', () => {
  const { less_percent } = comeBack(3)
  assert.deepEqual(less_percent.toSorted((a, b) => b - a), less_percent)
  for (const percent of less_percent) assert.ok(percent > 0 && percent < 100)
})
