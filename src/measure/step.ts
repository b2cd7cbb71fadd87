import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { interval, ratio, type Spread } from '../quantity/spread.ts'
import type { Athlete, Inputs, Load, LoadModel } from '../load/model.ts'
import { MOST_REPS } from '../load/repetitions.ts'
import type { Demand } from '../ladder/schema.ts'
import type { FullEntry } from './entry.ts'
import { missingRung, type MissingRung } from './missing-rung.ts'
import { predictedReps, reaches, type Prediction } from './predict.ts'

/** How a step feels to the athlete who takes it on time. */
export type StepKind = 'comfortable' | 'uncertain' | 'too steep' | 'level' | 'backwards'

/** From one rung to the next: how much heavier, what to expect, and what it takes. */
export type Step = {
  readonly from: string
  readonly to: string
  /** What the ladder asks to be shown on `from`. */
  readonly entry: FullEntry
  /** How many times the load of `from`. */
  readonly times: Outcome<Spread>
  readonly predicted: Outcome<Prediction>
  /** The fewest repetitions a set on `from`, with the reserve kept, that leave at least `first_reps` on `to`. */
  readonly computed_entry: Outcome
  readonly kind: Outcome<StepKind>
  readonly block: Outcome<Block>
  /** For a step too steep or uncertain: what would split it evenly. */
  readonly missing_rung: Outcome<MissingRung> | undefined
}

/** Sessions and weeks from the first repetitions on a rung to its standard, fewest and most. */
export type Block = { readonly sessions: readonly [few: number, many: number]; readonly weeks: readonly [few: number, many: number] }

/** A rung as a step sees it. */
export type RungLoad = { readonly id: string; readonly model: LoadModel; readonly inputs: Inputs; readonly outcome: Outcome<Load> }

/** What a step is computed from. */
export type StepInput = {
  readonly from: RungLoad
  readonly to: RungLoad & { readonly demand: readonly Demand[] }
  readonly athlete: Athlete
  readonly entry: FullEntry
  /** What must be shown on `to` before leaving it. */
  readonly standard: FullEntry
  readonly first_reps: number | undefined
  readonly sessions_per_week: number
}

/** Loads closer than this are taken as the same. Chosen by us: a third of what laboratories disagree by. */
const LEVEL = 0.02

const NO_FIRST = 'first_reps is not given'

/** Measures one step. Everything that cannot be answered says why. */
export function stepOf(input: StepInput): Step {
  const { from, to, entry, first_reps, athlete } = input
  const times = heavierBy(from.outcome, to.outcome)
  const predicted = predictedOn(input, times)
  const kind = kindOf(times, predicted, to.demand, first_reps)
  return {
    from: from.id,
    to: to.id,
    entry,
    times,
    predicted,
    computed_entry: isMissing(predicted) ? predicted : isMissing(times) ? times : first_reps === undefined ? missing(NO_FIRST) : fewestReps(times, entry.reserve_reps, first_reps),
    kind,
    block: blockOf(input, predicted),
    missing_rung: kind === 'too steep' || kind === 'uncertain' ? missingRung(from, to, athlete) : undefined,
  }
}

/** How many times the load of one rung the other's is, where they are loads of the same kind. */
function heavierBy(below: Outcome<Load>, above: Outcome<Load>): Outcome<Spread> {
  if (isMissing(below)) return below
  if (isMissing(above)) return above
  const [one, other] = [below.quantity, above.quantity]
  if (one.name !== other.name || one.unit !== other.unit) return missing(`${one.name} in ${one.unit} and ${other.name} in ${other.unit} cannot be compared`)
  if (below.load.points.some((load) => load === 0) || below.load.mid === 0) return missing('the rung below loads nothing, so no ratio can be taken')
  return ratio(above.load, below.load)
}

function predictedOn({ from, to, entry }: StepInput, times: Outcome<Spread>): Outcome<Prediction> {
  if (isMissing(times)) return times
  if (times.mid <= 1 + LEVEL && to.demand.length > 0) return missing(`the load is no heavier; what decides is the demand: ${to.demand.join(', ')}`)
  if (!isMissing(from.outcome) && !from.outcome.quantity.repeats) return missing(`repetition formulas say nothing of ${from.outcome.quantity.name}`)
  if (entry.amount === undefined) return missing('the standard gives no repetitions')
  if (entry.amount.unit !== 'reps') return missing(`repetition formulas say nothing of ${entry.amount.unit}`)
  return predictedReps(interval(times), entry.amount.value + entry.reserve_reps)
}

/** Halves the span of repetitions: a repetition more never predicts fewer on the next rung. */
function fewestReps(times: Spread, reserve_reps: number, first_reps: number): Outcome {
  const most = MOST_REPS - reserve_reps
  const ends = interval(times)
  let [few, many] = [1, most + 1] // the fewest is one of these, or a number between them
  while (few < many) {
    const reps = Math.floor((few + many) / 2)
    const predicted = predictedReps(ends, reps + reserve_reps)
    if (!isMissing(predicted) && reaches(predicted.low, first_reps)) many = reps
    else few = reps + 1
  }
  return few <= most ? few : missing(`not even ${MOST_REPS - reserve_reps} repetitions with ${reserve_reps} in reserve leave ${first_reps} on the next rung for sure`)
}

function kindOf(times: Outcome<Spread>, predicted: Outcome<Prediction>, demand: readonly Demand[], first_reps: number | undefined): Outcome<StepKind> {
  if (isMissing(times)) return times
  if (times.mid < 1 - LEVEL && demand.length === 0) return 'backwards'
  if (times.mid <= 1 + LEVEL) return 'level'
  if (isMissing(predicted)) return predicted
  if (first_reps === undefined) return missing(NO_FIRST)
  if (reaches(predicted.low, first_reps)) return 'comfortable'
  return reaches(predicted.high, first_reps) ? 'uncertain' : 'too steep'
}

/**
 * How long the rung takes: one repetition more a set each session, from the first ones to the standard, and the standard shown as often as it asks.
 * Source  common practice (double progression).
 */
function blockOf({ standard, sessions_per_week }: StepInput, predicted: Outcome<Prediction>): Outcome<Block> {
  if (isMissing(predicted)) return predicted
  const { amount, sessions } = standard
  if (amount?.unit !== 'reps') return missing('the standard of this rung gives no repetitions')
  const from = (reps: Prediction['low']): number => Math.max(0, amount.value - (reps === 'beyond' ? amount.value : reps)) + sessions
  const [few, many] = [from(predicted.high), from(predicted.low)]
  const weeks = (count: number): number => Math.ceil(count / sessions_per_week - 1e-9) // 21 sessions at 1.4 a week are 15 weeks
  return { sessions: [few, many], weeks: [weeks(few), weeks(many)] }
}
