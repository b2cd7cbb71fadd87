import assert from 'node:assert/strict'
import path from 'node:path'
import { test } from 'vitest'
import { loadFor, loadsOf, middleFor, middlesOf } from '../../src/browser/own-loads.ts'
import { atOnce } from '../../src/quantity/work.ts'
import type { Athlete } from '../../src/load/model.ts'
import { AVERAGE, measure } from '../../src/measure/measure.ts'
import { ladderData } from '../../src/page/data.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readWorkspace } from '../../src/site/disk.ts'
import { REPOSITORY } from '../site/demo.ts'

/** Every rung of the demo as its pages' scripts get it, and readers from the shortest to the tallest there may be. */
const { layers } = await readWorkspace(path.join(REPOSITORY, 'site-demo'))
const { value: curriculum } = readCurriculum(layers)
assert.ok(curriculum)
const rungs = measure(curriculum).ladders.flatMap((ladder) => ladderData(ladder, '1').rungs)
const READERS: readonly Athlete[] = [AVERAGE, ...[1.2, 1.55, 1.9, 2.2].map((stature_m) => ({ stature_m, mass_kg: 80 }))]

test('the middle alone is the middle of the load, to the last digit, and is missing where the load is, for the same reason', () => {
  let refused = 0
  for (const rung of rungs) {
    for (const reader of READERS) {
      const load = loadFor(rung, reader)
      if (isMissing(load)) refused += 1
      assert.deepEqual(middleFor(rung, reader), isMissing(load) ? load : { mid: load.load.mid, unit: load.quantity.unit }, `${rung.address} at ${reader.stature_m} m`)
    }
  }
  assert.ok(refused > 20, `only ${refused} refused`)
})

test('rungs left off and taken up again have the loads they have one by one', () => {
  const some = rungs.slice(0, 12)
  assert.deepEqual(JSON.stringify(atOnce(loadsOf(some, AVERAGE))), JSON.stringify(some.map((rung) => loadFor(rung, AVERAGE))))
  assert.deepEqual(atOnce(middlesOf(some, AVERAGE)), some.map((rung) => middleFor(rung, AVERAGE)))
})
