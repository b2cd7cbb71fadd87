import assert from 'node:assert/strict'
import { test } from 'vitest'
import { check } from '../../src/check/index.ts'
import { amendmentSchema } from '../../src/ladder/schema.ts'
import { measure } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { inFiles, layer } from './layers.ts'
import { edited, LADDER } from './said.ts'

/** The standing ladder of the layer below, and what an amendment of it comes to. */
function amendedBy(amendment: string, below = LADDER) {
  const { value, findings } = readCurriculum([layer('below/', { 'ladders/balance.md': below }), layer('', { 'ladders/ours.md': amendment })])
  assert.ok(value)
  const [ladder] = value.ladders
  assert.ok(ladder)
  return { ladder, findings: inFiles(findings), found: (rule: string) => inFiles(check(measure(value), '2026-11-25').findings.filter((finding) => finding.rule === rule)) }
}

const AMENDS = '---\namends: balance\nbecause: We train on sand.\n'

test('an amendment changes what it names, adds safety notes, and says why and by whom', () => {
  const { ladder, findings } = amendedBy(`${AMENDS}title: On sand
stop: [a cramp, an ankle that gives way]
ask_first: [a fear of sand]
rungs:
  - { id: free, title: Free on sand, cautions: [No glass in the sand.], entry: { sets: 3 } }
---
On sand.

## Free on sand {#free}

### Set up
Rake it.
`)
  assert.deepEqual(findings, [])
  assert.deepEqual(
    { title: ladder.title, stop: ladder.stop, ask_first: ladder.ask_first, intro: ladder.intro, layer: ladder.layer, amended: ladder.amended },
    {
      title: 'On sand',
      stop: ['an ankle that gives way', 'a cramp'],
      ask_first: ['a fall in the last year', 'a fear of sand'],
      intro: 'On sand.',
      layer: 'A club',
      amended: [{ by: 'A club', because: 'We train on sand.', what: [{ key: 'title' }, { key: 'stop' }, { key: 'ask_first' }, { changed: 'free', title: 'Free on sand' }] }],
    },
  )
  const [wall, free] = ladder.rungs
  assert.deepEqual([wall?.title, wall?.words?.cues], ['Beside a wall', ['Tall neck.']])
  assert.deepEqual([free?.title, free?.cautions, free?.entry, free?.words?.set_up, free?.words?.cues], ['Free on sand', ['No glass in the sand.'], { sets: 3 }, 'Rake it.', ['Quiet toes.']])
})

test('no amendment takes a safety note away', () => {
  const below = edited(LADDER, 'title: Free\n', 'title: Free\n    cautions: [A dry floor.]\n')
  const { ladder, findings } = amendedBy(`${AMENDS}stop: []\nask_first: []\nrungs:\n  - { id: free, cautions: [] }\n---\n`, below)
  assert.deepEqual(findings, [])
  assert.deepEqual([ladder.stop, ladder.ask_first, ladder.rungs[1]?.cautions], [['an ankle that gives way'], ['a fall in the last year'], ['A dry floor.']])
})

test('a safety note that says nothing is found where the amendment wrote it', () => {
  for (const nothing of ['.', '#', '—', '...']) {
    assert.deepEqual(amendedBy(`${AMENDS}stop: ["${nothing}"]\n---\n`).found('stop-signs-are-given'), [
      'ladders/ours.md:4:1 There is no stop sign here, or one that says nothing. Write when to stop, such as: sharp or spreading pain. (stop-signs-are-given)',
    ])
  }
  assert.deepEqual(amendedBy(`${AMENDS}stop: [" "]\n---\n`).findings, ['ladders/ours.md:4:8 stop is empty; write something or leave the key out. (values-fit)'])
  assert.deepEqual(amendedBy(`${AMENDS}stop: # pain\n---\n`).findings, ['ladders/ours.md:4:1 stop must be a list of at most 20. (values-fit)'])
})

test('an amount in one unit takes the place of one in another', () => {
  const { ladder, found: foundBy } = amendedBy(`${AMENDS}standard: { reps: 10 }\nrungs:\n  - { id: free, entry: { metres: 5 } }\n---\n`, edited(LADDER, 'title: Free\n', 'title: Free\n    entry: { seconds: 20 }\n'))
  assert.deepEqual([ladder.standard.reps, ladder.standard.seconds, ladder.standard.sets], [10, undefined, 2])
  assert.deepEqual([ladder.rungs[1]?.entry.metres, ladder.rungs[1]?.entry.seconds], [5, undefined])
  assert.deepEqual(foundBy('entry-can-be-met'), [])
})

