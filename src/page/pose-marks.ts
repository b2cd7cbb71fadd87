/**
 * What every pose figure is drawn with: lines, letters, arrows and heights, and the frame around them.
 *
 * One unit of the drawing is a centimetre, y down, the ground at 0. Every figure has one scale, so that the rungs of a ladder compare.
 */
import type { Point, Pose } from '../load/model.ts'
import { length, minus, plus, point, times, unit } from '../load/vector.ts'
import { amount, html, inEnglish, raw, type Html, type Part, type Words } from './html.ts'
import { tenth, written, type Joints } from './pose-body.ts'
import { ENGLISH, type Tongue } from './tongue.ts'
import { spoken } from './written.ts'

/** Pixels to a metre of the drawing. */
const PX_PER_M = 120
/** Centimetres of arrow for a force of one body weight, on every figure. */
export const CM_PER_WEIGHT = 50
/** Room under the ground for the forces, so that the ground lies at one height in a row of figures. */
export const BELOW_GROUND = 66
export const MARGIN = 6
/** A height that rounds to no centimetre is the ground. */
export const LOWEST_CM = 0.5
/** Height of the letters and width of one, in units of the drawing. */
const LETTER = { high: 11, wide: 6.9 }
const ARROWHEAD = 7
/** Length of the arc that shows a lean. */
const ARC = 52

/** One thing drawn, with the points the frame has to hold. */
export type Mark = { readonly svg: Part; readonly reach: readonly Point[]; readonly reachIn?: (tongue: Tongue) => readonly Point[]; readonly words?: true }
/** The part of the plane that is shown, y down. */
export type Frame = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number }

/** Marks without letters as one: their markup joined, and every place they reach. */
export const asOne = (marks: readonly Mark[]): Mark => ({ svg: raw(inEnglish(html`${marks.map(({ svg }) => svg)}`)), reach: marks.flatMap(({ reach }) => reach) })

export const cm = (at: Point): Point => times(at, 100)
export const jointsOf = ({ joints }: Pose): Joints => Object.fromEntries(Object.entries(joints).map(([name, at]) => [name, cm(at)]))
export const path = (name: string, d: string, reach: readonly Point[] = []): Mark => ({ svg: raw(`<path class="${name}" d="${d}"/>`), reach })
export const line = (name: string, from: Point, to: Point): Mark => path(name, `M${written(from)}L${written(to)}`, [from, to])
export const disc = (name: string, at: Point, radius: number): Mark => ({
  svg: raw(`<circle class="${name}" cx="${tenth(at.x)}" cy="${tenth(-at.y)}" r="${radius}"/>`),
  reach: [plus(at, point(radius, radius)), minus(at, point(radius, radius))],
})

/** A line of text whose middle, start or end stands at a point, half-way up its letters. */
export function label(words: Words, at: Point, anchor: 'start' | 'middle' | 'end'): Mark {
  const reachIn = (tongue: Tongue): Point[] => {
    const wide = spoken(words, tongue).length * LETTER.wide
    const left = at.x - { start: 0, middle: wide / 2, end: wide }[anchor]
    return [point(left, at.y + LETTER.high / 2), point(left + wide, at.y - LETTER.high / 2)]
  }
  return {
    svg: html`<text x="${tenth(at.x)}" y="${tenth(LETTER.high * 0.36 - at.y)}" text-anchor="${anchor}">${words}</text>`,
    reach: reachIn(ENGLISH),
    reachIn,
    words: true,
  }
}

/** Forces that round to no percent are neither drawn nor said. */
export const felt = ({ forces }: Pose): Pose['forces'] => forces.filter(({ per_weight }) => length(per_weight) >= 0.005)

/** Whether two places are the same, to a centimetre. */
export const near = (a: Point, b: Point | undefined): boolean => b !== undefined && length(minus(a, b)) < 0.01

/** A label half-way over the ground moves under it. */
const offGround = (at: Point): Point => (at.y > -9 && at.y < 5.5 ? point(at.x, -9.5) : at)

