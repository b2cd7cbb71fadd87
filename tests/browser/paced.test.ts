import assert from 'node:assert/strict'
import { test } from 'vitest'
import { atOnce, type Work } from '../../src/quantity/work.ts'
import { paced } from '../../src/browser/paced.ts'

/** Counts to three, and takes its time over each. */
function* counting(each_ms: number): Work<number> {
  for (let part = 0; part < 3; part += 1) {
    for (const began = performance.now(); performance.now() - began < each_ms; );
    yield
  }
  return 3
}

test('work in slices comes to what work in one go comes to', async () => {
  assert.equal(atOnce(counting(0)), 3)
  assert.equal(await paced(counting(0)), 3)
})

test('between the slices of long work others are heard, and short work is one slice', async () => {
  const heard = async (each_ms: number): Promise<number> => {
    let times = 0
    const other = setInterval(() => (times += 1))
    await paced(counting(each_ms))
    clearInterval(other)
    return times
  }
  assert.ok((await heard(20)) >= 2)
  assert.ok((await heard(0)) <= 1)
})
