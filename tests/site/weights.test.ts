import assert from 'node:assert/strict'
import { mkdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { tooHeavy, weights, weightTable } from '../../src/site/weights.ts'
import { scratch } from './demo.ts'

const folder = await scratch()

function site(files: Readonly<Record<string, number>>): string {
  const place = path.join(folder, String(Object.keys(files).length))
  for (const [name, bytes] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(place, name)), { recursive: true })
    writeFileSync(path.join(place, name), 'a'.repeat(bytes))
  }
  return place
}

test('the heaviest of each kind is weighed as it is sent, and what is over its limit is named', async () => {
  const place = site({
    'row/index.html': 50_000, 'row/index.html.br': 9_000, 'press/index.html': 15_000, 'press/floor/index.html': 40_000, 'press/floor/index.html.br': 3_000,
    'row/low/index.html': 2_000, 'safety/index.html': 5_000, 'cards/wall/row/index.html': 90_000, 'editions/1/row/index.html': 90_000,
    'assets/handbook.css': 12_000, 'assets/handbook.css.br': 4_096, 'assets/handbook.js': 1_024, 'assets/chunk-A.js': 2_048, 'assets/my-ladders-B.js': 60_000,
  })
  const all = await weights(place, ['row', 'press'])
  assert.deepEqual(all.map(({ file, bytes }) => `${file} ${bytes}`), [
    'press/index.html 15000',
    'press/floor/index.html 3000',
    'safety/index.html 5000',
    'assets/handbook.css 4096',
    'assets/handbook.js 1024',
    `press/index.html ${15_000 + 4_096 + 1_024 + 2_048}`, // page, stylesheet and the scripts of a ladder page
  ])
  assert.deepEqual(tooHeavy(all).map(({ says }) => says), ['a ladder'])
  assert.match(weightTable(all), /^ {2}a ladder +14\.6 KiB of {2}14\.0 KiB {2}too heavy {2}press\/index\.html$/m)
})

test('a handbook without a ladder is weighed as well', async () => {
  const place = site({ 'index.html': 100, 'assets/handbook.css': 10, 'assets/handbook.js': 10 })
  assert.deepEqual((await weights(place, [])).map(({ file }) => file), ['index.html', 'assets/handbook.css', 'assets/handbook.js'])
})
