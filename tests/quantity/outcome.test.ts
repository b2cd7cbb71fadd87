import assert from 'node:assert/strict'
import { test } from 'vitest'
import { isMissing, missing } from '../../src/quantity/outcome.ts'

test('a reason is missing and says why', () => {
  const outcome = missing('the arms cannot bend that far in this position')
  assert.ok(isMissing(outcome))
  assert.deepEqual(outcome, { missing: 'the arms cannot bend that far in this position' })
})

for (const value of [0, -1, Number.NaN, '', 'missing', undefined, null, [], {}, { mid: 1 }]) {
  test(`${JSON.stringify(value) ?? 'undefined'} is a value, not a reason for one`, () => assert.equal(isMissing(value), false))
}
