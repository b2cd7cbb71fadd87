import assert from 'node:assert/strict'
import { test } from 'vitest'
import type { Standard } from '../../src/ladder/schema.ts'
import { entryText, fullEntry } from '../../src/measure/entry.ts'

const STANDARD: Standard = { sets: 3, reps: 12, sessions: 2, rest_s: 90, reserve_reps: 1 }

const entries = [
  { says: 'an entry that says nothing is the standard', entry: {}, full: { sets: 3, amount: { unit: 'reps', value: 12 }, sessions: 2, reserve_reps: 1 } },
  { says: 'more repetitions keep the sets and sessions of the standard', entry: { reps: 15 }, full: { sets: 3, amount: { unit: 'reps', value: 15 }, sessions: 2, reserve_reps: 1 } },
  { says: 'other sets keep the repetitions of the standard', entry: { sets: 2 }, full: { sets: 2, amount: { unit: 'reps', value: 12 }, sessions: 2, reserve_reps: 1 } },
  { says: 'seconds take the place of repetitions', entry: { seconds: 40 }, full: { sets: 3, amount: { unit: 'seconds', value: 40 }, sessions: 2, reserve_reps: 1 } },
  { says: 'metres take the place of repetitions', entry: { metres: 25 }, full: { sets: 3, amount: { unit: 'metres', value: 25 }, sessions: 2, reserve_reps: 1 } },
  { says: 'a reserve of none is a reserve that was given', entry: { reserve_reps: 0 }, full: { sets: 3, amount: { unit: 'reps', value: 12 }, sessions: 2, reserve_reps: 0 } },
  { says: 'every part may be its own', entry: { sets: 5, reps: 5, sessions: 4, reserve_reps: 3 }, full: { sets: 5, amount: { unit: 'reps', value: 5 }, sessions: 4, reserve_reps: 3 } },
] as const

for (const { says, entry, full } of entries) test(says, () => assert.deepEqual(fullEntry(STANDARD, entry), full))

test('where neither says how much, no amount is made up', () => {
  assert.equal(fullEntry({ sets: 3, sessions: 2, rest_s: 90, reserve_reps: 0 }, { sets: 2 }).amount, undefined)
})

const texts = [
  { sets: 3, amount: { unit: 'reps', value: 12 }, sessions: 2, text: '3 sets of 12 repetitions, 2 sessions running' },
  { sets: 1, amount: { unit: 'reps', value: 1 }, sessions: 1, text: '1 set of 1 repetition, in one session' },
  { sets: 2, amount: { unit: 'seconds', value: 30 }, sessions: 3, text: '2 sets of 30 s, 3 sessions running' },
  { sets: 4, amount: { unit: 'metres', value: 20 }, sessions: 1, text: '4 sets of 20 m, in one session' },
  { sets: 2, amount: undefined, sessions: 2, text: '2 sets, 2 sessions running' },
] as const

for (const { text, ...entry } of texts) test(`an entry is said as "${text}"`, () => assert.equal(entryText({ ...entry, reserve_reps: 0 }), text))
