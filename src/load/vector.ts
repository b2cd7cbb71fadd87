import type { Point } from './model.ts'

/** Plane vectors. All lengths in one unit, angles in radians from +x, counter-clockwise. */
export const point = (x: number, y: number): Point => ({ x, y })
export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y })
export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y })
export const times = (a: Point, factor: number): Point => ({ x: a.x * factor, y: a.y * factor })
export const length = (a: Point): number => Math.hypot(a.x, a.y)
export const polar = (radius: number, angle: number): Point => ({ x: radius * Math.cos(angle), y: radius * Math.sin(angle) })
export const unit = (a: Point): Point => times(a, 1 / length(a))
/** Turns `a` about the origin. */
export const turned = (a: Point, angle: number): Point => ({
  x: a.x * Math.cos(angle) - a.y * Math.sin(angle),
  y: a.x * Math.sin(angle) + a.y * Math.cos(angle),
})
/** Turns points about the origin by `angle`, and moves them to `pivot`: the sine and cosine are taken once, for all the joints of a body. */
export function turning(angle: number, pivot: Point): (a: Point) => Point {
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)]
  return ({ x, y }) => ({ x: pivot.x + (x * cosine - y * sine), y: pivot.y + (x * sine + y * cosine) })
}
/** Moment of force `b` at arm `a`, counter-clockwise. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x
/** A point `share` of the way from `a` to `b`. */
export const between = (a: Point, b: Point, share: number): Point => plus(a, times(minus(b, a), share))

/** The angle opposite side `c` of a triangle, or undefined where the sides do not close. Law of cosines. */
export function angleOpposite(c: number, a: number, b: number): number | undefined {
  const cosine = (a * a + b * b - c * c) / (2 * a * b)
  return cosine >= -1 && cosine <= 1 ? Math.acos(cosine) : undefined
}
