import type { Mermaid, MermaidConfig } from 'mermaid'
import { once } from '../quantity/once.ts'
import { inDiagramWindow } from './diagram-window.ts'

/**
 * A Mermaid flowchart as an SVG string, drawn without a browser: real text, no styles, no scripts,
 * nothing fetched, the same bytes for the same two arguments. `diagram.css` gives it its looks.
 *
 * Labels stand in double quotes and come out as they are, markup and all; only `"` is written `#quot;`
 * and `#` is written `#35;`. A line break in a label is a line break in the drawing. Nodes are boxes,
 * square `["…"]` or rounded `("…")`, or diamonds `{"…"}`, and lead nowhere: no `click`. A class put on
 * a node stays on its group, a style does not.
 * What a reader who cannot see it is told is for the caller to add: nothing of ARIA is left in it.
 *
 * Shape   flowchart text and a kebab-case name to `<svg …>…</svg>`. Every id in it starts with the name;
 *         the svg has the name itself as its id.
 * Throws  "bug" when the text is no flowchart that can be drawn, or the name is not kebab-case.
 */
export async function drawDiagram(source: string, name: string): Promise<string> {
  if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(name)) throw new Error(`bug: "${name}" is not a kebab-case name`)
  if (!/^\s*flowchart\s/.test(source)) throw new Error(`bug: the source of "${name}" is not a flowchart`)
  const drawing = queue.last.then(() => draw(source, name))
  queue.last = drawing.catch(() => undefined)
  return drawing
}

/** Mermaid and the globals that it is lent exist once in a process, so drawings take turns. */
const queue: { last: Promise<unknown> } = { last: Promise.resolve() }

const FONT_SIZE_PX = 14

/** Sized so that two boxes side by side fit a telephone 390 px wide at full size. */
const CONFIG: MermaidConfig = {
  startOnLoad: false,
  securityLevel: 'strict',
  // Past its own limits Mermaid draws a picture of an error in place of the flowchart.
  maxTextSize: 1_000_000,
  maxEdges: 10_000,
  logLevel: 'fatal',
  htmlLabels: false,
  flowchart: {
    useMaxWidth: false,
    wrappingWidth: 146,
    padding: 9,
    nodeSpacing: 20,
    rankSpacing: 32,
    diagramPadding: 2,
  },
}

/** Mermaid, for flowcharts alone. Asked for first within a window, because it looks for one once, while it loads. */
const flowcharts = once(async (): Promise<Mermaid> => {
  const { default: mermaid } = await import('mermaid')
  mermaid.initialize(CONFIG)
  // It copies its whole configuration wherever it reads a key, a fifth of all drawing: what it has for other pictures goes.
  const site = mermaid.mermaidAPI.updateSiteConfig({})
  const others = Object.entries(site).filter(([key, held]) => typeof held === 'object' && !Array.isArray(held) && key !== 'flowchart')
  Object.assign(site, Object.fromEntries(others.map(([key]) => [key, {}])), { themeVariables: { edgeLabelBackground: '#fff' } }) // the one colour it reckons with; the drawing carries no styles
  return mermaid
})

async function draw(source: string, name: string): Promise<string> {
  return inDiagramWindow({ fontSize_px: FONT_SIZE_PX, readable }, async (window) => {
    try {
      const { svg } = await (await flowcharts()).render(name, guarded(source))
      return tidy(new window.DOMParser().parseFromString(svg, 'image/svg+xml'))
    } catch (cause) {
      throw new Error(`bug: "${name}" cannot be drawn`, { cause })
    }
  })
}

/** Where the characters that mean something to Mermaid are put while it works: a plane nobody writes in. */
const ASIDE = 0xf0000

/** The escapes that a label may use. */
const NAMED = new Map([['quot', '"'], ['amp', '&'], ['lt', '<'], ['gt', '>'], ['apos', "'"]])

