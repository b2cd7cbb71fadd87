import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { parseHTML } from 'linkedom'
import { test } from 'vitest'
import { drawDiagram } from '../../src/site/draw-diagram.ts'
import { textWidth } from '../../src/site/glyph-widths.ts'

const FONT_SIZE_PX = 14

/** Eight rungs, a branch, every kind of line, a label of two lines and one too long for any box. */
const LADDER = `flowchart BT
  wall("Hands on a wall") -->|"3 × 12 for 2 sessions"| bar("Hands on a bar at hip height")
  bar -->|"3 × 12"| bench["Hands on a bench"]
  bench ==>|"3 × 12"| floor("Hands on the floor\n64 %")
  floor --o|"3 × 12"| box("Feet on a box, slow and paused at the bottom")
  floor -.->|"3 × 15"| side("Weight shifted to one arm")
  side --x arm{"One arm"}
  box ~~~ arm
  box --> ball("Handstandüberschlagsvorbereitungsübung")
  class floor aim`

const quoted = (label: string) => `"${label.replaceAll('#', '#35;').replaceAll('"', '#quot;')}"`
const oneBox = (label: string) => `flowchart BT\n  a(${quoted(label)})`
const { DOMParser } = parseHTML('')
const parsed = (svg: string): Document => new DOMParser().parseFromString(svg, 'text/xml')
const all = (svg: string, selector: string) => [...parsed(svg).querySelectorAll(selector)]
const number = (element: Element | null, name: string) => Number(element?.getAttribute(name))
const idsIn = (svg: string) => [...svg.matchAll(/ id="([^"]*)"/g)].map((match) => match[1] ?? '')
/** Lines are broken to fit, so what is compared is all but the spaces. */
const solid = (text: string) => text.replace(/\s/g, '')
const drawn = async (label: string) => all(await drawDiagram(oneBox(label), 'label'), 'tspan').map((line) => line.textContent).join('')

test('the same text and name give the same bytes, whatever was drawn before', async () => {
  const first = await drawDiagram(LADDER, 'press-up')
  const other = await drawDiagram(oneBox('Row'), 'row')
  assert.equal(await drawDiagram(LADDER, 'press-up'), first)
  assert.equal(await drawDiagram(oneBox('Row'), 'row'), other)
  assert.equal(await drawDiagram(LADDER, 'press-up'), first)
})

test('drawings asked for all at once are the drawings asked for in turn', async () => {
  const inTurn = [await drawDiagram(LADDER, 'press-up'), await drawDiagram(oneBox('Row'), 'row')]
  assert.deepEqual(await Promise.all([drawDiagram(LADDER, 'press-up'), drawDiagram(oneBox('Row'), 'row')]), inTurn)
})

for (const label of [
  `& < > " ' # ; \` | { } [ ] ( )`,
  '<script>alert(1)</script><br><b>x</b>',
  '&lt;&amp;&#60; #lt; #35; #x3c;',
  '#constructor; #toString; #999999999;',
  '**bold** _slant_ ~~~ `code` 1. list',
  '%% note %%{init: {"theme": "dark"}}%%',
  'one\\ntwo $$x$$ fa:fa-ban --> a:::b ---',
  'end graph subgraph default style click href',
  'ﬂ°°35¶ß ﬂ°gt¶ß',
  '12\u00a0kg, 3\u202f×\u202f8, é é, Ș, 引体, 👍🏽',
]) {
  test(`a label says what was written: ${label}`, async () => {
    assert.equal(solid(await drawn(label)), solid(label))
    assert.match(await drawDiagram(`flowchart BT\n  a --> |${quoted(label)}| b`, 'edge'), /<\/svg>$/)
  })
}

test('a label on an edge says what was written', async () => {
  const label = `3 × 8 & "clean" <#1>`
  const svg = await drawDiagram(`flowchart BT\n  a -->|${quoted(label)}| b`, 'edge')
  assert.equal(solid(all(svg, '.edgeLabel text').map((text) => text.textContent).join('')), solid(label))
})

test('any label says what was written, and the drawing is well formed', async () => {
  const signs = fc.constantFrom(...`&<>"'#;\`|{}[]()%\\/*_~$@:-=.!?^+ aB1é`)
  await fc.assert(
    fc.asyncProperty(fc.array(signs, { minLength: 1, maxLength: 40 }), async (characters) => {
      const label = `x${characters.join('')}`
      assert.equal(solid(await drawn(label)), solid(label))
    }),
    { numRuns: 60 },
  )
})

test('what no reader could see stands as a replacement character', async () => {
  assert.equal(await drawn('a\u0000b\u{f003c}c\ud800d\ufffe'), 'a\ufffdb\ufffdc\ufffdd\ufffd')
})

test('a line break in a label is a line break in the drawing', async () => {
  const svg = await drawDiagram(oneBox('Hands on a box\n64 %'), 'two-lines')
  assert.deepEqual(all(svg, 'tspan').map((line) => line.textContent), ['Hands on a box', '64 %'])
})

