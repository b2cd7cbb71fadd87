import { amountText } from './log-words.ts'
import type { LoggedSession, LogUnit } from './log-record.ts'
import { said } from './said.ts'

const SVG = 'http://www.w3.org/2000/svg'

/** Sessions a chart of this width can tell apart. Chosen by us. */
const MOST = 24
/** The drawing, in its own units. */
const WIDE = 440
const HIGH = 180
const PLOT = { left: 22, right: 434, top: 24, bottom: 150 }

/** What a chart shows: the sessions of one rung, oldest first, all in one unit, and the amount that has to be shown to move on. */
export type Charted = { readonly rung: string; readonly unit: LogUnit; readonly sessions: readonly LoggedSession[]; readonly asks: number | undefined }

type Attributes = Readonly<Record<string, string | number>>

function draw<Tag extends keyof SVGElementTagNameMap>(tag: Tag, attributes: Attributes, ...within: readonly (Node | string)[]): SVGElementTagNameMap[Tag] {
  const made = document.createElementNS(SVG, tag)
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value))
  made.append(...within.map((part) => (typeof part === 'string' ? said(part) : part)))
  return made
}

const bestOf = ({ amounts }: LoggedSession): number => Math.max(0, ...amounts)
const whole = (at: number): number => Math.round(at * 10) / 10

/** The same in words, for who does not see the drawing. */
function words({ rung, unit, asks }: Charted, sessions: readonly LoggedSession[]): string {
  const each = sessions.map((session) => `${session.on} ${amountText(bestOf(session), unit)}${session.sets_out_of_form > 0 ? ', form lost' : ''}`)
  return `Best set of each session on ${rung}, oldest first: ${each.join('; ')}.${asks === undefined ? '' : ` To move on: ${amountText(asks, unit)} a set.`}`
}

/** The best set of each session as a mark, the standard as a line. A hollow mark: form was lost in a set. */
export function chart(charted: Charted): SVGSVGElement {
  const { unit, asks } = charted
  const sessions = charted.sessions.slice(-MOST)
  const top = Math.max(1, asks ?? 0, ...sessions.map(bestOf)) * 1.08
  const x = (index: number): number => whole(sessions.length === 1 ? (PLOT.left + PLOT.right) / 2 : PLOT.left + 14 + (index * (PLOT.right - PLOT.left - 28)) / (sessions.length - 1))
  const y = (amount: number): number => whole(PLOT.bottom - (amount / top) * (PLOT.bottom - PLOT.top))
  const marks = sessions.map((session, index) => draw('circle', { class: session.sets_out_of_form > 0 ? 'log-mark-open' : 'log-mark', cx: x(index), cy: y(bestOf(session)), r: 5 }))
  const line = draw('polyline', { class: 'log-line', points: sessions.map((session, index) => `${x(index)},${y(bestOf(session))}`).join(' ') })
  const label = words(charted, sessions)
  return draw('svg', { class: 'log-drawing', viewBox: `0 0 ${WIDE} ${HIGH}`, role: 'img', 'aria-label': said(label) }, ...ground(unit, asks, y), line, ...marks, ...days(sessions, x))
}

function ground(unit: LogUnit, asks: number | undefined, y: (amount: number) => number): SVGElement[] {
  const base = draw('line', { class: 'log-base', x1: PLOT.left, x2: PLOT.right, y1: PLOT.bottom, y2: PLOT.bottom })
  const zero = draw('text', { x: PLOT.left - 8, y: PLOT.bottom + 4, 'text-anchor': 'end' }, '0')
  if (asks === undefined) return [base, zero]
  return [
    base,
    zero,
    draw('line', { class: 'log-standard', x1: PLOT.left, x2: PLOT.right, y1: y(asks), y2: y(asks) }),
    draw('text', { class: 'log-standard-text', x: PLOT.left, y: y(asks) - 8 }, `to move on: ${amountText(asks, unit)} a set`),
  ]
}

function days(sessions: readonly LoggedSession[], x: (index: number) => number): SVGElement[] {
  const last = sessions.length - 1
  const day = (index: number, anchor: string): SVGElement => draw('text', { x: index === last && last > 0 ? PLOT.right : last === 0 ? x(0) : PLOT.left, y: HIGH - 12, 'text-anchor': anchor }, sessions[index]?.on ?? '')
  if (last < 0) return []
  return last === 0 ? [day(0, 'middle')] : [day(0, 'start'), day(last, 'end')]
}