/** An arrow whose head touches the limb where it is pushed. */
export function pushed({ at, per_weight }: Pose['forces'][number], words: Words, beside: 'middle' | 'end' = 'middle'): Mark[] {
  const tail = minus(cm(at), times(per_weight, CM_PER_WEIGHT))
  const beyond = times(unit(per_weight), -9)
  return [...arrow(tail, cm(at)), label(words, offGround(plus(tail, point(beyond.x + (beside === 'end' ? 4 : 0), -9))), beside)]
}

/** An arrow whose tail is where the limb is pulled; its label keeps off the forearm. */
export function pulled({ at, per_weight }: Pose['forces'][number], words: Words, elbow: Point | undefined): Mark[] {
  const tail = cm(at)
  const way = elbow && elbow.x < at.x - 0.04 ? 1 : -1
  return [...arrow(tail, plus(tail, times(per_weight, CM_PER_WEIGHT))), label(words, plus(tail, point(way * 8, -7)), way === 1 ? 'start' : 'end')]
}

export function arrow(tail: Point, tip: Point): Mark[] {
  const way = unit(minus(tip, tail))
  const neck = minus(tip, times(way, ARROWHEAD))
  const wing = times(point(-way.y, way.x), ARROWHEAD / 2.2)
  return [line('pose-force', tail, neck), path('pose-tip', `M${written(tip)}L${written(plus(neck, wing))}L${written(minus(neck, wing))}Z`, [tip])]
}

/** What sets an arrow off from the body or the post it lies over. */
export const halo = (tail: Point, tip: Point): Mark => line('pose-halo', tail, tip)

/** An arrow that lies over the body, set off from it. */
export const haloed = (tail: Point, tip: Point): Mark[] => [halo(tail, tip), ...arrow(tail, tip)]

/** A height as a dimension line from the ground, with its figure beside it. */
export function height(x: number, high: number, side: 'left' | 'right'): Mark[] {
  const way = side === 'left' ? -1 : 1
  const tick = (y: number): string => `M${written(point(x - 3, y))}h6`
  return [
    path('pose-size', `M${written(point(x, 0))}V${tenth(-high)}${tick(0)}${tick(high)}`, [point(x - 3, 0), point(x + 3, high)]),
    label(amount(high, 'cm'), point(x + way * 5, Math.max(high / 2, LETTER.high / 2)), side === 'left' ? 'end' : 'start'),
  ]
}

/** An angle from upright: an upright line from a joint, and the arc from it to a direction. */
export function fromUpright(from: Point, along: Point, words: Words): Mark[] {
  const top = plus(from, point(0, ARC))
  const onBody = plus(from, times(along, ARC))
  const arc = `M${written(top)}A${ARC} ${ARC} 0 0 ${along.x > 0 ? 1 : 0} ${written(onBody)}`
  return [line('pose-guide', from, plus(top, point(0, 8))), path('pose-arc', arc, [top]), label(words, plus(top, point(along.x > 0 ? -4 : 4, 0)), along.x > 0 ? 'end' : 'start')]
}

/** The least frame that holds every pose, with one depth below the ground. */
export function frameOf(marks: readonly Mark[], below = BELOW_GROUND, tongue: Tongue = ENGLISH): Frame {
  const reach = marks.flatMap((mark) => mark.reachIn?.(tongue) ?? mark.reach)
  const xs = reach.map(({ x }) => x)
  const ys = reach.map(({ y }) => -y)
  return {
    left: Math.floor(Math.min(...xs) - MARGIN),
    top: Math.floor(Math.min(...ys) - MARGIN),
    right: Math.ceil(Math.max(...xs) + MARGIN),
    bottom: Math.ceil(Math.max(below, ...ys.map((y) => y + MARGIN))),
  }
}

export function drawn(marks: readonly Mark[], { left, top, right, bottom }: Frame, title: Words): Html {
  const [wide, high] = [right - left, bottom - top]
  const px = (units: number): string => tenth((units * PX_PER_M) / 100)
  return html`<svg class="pose-drawing" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${title}" viewBox="${left} ${top} ${wide} ${high}" width="${px(wide)}" height="${px(high)}" font-size="${LETTER.high}">${marks.map(({ svg }) => svg)}</svg>`
}
