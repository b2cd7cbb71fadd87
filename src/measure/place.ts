import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { interval, ratio } from '../quantity/spread.ts'
import type { Load } from '../load/model.ts'
import { compareText } from '../ladder/finding.ts'
import { predictedReps, reaches, type Prediction } from './predict.ts'

/** A rung as placing sees it. */
type PlaceableRung = { readonly id: string; readonly demand: readonly string[]; readonly outcome: Outcome<Pick<Load, 'quantity' | 'load'>> }

/** What placing needs of a ladder: a measured one has it, and so has one whose loads were computed again for another body. */
export type Placeable = { readonly id: string; readonly first_reps?: number | undefined; readonly rungs: readonly PlaceableRung[] }

/** What one strict set says of every rung of its ladder. */
export type Placement = {
  readonly rungs: readonly { readonly id: string; readonly predicted: Outcome<Prediction> }[]
  /** The heaviest rung on which even the lower end reaches `first_reps`; of equally heavy ones that which was done, else the one with the fewest demands besides. */
  readonly highest: Outcome<string>
}

/**
 * Places an athlete on a ladder from one strict set on any of its rungs.
 *
 * Shape   a ladder, a rung, the repetitions done and those left in reserve, to an interval on every rung and the highest to work on.
 * Missing for rungs whose load cannot be compared, whose demand decides, or beyond the formulas.
 */
export function placement(ladder: Placeable, on: string, reps: number, reserve_reps: number): Outcome<Placement> {
  const done = ladder.rungs.find(({ id }) => id === on)
  if (!done) return missing(`"${on}" is no rung of "${ladder.id}"`)
  const rungs = ladder.rungs.map((rung) => ({ id: rung.id, predicted: rung === done ? itself(reps) : predictedOn(rung, done, reps + reserve_reps) }))
  const { first_reps } = ladder
  if (first_reps === undefined) return { rungs, highest: missing('first_reps is not given') }
  const ready = ladder.rungs.filter((_, index) => {
    const predicted = rungs[index]?.predicted
    return predicted !== undefined && !isMissing(predicted) && reaches(predicted.low, first_reps)
  })
  const heaviest = ready.toSorted((a, b) => loadOf(a) - loadOf(b) || Number(a === done) - Number(b === done) || b.demand.length - a.demand.length || compareText(b.id, a.id)).at(-1)
  return { rungs, highest: heaviest ? heaviest.id : missing(`no rung surely leaves ${first_reps} repetitions`) }
}

/** The set that was done is no prediction. */
const itself = (reps: number): Prediction => ({ low: reps, high: reps, formulas: [] })

const loadOf = ({ outcome }: PlaceableRung): number => (isMissing(outcome) ? -Infinity : outcome.load.mid)

function predictedOn(rung: PlaceableRung, done: PlaceableRung, possible_reps: number): Outcome<Prediction> {
  const [here, there] = [rung.outcome, done.outcome]
  if (isMissing(here)) return here
  if (isMissing(there)) return there
  if (!here.quantity.repeats) return missing(`repetition formulas say nothing of ${here.quantity.name}`)
  if (here.quantity.name !== there.quantity.name || here.quantity.unit !== there.quantity.unit) return missing(`${there.quantity.name} and ${here.quantity.name} cannot be compared`)
  if (there.load.mid === 0 || there.load.points.includes(0)) return missing('the rung that was done loads nothing')
  return predictedReps(interval(ratio(here.load, there.load)), possible_reps)
}
