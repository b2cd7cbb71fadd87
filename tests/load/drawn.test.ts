import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { askDrawn } from '../../src/load/drawn.ts'
import { landing } from '../../src/load/landing.ts'
import { ask, type LoadModel } from '../../src/load/model.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { ATHLETE } from './athlete.ts'

const SRC = path.join(import.meta.dirname, '../../src')

/** Every file that a file brings with it. */
function brought(file: string, seen = new Set<string>()): Set<string> {
  if (seen.has(file)) return seen
  seen.add(file)
  for (const [, from = ''] of readFileSync(file, 'utf8').matchAll(/^import (?!type )[^']*'(\.[^']+)'/gm)) brought(path.join(path.dirname(file), from), seen)
  return seen
}

test('who computes loads brings no picture with them: what stands, lifts, lands or hangs is drawn from another door', () => {
  const drawing = [...brought(path.join(SRC, 'load/drawn.ts'))]
  const computing = brought(path.join(SRC, 'load/index.ts'))
  const makers = drawing.filter((file) => /load\/(\w+-)*(drawn|standing-body|(squat|lift|landing|heel-raise|leg-press)-pose)\.ts$/.test(file))
  assert.ok(makers.length >= 8, makers.join())
  assert.deepEqual(makers.filter((file) => computing.has(file)), [])
})

test('a picture adds its poses and what they assume, and moves no number', () => {
  const model = landing as unknown as LoadModel
  const [plain, drawn] = [ask(model, { drop_height_cm: 30 }, ATHLETE), askDrawn(model, { drop_height_cm: 30 }, ATHLETE)]
  assert.ok(!isMissing(plain) && !isMissing(drawn))
  assert.deepEqual({ ...drawn, poses: [], assumes: [] }, { ...plain, poses: [], assumes: [] })
  assert.deepEqual(plain.poses, [])
  assert.equal(drawn.poses.length, 2)
  assert.deepEqual(drawn.assumes.slice(0, plain.assumes.length), plain.assumes)
  assert.equal(drawn.assumes.length, plain.assumes.length + 1)
})

test('why a model gives no load is said as it is asked without a picture', () => {
  const model = landing as unknown as LoadModel
  assert.deepEqual(askDrawn(model, {}, ATHLETE), ask(model, {}, ATHLETE))
  assert.ok(isMissing(askDrawn(model, {}, ATHLETE)))
})
