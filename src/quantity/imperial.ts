import type { Interval } from './spread.ts'
import type { Unit } from './unit.ts'

/** International yard and pound, 1959: exact by definition. Pound-force by standard gravity. */
const CM_PER_IN = 2.54
const KG_PER_LB = 0.45359237
const N_PER_LBF = KG_PER_LB * 9.80665

const IN_PER_FT = 12
/** Lengths from here on are said in feet and inches. Chosen by us: a yard. Units in. */
const FEET_FROM_IN = 36

/** Rounds half away from zero, as `rounded` does. */
const nearest = (value: number, scale: number): number => (Math.sign(value) * Math.round(Math.abs(value) * scale * (1 + Number.EPSILON * 4))) / scale

const signed = (value: number, text: string): string => (value < 0 ? `−${text}` : text)

/** "17½": whole inches and a half. */
const halves = (inches: number): string => {
  const [whole, half] = [Math.floor(inches), inches % 1 !== 0]
  return half ? `${whole === 0 ? '' : whole}½` : `${whole}`
}

/** "17½ in", "5 ft 7 in", "6 ft", to the half inch. */
function lengthText(length_in: number): string {
  const to_half = nearest(length_in, 2)
  const away = Math.abs(to_half)
  if (away < FEET_FROM_IN) return signed(to_half, `${halves(away)} in`)
  const feet = Math.floor(away / IN_PER_FT)
  const rest = away - feet * IN_PER_FT
  return signed(to_half, rest === 0 ? `${feet} ft` : `${feet} ft ${halves(rest)} in`)
}

/** How a metric figure is said to those who measure in feet and pounds; a unit that is not here is said as it is. */
const SAID: Partial<Record<Unit, (value: number) => string>> = {
  cm: (value) => lengthText(value / CM_PER_IN),
  m: (value) => lengthText((value * 100) / CM_PER_IN),
  'm/s': (value) => signed(nearest(value, 1000), `${Math.abs(nearest((value * 100) / CM_PER_IN / IN_PER_FT, 1))} ft/s`),
  kg: (value) => signed(nearest(value, 1000), `${Math.abs(nearest(value / KG_PER_LB, 1))} lb`),
  N: (value) => signed(nearest(value, 1000), `${Math.abs(nearest(value / N_PER_LBF, 1))} lbf`),
}

/**
 * A metric figure in feet, inches, pounds or pounds-force, computed from the value itself and rounded once.
 *
 * Units   lengths to half an inch, masses to a pound, forces to a pound-force, speeds to a foot a second; undefined where the unit is the same everywhere.
 */
export const imperialText = (value: number, unit: Unit): string | undefined => SAID[unit]?.(value)

/** Both ends so, or one where they round to the same. */
export function imperialIntervalText({ low, high }: Pick<Interval, 'low' | 'high'>, unit: Unit): string | undefined {
  const [from, to] = [imperialText(low, unit), imperialText(high, unit)]
  return from === undefined || to === undefined ? undefined : from === to ? from : `${from} to ${to}`
}

/** A body mass of so many pounds. Units lb in, kg out. */
export const kilograms = (mass_lb: number): number => mass_lb * KG_PER_LB

/** A length of so many inches. Units in in, cm out. */
export const centimetres = (length_in: number): number => length_in * CM_PER_IN
