import assert from 'node:assert/strict'
import { test } from 'vitest'
import { criteriaDigest } from '../../src/ladder/digest.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { inFiles, layer } from './layers.ts'
import { LADDER } from './said.ts'

/** The standing ladder of the layer below, with amendments of any number of layers over it. */
function layered(...amendments: readonly string[]) {
  const { value, findings } = readCurriculum([layer('below/', { 'ladders/balance.md': LADDER }), ...amendments.map((text, index) => layer(`layer${index}/`, { 'ladders/ours.md': text }))])
  const [ladder] = value?.ladders ?? []
  assert.ok(ladder)
  return { ladder, findings: inFiles(findings), order: ladder.rungs.map(({ id, after }) => `${id} after ${after.join() || 'nothing'}`) }
}

const amends = (rest: string): string => `---\namends: balance\nbecause: We train on sand.\n${rest}---\n`

test('a rung is added after another, described like any other, and said on the page', () => {
  const { ladder, findings, order } = layered(`${amends('rungs:\n  - { id: sand, title: On sand, after: [wall], load: { model: skill } }\n')}\n## On sand {#sand}\n\n### Cues\n- Quiet toes.\n`)
  assert.deepEqual(findings, [])
  assert.deepEqual(order, ['wall after nothing', 'sand after wall', 'free after wall'])
  assert.deepEqual(ladder.rungs[1]?.words?.cues, ['Quiet toes.'])
  assert.deepEqual(ladder.amended[0]?.what, [{ added: 'sand', title: 'On sand' }])
})

test('a rung added before another is what that one now follows', () => {
  const { findings, order } = layered(amends('rungs:\n  - { id: sand, title: On sand, before: free, load: { model: skill } }\n'))
  assert.deepEqual(findings, [])
  assert.deepEqual(order, ['wall after nothing', 'sand after wall', 'free after sand'])
})

test('a withdrawn rung leaves its heir, and what followed it follows what it followed', () => {
  const { ladder, findings, order } = layered(
    amends('rungs:\n  - { id: sand, title: On sand, before: free, load: { model: skill } }\n'),
    amends('withdraw:\n  - { id: sand, heir: free, because: There is no sand in winter. }\n'),
  )
  assert.deepEqual(findings, [])
  assert.deepEqual(order, ['wall after nothing', 'free after wall'])
  assert.deepEqual(ladder.retired, [{ id: 'sand', heir: 'free', because: 'There is no sand in winter.' }])
})

test('withdrawing, placing before, or adding what is not there is told with the nearest that is', () => {
  assert.deepEqual(layered(amends('withdraw:\n  - { id: fre, heir: wall, because: A slip. }\n')).findings, ['layer0/ladders/ours.md:5:5 "balance" has no rung "fre" to amend. Did you mean free? (amendments-fit)'])
  assert.deepEqual(layered(amends('rungs:\n  - { id: sand, title: On sand, before: fre, load: { model: skill } }\n')).findings, ['layer0/ladders/ours.md:5:33 "balance" has no rung "fre" to amend. Did you mean free? (amendments-fit)'])
  assert.deepEqual(layered(amends('rungs:\n  - { id: free, before: wall }\n')).findings, ['layer0/ladders/ours.md:5:17 "free" is already a rung of "balance". before is for new rungs; use after to move this one. (amendments-fit)'])
})

test('a safety note is taken out by its exact words, with a reason and a name, and shown', () => {
  const { ladder, findings } = layered(amends('withdraw_notes:\n  - { note: a fall in the last year, because: Our clinician sees everybody first., by: M. Reedwater }\n'))
  assert.deepEqual(findings, [])
  assert.deepEqual(ladder.ask_first, [])
  assert.deepEqual(ladder.withdrawn_notes, [{ note: 'a fall in the last year', because: 'Our clinician sees everybody first.', by: 'M. Reedwater', layer: 'A club' }])
})

test('a safety note cannot be taken out without a name, or by words that are not its own', () => {
  assert.deepEqual(layered(amends('withdraw_notes:\n  - { note: a fall in the last year, because: We say so. }\n')).findings, ['layer0/ladders/ours.md:5:5 by is not given here. Add it. (keys-are-given)'])
  const { ladder, findings } = layered(amends('withdraw_notes:\n  - { note: a fall, because: We say so., by: M. Reedwater }\n'))
  assert.deepEqual(findings, ['layer0/ladders/ours.md:5:5 "balance" has no safety note "a fall" to withdraw. Copy its exact words. (amendments-fit)'])
  assert.deepEqual(ladder.ask_first, ['a fall in the last year'])
})

test('an amendment written for a base that has moved is told which base it stands on now', () => {
  const digest = criteriaDigest(layered().ladder)
  assert.deepEqual(layered(amends(`base: ${JSON.stringify(digest)}\n`)).findings, [])
  assert.deepEqual(layered(amends('base: abc\n')).findings, [`layer0/ladders/ours.md:4:1 The ladder "balance" has changed since this amendment was written for abc. Look at what changed, then write base: ${digest}. (amendments-fit)`])
})

test('two layers that say the same of a rung are told apart', () => {
  const same = amends('rungs:\n  - { id: free, entry: { seconds: 40 } }\n')
  assert.deepEqual(layered(same, same.replace('sand', 'grass')).findings, ['layer1/ladders/ours.md:5:5 "free" is amended to what A club says already (entry seconds). Take it out. (amendments-fit)'])
})

test('a layer may ask for more supervision, not for less', () => {
  assert.deepEqual(layered(amends('supervision: coach\n')).findings, [])
  assert.deepEqual(layered(amends('supervision: coach\n'), amends('supervision: none\n')).findings, ['layer1/ladders/ours.md:4:1 "balance" asks for less supervision than the curriculum below (coach). A layer may ask for more, not for less. (amendments-fit)'])
})