/** Every sign in every label set aside; Mermaid sees letters, digits, spaces and line breaks. */
function guarded(source: string): string {
  return source.replace(/"[^"]*"/g, (quoted) => `"${guardedLabel(quoted.slice(1, -1))}"`)
}

function guardedLabel(label: string): string {
  return label
    .replace(/#([a-z]+|\d{1,6});/g, (escape: string, word: string) =>
      /^\d/.test(word) ? String.fromCodePoint(Number(word)) : (NAMED.get(word) ?? escape),
    )
    .replace(/[\t\r]/g, ' ')
    // Controls, halves of pairs, private and impossible characters are not for any reader.
    .replace(/(?!\n)[\p{Cc}\p{Cs}\p{Co}\p{Noncharacter_Code_Point}]/gu, '\u{fffd}')
    .replace(/[^\p{L}\p{M}\p{N} \n]/gu, aside)
}

function aside(sign: string): string {
  const code = sign.codePointAt(0) ?? 0
  return code < 0x10000 ? String.fromCodePoint(ASIDE + code) : sign
}

function readable(text: string): string {
  return text.replace(/[\u{f0000}-\u{ffffd}]/gu, (sign) => String.fromCodePoint((sign.codePointAt(0) ?? 0) - ASIDE))
}

/** All that a drawing of ours consists of. What is not named here does not reach a page. */
const ELEMENTS = ['svg', 'g', 'defs', 'marker', 'path', 'rect', 'circle', 'polygon', 'text', 'tspan']
const WORDS = ['xmlns', 'id', 'class', 'marker-start', 'marker-end', 'markerUnits', 'orient']
const NUMBERS = [
  'viewBox', 'width', 'height', 'transform', 'd', 'points', 'x', 'y', 'dy', 'rx', 'ry', 'cx', 'cy', 'r',
  'refX', 'refY', 'markerWidth', 'markerHeight',
]

function tidy(document: Document): string {
  const svg = document.documentElement
  // Mermaid roughs these outlines out with chance, in some thirty kilobytes each.
  if (svg.querySelector('.outer-path')) throw new Error('bug: a node has a shape other than a box or a diamond')

  for (const element of [svg, ...svg.querySelectorAll('*')]) tidyElement(element)
  for (const line of svg.querySelectorAll('text > tspan')) line.textContent = readable(line.textContent ?? '')
  for (const text of svg.querySelectorAll('text')) text.setAttribute('text-anchor', 'middle')
  removeUnused(svg)
  svg.setAttribute('font-size', String(FONT_SIZE_PX))
  svg.setAttribute('font-family', 'system-ui, sans-serif')
  return svg.outerHTML
}

function tidyElement(element: Element): void {
  if (!ELEMENTS.includes(element.localName)) return element.remove()
  for (const name of element.getAttributeNames()) {
    if (NUMBERS.includes(name)) element.setAttribute(name, rounded(element.getAttribute(name) ?? ''))
    else if (!WORDS.includes(name)) element.removeAttribute(name)
  }
  if (element.localName === 'tspan') element.removeAttribute('class')
}

/** A hundredth of a pixel cannot be seen; more digits only make the page longer. */
function rounded(numbers: string): string {
  return numbers.replace(/-?\d+(\.\d+)?(e-?\d+)?/g, (number) => String(Math.round(Number(number) * 100) / 100))
}

function removeUnused(svg: Element): void {
  const ends = ['marker-start', 'marker-end']
  const used = [...svg.querySelectorAll('path')].flatMap((path) => ends.map((end) => path.getAttribute(end)))
  for (const marker of svg.querySelectorAll('marker')) if (!used.includes(`url(#${marker.id})`)) marker.remove()
  // Innermost first, so that a group goes once all that was in it has gone.
  for (const element of [...svg.querySelectorAll('g, defs, text, tspan, rect')].toReversed()) {
    const hollow = element.localName === 'rect' ? !element.hasAttribute('width') : element.childNodes.length === 0
    if (hollow) element.remove()
  }
}
