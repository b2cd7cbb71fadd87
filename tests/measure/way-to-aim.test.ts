import assert from 'node:assert/strict'
import { test } from 'vitest'
import type { MeasuredLadder } from '../../src/measure/measure.ts'
import { climb, wayToAim, type WayToAim } from '../../src/measure/way-to-aim.ts'
import { isMissing, missing } from '../../src/quantity/outcome.ts'
import { ladderOf, weights } from './ladders.ts'

/** Each rung a tenth more than the one before. */
const EVEN = weights(40, 44, 48.4, 53.24)

const worked = [
  { says: 'two steps of ten repetitions', made: { rungs: EVEN.slice(0, 3) }, from_: 'kg-40', weeks: [5, 9], from: 'by hand: 3 to 7 at 1.1, so 10 − 7 + 2 = 5 to 10 − 3 + 2 = 9 sessions a step; 10 and 18 sessions at 2 a week' },
  { says: 'one step of ten repetitions', made: { rungs: EVEN.slice(0, 3) }, from_: 'kg-44', weeks: [3, 5], from: 'by hand: 5 and 9 sessions at 2 a week, rounded up' },
  { says: 'three steps of six repetitions at 1.4 a week', made: { rungs: EVEN, standard: 'reps: 6, sessions: 2', first_reps: 1, sessions_per_week: 1.4 }, from_: 'kg-40', weeks: [11, 15], from: 'by hand: at 1.1 from 6 Mayhew gives 1.6 and Wathan 3.1, so 6 − 3 + 2 = 5 to 6 − 1 + 2 = 7 a step; 15/1.4 = 10.7 and 21/1.4 = 15 exactly' },
] as const

/** The way from a rung to the aim, which lies above it. */
function told(ladder: MeasuredLadder, from: string): WayToAim {
  const way = wayToAim(ladder, from)
  return isMissing(way) ? assert.fail(way.missing) : way
}

for (const { says, made, from_, weeks, from } of worked) {
  test(`${says} take ${weeks.join(' to ')} weeks — ${from}`, () => assert.deepEqual(told(ladderOf(made), from_).weeks, weeks))
}

test('on the aim no time is left', () => {
  assert.deepEqual(wayToAim(ladderOf({ rungs: EVEN }), 'kg-53-24'), { weeks: [0, 0], told: [], untold: [] })
})

test('from a rung above the aim, on another branch or not there at all, the aim does not lie above', () => {
  const ladder = ladderOf({ rungs: [...EVEN, ['side', 'after: [kg-44], load: { model: one-rep-max, load_kg: 46 }']], aim: 'kg-48-4' })
  for (const from of ['kg-53-24', 'side', 'gone', '']) assert.deepEqual(wayToAim(ladder, from), missing('the aim does not lie above this rung'))
})

const FORKED = ladderOf({
  rungs: [...weights(40), ['left', 'load: { model: one-rep-max, load_kg: 44 }'], ['right', 'after: [kg-40], load: { model: one-rep-max, load_kg: 42 }'], ['top', 'after: [left, right], load: { model: one-rep-max, load_kg: 48 }']],
})

test('where two ways lead up, the one that is named first is taken, and each leads up', () => {
  const way = (from: string) => climb(FORKED, from)?.map(({ rung, step }) => `${step.from} → ${rung.id}`)
  assert.deepEqual([way('kg-40'), way('left'), way('right')], [['kg-40 → left', 'left → top'], ['left → top'], ['right → top']])
})

test('rungs that follow one another in a circle end the search', () => {
  const circle = ladderOf({ rungs: [['a', 'after: [b], load: { model: one-rep-max, load_kg: 40 }'], ['b', 'after: [a], load: { model: one-rep-max, load_kg: 44 }'], ['c', 'load: { model: one-rep-max, load_kg: 48 }']] })
  assert.equal(climb(circle, 'gone'), undefined)
  assert.deepEqual(climb(circle, 'a')?.map(({ rung }) => rung.id), ['b', 'c'])
})

test('where the time on some rungs is not computed, those are named with the reason, and the others added up', () => {
  const ladder = ladderOf({ rungs: [...weights(40), ['hold', 'load: { model: skill }'], ...weights(44, 48.4, 53.24)] })
  const { weeks, told: on, untold } = told(ladder, 'kg-40')
  const skill = 'this rung is a skill: what counts is how it is done, not how much it loads'
  assert.deepEqual([on.map(({ id }) => id), untold.map(({ rung: { id }, why }) => [id, why])], [['kg-48-4', 'kg-53-24'], [['hold', skill], ['kg-44', skill]]])
  assert.deepEqual(weeks, [5, 9]) // by hand: two even steps, as above
})
