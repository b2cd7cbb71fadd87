import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { MOST_REPS } from '../../src/load/repetitions.ts'
import type { MeasuredLadder } from '../../src/measure/measure.ts'
import type { Reps } from '../../src/measure/predict.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { ladderOf, weights } from './ladders.ts'

const count = (reps: Reps): number => (reps === 'beyond' ? MOST_REPS + 1 : reps)

/** The fewest and the most to expect on each rung but the first. */
const foretold = ({ rungs }: MeasuredLadder): (readonly [low: number, high: number])[] =>
  rungs.flatMap(({ steps }) => steps.map(({ predicted }) => (isMissing(predicted) ? assert.fail(predicted.missing) : ([count(predicted.low), count(predicted.high)] as const))))

/** Asks for a repetition more before each step, and holds each step to at least what it left before. */
function holds(rungs: readonly (readonly [string, string])[], reps: number): void {
  const [one, other] = [reps, reps + 1].map((asked) => foretold(ladderOf({ rungs, standard: `reps: ${asked}, sessions: 2` }))) as [[number, number][], [number, number][]]
  for (const [index, [low, high]] of one.entries()) {
    const [nextLow = 0, nextHigh = 0] = other[index] ?? []
    assert.ok(nextLow >= low && nextHigh >= high, `${low} to ${high} became ${nextLow} to ${nextHigh}`)
  }
}

const asked = fc.integer({ min: 1, max: MOST_REPS - 1 })

test('raising a standard never lowers the first repetitions of the next step', () => {
  fc.assert(fc.property(fc.integer({ min: 10, max: 60 }), fc.array(fc.integer({ min: 80, max: 140 }), { minLength: 1, maxLength: 4 }), asked, (first, percents, reps) => {
    const kg = percents.reduce<number[]>((all, percent) => [...all, Math.round((all.at(-1) ?? first) * percent) / 100], [first])
    holds([...new Set(kg)].map((load, index) => [`r-${index}`, weights(load)[0]?.[1] ?? ''] as const), reps)
  }), { numRuns: 200, seed: 7 })
})

test('nor where the loads are known from many bodies only', () => {
  const heights = fc.tuple(fc.integer({ min: 50, max: 95 }), fc.integer({ min: 0, max: 45 }))
  fc.assert(fc.property(heights, asked, (pair, reps) => holds(pair.map((height, index) => [`r-${index}`, `load: { model: supported-body, facing: down, feet: toes, hands: surface, hand_height_cm: ${height} }`] as const), reps)), { numRuns: 12, seed: 7 })
})
