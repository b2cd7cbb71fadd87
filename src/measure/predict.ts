import { missing, type Outcome } from '../quantity/outcome.ts'
import type { Interval } from '../quantity/spread.ts'
import { holdingAt, MOST_REPS, possibleReps, type Possible } from '../load/repetitions.ts'

/** Whole repetitions, or more than any formula may say. */
export type Reps = number | 'beyond'

/** Repetitions to expect: the fewest and the most over every formula that holds and every body tried. */
export type Prediction = { readonly low: Reps; readonly high: Reps; readonly formulas: readonly string[] }

const asNumber = (reps: Reps): number => (reps === 'beyond' ? MOST_REPS + 1 : reps)

/** True where at least `wanted` repetitions are expected. */
export const reaches = (reps: Reps, wanted: number): boolean => asNumber(reps) >= wanted

/**
 * Repetitions to expect on the next rung, from those that are possible on this one.
 *
 *     C = q_k / p(r)        p⁻¹(q_{k+1} / C)
 *
 * p is the share of the maximum at which r repetitions are possible, by each formula that holds at r and at its answer.
 *
 * Shape   the ends of the load of the next rung over this one's, and the repetitions possible here, to an interval of whole repetitions.
 * Missing when no formula holds at that many repetitions.
 * Source  the repetition formulas, each as cited.
 */
export function predictedReps({ low, high }: Pick<Interval, 'low' | 'high'>, possible_reps: number): Outcome<Prediction> {
  const answers = holdingAt(possible_reps).flatMap((formula) => {
    const at = (ratio: number): Possible => possibleReps(formula, ratio * formula.fraction(possible_reps))
    const [fewest, most] = [at(high), at(low)]
    const tooFew = formula.reps.max < MOST_REPS // a linear equation that ends at 10 says nothing of 11
    if (tooFew && (fewest === 'beyond' || most === 'beyond')) return []
    return [{ name: formula.name, fewest: whole(fewest), most: whole(most) }]
  })
  if (answers.length === 0) {
    return missing(`no repetition formula holds at ${possible_reps} repetitions; they hold from 1 to ${MOST_REPS}`)
  }
  const least = answers.map(({ fewest }) => fewest).reduce((a, b) => (asNumber(a) <= asNumber(b) ? a : b))
  const most = answers.map(({ most }) => most).reduce((a, b) => (asNumber(a) >= asNumber(b) ? a : b))
  return { low: least, high: most, formulas: answers.map(({ name }) => name) }
}

/** Only whole repetitions count; the millionth keeps an exact twelve from becoming eleven. */
const whole = (reps: Possible): Reps => (reps === 'none' ? 0 : reps === 'beyond' ? 'beyond' : Math.floor(reps + 1e-6))

/** "5 to 8", "more than 20", "about 6". */
export function repsText({ low, high }: Pick<Prediction, 'low' | 'high'>): string {
  if (low === 'beyond') return `more than ${MOST_REPS}`
  if (high === 'beyond') return `${low} to more than ${MOST_REPS}`
  return low === high ? `${low}` : `${low} to ${high}`
}
