import assert from 'node:assert/strict'
import { test } from 'vitest'
import { inEnglish } from '../../src/page/html.ts'
import { ladderDiagram, ladderInWords } from '../../src/page/ladder-diagram.ts'
import { measureLadder } from '../../src/measure/measure.ts'
import { readLadderFile } from '../../src/read/read-ladder.ts'

/** A ladder with one branch, its last title given. */
function ladder(title: string) {
  const text = `---
id: plank
title: Plank
movement: hold
aim: long
equipment: [mat]
standard: { sets: 3, seconds: 30 }
form: [one line]
rungs:
  - { id: short, title: Short plank, load: { model: skill } }
  - { id: long, title: Long plank, demand: [longer range], load: { model: skill } }
  - { id: side, title: ${JSON.stringify(title)}, after: [short], entry: { seconds: 40 }, demand: [balance], load: { model: skill } }
stop: [pain anywhere]
ask_first: [back operated on]
---
`
  const { value } = readLadderFile('ladders/plank.md', new TextEncoder().encode(text), 'Tarnwick Gym Club')
  assert.ok(value?.kind === 'ladder')
  return measureLadder(value.ladder, { rungs: new Set(), pages: new Set() })
}

test('a diagram rises from the first rung, branches where the ladder does, and writes the entry on each arrow', () => {
  assert.equal(
    ladderDiagram(ladder('Side plank')),
    `flowchart BT
  r0["Short plank
load not computed"]
  r1["Long plank
load not computed
also: longer range
the aim"]
  class r1 aim
  r2["Side plank
load not computed
also: balance"]
  r0 -->|"3 sets of 30 s, 2 sessions
running"| r1
  r0 -->|"3 sets of 40 s, 2 sessions
running"| r2
`,
  )
})

test('the list beside it says the same', () => {
  const words = inEnglish(ladderInWords(ladder('Side plank'))).replace(/<[^>]+>/g, '').trim()
  assert.equal(
    words,
    `Short plank: load not computed
Long plank: load not computed; also: longer range; the aim. After Short plank: 3 sets of 30 s, 2 sessions running
Side plank: load not computed; also: balance. After Short plank: 3 sets of 40 s, 2 sessions running`,
  )
})

test('a title cannot end its label, begin markup, or become a command', () => {
  const source = ladderDiagram(ladder('A "#quot;" <b> `x` %%{init}'))
  assert.ok(source.includes('r2["A #quot;#35;quot;#quot; <b> `x`\n%%{init}'), source)
})
