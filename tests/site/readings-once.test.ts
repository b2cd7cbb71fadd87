import assert from 'node:assert/strict'
import { appendFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { test, vi } from 'vitest'
import type { Layer, SourceFile } from '../../src/ladder/curriculum.ts'
import * as reader from '../../src/read/read-ladder.ts'
import * as translations from '../../src/read/read-translation.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { cacheIn, type Kept } from '../../src/site/cache.ts'
import { readingsOnce } from '../../src/site/readings-once.ts'
import { generatedLayer, generatedLayers } from '../bench/generated.ts'
import { REPOSITORY, run, scratch } from './demo.ts'

const folder = await scratch()
const keptIn = (name: string, tool = 'this'): Kept => ({ cache: cacheIn(path.join(folder, name)), tool })

/** The files of a workspace that readings are of, as they lie in the repository. */
const layerOf = (workspace: string, shown?: string): Layer => ({
  files: readdirSync(path.join(REPOSITORY, workspace), { recursive: true, encoding: 'utf8' })
    .filter((file) => /^(handbook\.yaml|(ladders|content)[\\/].*\.md|words\..*\.yaml|.*logo.*\.svg)$/.test(file) && !file.includes('node_modules'))
    .map((file) => ({ file: file.replaceAll('\\', '/'), bytes: readFileSync(path.join(REPOSITORY, workspace, file)), ...(shown === undefined ? {} : { shown: `${shown}/${file}` }) })),
})

/** All that a workspace reads as, in plain values: functions are asked. */
const plainly = (value: unknown): unknown => {
  if (typeof value === 'function') return plainly((value as () => unknown)())
  if (value instanceof Map) return new Map([...value].map(([key, each]) => [key, plainly(each)]))
  if (Array.isArray(value)) return value.map(plainly)
  return typeof value === 'object' && value !== null ? Object.fromEntries(Object.entries(value).map(([key, each]) => [key, plainly(each)])) : value
}

/** Reads once with an empty cache and once with a full one. Returns how many files were read each time. */
async function heldTo(layers: readonly Layer[], kept: Kept): Promise<number> {
  const asked = [vi.spyOn(reader, 'readLadderFile'), vi.spyOn(translations, 'readLadderTranslation')]
  const copied = again(layers)
  const reading = readCurriculum(copied, undefined, await readingsOnce(copied, kept))
  const count = asked.reduce((sum, { mock }) => sum + mock.calls.length, 0)
  for (const each of asked) each.mockRestore()
  const fresh = readCurriculum(again(layers))
  assert.deepEqual(plainly(reading), plainly(fresh))
  assert.ok(JSON.stringify(reading) === JSON.stringify(fresh), 'in the same order')
  return count
}

/** The same bytes, which nobody has seen. */
const again = (layers: readonly Layer[]): Layer[] => layers.map(({ files }) => ({ files: files.map((file) => ({ ...file, bytes: new Uint8Array(file.bytes) })) }))

const changed = (layers: readonly Layer[], file: string, from: string, to: string): Layer[] =>
  layers.map(({ files }) => ({ files: files.map((one): SourceFile => (one.file === file ? { ...one, bytes: new TextEncoder().encode(new TextDecoder().decode(one.bytes).replace(from, to)) } : one)) }))

const isLadder = ({ file }: SourceFile): boolean => /^ladders\/.*\.md$/.test(file)
const demo = [layerOf('.', '..'), layerOf('site-demo')]
const few = demo.slice(0, 1).map(({ files }) => ({ files: files.filter(({ file }) => /^(handbook\.yaml|ladders\/(landing|front-plank)\.md|.*logo.*\.svg)$/.test(file)) }))

test('every ladder, amendment and translation of the demo comes back from what was kept as it was read, with all of its places', async () => {
  const count = demo.flatMap(({ files }) => files.filter(isLadder)).length
  assert.equal(await heldTo(demo, keptIn('demo')), count)
  assert.equal(await heldTo(demo, keptIn('demo')), 0)
})

test('another tool reads everything anew', async () => {
  assert.equal(await heldTo(few, keptIn('tools', 'one')), await heldTo(few, keptIn('tools', 'other')))
})

test('of many ladders those that lie with a changed one are read again, and no others', async () => {
  const many = generatedLayers(120)
  const kept = keptIn('many')
  const all = await heldTo(many, kept)
  const other = changed(many, 'ladders/movement-5.md', 'Long neck', 'Tall neck')
  const read = await heldTo(other, kept)
  assert.ok(read >= 1 && read < all / 2, `${read} of ${all}`)
  assert.equal(await heldTo(other, kept), 0)
})

test('a ladder with something to put right is read each time, and says so each time', async () => {
  const wrong = changed(few, 'ladders/landing.md', '## ', '## Not ')
  const kept = keptIn('wrong')
  await heldTo(wrong, kept)
  assert.equal(await heldTo(wrong, kept), 1)
})

test('a check of two hundred files and more says the same when it knows what was read before, and reads only what has something to put right', { timeout: 60_000 }, async () => {
  const place = path.join(folder, 'two-hundred')
  for (const { file, bytes } of [generatedLayer(210)].flatMap(({ files }) => files)) {
    mkdirSync(path.dirname(path.join(place, file)), { recursive: true })
    writeFileSync(path.join(place, file), bytes)
  }
  appendFileSync(path.join(place, 'ladders/movement-7.md'), '\n## Nobody knows\n')
  process.env['RUNGBOOK_CACHE'] = path.join(folder, 'own')
  const first = await run(place, 'check')
  const asked = vi.spyOn(reader, 'readLadderFile')
  assert.deepEqual(await run(place, 'check'), first)
  assert.deepEqual(asked.mock.calls.map(([file]) => file), ['ladders/movement-7.md'])
  assert.match(first.out, /"Nobody knows" belongs to no rung/)
})

test('a number that JSON would change is read each time', async () => {
  const below = changed(few, 'ladders/landing.md', 'drop_height_cm: 40', 'drop_height_cm: -0')
  const kept = keptIn('below')
  await heldTo(below, kept)
  assert.equal(await heldTo(below, kept), 1)
})
