import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { brotliCompressSync, brotliDecompressSync, gunzipSync } from 'node:zlib'
import { test } from 'vitest'
import { waysOf } from '../../src/site/compress.ts'
import { REPOSITORY } from './demo.ts'

const text = readFileSync(path.join(REPOSITORY, 'ladders/press-up.md'))
const large = Buffer.concat(Array.from({ length: 20 }, () => text))

const made = (name: string, bytes: Uint8Array) => Promise.all(waysOf(name, bytes.length).map(async ({ ending, of }) => [ending, Buffer.from(await of(bytes))] as const))

for (const { name, bytes } of [{ name: 'press-up/index.html', bytes: text }, { name: 'cards/press-up/booklet/index.html', bytes: large }, { name: 'assets/handbook.js', bytes: text }]) {
  test(`both copies of ${name} unpack to it`, async () => {
    const copies = new Map(await made(name, bytes))
    assert.deepEqual(brotliDecompressSync(copies.get('br') ?? Buffer.of()), bytes)
    assert.deepEqual(gunzipSync(copies.get('gz') ?? Buffer.of()), bytes)
  })
}

test('what would not shrink has no copies', () => {
  for (const [name, size_bytes] of [['pictures/bench.webp', 50_000], ['pagefind/fragment/en_1.pf_fragment', 5000], ['assets/tiny.js', 200]] as const) assert.deepEqual(waysOf(name, size_bytes), [], name)
})

test('what comes with every page is compressed hardest, and a page as small as at the default window', async () => {
  const br_bytes = async (name: string): Promise<number> => new Map(await made(name, text)).get('br')?.length ?? 0
  assert.ok((await br_bytes('assets/handbook.css')) < (await br_bytes('press-up/index.html')))
  assert.ok((await br_bytes('press-up/index.html')) <= 1.01 * brotliCompressSync(text, { params: { 1: 9 } }).length)
})

test('ways that give other bytes are kept apart', () => {
  assert.equal(new Set([['a.js', 300], ['a.html', 300], ['a.html', 300_000]].flatMap(([name, size_bytes]) => waysOf(String(name), Number(size_bytes)).map(({ kind }) => kind))).size, 4)
})
