import assert from 'node:assert/strict'
import path from 'node:path'
import { Worker } from 'node:worker_threads'
import { test, vi } from 'vitest'
import * as checking from '../../src/check/index.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readPart, type Part } from '../../src/ladder/part.ts'
import { cacheIn, NO_CACHE, type Kept } from '../../src/site/cache.ts'
import { checkShare, checkTeam, shareOf, type CheckAsked } from '../../src/site/check-team.ts'
import { readingsOnce } from '../../src/site/readings-once.ts'
import * as threads from '../../src/site/thread.ts'
import type { Layer } from '../../src/ladder/curriculum.ts'
import { generatedLayer } from '../bench/generated.ts'
import { scratch } from './demo.ts'

const folder = await scratch()
const keptIn = (name: string): Kept => ({ cache: cacheIn(path.join(folder, name)), tool: 'this' })

/** Enough ladders for a dozen groups of files: links that lead nowhere, an aim that is not there, a section of no rung, and a page with a picture nobody can see. */
const layers = ((): Layer[] => {
  const { files } = generatedLayer(400)
  const mended = files.map(({ file, bytes }, index) => {
    const text = new TextDecoder().decode(bytes)
    const other = index % 9 === 4 ? text.replace('/safety/', '/nowhere/') : index % 50 === 7 ? text.replace('aim: rung-6', 'aim: rung-60') : index % 70 === 3 ? `${text}\n## Nobody knows\n` : text
    return { file, bytes: new TextEncoder().encode(file === 'content/safety.md' ? `${text}\n![](there.png)\n` : other) }
  })
  return [{ files: mended }]
})()
const asks = (part?: Part): CheckAsked => ({ part, today: '2026-01-01', asked: 'everything' })

/** What so many hands find, and on how many ladders this thread looked. */
async function foundBy(hands: number, kept: Kept, part?: Part, before: (team: { end(): void }) => void = () => undefined) {
  const team = await checkTeam(layers, kept, hands, asks(part))
  before(team)
  const { value } = readCurriculum(layers, undefined, await readingsOnce(layers, kept))
  assert.ok(value)
  const spied = vi.spyOn(checking, 'check')
  const found = await team.checked(value)
  const here = spied.mock.calls.length
  spied.mockRestore()
  team.end()
  return { found, here }
}

const alone = (part?: Part) => {
  const { value } = readCurriculum(layers)
  assert.ok(value)
  return checkShare(shareOf(value, asks(part)), asks(part))
}
const whole = alone()

test('however many hands check, and whatever was read before, they find what one finds, in its order', { timeout: 60_000 }, async () => {
  assert.ok(whole.findings.length > 50 && whole.findings.some(({ file }) => file === 'content/safety.md') && whole.untold.length > 50)
  const kept = keptIn('hands')
  for (const hands of [2, 2, 3]) {
    const { found, here } = await foundBy(hands, kept)
    assert.deepEqual(found, whole)
    assert.equal(here, 1, 'the others did their shares')
  }
})

test('the hands share a part of a check as they share the whole', { timeout: 60_000 }, async () => {
  const kept = keptIn('parts')
  for (const name of ['1/3', '3/3']) {
    const part = readPart(name)
    const { found } = await foundBy(2, kept, part)
    assert.deepEqual(found, alone(part))
    assert.ok(found.findings.length > 10 && found.findings.length < whole.findings.length)
  }
})

test('what another hand was asked and cannot answer is done here', { timeout: 60_000 }, async () => {
  const { found, here } = await foundBy(3, keptIn('ended'), undefined, (team) => team.end())
  assert.deepEqual(found, whole)
  assert.equal(here, 3)
})

test('a hand that is gone before it was asked keeps nobody waiting', { timeout: 60_000 }, async () => {
  const spied = vi.spyOn(threads, 'threadOf').mockImplementation(() => new Worker('process.exit()', { eval: true }))
  const { found, here } = await foundBy(2, keptIn('gone'))
  spied.mockRestore()
  assert.deepEqual(found, whole)
  assert.equal(here, 2)
})

test('where nothing can be kept, one hand does it all', async () => {
  const { found, here } = await foundBy(2, { cache: NO_CACHE, tool: 'this' })
  assert.deepEqual(found, whole)
  assert.equal(here, 1)
})

test('the hands that read ahead leave nothing unread, and what they kept is what one hand would keep', { timeout: 60_000 }, async () => {
  const kept = keptIn('ahead')
  const team = await checkTeam(layers, kept, 3, asks())
  team.end()
  const other = keptIn('one')
  await readingsOnce(layers, other)
  const entries = async ({ cache }: Kept) => Promise.all((await groups()).map(async ({ from }) => Buffer.from((await cache.known('readings of ladder files, this', from)) ?? []).toString()))
  const all = await entries(kept)
  assert.ok(all.length > 8 && all.every((entry) => entry !== ''))
  assert.deepEqual(all, await entries(other))
})

const groups = async () => {
  const { unread } = await import('../../src/site/readings-once.ts')
  return unread(layers, { cache: NO_CACHE, tool: 'this' })
}
