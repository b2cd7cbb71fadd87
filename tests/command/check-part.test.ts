import assert from 'node:assert/strict'
import { mkdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import { test } from 'vitest'
import { isOfPart, readPart } from '../../src/ladder/part.ts'
import { run, scratch } from '../site/demo.ts'
import { HANDBOOK, ladder } from './small.ts'

const folder = await scratch()
const file = (name: string, text: string): void => {
  mkdirSync(path.dirname(path.join(folder, name)), { recursive: true })
  writeFileSync(path.join(folder, name), text)
}

/** Ladders with a finding each or none, pages with a dead link, and files that cannot be read. */
file('handbook.yaml', HANDBOOK)
for (let nth = 1; nth <= 14; nth += 1) file(`ladders/press-${nth}.md`, `${ladder({ id: `press-${nth}`, title: `Press ${nth}` }).replace('aim: kg-2', nth % 3 === 0 ? 'aim: kg-9' : 'aim: kg-2')}\nSee [that one](rung:press-${(nth % 15) + 1}/kg-1).\n`)
file('ladders/broken.md', ladder({ id: 'broken' }).replace('movement:', 'movment:'))
file('content/season.md', '---\ntitle: Season\nsummary: A year.\n---\n\n[lost](/lost/) and ![](pictures/none.png)\n')

type Report = { readonly findings: readonly unknown[] }
const foundBy = async (...more: string[]): Promise<string[]> => (JSON.parse((await run(folder, 'check', '--format', 'json', ...more)).out) as Report).findings.map((found) => JSON.stringify(found)).toSorted()

const whole = await foundBy()
const ofPages = whole.filter((found) => found.includes('content/season.md'))
const unread = whole.filter((found) => found.includes('ladders/broken.md'))

test('the parts of a check, however many, find together what the whole finds, and nothing twice', async () => {
  assert.ok(whole.length > 20 && ofPages.length > 1 && unread.length > 0)
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 1, max: 30 }), async (of) => {
      const parts = await Promise.all(Array.from({ length: of }, (_, index) => foundBy('--part', `${index + 1}/${of}`)))
      assert.deepEqual(parts.flat().toSorted(), whole)
    }),
    { numRuns: 8 },
  )
})

test('every part but the first says nothing of pages, nor of files that cannot be read', async () => {
  const [first, second] = [await foundBy('--part', '1/2'), await foundBy('--part', '2/2')]
  assert.deepEqual([...ofPages, ...unread].filter((found) => !first.includes(found)), [])
  assert.deepEqual([...ofPages, ...unread].filter((found) => second.includes(found)), [])
  assert.ok(first.length > 0 && second.length > 0 && first.length < whole.length)
})

test('a part links to ladders of another without a finding', async () => {
  const links = (found: readonly string[]): string[] => found.filter((one) => one.includes('links-resolve') && one.includes('ladders/press'))
  assert.equal(links(whole).length, 1) // press-14 points at press-15, which is not there
  assert.equal(links([...(await foundBy('--part', '1/2')), ...(await foundBy('--part', '2/2'))]).length, 1)
})

test('every id is of one part, the same whatever stands beside it, and parts are about as large as one another', () => {
  const ids = Array.from({ length: 8000 }, (_, index) => `ladder-${index}`)
  const sizes = Array.from({ length: 8 }, (_, index) => ids.filter((id) => isOfPart(id, { nth: index + 1, of: 8 })).length)
  assert.equal(sizes.reduce((sum, size) => sum + size, 0), ids.length)
  for (const size of sizes) assert.ok(size > 850 && size < 1150, String(size)) // 1000 ± 5 standard deviations of 29.6
})

test('what is no part is wrong usage', async () => {
  assert.deepEqual(readPart('2/8'), { nth: 2, of: 8 })
  for (const slip of ['0/8', '9/8', '2', '2/', '/8', '2/8/1', '1/1001', '-1/8', '2 / 8', 'two/8']) assert.equal(readPart(slip), undefined, slip)
  const { code, note } = await run(folder, 'check', '--part', '9/8')
  assert.deepEqual([code, note.split('\n')[0]], [2, '--part must be which part of how many, such as 2/8, at most 1000, not "9/8".'])
})
