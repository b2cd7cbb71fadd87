import assert from 'node:assert/strict'
import { test } from 'vitest'
import { rungPage } from '../../src/page/rung-page.ts'
import { stepWords } from '../../src/page/step-words.ts'
import { ENGLISH } from '../../src/page/tongue.ts'
import { spoken, written } from '../../src/page/written.ts'
import { ladderOf, weights } from '../measure/ladders.ts'

const SKILL = 'this rung is a skill: what counts is how it is done, not how much it loads'
const ladder = ladderOf({ rungs: [...weights(40), ['balance', 'load: { model: skill }'], ['again', 'load: { model: skill }'], ...weights(44, 48.4), ['metres', 'entry: { metres: 20 }, load: { model: one-rep-max, load_kg: 60 }']] })

test('whose missing load a step is not told for is said, and the reason itself where it is another', () => {
  const said = Object.fromEntries(ladder.rungs.flatMap((rung) => rung.steps.map((step) => [rung.id, spoken(stepWords(step, ladder), ENGLISH)])))
  assert.deepEqual(said, {
    balance: 'step not computed, for that rung has no load',
    again: 'step not computed, for that rung has no load',
    'kg-44': 'step not computed, for the rung before has no load',
    'kg-48-4': 'a comfortable step',
    metres: 'step not computed: repetition formulas say nothing of metres',
  })
})

test('a rung says once why nothing of its step is known, in its working', () => {
  const page = (id: string): string => written(rungPage(ladder.rungs.find((rung) => rung.id === id) ?? assert.fail(id), ladder, '1').body, ENGLISH).replace(/<[^>]+>/g, '')
  assert.match(page('kg-44'), /How big a step it is cannot be computed, for the rung before has no load\. \n/)
  assert.equal(page('kg-44').split(SKILL).length - 1, 1)
  assert.match(page('balance'), /How big a step it is cannot be computed, for this rung has no load\./)
  assert.match(page('kg-48-4'), /A comfortable step\. Expect/)
})