test('what an amendment leaves as it was keeps its place, and what it changes stands in its own file', () => {
  assert.deepEqual(amendedBy(`${AMENDS}rungs:\n  - id: free\n    entry: { reps: 100 }\n---\n`).found('entry-can-be-met'), [
    'ladders/ours.md:6:5 The entry of "Free" asks for 200 repetitions in all, more than 150. Ask for fewer, or for a harder rung. (entry-can-be-met)',
  ])
  assert.deepEqual(amendedBy(`${AMENDS}title: Other\n---\n`, edited(LADDER, 'aim: free', 'aim: fre')).found('aim-exists'), ['below/ladders/balance.md:5:1 The aim is "fre", but no rung has that id. The rungs are: wall, free. (aim-exists)'])
})

/** Amendments that do not fit, and what is told. */
const misfits = [
  { says: 'a ladder that is not there', text: '---\namends: balanse\nbecause: Sand.\n---\n', finds: ['ladders/ours.md:2:1 There is no ladder "balanse" to amend. Did you mean balance? (amendments-fit)'] },
  { says: 'a ladder like no other', text: '---\namends: swimming\nbecause: Sand.\n---\n', finds: ['ladders/ours.md:2:1 There is no ladder "swimming" to amend. Name a ladder of the curriculum that is extended. (amendments-fit)'] },
  { says: 'a rung that is not there', text: `${AMENDS}rungs:\n  - { id: walls, title: Walls }\n---\n`, finds: ['ladders/ours.md:5:5 "balance" has no rung "walls" to amend. Did you mean wall? (amendments-fit)'] },
  { says: 'a rung like no other', text: `${AMENDS}rungs:\n  - { id: sand }\n---\n`, finds: ['ladders/ours.md:5:5 "balance" has no rung "sand" to amend. Name one of its rungs. (amendments-fit)'] },
  { says: 'a rung that is amended twice', text: `${AMENDS}rungs:\n  - { id: free, title: Freer }\n  - { id: free, cautions: [No glass.] }\n---\n`, finds: ['ladders/ours.md:6:5 The rung "free" is amended twice. Join the two. (amendments-fit)'] },
  { says: 'prose for a rung that is not there', text: `${AMENDS}---\n\n## On sand {#sand}\n\n### Cues\n- Dig in.\n`, finds: ['ladders/ours.md:6:1 "balance" has no rung "sand" to amend. Name one of its rungs. (amendments-fit)'] },
  { says: 'prose for no rung', text: `${AMENDS}---\n## Free\n`, finds: ['ladders/ours.md:5:1 "Free" belongs to no rung. Add the id of the rung it is for, such as {#floor}. (sections-match-rungs)'] },
  { says: 'no reason', text: '---\namends: balance\ntitle: A\n---\n', finds: ['ladders/ours.md:2:1 because is not given here. Add it. (keys-are-given)'] },
  { says: 'an aim of its own', text: `${AMENDS}aim: wall\n---\n`, finds: [`ladders/ours.md:4:1 There is no key "aim" here. Known keys: ${Object.keys(amendmentSchema.shape).join(', ')}. (keys-are-known)`] },
  { says: 'a ladder named by a number', text: '---\namends: 12\nbecause: Sand.\n---\n', finds: ['ladders/ours.md:2:1 amends must be a short name such as bench-hands. (values-fit)'] },
  { says: 'a rung without an id', text: `${AMENDS}rungs: [{ title: A }]\n---\n`, finds: ['ladders/ours.md:4:9 id is not given here. Add it. (keys-are-given)'] },
]

for (const { says, text, finds } of misfits) test(`an amendment with ${says} is told where and what to do`, () => assert.deepEqual(amendedBy(text).findings, finds))

test('layers are laid one over another in order, and two amendments of one layer by the names of their files', () => {
  const amending = (title: string) => `---\namends: balance\nbecause: It is ours.\ntitle: ${title}\n---\n`
  const { value, findings } = readCurriculum([layer('a/', { 'ladders/x.md': LADDER }), layer('b/', { 'ladders/2.md': amending('Third'), 'ladders/1.md': amending('Second') }), layer('', { 'ladders/x.md': amending('Fourth') })])
  assert.deepEqual(findings, [])
  assert.equal(value?.ladders[0]?.title, 'Fourth')
  assert.equal(value?.ladders[0]?.amended.length, 3)
})

test('an amendment of the sets alone leaves sessions, rest and reserve as they are below', () => {
  const { ladder } = amendedBy(`${AMENDS}standard: { sets: 3 }\n---\n`, edited(LADDER, 'seconds: 30 }', 'seconds: 30, sessions: 4, rest_s: 45, reserve_reps: 1 }'))
  assert.deepEqual(ladder.standard, { sets: 3, seconds: 30, sessions: 4, rest_s: 45, reserve_reps: 1 })
})