test('nothing in a drawing styles, runs, fetches or speaks for itself', async () => {
  const svg = await drawDiagram(`${LADDER}\n  style wall fill:#f00\n  classDef aim stroke:#0f0`, 'press-up')
  assert.doesNotMatch(svg, /<(style|script|foreignObject|image|use|a|filter)\b|\s(style|href|xlink:href|role|on\w+|aria-\w+|data-\w+)=/i)
  assert.deepEqual(svg.match(/https?:[^"]*/g), ['http://www.w3.org/2000/svg'])
  for (const [, id] of svg.matchAll(/url\(([^)]*)\)/g)) assert.ok(idsIn(svg).includes((id ?? '').slice(1)), `${id} leads nowhere`)
})

test('every line of text fits its box, and every box its drawing', async () => {
  const svg = await drawDiagram(LADDER, 'press-up')
  const [left = 0, top = 0, width = 0, height = 0] = parsed(svg).documentElement.getAttribute('viewBox')?.split(' ').map(Number) ?? []
  const boxes = all(svg, '.node:has(rect), .edgeLabel:has(rect)')
  assert.equal(boxes.length, 7 + 5)
  for (const group of boxes) {
    const rect = group.querySelector('rect')
    for (const line of group.querySelectorAll('tspan')) {
      assert.ok(textWidth(line.textContent) * FONT_SIZE_PX <= number(rect, 'width'), `"${line.textContent}" is wider than its box`)
      assert.ok(group.querySelectorAll('tspan').length * 1.1 * FONT_SIZE_PX <= number(rect, 'height'))
    }
    const [, x = 0, y = 0] = /translate\((.*), (.*)\)/.exec(group.getAttribute('transform') ?? '')?.map(Number) ?? []
    assert.ok(x + number(rect, 'x') >= left && x - number(rect, 'x') <= left + width)
    assert.ok(y - number(rect, 'height') / 2 >= top && y + number(rect, 'height') / 2 <= top + height)
  }
})

test('a drawing is no larger than what is in it', async () => {
  const svg = await drawDiagram('flowchart BT\n  a("One") --> b("Two")', 'small')
  const { documentElement } = parsed(svg)
  assert.equal(number(documentElement, 'width'), Math.max(...all(svg, '.node rect').map((rect) => number(rect, 'width'))) + 4)
})

test('a sign takes up its own width', async () => {
  const room = async (label: string) => number(all(await drawDiagram(oneBox(label), 'sign'), 'rect')[0] ?? null, 'width') - textWidth(label) * FONT_SIZE_PX
  assert.ok(Math.abs((await room('#;"(|')) - (await room('abcde'))) < 0.02)
})

test('forty rungs in a chain, each box on the one below, narrow enough for a telephone', async () => {
  const rungs = Array.from({ length: 40 }, (_, rung) => `  r${rung}("Rung ${rung}, hands at ${95 - 2 * rung} cm")`)
  const steps = Array.from({ length: 39 }, (_, rung) => `  r${rung} -->|"3 × 12"| r${rung + 1}`)
  const svg = await drawDiagram(['flowchart BT', ...rungs, ...steps].join('\n'), 'long')
  const heights = all(svg, '.node').map((node) => Number(/, (.*)\)/.exec(node.getAttribute('transform') ?? '')?.[1]))
  assert.equal(heights.length, 40)
  assert.deepEqual(heights, heights.toSorted((a, b) => b - a))
  assert.equal(all(svg, '.flowchart-link').length, 39)
  assert.ok(number(parsed(svg).documentElement, 'width') < 200)
})

test('a long source is drawn like any other', async () => {
  const svg = await drawDiagram(`${oneBox('Row')}\n  class a ${'long'.repeat(15_000)}`, 'row')
  assert.deepEqual(all(svg, '.node text').map((text) => text.textContent), ['Row'])
})

test('two drawings on one page share no id', async () => {
  const ids = [...idsIn(await drawDiagram(LADDER, 'press-up')), ...idsIn(await drawDiagram(LADDER, 'press-up-two'))]
  assert.ok(ids.length > 20)
  assert.equal(new Set(ids).size, ids.length)
  for (const id of ids) assert.match(id, /^press-up/)
})

test('a drawing leaves no trace of a browser in the process', async () => {
  const before = Object.getOwnPropertyNames(globalThis)
  await drawDiagram(LADDER, 'press-up')
  assert.deepEqual(Object.getOwnPropertyNames(globalThis), before)
  for (const name of ['window', 'document', 'injected', 'fastdom']) assert.ok(!(name in globalThis), name)
})

test('what cannot be drawn is our bug, and does not spoil the next drawing', async () => {
  const whole = await drawDiagram(LADDER, 'press-up')
  await assert.rejects(drawDiagram('flowchart BT\n  a -->', 'broken'), /^Error: bug: "broken" cannot be drawn$/)
  await assert.rejects(drawDiagram('flowchart BT\n  a(["Round"])', 'round'), ({ cause }: Error) =>
    /^Error: bug: a node has a shape other than a box or a diamond$/.test(String(cause)),
  )
  await assert.rejects(drawDiagram('pie\n  "a": 1', 'pie'), /^Error: bug: the source of "pie" is not a flowchart$/)
  await assert.rejects(drawDiagram(LADDER, 'Press up'), /^Error: bug: "Press up" is not a kebab-case name$/)
  assert.equal(await drawDiagram(LADDER, 'press-up'), whole)
})

test('an unknown letter is one em wide, an accented one as wide as its letter, a mark nothing', () => {
  assert.equal(textWidth('引体'), 2)
  assert.equal(textWidth('ẹ'), textWidth('e'))
  assert.equal(textWidth('e\u0301\u00ad'), textWidth('e'))
})

test('the style sheet is small, and every class it names is in a drawing', async () => {
  const css = readFileSync(new URL('../../src/site/diagram.css', import.meta.url), 'utf8')
  assert.ok(Buffer.byteLength(css) < 2500)
  const svg = await drawDiagram(LADDER, 'press-up')
  const classes = new Set(css.replace(/\/\*.*?\*\//gs, '').match(/\.[a-z][\w-]*(?=[^{}]*\{)/gi))
  assert.ok(classes.size > 5)
  for (const name of classes) assert.ok(all(svg, name).length > 0, `${name} styles nothing`)
})
