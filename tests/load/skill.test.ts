import assert from 'node:assert/strict'
import { test } from 'vitest'
import { ask } from '../../src/load/model.ts'
import { skill } from '../../src/load/skill.ts'
import { ATHLETE } from './athlete.ts'

const REASON = 'this rung is a skill: what counts is how it is done, not how much it loads'

/** A skill has no number; its rows say where the reason comes from. */
const worked = [
  { athlete: ATHLETE, from: 'by definition: nothing is computed' },
  { athlete: { stature_m: 1.4, mass_kg: 40 }, from: 'by definition: it is the same for a small body' },
  { athlete: { stature_m: 2.1, mass_kg: 120 }, from: 'by definition: it is the same for a large body' },
]

for (const { athlete, from } of worked) {
  test(`a skill of somebody ${athlete.stature_m} m tall has a reason instead of a load — ${from}`, () => assert.deepEqual(ask(skill, {}, athlete), { missing: REASON }))
}

test('a skill asks for nothing, and what is written beside it changes nothing', () => {
  assert.deepEqual(Object.keys(skill.keys), [])
  assert.deepEqual(ask(skill, { hand_height_cm: 40 }, ATHLETE), { missing: REASON })
})
