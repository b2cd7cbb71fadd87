import assert from 'node:assert/strict'
import { test } from 'vitest'
import { isMissing } from '../../src/quantity/outcome.ts'
import { chiefVerdict, heirOf, historyOf, waysOn, type Ladder, type LadderRung } from '../../src/browser/log-decisions.ts'
import type { LoggedSession } from '../../src/browser/log-record.ts'

type Asked = { readonly from: string; readonly reps: number; readonly sessions?: number }

const rung = (id: string, ...asked: readonly Asked[]): LadderRung => ({
  id, title: id.toUpperCase(), address: `/row/${id}/`, demand: [], supervision: 'none', model: 'skill', inputs: {}, load: { missing: 'a skill has no load' }, figures: [], form: [], cautions: [],
  steps: asked.map(({ from, reps, sessions = 1 }) => ({
    from, entry: { sets: 2, amount: { unit: 'reps', value: reps }, sessions, reserve_reps: 0 },
    times: { missing: '' }, kind: { missing: '' }, predicted: { missing: '' }, computed_entry: { missing: '' }, block: { missing: '' },
  })),
})

/** Two ways lead on from "low": to "high" with ten, to "wide" with twelve. */
const LADDER: Ladder = {
  id: 'row', title: 'Row', first_reps: 4, retired: [],
  standard: { sets: 2, amount: { unit: 'reps', value: 10 }, sessions: 1, reserve_reps: 0 },
  rungs: [rung('low'), rung('high', { from: 'low', reps: 10 }), rung('wide', { from: 'low', reps: 12, sessions: 2 })],
}

const done = (on: string, amounts: readonly number[], more: Partial<LoggedSession> = {}): LoggedSession => ({ ladder: 'row', rung: 'low', on, unit: 'reps', amounts, sets_out_of_form: 0, pain_during: 0, edition: '1', ...more })

const decisions = (ladder: Ladder, ...sessions: readonly LoggedSession[]): string[][] =>
  historyOf(ladder, sessions).map(({ verdicts }) => verdicts.map(({ to, decided }) => `${to?.id ?? 'end'}: ${isMissing(decided) ? decided.missing : decided.decision}`))

test('each way on is decided by what it asks itself', () => {
  assert.deepEqual(decisions(LADDER, done('2026-01-01', [10, 10]), done('2026-01-02', [12, 12]), done('2026-01-03', [12, 12])), [
    ['high: move on', 'wide: hold'],
    ['high: move on', 'wide: hold'],
    ['high: move on', 'wide: move on'],
  ])
  assert.equal(chiefVerdict(historyOf({ ...LADDER, rungs: [rung('low'), rung('wide', { from: 'low', reps: 12 }), rung('high', { from: 'low', reps: 10 })] }, [done('2026-01-01', [10, 10])])[0]?.verdicts ?? [])?.to?.id, 'high')
})

test('at the end of a branch the ladder’s own standard decides, and leads nowhere', () => {
  assert.deepEqual(waysOn(LADDER, 'high'), [{ to: undefined, entry: { ...LADDER.standard } }])
  assert.deepEqual(decisions(LADDER, done('2026-01-01', [10, 10], { rung: 'high' })), [['end: move on']])
})

test('sessions stand by their days, on one day as they were logged; other ladders are none of it', () => {
  const order = historyOf(LADDER, [done('2026-01-03', [5]), done('2026-01-01', [6]), done('2026-01-01', [7]), done('2026-01-02', [8], { ladder: 'dip' })])
  assert.deepEqual(order.map(({ session }) => session.amounts[0]), [6, 7, 5])
})

test('a session in another unit shows no standard, and breaks a run of those that do', () => {
  const other = done('2026-01-02', [12, 12], { unit: 'seconds' })
  assert.deepEqual(decisions(LADDER, done('2026-01-01', [12, 12]), other, done('2026-01-03', [12, 12])), [
    ['high: move on', 'wide: hold'],
    ['high: it was logged in seconds, and the ladder asks for reps', 'wide: it was logged in seconds, and the ladder asks for reps'],
    ['high: move on', 'wide: hold'],
  ])
})

test('in whatever unit, pain above 5 stops and lost form steps back', () => {
  assert.deepEqual(decisions(LADDER, done('2026-01-01', [12, 12], { unit: 'seconds', pain_during: 6 }))[0], ['high: stop', 'wide: stop'])
  assert.deepEqual(decisions(LADDER, done('2026-01-01', [12, 12], { unit: 'seconds', sets_out_of_form: 2 }))[0], ['high: step back', 'wide: step back'])
})

test('a withdrawn rung counts on its heir, through as many as it takes', () => {
  const retired = [{ id: 'first', heir: 'second' }, { id: 'second', heir: 'low' }]
  assert.equal(heirOf({ ...LADDER, retired }, 'first'), 'low')
  assert.deepEqual(decisions({ ...LADDER, retired }, done('2026-01-01', [12, 12], { rung: 'first' }), done('2026-01-02', [12, 12])), [['high: move on', 'wide: hold'], ['high: move on', 'wide: move on']])
})

test('a rung that is there keeps its own sessions, whatever the list of withdrawn ones says', () => {
  assert.equal(heirOf({ ...LADDER, retired: [{ id: 'low', heir: 'high' }] }, 'low'), 'low')
})

test('heirs that go in a circle, or nowhere, leave a session where it was logged', () => {
  assert.equal(heirOf({ ...LADDER, retired: [{ id: 'a', heir: 'b' }, { id: 'b', heir: 'a' }] }, 'a'), 'a')
  assert.equal(heirOf({ ...LADDER, retired: [{ id: 'a', heir: 'gone' }] }, 'a'), 'a')
  assert.equal(heirOf(LADDER, 'unheard-of'), 'unheard-of')
})
