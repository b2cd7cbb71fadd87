import assert from 'node:assert/strict'
import { mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, utimesSync, writeFileSync, existsSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, test } from 'vitest'
import { cacheFolder, cacheIn, NO_CACHE } from '../../src/site/cache.ts'

const folder = mkdtempSync(path.join(os.tmpdir(), 'rungbook-cache-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const fresh = (): string => mkdtempSync(path.join(folder, 'a'))
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)
const entries = (at: string): string[] => readdirSync(at, { recursive: true, encoding: 'utf8' }).filter((name) => /[/\\]/.test(name)).map((name) => path.join(at, name))

/** Makes a text, and counts how often. */
function maker(text: string) {
  const made = { times: 0, make: async () => ((made.times += 1), bytes(text)) }
  return made
}

test('what was made from the same is not made again, by this run or by another', async () => {
  const at = fresh()
  const drawing = maker('a drawing')
  for (const cache of [cacheIn(at), cacheIn(at)]) for (let time = 0; time < 2; time += 1) assert.deepEqual(Buffer.from(await cache.of('diagram', 'a --> b', drawing.make)).toString(), 'a drawing')
  assert.equal(drawing.times, 1)
})

test('what is made from something else, or by something else, is made', async () => {
  const cache = cacheIn(fresh())
  const drawing = maker('a drawing')
  for (const [kind, from] of [['diagram', 'a'], ['diagram', 'b'], ['diagram 2', 'a'], ['diagra', 'ma'], ['diagram', bytes('c')]] as const) await cache.of(kind, from, drawing.make)
  assert.equal(drawing.times, 5)
})

for (const { says, spoil } of [
  { says: 'was cut short', spoil: (file: string) => truncateSync(file, 70) },
  { says: 'is empty', spoil: (file: string) => truncateSync(file, 0) },
  { says: 'holds another’s bytes', spoil: (file: string) => writeFileSync(file, readFileSync(file, 'latin1').replace('drawing', 'spoiled')) },
]) {
  test(`an entry that ${says} is made again, and mended`, async () => {
    const at = fresh()
    const drawing = maker('a drawing')
    await cacheIn(at).of('diagram', 'a', drawing.make)
    const [file] = entries(at)
    assert.ok(file)
    spoil(file)
    assert.equal(Buffer.from(await cacheIn(at).of('diagram', 'a', drawing.make)).toString(), 'a drawing')
    await cacheIn(at).of('diagram', 'a', drawing.make)
    assert.equal(drawing.times, 2)
  })
}

test('where nothing can be kept, everything is made, and nothing is said', async () => {
  const file = path.join(fresh(), 'a-file')
  writeFileSync(file, '')
  const drawing = maker('a drawing')
  for (const cache of [cacheIn(path.join(file, 'below')), NO_CACHE]) for (let time = 0; time < 2; time += 1) assert.deepEqual(Buffer.from(await cache.of('diagram', 'a', drawing.make)).toString(), 'a drawing')
  assert.equal(drawing.times, 4)
})

test('what nobody asked for in a month is taken out, once a day, and nothing else in the folder', async () => {
  const at = fresh()
  const cache = cacheIn(at)
  await cache.of('diagram', 'old', maker('old').make)
  await cache.of('diagram', 'asked for', maker('asked for').make)
  writeFileSync(path.join(at, 'mine.txt'), '')
  const long = Date.now() / 1000 - 31 * 86_400
  for (const file of entries(at)) utimesSync(file, long, long)
  utimesSync(path.join(at, 'mine.txt'), long, long)
  await cache.of('diagram', 'asked for', maker('never').make)
  await cache.tidy()
  assert.equal(entries(at).length, 1)
  assert.ok(existsSync(path.join(at, 'mine.txt')))
  for (const file of entries(at)) utimesSync(file, long, long)
  await cache.tidy()
  assert.equal(entries(at).length, 1)
})

test('the folder is this person’s own, and never in a workspace', () => {
  const said = process.env['RUNGBOOK_CACHE']
  try {
    delete process.env['RUNGBOOK_CACHE']
    assert.ok(path.isAbsolute(cacheFolder()) && !cacheFolder().startsWith(process.cwd()))
    process.env['RUNGBOOK_CACHE'] = folder
    assert.equal(cacheFolder(), folder)
  } finally {
    if (said === undefined) delete process.env['RUNGBOOK_CACHE']
    else process.env['RUNGBOOK_CACHE'] = said
  }
})
