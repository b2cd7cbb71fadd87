import { isMissing } from '../quantity/outcome.ts'
import { placeOf } from '../ladder/finding.ts'
import type { MeasuredLadder } from '../measure/measure.ts'
import { placement } from '../measure/place.ts'
import type { Change, Example } from './change.ts'
import { change } from './make.ts'
import { causesOf } from './followed.ts'
import type { Pair } from './typed.ts'

/** Where one strict set places an athlete of the average body. */
function stands(ladder: MeasuredLadder, on: string, reps: number, reserve_reps: number): string | undefined {
  const placed = placement(ladder, on, reps, reserve_reps)
  if (isMissing(placed) || isMissing(placed.highest)) return undefined
  return placed.highest
}

/**
 * Athletes whom the change places elsewhere: for each rung, one who just meets the standard on it.
 *
 * Shape   a pair of ladders and what was typed to a change a rung, each with an example that can be computed again.
 */
export function placementsFollow(pair: Pair, typed: readonly Change[]): Change[] {
  const { before, after, rungs } = pair
  const reps = before.standard.reps
  if (reps === undefined) return []
  const { reserve_reps } = before.standard
  const renamed = new Map(rungs.map(([was, is]) => [was.id, is.id]))
  return rungs.flatMap(([was, is]): Change[] => {
    const [stood, now] = [stands(before, was.id, reps, reserve_reps), stands(after, is.id, reps, reserve_reps)]
    if (stood === undefined || now === undefined || (renamed.get(stood) ?? stood) === now) return []
    const example: Example = { ladder: after.id, on: is.id, reps, reserve_reps, stood, stands: now }
    const load = (ladder: MeasuredLadder, id: string): number => {
      const outcome = ladder.rungs.find((rung) => rung.id === id)?.outcome
      return outcome === undefined || isMissing(outcome) ? 0 : outcome.load.mid
    }
    const rises = load(after, now) > load(before, stood)
    const causes = causesOf(typed, [...after.rungs.map(({ id }) => id), ...before.rungs.map(({ id }) => id)], /^(standard|first_reps)/)
    return [
      change({
        kind: rises ? 'placement-rises' : 'placement-falls',
        subject: { ladder: after.id, rung: is.id },
        name: `after ${reps} strict reps with ${reserve_reps} in reserve`,
        weight: 're-placing',
        before: { text: stood },
        after: { text: now },
        causes,
        example,
        is: placeOf(after.places, ['rungs', is.id]),
      }),
    ]
  })
}
