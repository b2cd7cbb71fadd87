import type { SourceKey } from './sources.ts'

/**
 * How many repetitions a load allows: six published formulas, each only where it holds.
 *
 * `fraction` gives load over 1RM at which r repetitions are possible; `at` is its inverse.
 * Source  each formula's author; reynolds2006: linear equations hold to 10 repetitions.
 * Assumes one lift to exhaustion in strict form, by a trained adult; people differ (Richens & Cleather 2014).
 */
export type RepetitionFormula = {
  readonly name: string
  readonly source: SourceKey
  readonly reps: { readonly min: number; readonly max: number }
  fraction(reps: number): number
  at(fraction: number): number
}

/** Linear equations: Reynolds 2006. */
const LINEAR = { min: 1, max: 10 }
/** Curved equations. The training-load chart ends at 15; that they hold a little past it is chosen by us. */
const CURVED = { min: 1, max: 20 }

/** 1RM = w (1 + r/30) */
const epley: RepetitionFormula = { name: 'Epley', source: 'epley1985', reps: LINEAR, fraction: (r) => 1 / (1 + r / 30), at: (f) => 30 * (1 / f - 1) }
/** 1RM = w · 36 / (37 − r) */
const brzycki: RepetitionFormula = { name: 'Brzycki', source: 'brzycki1993', reps: LINEAR, fraction: (r) => (37 - r) / 36, at: (f) => 37 - 36 * f }
/** 1RM = w (1 + 0.025 r) */
const oConner: RepetitionFormula = { name: "O'Conner", source: 'oConner1989', reps: LINEAR, fraction: (r) => 1 / (1 + 0.025 * r), at: (f) => (1 / f - 1) / 0.025 }
/** 1RM = w · r^0.10 */
const lombardi: RepetitionFormula = { name: 'Lombardi', source: 'lombardi1989', reps: CURVED, fraction: (r) => r ** -0.1, at: (f) => f ** -10 }
/** 1RM = 100 w / (52.2 + 41.9 e^(−0.055 r)) */
const mayhew: RepetitionFormula = { name: 'Mayhew', source: 'mayhew1992', reps: CURVED, fraction: (r) => (52.2 + 41.9 * Math.exp(-0.055 * r)) / 100, at: (f) => Math.log((100 * f - 52.2) / 41.9) / -0.055 }
/** 1RM = 100 w / (48.8 + 53.8 e^(−0.075 r)) */
const wathan: RepetitionFormula = { name: 'Wathan', source: 'wathan1994', reps: CURVED, fraction: (r) => (48.8 + 53.8 * Math.exp(-0.075 * r)) / 100, at: (f) => Math.log((100 * f - 48.8) / 53.8) / -0.075 }

/** Every formula a prediction is taken over. */
export const repetitionFormulas: readonly RepetitionFormula[] = [epley, brzycki, oConner, lombardi, mayhew, wathan]

/** The most repetitions any formula may be asked for. */
export const MOST_REPS = CURVED.max

/** The formulas that hold at `reps`. */
export const holdingAt = (reps: number): readonly RepetitionFormula[] => repetitionFormulas.filter((formula) => reps >= formula.reps.min && reps <= formula.reps.max)

/** Repetitions at a fraction of 1RM, where the formula says nothing below or beyond. */
export type Possible = number | 'none' | 'beyond'

/**
 * Repetitions possible at `fraction` of 1RM by one formula.
 *
 * Shape   a fraction to repetitions, 'none' where not even one, 'beyond' where more than the formula may say.
 */
export function possibleReps(formula: RepetitionFormula, fraction: number): Possible {
  const { min, max } = formula.reps
  if (fraction > formula.fraction(min)) return 'none'
  return fraction < formula.fraction(max) ? 'beyond' : formula.at(fraction)
}
