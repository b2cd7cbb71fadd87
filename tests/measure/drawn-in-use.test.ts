import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { setImmediate as turn } from 'node:timers/promises'
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { test } from 'vitest'
import type { MeasuredLadder } from '../../src/measure/measure.ts'
import { measureLadder } from '../../src/measure/measure.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { readLadderFile } from '../../src/read/read-ladder.ts'

setFlagsFromString('--expose-gc')
const collect = runInNewContext('gc') as () => void

function pressUp(): MeasuredLadder {
  const file = path.resolve(import.meta.dirname, '../../ladders/press-up.md')
  const { value } = readLadderFile('ladders/press-up.md', readFileSync(file), '')
  if (value?.kind !== 'ladder') throw new Error('bug: the ladder does not read')
  return measureLadder(value.ladder, { rungs: new Set(), pages: new Set() })
}

const posesOf = ({ rungs }: MeasuredLadder) => rungs.map(({ outcome }) => (isMissing(outcome) ? [] : outcome.poses))

test('the poses of a ladder are kept while somebody looks, and make room after that: asked for again, they are the same', async () => {
  const ladder = pressUp()
  const [first] = posesOf(ladder)
  assert.equal(posesOf(ladder)[0], first)
  const text = JSON.stringify(posesOf(ladder))
  assert.ok(text.length > 1000)
  const gone = posesOf(ladder).slice(1).map((poses) => new WeakRef(poses))
  await turn()
  await turn()
  collect()
  assert.deepEqual(gone.map((poses) => poses.deref()).filter((poses) => poses !== undefined), [])
  assert.equal(JSON.stringify(posesOf(ladder)), text)
})
