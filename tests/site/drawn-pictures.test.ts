import assert from 'node:assert/strict'
import { inflateSync } from 'node:zlib'
import { test } from 'vitest'
import { measure } from '../../src/measure/measure.ts'
import { ENGLISH } from '../../src/page/tongue.ts'
import { webManifest } from '../../src/page/site-files.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readWorkspace } from '../../src/site/disk.ts'
import { paint } from '../../src/site/paint.ts'
import { iconFiles, shareFiles } from '../../src/site/drawn-pictures.ts'
import { png } from '../../src/site/png.ts'

/** Reads a PNG by its specification, without the code that writes one. */
function read(bytes: Buffer): { wide: number; high: number; at: (x: number, y: number) => number[] } {
  assert.deepEqual([...bytes.subarray(0, 8)], [137, 80, 78, 71, 13, 10, 26, 10])
  const chunks = new Map<string, Buffer>()
  for (let at = 8; at < bytes.length; ) {
    const long = bytes.readUInt32BE(at)
    chunks.set(bytes.subarray(at + 4, at + 8).toString('latin1'), bytes.subarray(at + 8, at + 8 + long))
    at += long + 12
  }
  const head = chunks.get('IHDR') ?? assert.fail('no IHDR')
  const [wide, high] = [head.readUInt32BE(0), head.readUInt32BE(4)]
  assert.deepEqual([...head.subarray(8)], [8, 2, 0, 0, 0])
  const rows = inflateSync(chunks.get('IDAT') ?? assert.fail('no IDAT'))
  assert.equal(rows.length, high * (wide * 3 + 1))
  return { wide, high, at: (x, y) => [...rows.subarray(y * (wide * 3 + 1) + 1 + x * 3).subarray(0, 3)] }
}

const RED = '#c00000'
const square = paint({ wide: 8, high: 8, ground: '#ffffff', shapes: [{ kind: 'box', at: [2, 2], wide: 4.5, high: 4, colour: RED }] })

test('a box fills its pixels, half of one where it ends half-way, and none beside', () => {
  const { at } = read(png(square))
  assert.deepEqual(at(2, 2), [192, 0, 0])
  assert.deepEqual(at(5, 5), [192, 0, 0])
  assert.deepEqual(at(6, 3), [224, 128, 128]) // by hand: half of 255 and 192, half of 255 and 0
  assert.deepEqual(at(1, 2), [255, 255, 255])
  assert.deepEqual(at(2, 6), [255, 255, 255])
})

test('a line with round ends is as thick as asked, and no longer than its ends', () => {
  const { at } = read(png(paint({ wide: 30, high: 20, ground: '#ffffff', shapes: [{ kind: 'stroke', from: [8, 10], to: [20, 10], thick: 6, colour: '#000000' }] })))
  for (const y of [7, 9, 12]) assert.deepEqual(at(14, y), [0, 0, 0])
  for (const y of [5, 14]) assert.deepEqual(at(14, y), [255, 255, 255])
  assert.deepEqual(at(6, 9), [0, 0, 0]) // inside the round end
  assert.deepEqual(at(5, 7), [255, 255, 255]) // its corner
})

test('the last chunk carries the checksum every PNG ends with — from: the PNG specification', () => {
  assert.equal(png(square).subarray(-12).toString('hex'), '0000000049454e44ae426082')
})

const { layers } = await readWorkspace(new URL('../../site-demo', import.meta.url).pathname)
const reading = readCurriculum(layers)
assert.ok('value' in reading && reading.value)
const curriculum = measure(reading.value)

test('every icon of the manifest is written, as large as it says', () => {
  const files = new Map(iconFiles(curriculum.handbook).map(({ name, bytes }) => [name, bytes]))
  const { icons } = JSON.parse(webManifest(curriculum, ENGLISH)) as { icons: { src: string; sizes: string; type: string }[] }
  assert.deepEqual(icons.filter(({ type }) => type === 'image/png').map(({ sizes }) => sizes), ['192x192', '512x512', '512x512'])
  for (const { src, sizes, type } of icons) {
    const bytes = files.get(src) ?? assert.fail(`${src} is not written`)
    if (type !== 'image/png') continue
    const { wide, high } = read(bytes as Buffer)
    assert.equal(`${wide}x${high}`, sizes)
  }
  for (const name of ['favicon.ico', 'assets/apple-touch-icon.png']) assert.ok(files.has(name), name)
})

test('a maskable icon keeps to the middle four fifths', () => {
  const { wide, at } = read(iconFiles(curriculum.handbook).find(({ name }) => name.includes('maskable'))?.bytes as Buffer)
  const ground = at(0, 0)
  for (let x = 0; x < wide; x += 1) {
    for (let y = 0; y < wide; y += 1) {
      if (Math.hypot(x - wide / 2, y - wide / 2) > 0.4 * wide) assert.deepEqual(at(x, y), ground)
    }
  }
})

test('a picture a ladder and one for the handbook stand beside links, where the address is known, the same bytes each time', () => {
  const once = shareFiles(curriculum)
  assert.deepEqual(once.map(({ name }) => name), ['handbook', ...curriculum.ladders.map(({ id }) => id)].map((name) => `assets/share/${name}.png`))
  assert.deepEqual(shareFiles(curriculum).map(({ bytes }) => Buffer.from(bytes).toString('base64')), once.map(({ bytes }) => Buffer.from(bytes).toString('base64')))
  const { wide, high } = read(once[0]?.bytes as Buffer)
  assert.deepEqual([wide, high], [1200, 630])
  const { address: _, ...nowhere } = curriculum.handbook
  assert.deepEqual(shareFiles({ ...curriculum, handbook: nowhere }), [])
})

test('the bars of a ladder are as long as its loads', () => {
  const index = curriculum.ladders.findIndex(({ id }) => id === 'press-up')
  const { at } = read(shareFiles(curriculum)[index + 1]?.bytes as Buffer)
  const bar = at(400, 92)
  const lengths = Array.from({ length: 630 }, (_, y) => Array.from({ length: 750 }, (__, x) => at(380 + x, y)).filter((pixel) => pixel.join() === bar.join()).length)
  const rows = lengths.filter((long, y) => long > 100 && long !== lengths[y - 1])
  const loads = (curriculum.ladders[index]?.rungs ?? []).flatMap(({ outcome }) => ('missing' in outcome ? [] : [outcome.load.mid]))
  assert.equal(rows.length, loads.length)
  for (const [row, long] of rows.entries()) assert.ok(Math.abs(long / (rows[0] ?? 1) - (loads[row] ?? 0) / (loads[0] ?? 1)) < 0.01, `rung ${row + 1}`) // a pixel in a hundred
})
