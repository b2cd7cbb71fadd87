import { textWidth } from './glyph-widths.ts'

/** What a drawing is measured with. */
export type Lettering = {
  fontSize_px: number
  /** What stands in the drawing as text → what its reader will see, and so what is to be measured. */
  readable: (text: string) => string
}

/**
 * Runs `draw` with the parts of a browser that Mermaid reaches for, and takes them away again.
 *
 * Nothing else in the process may find a `window` and take itself to be in a browser, so all of it is
 * lent for one drawing. A process has one set of globals: never let two calls overlap.
 *
 * Units   boxes in px, in the element's own coordinates.
 * Assumes paths of absolute point pairs (M, L, C, Q) and no transform but a translation, which is all
 *         that boxes and edges use. A curve's box is that of its control points, never too small.
 */
export async function inDiagramWindow<Drawn>(
  lettering: Lettering,
  draw: (window: Window & typeof globalThis) => Promise<Drawn>,
): Promise<Drawn> {
  const { parseHTML, SVGElement } = await import('linkedom')
  const window = parseHTML('<!doctype html><html><body></body></html>')
  measuredBy(SVGElement.prototype)
  measuring.lettering = lettering
  const takeBack = lend([
    [globalThis, 'window', window],
    [globalThis, 'document', window.document],
    [globalThis, 'CSSStyleSheet', NoStyleSheet],
    // Loading Mermaid leaves these two behind; nothing reads them later.
    [globalThis, 'injected', undefined],
    [globalThis, 'fastdom', undefined],
  ])
  try {
    return await draw(window)
  } finally {
    takeBack()
  }
}

/** What the drawing of the moment is measured with. */
const measuring: { lettering: Lettering } = { lettering: { fontSize_px: 0, readable: (text) => text } }

/**
 * Lets elements be measured, from the first drawing on. These are nobody else's elements; and a prototype that changes
 * with every drawing has the engine throw away and make again all code that it had made fast, which took two thirds of the work.
 */
function measuredBy(elements: object): void {
  if (Object.hasOwn(elements, 'getBBox')) return
  Object.defineProperty(elements, 'getBBox', { value(this: Element) { return box(corners(this, measuring.lettering)) } })
  Object.defineProperty(elements, 'getComputedTextLength', { value(this: Element) { return lineWidth(this, measuring.lettering) } })
}

type Loan = readonly [on: object, name: string, value: unknown]

function lend(loans: readonly Loan[]): () => void {
  const before = loans.map(([on, name]) => Object.getOwnPropertyDescriptor(on, name))
  for (const [on, name, value] of loans) Object.defineProperty(on, name, { value, configurable: true, writable: true })
  return () => {
    for (const [index, [on, name]] of loans.entries()) {
      const own = before[index]
      if (own) Object.defineProperty(on, name, own)
      else Reflect.deleteProperty(on, name)
    }
  }
}

/** Mermaid writes its theme into a sheet. The page styles its drawings, so the rules go nowhere. */
function NoStyleSheet() {
  return { cssRules: [], insertRule: () => 0 }
}

type Point = readonly [x: number, y: number]

/** Points that span what `element` draws, before its own translation; none if it draws nothing. */
function corners(element: Element, lettering: Lettering): Point[] {
  const at = (name: string) => Number(element.getAttribute(name) ?? 0)
  switch (element.localName) {
    case 'svg':
    case 'g':
      return [...element.children].flatMap((child) => shifted(corners(child, lettering), child))
    case 'text':
      return textCorners(element, lettering)
    case 'rect':
      // Mermaid puts empty rectangles at the origin of a label, where the label need not be.
      return at('width') > 0 ? [[at('x'), at('y')], [at('x') + at('width'), at('y') + at('height')]] : []
    case 'circle':
      return [[at('cx') - at('r'), at('cy') - at('r')], [at('cx') + at('r'), at('cy') + at('r')]]
    case 'path':
      return pairs(element.getAttribute('d'))
    case 'polygon':
      return pairs(element.getAttribute('points'))
    default:
      return []
  }
}

function shifted(points: readonly Point[], by: Element): Point[] {
  const [, dx = 0, dy = 0] = /translate\(([^,]+),([^)]+)\)/.exec(by.getAttribute('transform') ?? '')?.map(Number) ?? []
  return points.map(([x, y]) => [x + dx, y + dy])
}

function pairs(text: string | null): Point[] {
  const numbers = (text?.match(/-?\d+(\.\d+)?(e-?\d+)?/g) ?? []).map(Number)
  return numbers.flatMap((x, index): Point[] => (index % 2 === 0 ? [[x, numbers[index + 1] ?? 0]] : []))
}

/** Mermaid centres its lines and sets them 1.1 em apart, the first 1 em down; the heights are DejaVu Sans's. */
const LINE_EM = 1.1
const ASCENT_EM = 0.928
const DESCENT_EM = 0.236

function textCorners(text: Element, lettering: Lettering): Point[] {
  const lines = [...text.children]
  const width = Math.max(0, ...lines.map((line) => lineWidth(line, lettering)))
  if (width === 0) return []
  const top = (1 - ASCENT_EM) * lettering.fontSize_px
  const bottom = (1 + (lines.length - 1) * LINE_EM + DESCENT_EM) * lettering.fontSize_px
  return [[-width / 2, top], [width / 2, bottom]]
}

function lineWidth(line: Element, { readable, fontSize_px }: Lettering): number {
  return textWidth(readable(line.textContent ?? '')) * fontSize_px
}

function box(points: readonly Point[]): { x: number; y: number; width: number; height: number } {
  if (points.length === 0) return { x: 0, y: 0, width: 0, height: 0 }
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  const [x, y] = [Math.min(...xs), Math.min(...ys)]
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y }
}
