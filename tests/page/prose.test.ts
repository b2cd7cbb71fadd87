import assert from 'node:assert/strict'
import { parseHTML } from 'linkedom'
import { test } from 'vitest'
import { inEnglish } from '../../src/page/html.ts'
import { inlineProse, itemProse, prose } from '../../src/page/prose.ts'

const on = (text: string, part?: string): Document => parseHTML(`<!doctype html><html><body>${inEnglish(prose(text, { from: '/safety/', first_heading: 2, ...(part ? { part } : {}) }))}</body></html>`).document
const all = (page: Document, selector: string): Element[] => [...page.querySelectorAll(selector)]

const NOTES = 'One[^a], two[^b], and one again[^a].\n\n[^a]: First, with a [link](rung:press-up).\n[^b]: Second.\n\n    - with a list\n'

test('a mark leads to its footnote and the footnote back, each by a name that says where', () => {
  const page = on(NOTES)
  assert.deepEqual(all(page, 'sup a').map((mark) => [mark.id, mark.getAttribute('href'), mark.getAttribute('aria-label'), mark.textContent]), [
    ['mark-page-1', '#note-page-1', 'Footnote 1', '1'],
    ['mark-page-2', '#note-page-2', 'Footnote 2', '2'],
    ['mark-page-1-2', '#note-page-1', 'Footnote 1', '1'],
  ])
  assert.deepEqual(all(page, '.footnotes > ol > li').map(({ id }) => id), ['note-page-1', 'note-page-2'])
  assert.deepEqual(all(page, '.back').map((back) => [back.getAttribute('href'), back.getAttribute('aria-label')]), [
    ['#mark-page-1', 'Back to where footnote 1 stands'],
    ['#mark-page-1-2', 'Back to where footnote 1 stands, place 2'],
    ['#mark-page-2', 'Back to where footnote 2 stands'],
  ])
  assert.equal(page.querySelector('.footnotes a:not(.back)')?.getAttribute('href'), '../press-up/')
  assert.equal(page.querySelector('.footnotes li li')?.textContent?.trim(), 'with a list')
})

test('pieces of prose on one page share no id', () => {
  const page = parseHTML(`<body>${['set-up', 'notes'].map((part) => inEnglish(prose(`## Mat\n\n${NOTES}`, { from: '/a/b/', first_heading: 3, part }))).join('')}</body>`).document
  const ids = all(page, '[id]').map(({ id }) => id)
  assert.equal(ids.length, 12)
  assert.equal(new Set(ids).size, ids.length)
  for (const link of all(page, 'a[href^="#"]')) assert.ok(page.getElementById(link.getAttribute('href')?.slice(1) ?? ''))
})

test('a footnote that asks for harm is words', () => {
  const page = on('Note[^"><script>alert(1)</script>].\n\n[^"><script>alert(1)</script>]: <img src=x onerror=alert(1)> [x](javascript:alert(1))\n')
  assert.equal(all(page, 'script, img').length, 0)
  assert.deepEqual(all(page, 'a').map((link) => link.getAttribute('href')), ['#note-page-1', '#mark-page-1'])
})

test('footnotes within footnotes, thousands deep or of each other, are read in the time of a page', () => {
  const began = process.cpuUsage()
  const deep = on(`x[^a]\n\n${'[^a]: '.repeat(20_000)}end\n`)
  assert.ok(deep.body.textContent?.includes('x'))
  on(`[^a]\n\n[^a]: [^b] [^a]\n[^b]: [^a] [^b]\n`)
  on(`${'[^a'.repeat(40_000)}\n\n[^a]: b\n`)
  on(`${Array.from({ length: 17_000 }, (_, nth) => `[^${nth}]: ${nth}`).join('\n')}\n\n${Array.from({ length: 17_000 }, (_, nth) => `[^${nth}]`).join(' ')}\n`)
  assert.ok(process.cpuUsage(began).user < 4e6, 'without bounds it takes the square of their number: more than ten seconds')
})

test('a table scrolls in a frame that is reached by keyboard and called by its head', () => {
  const page = on('| seen | *say* |\n|---|---|\n| a | b |\n\n| a | b | c | "d" |\n|---|---|---|---|\n\n| |\n|---|\n| x |\n')
  assert.deepEqual(all(page, '.scroll').map((frame) => [frame.className, frame.getAttribute('tabindex'), frame.getAttribute('role'), frame.getAttribute('aria-label')]), [
    ['scroll', '0', 'region', 'seen, say'],
    ['scroll wide', '0', 'region', 'a, b, c, "d"'],
    ['scroll', '0', 'region', 'Table'],
  ])
  assert.equal(all(page, '.scroll > table.words').length, 3)
})

test('a list line of one line stays a line; with a list in it, it holds that list', () => {
  assert.equal(inEnglish(itemProse('*Tall* neck.', '/a/b/', 'cues-1', () => 'ladders/a.md')), inEnglish(inlineProse('*Tall* neck.', '/a/b/')))
  const page = parseHTML(`<body>${inEnglish(itemProse('Tall [neck](rung:a).\n\n- chin in\n  - further', '/a/b/', 'cues-1', () => 'ladders/a.md'))}</body>`).document
  assert.equal(page.querySelector('p a')?.getAttribute('href'), '../../a/')
  assert.deepEqual(all(page, 'li').map(({ textContent }) => textContent?.replace(/\s+/g, ' ').trim()), ['chin in further', 'further'])
})
