import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { placement, type Placement } from '../../src/measure/place.ts'
import type { MeasuredLadder } from '../../src/measure/measure.ts'
import { reaches, repsText } from '../../src/measure/predict.ts'
import { isMissing, missing } from '../../src/quantity/outcome.ts'
import { exactly } from '../../src/quantity/spread.ts'
import { ladderOf, weights } from './ladders.ts'

const LADDER = ladderOf({ rungs: weights(40, 44, 48) })

function placed(ladder: MeasuredLadder, on: string, reps: number, reserve = 0): Placement {
  const outcome = placement(ladder, on, reps, reserve)
  assert.ok(!isMissing(outcome))
  return outcome
}

/** Each rung with what is to be expected, as it is said. */
const said = ({ rungs, highest }: Placement): Record<string, string> => ({
  ...Object.fromEntries(rungs.map(({ id, predicted }) => [id, isMissing(predicted) ? predicted.missing : repsText(predicted)])),
  highest: isMissing(highest) ? highest.missing : highest,
})

/** Each row was worked without this code. */
const worked = [
  {
    on: 'kg-40', reps: 10, reserve: 0,
    expect: { 'kg-40': '10', 'kg-44': '3 to 7', 'kg-48': '1 to 4', highest: 'kg-44' },
    from: 'by hand at 1.1: Lombardi 10/2.594 = 3.9, Brzycki 37 − 1.1 × 27 = 7.3; at 1.2: Mayhew (0.9165 − 0.522)/0.419 = e^−0.0603, 1.1; Brzycki 37 − 1.2 × 27 = 4.6',
  },
  { on: 'kg-40', reps: 8, reserve: 2, expect: { 'kg-40': '8', 'kg-44': '3 to 7', 'kg-48': '1 to 4', highest: 'kg-44' }, from: '8 with 2 left are 10 possible; the set that was done stays 8' },
  {
    on: 'kg-44', reps: 5, reserve: 0,
    expect: { 'kg-40': '7 to 12', 'kg-44': '5', 'kg-48': '1 to 2', highest: 'kg-44' },
    from: 'by hand at 1/1.1: Brzycki 37 − 32/1.1 = 7.9, Lombardi 5 × 2.594 = 13.0 less a little; at 12/11: Mayhew p(5) = 0.8403, 0.9167 leaves 1.1; Wathan 0.8578 × 12/11 = 0.9357 leaves 2.4, Brzycki 37 − 34.9 = 2.1',
  },
] as const

for (const { on, reps, reserve, expect, from } of worked) {
  test(`${reps} on ${on} with ${reserve} in reserve — ${from}`, () => assert.deepEqual(said(placed(LADDER, on, reps, reserve)), expect))
}

test('a rung that is not there is said by name', () => {
  assert.deepEqual(placement(LADDER, 'kg-99', 10, 0), missing('"kg-99" is no rung of "pull"'))
})

test('without first repetitions every rung is foretold and none is chosen', () => {
  const { rungs, highest } = placed(ladderOf({ rungs: weights(40, 44), first_reps: undefined }), 'kg-40', 10)
  assert.deepEqual([highest, rungs.map(({ predicted }) => isMissing(predicted))], [missing('first_reps is not given'), [false, false]])
})

test('where no rung surely leaves enough, that is said', () => {
  assert.deepEqual(placed(ladderOf({ rungs: weights(40, 44), first_reps: 11 }), 'kg-40', 10).highest, missing('no rung surely leaves 11 repetitions'))
})

const SKILL = 'this rung is a skill: what counts is how it is done, not how much it loads'

test('a skill is neither foretold nor foretells, and who can do it stands on it', () => {
  const ladder = ladderOf({ rungs: [['stick', 'load: { model: skill }'], ...weights(40, 44)], aim: 'kg-44' })
  assert.deepEqual(said(placed(ladder, 'kg-40', 10)), { stick: SKILL, 'kg-40': '10', 'kg-44': '3 to 7', highest: 'kg-44' })
  assert.deepEqual(said(placed(ladder, 'stick', 10)), { stick: '10', 'kg-40': SKILL, 'kg-44': SKILL, highest: 'stick' })
})

test('loads of different kinds are not compared, and landings are not foretold', () => {
  const mixed = ladderOf({ rungs: [...weights(40), ['legs', 'load: { model: leg-press-of-body, stance: two legs }']] })
  const [, legs] = placed(mixed, 'kg-40', 10).rungs
  assert.ok(legs && isMissing(legs.predicted))
  assert.match(legs.predicted.missing, /^.+ and .+ cannot be compared$/)
  const drops = ladderOf({ rungs: [['low', 'load: { model: landing, drop_height_cm: 20, travel_cm: 30 }'], ['high', 'load: { model: landing, drop_height_cm: 30, travel_cm: 30 }']] })
  assert.deepEqual(placed(drops, 'low', 10).rungs[1]?.predicted, missing('repetition formulas say nothing of equivalent fall height'))
})

test('a rung that loads nothing foretells nothing, and past twenty possible repetitions no formula does', () => {
  const [first, ...others] = LADDER.rungs
  assert.ok(first && !isMissing(first.outcome))
  const empty = { ...LADDER, rungs: [{ ...first, outcome: { ...first.outcome, load: exactly(0) } }, ...others] }
  assert.deepEqual(placed(empty, 'kg-40', 10).rungs[1]?.predicted, missing('the rung that was done loads nothing'))
  assert.deepEqual(placed(LADDER, 'kg-40', 19, 2).rungs[1]?.predicted, missing('no repetition formula holds at 21 repetitions; they hold from 1 to 20'))
})

test('of equally heavy rungs the one that was done is chosen, else the one with the fewest demands, whatever their order', () => {
  const same = 'load: { model: one-rep-max, load_kg: 44 }'
  const rungs: [string, string][] = [...weights(40), ['free', `after: [kg-40], demand: [balance, one side], ${same}`], ['plain', `after: [kg-40], ${same}`], ['long', `after: [kg-40], demand: [longer range], ${same}`]]
  for (const ladder of [ladderOf({ rungs, aim: 'plain' }), ladderOf({ rungs: [...weights(40), ...rungs.slice(1).toReversed()], aim: 'plain' })]) {
    assert.equal(placed(ladder, 'kg-40', 10).highest, 'plain')
    assert.equal(placed(ladder, 'free', 10).highest, 'free')
  }
})

test('a repetition more never places lower, and who is placed can surely do the first repetitions', () => {
  const climb = ladderOf({ rungs: weights(40, 43, 46, 50, 54, 59) })
  const load = (id: string): number => Number(id.slice(3))
  fc.assert(
    fc.property(fc.constantFrom(...climb.rungs.map(({ id }) => id)), fc.integer({ min: 1, max: 19 }), (on, reps) => {
      const [one, other] = [placed(climb, on, reps), placed(climb, on, reps + 1)]
      if (isMissing(one.highest)) return
      assert.ok(!isMissing(other.highest) && load(other.highest) >= load(one.highest))
      const predicted = one.rungs.find(({ id }) => id === one.highest)?.predicted
      assert.ok(predicted && !isMissing(predicted) && reaches(predicted.low, 3))
    }),
  )
})
