import assert from 'node:assert/strict'
import { parseHTML } from 'linkedom'
import { test } from 'vitest'
import { withDrawn } from '../../src/page/drawn.ts'
import { inEnglish } from '../../src/page/html.ts'
import { prose } from '../../src/page/prose.ts'
import { measure } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { drawDiagram } from '../../src/site/draw-diagram.ts'
import { drawFences } from '../../src/site/draw-fences.ts'
import { LADDER } from '../read/said.ts'

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)

/** A workspace of one ladder and one page, as far as it is measured. */
function measured(page: string, notes = '') {
  const files = [
    { file: 'handbook.yaml', bytes: bytes('title: A\norganisation: A club\nedition: "1"\ncontact: The club\n') },
    { file: 'ladders/balance.md', bytes: bytes(`${LADDER}\n### Notes\n${notes}`) },
    { file: 'content/safety.md', bytes: bytes(`---\ntitle: Safety\norder: 1\nsummary: What to mind.\n---\n${page}`) },
  ]
  const { value, findings } = readCurriculum([{ files }])
  assert.deepEqual(findings, [])
  assert.ok(value)
  return measure(value)
}

const FENCE = '```mermaid One <b>bold</b> step\nflowchart LR\na["<img src=x onerror=alert(1)>"] -->|"{text} & yes"| b{"Ready?"}\n```\n'
const page = async (text: string): Promise<Document> => {
  const html = withDrawn(inEnglish(prose(text, { from: '/safety/', first_heading: 2 })), await drawFences(measured(text), drawDiagram), '/safety/')
  return parseHTML(`<!doctype html><html><body>${html}</body></html>`).document
}

test('a fence becomes a drawing with a title, and the same in words', async () => {
  const found = await page(FENCE)
  const frame = found.querySelector('figure.drawn [role="img"]')
  assert.equal(frame?.getAttribute('aria-label'), 'One <b>bold</b> step')
  assert.equal(frame?.getAttribute('tabindex'), '0')
  assert.equal(frame?.querySelectorAll('g.node').length, 2)
  assert.equal(found.querySelector('figcaption')?.textContent, 'One <b>bold</b> step')
  assert.deepEqual([...found.querySelectorAll('details li')].map(({ textContent }) => textContent), ['<img src=x onerror=alert(1)>, {text} & yes: Ready?'])
})

test('in words a question is answered, and anything else is followed', () => {
  const { document } = parseHTML(`<!doctype html><html><body>${inEnglish(prose('```mermaid T\nflowchart TB\na{"Held?"} -- yes --> b["Up"] -->|"soon"| c["Further"] --> d["End"]\n```\n', { from: '/a/', first_heading: 2 }))}</body></html>`)
  assert.deepEqual([...document.querySelectorAll('details li')].map(({ textContent }) => textContent), ['Held? yes: Up', 'Up, soon: Further', 'Further, then End'])
})

test('no word of a fence becomes markup, in the drawing or beside it', async () => {
  const found = await page(FENCE)
  assert.equal(found.querySelectorAll('img, b, script, [onerror], style, [style], a').length, 0)
  assert.equal(found.querySelector('g.node text')?.textContent?.replaceAll(/\s/g, ''), '<imgsrc=xonerror=alert(1)>')
})

test('one drawing twice on a page has its own ids each time', async () => {
  const found = await page(`${FENCE}\n${FENCE}`)
  const ids = [...found.querySelectorAll('[id]')].map(({ id }) => id)
  assert.ok(ids.length > 4)
  assert.equal(new Set(ids).size, ids.length)
  for (const line of found.querySelectorAll('[marker-end]')) assert.ok(found.getElementById(/#([^)]*)/.exec(line.getAttribute('marker-end') ?? '')?.[1] ?? ''))
})

test('a fence in the notes of a rung is drawn too, and one that cannot be drawn stays text', async () => {
  const drawn = await drawFences(measured('```mermaid\npie\n```\n', FENCE), drawDiagram)
  assert.deepEqual([...drawn.keys()].map((key) => key.replace(/[0-9a-f]{12}$/, '')), ['drawing-'])
  const found = await page('```mermaid\npie\n```\n')
  assert.equal(found.querySelector('pre code')?.textContent, 'pie\n')
})

test('nobody can write the place of a drawing', () => {
  const text = '<drawn-here key="drawing-a" text=""></drawn-here>'
  const drawn = new Map([['drawing-a', '<svg>']])
  for (const typed of [text, `\`${text}\``, `[a](https://club.example "${text.replaceAll('"', "'")}")`, `## ${text}`, `\`\`\`mermaid ${text.replaceAll('"', '&quot;')}\nflowchart TB\na["${text.replaceAll('"', '#quot;')}"]\n\`\`\``]) {
    assert.ok(!withDrawn(inEnglish(prose(typed, { from: '/a/', first_heading: 2 })), drawn, '/a/').includes('<svg>'), typed)
  }
})
