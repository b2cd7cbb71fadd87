import { markdown } from './markdown.ts'

/**
 * The flowcharts a coach may draw: a small part of Mermaid, understood here line by line and written anew.
 *
 * What is not named here, such as a click, a link, a style, a class, a directive or another kind of diagram, is found and reaches no
 * drawing program.
 */
export type Flowchart = {
  readonly title: string
  readonly description: string | undefined
  readonly direction: Direction
  readonly boxes: readonly Box[]
  readonly arrows: readonly Arrow[]
}

type Direction = 'TB' | 'BT' | 'LR' | 'RL'
type Shape = 'square' | 'round' | 'question'
export type Box = { readonly id: string; readonly label: string; readonly shape: Shape }
export type Arrow = { readonly from: string; readonly to: string; readonly label: string | undefined; readonly line: string }

/** What is wrong with a flowchart, and on which of its lines, counted from 0. */
export type Flaw = { readonly line: number; readonly message: string }

/** A fence of a text that is to be drawn: what follows "mermaid", what stands in it, and its line, counted from 0. */
export type Fence = { readonly title: string; readonly source: string; readonly line: number }

/** Every fence that is to be drawn, in order. */
export const fencesIn = (text: string): Fence[] => (text.includes('mermaid') ? markdown.parse(text, {}).flatMap(({ type, info, content, map }) => (type === 'fence' && isDrawn(info) ? [{ title: titleIn(info), source: content, line: map?.[0] ?? 0 }] : [])) : [])

/** True of what stands behind the backticks of such a fence. */
export const isDrawn = (info: string): boolean => /^mermaid(\s|$)/.test(info.trim())
export const titleIn = (info: string): string => info.trim().replace(/^mermaid\s*/, '')

/** Bounds, chosen by us: more than this is not read on a phone. */
const MOST_SIGNS = 4000
const MOST_BOXES = 40
const MOST_ARROWS = 80
const MOST_LABEL = 120

const HEAD = /^(?:flowchart|graph)\s+(TB|TD|BT|LR|RL)$/
const ID = /[A-Za-z][A-Za-z0-9_]{0,39}/y
/** A label in quotes, or without them where it holds no bracket, quote or bar. */
const SHAPES: readonly (readonly [RegExp, Shape])[] = [
  [/\[\s*(?:"([^"]*)"|([^"[\](){}<>|]+))\s*\]/y, 'square'],
  [/\(\s*(?:"([^"]*)"|([^"[\](){}<>|]+))\s*\)/y, 'round'],
  [/\{\s*(?:"([^"]*)"|([^"[\](){}<>|]+))\s*\}/y, 'question'],
]
const ARROW = /\s*(-->|---|-\.->|-\.-|==>|===)(?:\s*\|\s*(?:"([^"]*)"|([^"[\](){}<>|]+))\s*\|)?\s*/y
const ARROW_WITH_WORDS = /\s*(--|-\.|==)\s+(?:"([^"]*)"|([^"[\](){}<>|=-]+?))\s+(-->|\.->|==>)\s*/y

const KNOWN = 'A line is a box such as a["Start"], a("Start") or a{"Ready?"}, or boxes joined by -->, -.-> or ==>, with words as in -->|"yes"|.'

type Draft = { title: string; description: string | undefined; boxes: Map<string, Box>; arrows: Arrow[] }

