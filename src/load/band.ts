import { missing, type Outcome } from '../quantity/outcome.ts'
import type { Pairs } from './model.ts'

/** Force of a band over its stretch: f = a + b x + c x², fitted to what was measured. Units N, cm. */
export type Band = { readonly a: number; readonly b: number; readonly c: number; readonly from_cm: number; readonly to_cm: number; force_n(stretch_cm: number): number }

/** Three unknowns want three points. */
const FEWEST = 3
/** A slope that is level but for rounding, over the force half-way: a spring of constant force does not fall. */
const ROUNDING = 1e-9

/**
 * The curve through measured points of one band, by least squares.
 *
 *     Σ w = Σ (a + b x + c x² − f)²  least          (1)
 *
 * Shape   at least three pairs of stretch and force to a curve.
 * Units   cm, N.
 * Missing when there are fewer than three different stretches, or the curve falls between the first and the last.
 * Source  mcMaster2010: tension against stretch is fitted by a second-order polynomial with R of at least 0.99, and two bands of one kind differ by 8 to 19 %, so the band itself is measured.
 */
export function bandCurve(points: Pairs): Outcome<Band> {
  const stretches = points.map(([stretch]) => stretch)
  if (new Set(stretches).size < FEWEST) return missing(`a band needs at least ${FEWEST} measured points with different stretches`)
  const [from_cm, to_cm] = [Math.min(...stretches), Math.max(...stretches)]
  // Centred and scaled, the normal equations of eq. 1 stay well-conditioned.
  const middle = (from_cm + to_cm) / 2
  const half = (to_cm - from_cm) / 2
  const [p, q, r] = quadratic(points.map(([stretch, force]) => [(stretch - middle) / half, force]))
  const force_n = (stretch_cm: number): number => {
    const t = (stretch_cm - middle) / half
    return p + q * t + r * t * t
  }
  const falls = Math.min(q - 2 * r, q + 2 * r) < -ROUNDING * Math.abs(p) // the slope at either end
  if (falls) return missing('the measured force of the band falls as it is stretched; measure it again')
  return { a: p - (q * middle) / half + (r * middle * middle) / half ** 2, b: q / half - (2 * r * middle) / half ** 2, c: r / half ** 2, from_cm, to_cm, force_n }
}

/** Least-squares quadratic of points with t between −1 and 1: solves the three normal equations by Cramer's rule. */
function quadratic(points: readonly (readonly [number, number])[]): [number, number, number] {
  const sum = (power: number): number => points.reduce((total, [t]) => total + t ** power, 0)
  const mixed = (power: number): number => points.reduce((total, [t, force]) => total + force * t ** power, 0)
  const [s0, s1, s2, s3, s4] = [points.length, sum(1), sum(2), sum(3), sum(4)]
  const [m0, m1, m2] = [mixed(0), mixed(1), mixed(2)]
  const determinant = (a: number, b: number, c: number, d: number, e: number, f: number, g: number, h: number, i: number): number => a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
  const whole = determinant(s0, s1, s2, s1, s2, s3, s2, s3, s4)
  return [
    determinant(m0, s1, s2, m1, s2, s3, m2, s3, s4) / whole,
    determinant(s0, m0, s2, s1, m1, s3, s2, m2, s4) / whole,
    determinant(s0, s1, m0, s1, s2, m1, s2, s3, m2) / whole,
  ]
}
