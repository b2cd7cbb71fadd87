import assert from 'node:assert/strict'
import { isMissing, type Outcome } from '../../src/quantity/outcome.ts'

/** Fails unless `outcome` is a number within `within` of `expected`; a reason for no number fails with that reason. */
export function near(outcome: Outcome, expected: number, within: number): void {
  assert.ok(!isMissing(outcome), `no number: ${JSON.stringify(outcome)}`)
  assert.ok(Math.abs(outcome - expected) <= within, `${outcome} is not within ${within} of ${expected}`)
}
