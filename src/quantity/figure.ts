import type { Interval } from './spread.ts'
import type { Unit } from './unit.ts'

/** How many decimals a reader can use, by unit. A figure is rounded once, here. */
const DECIMALS: Record<Unit, number> = {
  '% of body weight': 0,
  '% of body mass': 0,
  '% of 1RM': 0,
  '%': 0,
  cm: 0,
  m: 2,
  'm/s': 1,
  kg: 1,
  N: 0,
  'N/kg': 1,
  'N·m/kg': 2,
  'J/kg': 1,
  deg: 0,
  s: 0,
  reps: 0,
  weeks: 0,
  sessions: 0,
  '× body weight': 1,
  ratio: 2,
}

/** Units that stand against the number without a space. */
const CLOSE: Partial<Record<Unit, string>> = { deg: '°', ratio: '' }

/** Rounds half away from zero to the decimals of the unit; 0.1 + 0.2 and 59.5 come out as a person would round them. */
export function rounded(value: number, unit: Unit): string {
  const decimals = DECIMALS[unit]
  const scale = 10 ** decimals
  const whole = Math.round((Math.abs(value) * scale) * (1 + Number.EPSILON * 4)) / scale
  const text = whole.toFixed(decimals)
  return value < 0 && whole !== 0 ? `−${text}` : text
}

/** One of a thing that is counted. */
const ONE: Partial<Record<Unit, string>> = { reps: 'rep', weeks: 'week', sessions: 'session' }

const withUnit = (text: string, unit: Unit): string => text + (CLOSE[unit] ?? ` ${text === '1' ? (ONE[unit] ?? unit) : unit}`)

/** "72 % of body weight": a number never leaves without its unit. */
export const figureText = (value: number, unit: Unit): string => withUnit(rounded(value, unit), unit)

/** "66 to 74 % of body weight", or one figure where both ends round to the same. */
export function intervalText({ low, high }: Pick<Interval, 'low' | 'high'>, unit: Unit): string {
  const from = rounded(low, unit)
  const to = rounded(high, unit)
  return withUnit(from === to ? from : `${from} to ${to}`, unit)
}