/** Reads the lines of a fence. */
export function readFlowchart({ title, source }: Pick<Fence, 'title' | 'source'>): { readonly value?: Flowchart; readonly flaws: readonly Flaw[] } {
  if (source.length > MOST_SIGNS) return { flaws: [{ line: 0, message: `The diagram is longer than ${MOST_SIGNS} signs. Draw less, or two of them.` }] }
  const lines = source.split('\n').map((text, line) => ({ text: text.trim(), line })).filter(({ text }) => text !== '' && !/^%%(?!\{)/.test(text))
  const [head, ...rest] = lines
  const direction = HEAD.exec(head?.text ?? '')?.[1]
  if (!direction) return { flaws: [{ line: head?.line ?? 0, message: 'Only flowcharts are drawn. Begin with "flowchart TB", from top to bottom, or BT, LR or RL.' }] }
  const draft: Draft = { title, description: undefined, boxes: new Map(), arrows: [] }
  const flaws = rest.flatMap(({ text, line }) => [readLine(text, draft)].flatMap((message) => (message === undefined ? [] : [{ line, message }])))
  if (flaws.length > 0) return { flaws }
  const { boxes, arrows } = draft
  const wrong = whole(draft)
  if (wrong !== undefined) return { flaws: [{ line: 0, message: wrong }] }
  return { value: { title: draft.title, description: draft.description, direction: direction === 'TD' ? 'TB' : (direction as Direction), boxes: [...boxes.values()], arrows }, flaws: [] }
}

/** What is wrong with a diagram as a whole, if anything. */
function whole({ title, boxes, arrows }: Draft): string | undefined {
  if (title === '') return 'The diagram has no title. Write it behind ```mermaid, or on a line "accTitle: ..."; who cannot see it hears the title first.'
  if (boxes.size === 0) return `The diagram is empty. ${KNOWN}`
  if (boxes.size > MOST_BOXES || arrows.length > MOST_ARROWS) return `The diagram has more than ${MOST_BOXES} boxes or ${MOST_ARROWS} arrows. Draw less, or two of them.`
  const long = [...boxes.values(), ...arrows].find(({ label }) => (label ?? '').length > MOST_LABEL)
  return long ? `"${long.label?.slice(0, 40)}..." is long for a diagram. Say it in at most ${MOST_LABEL} signs.` : undefined
}

/** Adds what one line says to the draft, or says what is wrong with it. */
function readLine(text: string, draft: Draft): string | undefined {
  const said = /^acc(Title|Descr)\s*:\s*(\S.*)$/.exec(text)
  if (said?.[2]) {
    if (said[1] === 'Title') draft.title = said[2]
    else draft.description = said[2]
    return undefined
  }
  const shown = text.slice(0, 60)
  let box = boxAt(text, 0, draft)
  while (box && box.end < text.length) {
    const arrow = arrowAt(text, box.end)
    const next = arrow && boxAt(text, arrow.end, draft)
    if (!arrow || !next) return `"${shown}" is not understood. ${KNOWN}`
    draft.arrows.push({ from: box.id, to: next.id, label: arrow.label, line: arrow.line })
    box = next
  }
  return box ? undefined : `"${shown}" is not understood. ${KNOWN}`
}

const at = (pattern: RegExp, text: string, from: number): RegExpExecArray | null => {
  pattern.lastIndex = from
  return pattern.exec(text)
}

/** A box where the line has come to; one without a label is called by its id until a line says more. */
function boxAt(text: string, from: number, { boxes }: Draft): { readonly id: string; readonly end: number } | undefined {
  const id = at(ID, text, from)?.[0]
  if (id === undefined) return undefined
  const behind = from + id.length
  for (const [pattern, shape] of SHAPES) {
    const match = at(pattern, text, behind)
    if (!match) continue
    boxes.set(id, { id, label: words(match[1] ?? match[2]) ?? id, shape })
    return { id, end: behind + match[0].length }
  }
  if (!boxes.has(id)) boxes.set(id, { id, label: id, shape: 'square' })
  return { id, end: behind }
}

function arrowAt(text: string, from: number): { readonly label: string | undefined; readonly line: string; readonly end: number } | undefined {
  const match = at(ARROW, text, from)
  if (match) return { label: words(match[2] ?? match[3]), line: match[1] ?? '-->', end: from + match[0].length }
  const worded = at(ARROW_WITH_WORDS, text, from)
  if (!worded || worded[4]?.at(-2) !== worded[1]?.at(-1) && worded[4] !== '.->') return undefined
  return { label: words(worded[2] ?? worded[3]), line: { '-->': '-->', '.->': '-.->', '==>': '==>' }[worded[4] ?? ''] ?? '-->', end: from + worded[0].length }
}

/** A label with its line breaks; undefined where it says nothing. */
const words = (label: string | undefined): string | undefined => label?.replace(/\s*<br\s*\/?>\s*/g, '\n').trim() || undefined

const ENDS = { square: ['[', ']'], round: ['(', ')'], question: ['{', '}'] } as const

/** A label in Mermaid's quotes, with the two characters that mean something there named. */
export const forDiagram = (text: string): string => `"${text.replaceAll('#', '#35;').replaceAll('"', '#quot;')}"`

/** A flowchart as the drawing program is given it: our own ids, every label in quotes, nothing else. */
export function flowchartSource({ direction, boxes, arrows }: Flowchart): string {
  const name = new Map(boxes.map(({ id }, index) => [id, `box${index}`]))
  return [
    `flowchart ${direction}`,
    ...boxes.map(({ id, label, shape }) => `  ${name.get(id)}${ENDS[shape][0]}${forDiagram(label)}${ENDS[shape][1]}`),
    ...arrows.map(({ from, to, label, line }) => `  ${name.get(from)} ${line}${label === undefined ? '' : `|${forDiagram(label)}|`} ${name.get(to)}`),
  ].join('\n')
}
