import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { check } from '../../src/check/index.ts'
import type { Finding } from '../../src/ladder/finding.ts'
import { measure } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readWorkspace } from '../../src/site/disk.ts'
import { checked, TODAY } from './fixture.ts'

/** Ladders that are sound and unusual, one a file: whatever a rule finds in them is a false alarm. */
const FOLDER = path.join(import.meta.dirname, 'honest')
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.md'))

const said = (findings: readonly Finding[]): string[] => findings.map(({ file, line, message, rule }) => `${file}:${line} ${message} (${rule})`)

for (const file of files) {
  test(`${file}: nothing is found in an honest ladder`, () => {
    assert.deepEqual(said(checked(file, readFileSync(path.join(FOLDER, file), 'utf8')).findings), [])
  })
}

/** One slip in an honest ladder, and all that is then found: a rule that lets the unusual pass still finds what is wrong. */
const SLIPS: readonly { readonly file: string; readonly from: string; readonly to: string; readonly finds: string }[] = [
  { file: 'bankdruecken', from: 'load_kg: 12.5', to: 'load_kg: 13.2', finds: 'The title "Hantel von 12,5 kg" says 12,5 kg, the load is computed from 13.2. Make them the same. (titles-agree-with-loads)' },
  { file: 'range-in-a-title', from: 'hand_height_cm: 72 ', to: 'hand_height_cm: 77 ', finds: 'The title "Hands on a bar, 70 to 75 cm" says 70 to 75 cm, the load is computed from 77. Make them the same. (titles-agree-with-loads)' },
  { file: 'vest-comes-off-again', from: 'equipment: [vest]', to: 'equipment: [vest, bench]', finds: '"bench" is listed, but no rung speaks of it. Take it out, or say where it is used. (equipment-is-used)' },
  { file: 'rope-in-arabic', from: '[حبل, بساط]', to: '[حبل, بساط, كرسي]', finds: '"كرسي" is listed, but no rung speaks of it. Take it out, or say where it is used. (equipment-is-used)' },
  { file: 'plural-and-compound', from: 'a cone]', to: 'a drum]', finds: `"Step over two hurdles" uses "a drum", which is not in the ladder's equipment. Add it there. (equipment-is-listed)` },
  { file: 'nose-over-toes', from: '- Avoider moves first.', to: '- Avoid the floor.', finds: '"Avoid the floor." says what not to do. Say what to do instead. (cues-are-short)' },
  { file: 'long-cues', from: 'catch – again – now.', to: 'catch – again – now – and – rest.', finds: '"Turn – throw – follow – and – catch – again – now – and – rest." is long for a cue. Say it in at most 8 words. (cues-are-short)' },
  { file: 'good-leg-up', from: 'the good leg goes up first', to: 'a good step goes up first', finds: 'The form point "a good step goes up first and the other comes down first" cannot be seen: "good". Say what it looks like. (form-points-are-observable)' },
  { file: 'good-leg-up', from: 'both brakes are engaged on', to: 'the trunk is engaged beside', finds: 'The form point "the trunk is engaged beside any trolley left on the landing" cannot be seen: "engaged". Say what it looks like. (form-points-are-observable)' },
  { file: 'bold-starts', from: '- **End:** both feet', to: '- **Ending**, both feet', finds: 'The full rep of "Heel to toe along a line" has no line that begins with "End:". Write both as a list. (full-reps-have-a-start-and-an-end)' },
  { file: 'say-it-in-numbers', from: '| 2! |', to: '| ! |', finds: 'The fault "Back foot idle" has nothing under "say". Fill it in. (faults-have-remedies)' },
  { file: 'rope-in-japanese', from: 'stop: [胸痛,', to: 'stop: [胸,', finds: 'There is no stop sign here, or one that says nothing. Write when to stop, such as: sharp or spreading pain. (stop-signs-are-given)' },
  { file: 'roll-on-the-water', from: 'sets: 5, reps: 1,', to: 'sets: 5, reps: 2,', finds: 'first_reps is not given. Say with how many strict repetitions work on a new rung may begin. (first-reps-leave-room)' },
  { file: 'hold-then-lift', from: 'entry: { reps: 12 }', to: 'entry: { seconds: 30 }', finds: 'first_reps is given, but the standard counts no repetitions. Take it out. (first-reps-leave-room)' },
  { file: 'two-hundred-turns', from: 'entry: { reps: 200 }', to: 'entry: { reps: 80, sets: 2 }', finds: 'The entry of "Foot to foot, turning forward" asks for 160 repetitions in all, more than 150. Ask for fewer, or for a harder rung. (entry-can-be-met)' },
  { file: 'same-but-for-kit', from: '    equipment: [beam]', to: '    equipment: [foam pad]', finds: '"Split squat along a beam" has the load and demand of "Split squat on a foam pad". Join the two, or name what is different. (rungs-differ)' },
  { file: 'helped-by-elastic', from: 'cautions: [Check the elastic for nicks before every set and keep faces out of its line.]', to: 'cautions: [Keep faces out of its line.]', finds: '"Pull-up with the loop doubled" stretches a band, but none of its cautions speaks of it. Ask for it to be checked before every set. (banded-rungs-carry-a-caution)' },
  { file: 'straps-by-other-words', from: 'cautions: [The anchorage is rated by a competent person for this use.]', to: 'cautions: [Shoes that grip.]', finds: '"Lean back 26 degrees" hangs on an anchor, but none of its cautions speaks of it. Ask for an anchor rated by a competent person. (anchored-rungs-ask-for-a-rated-anchor)' },
]

for (const { file, from, to, finds } of SLIPS) {
  test(`${file}: "${to}" is found`, () => {
    const text = readFileSync(path.join(FOLDER, `${file}.md`), 'utf8')
    assert.equal(text.split(from).length, 2, `"${from}" stands there once`)
    assert.deepEqual(
      checked(file, text.replace(from, () => to)).findings.map(({ message, rule }) => `${message} (${rule})`),
      [finds],
    )
  })
}

test('there are at least thirty honest ladders, and none of them silences a rule', () => {
  assert.ok(files.length >= 30, `${files.length}`)
  for (const file of files) assert.doesNotMatch(readFileSync(path.join(FOLDER, file), 'utf8'), /^silence:/m, file)
})

const REPOSITORY = path.resolve(import.meta.dirname, '../..')

for (const workspace of ['.', 'site-demo']) {
  test(`${workspace}: nothing is found in a curriculum of our own`, async () => {
    const { layers, findings: disk } = await readWorkspace(path.join(REPOSITORY, workspace))
    const { value, findings: read } = readCurriculum(layers)
    assert.deepEqual(said([...disk, ...read]), [])
    assert.ok(value)
    assert.deepEqual(said(check(measure(value), TODAY).findings), [])
  })
}
