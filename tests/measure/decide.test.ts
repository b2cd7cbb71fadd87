import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { sources } from '../../src/load/sources.ts'
import { decide, decisionRules, type Session } from '../../src/measure/decide.ts'
import type { FullEntry } from '../../src/measure/entry.ts'

/** Three sets of twelve, twice running. */
const STANDARD: FullEntry = { sets: 3, amount: { unit: 'reps', value: 12 }, sessions: 2, reserve_reps: 0 }
const FIRST = 3

const session = (amounts: readonly number[], more: Partial<Session> = {}): Session => ({ amounts, sets_out_of_form: 0, pain_during: 0, ...more })
const MET = session([12, 12, 12])

const worked: readonly { says: string; today: Session; before?: readonly Session[]; decision: string; because: string; from: string }[] = [
  { says: 'pain of 6', today: session([12, 12, 12], { pain_during: 6 }), before: [MET], decision: 'stop', because: 'pain was 6 of 10', from: '6 > 5, whatever else was shown' },
  { says: 'pain of 5', today: session([12, 12, 12], { pain_during: 5 }), before: [MET], decision: 'hold', because: 'pain was 5 of 10', from: '5 is not above 5, and above 2' },
  { says: 'pain of 2', today: session([12, 12, 12], { pain_during: 2 }), before: [MET], decision: 'move on', because: 'the standard was met in 2 sessions running', from: '2 is not above 2' },
  { says: 'pain next morning above the usual', today: session([12, 12, 12], { pain_next_morning: 3, pain_usual: 2 }), before: [MET], decision: 'step back', because: 'pain next morning was 3, usually 2', from: '3 > 2' },
  { says: 'pain next morning where the usual is not known', today: session([12, 12, 12], { pain_next_morning: 1 }), before: [MET], decision: 'step back', because: 'pain next morning was 1', from: 'no usual pain is made up' },
  { says: 'pain next morning as usual', today: session([12, 12, 12], { pain_next_morning: 2, pain_usual: 2 }), before: [MET], decision: 'move on', because: 'the standard was met in 2 sessions running', from: '2 is not above 2' },
  { says: 'form lost in two sets', today: session([12, 12, 12], { sets_out_of_form: 2 }), before: [MET], decision: 'step back', because: 'form was lost in 2 sets', from: 'two sets' },
  { says: 'form lost in one set', today: session([12, 12, 12], { sets_out_of_form: 1 }), before: [MET], decision: 'hold', because: 'form was lost in one set', from: 'one set' },
  { says: 'a best set short of the first repetitions', today: session([2, 1, 1]), decision: 'step back', because: 'the best set was 2, and 3 are the fewest to begin with', from: '2 < 3' },
  { says: 'a best set of just the first repetitions', today: session([3, 1, 1]), decision: 'hold', because: 'the standard is not met yet', from: '3 is not below 3' },
  { says: 'the standard twice running', today: MET, before: [MET], decision: 'move on', because: 'the standard was met in 2 sessions running', from: '3 sets of 12, twice' },
  { says: 'more than the standard', today: session([14, 13, 12, 5]), before: [session([12, 15, 12])], decision: 'move on', because: 'the standard was met in 2 sessions running', from: 'three sets of at least 12 in each' },
  { says: 'the standard once', today: MET, decision: 'hold', because: 'the standard was met; it is asked for again', from: 'one of two' },
  { says: 'the standard once, after a session short of it', today: MET, before: [session([12, 12, 11]), MET], decision: 'hold', because: 'the standard was met; it is asked for again', from: 'not running' },
  { says: 'the standard once, after one out of form', today: MET, before: [session([12, 12, 12], { sets_out_of_form: 1 })], decision: 'hold', because: 'the standard was met; it is asked for again', from: 'out of form does not count' },
  { says: 'one repetition short', today: session([12, 12, 11]), before: [MET], decision: 'hold', because: 'the standard is not met yet', from: '11 < 12' },
  { says: 'one set short', today: session([20, 20]), before: [MET], decision: 'hold', because: 'the standard is not met yet', from: 'two sets of three' },
]

for (const { says, today, before = [], decision, because, from } of worked) {
  test(`${says}: ${decision}, because ${because} — ${from}`, () => {
    const decided = decide(today, before, STANDARD, FIRST)
    assert.deepEqual([decided.decision, decided.because], [decision, because])
  })
}

test('where once is enough, once is a session', () => {
  assert.equal(decide(MET, [], { ...STANDARD, sessions: 1 }, FIRST).because, 'the standard was met in 1 session')
})

test('seconds are held to the standard, but to no first repetitions', () => {
  const held: FullEntry = { ...STANDARD, amount: { unit: 'seconds', value: 30 } }
  assert.equal(decide(session([2, 2, 2]), [], held, FIRST).decision, 'hold')
  assert.equal(decide(session([30, 30, 30]), [session([31, 30, 45])], held, FIRST).decision, 'move on')
})

test('without first repetitions, or without an amount, nobody steps back for too few and nobody moves on for nothing', () => {
  assert.equal(decide(session([1]), [], STANDARD, undefined).decision, 'hold')
  assert.equal(decide(session([99, 99, 99]), [session([99, 99, 99])], { ...STANDARD, amount: undefined }, FIRST).decision, 'hold')
})

test('each decision gives its rule and where that comes from', () => {
  for (const { source } of decisionRules) assert.ok(source === 'common practice' || source in sources, source)
  const { rule, source } = decide(session([1], { pain_during: 9 }), [], STANDARD, FIRST)
  assert.deepEqual([rule, source], ['Pain above 5 of 10 ends the session.', 'thomee1997'])
  assert.equal(decide(session([12, 12, 12], { pain_during: 3 }), [], STANDARD, FIRST).rule, 'Pain above 2 and up to 5 of 10 is acceptable, and holds the rung.')
})

const WORST = ['stop', 'step back', 'hold', 'move on']
const sessions = fc.record({ amounts: fc.array(fc.nat(20), { maxLength: 5 }), sets_out_of_form: fc.nat(3), pain_during: fc.nat(10), pain_next_morning: fc.nat(10), pain_usual: fc.nat(10) })

test('more pain, or more sets out of form, never decides more kindly', () => {
  fc.assert(
    fc.property(sessions, fc.array(sessions, { maxLength: 3 }), fc.nat(3), fc.nat(2), fc.nat(3), (today, before, pain, sets, morning) => {
      const worse = { ...today, pain_during: today.pain_during + pain, sets_out_of_form: today.sets_out_of_form + sets, pain_next_morning: today.pain_next_morning + morning }
      const [one, other] = [today, worse].map((each) => WORST.indexOf(decide(each, before, STANDARD, FIRST).decision)) as [number, number]
      assert.ok(other <= one)
    }),
    { numRuns: 500, seed: 7 },
  )
})

test('a repetition more in each set never decides less kindly', () => {
  fc.assert(
    fc.property(sessions, fc.array(sessions, { maxLength: 3 }), (today, before) => {
      const [one, other] = [today, { ...today, amounts: today.amounts.map((amount) => amount + 1) }].map((each) => WORST.indexOf(decide(each, before, STANDARD, FIRST).decision)) as [number, number]
      assert.ok(other >= one)
    }),
    { numRuns: 500, seed: 7 },
  )
})
