import { isMissing } from '../quantity/outcome.ts'
import { compareText, placeOf } from '../ladder/finding.ts'
import type { MeasuredLadder } from '../measure/measure.ts'
import { placement } from '../measure/place.ts'
import type { Change, Example } from './change.ts'
import { change, named } from './make.ts'
import { causesOf } from './followed.ts'
import type { Pair } from './typed.ts'

/** Where one strict set places an athlete of the average body. */
function stands(ladder: MeasuredLadder, on: string, reps: number, reserve_reps: number): string | undefined {
  const placed = placement(ladder, on, reps, reserve_reps)
  if (isMissing(placed) || isMissing(placed.highest)) return undefined
  return placed.highest
}

/** How many rungs one climbs past to stand on a rung. */
function below(ladder: MeasuredLadder, id: string): number {
  const found = new Set<string>()
  const waiting = [id]
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    const next = ladder.rungs.find((rung) => rung.id === at)?.after ?? []
    waiting.push(...next.filter((one) => !found.has(one)))
    for (const one of next) found.add(one)
  }
  return found.size
}

/** Whether one rung stands above another: by its load where the two can be compared, then by the rungs below it, then by its id. Never so both ways. */
function higher(ladder: MeasuredLadder, id: string, other: MeasuredLadder, otherId: string): boolean {
  const [one, two] = [ladder.rungs.find((rung) => rung.id === id)?.outcome, other.rungs.find((rung) => rung.id === otherId)?.outcome]
  const heavier = one && two && !isMissing(one) && !isMissing(two) && one.quantity.name === two.quantity.name && one.quantity.unit === two.quantity.unit ? one.load.mid - two.load.mid : 0
  return (heavier || below(ladder, id) - below(other, otherId) || compareText(id, otherId)) > 0
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
    const example: Example = { ladder: after.id, on: is.id, reps, reserve_reps, stood, stands: now, titles: { on: is.title, stood: named(before, stood).title, stands: named(after, now).title } }
    const rises = higher(after, now, before, stood)
    const causes = causesOf(typed, [...after.rungs.map(({ id }) => id), ...before.rungs.map(({ id }) => id)], /^(standard|first_reps)/)
    return [
      change({
        kind: rises ? 'placement-rises' : 'placement-falls',
        subject: { ladder: after.id, rung: is.id },
        name: `after ${reps} strict reps with ${reserve_reps} in reserve`,
        weight: 're-placing',
        before: { text: stood, holds: [{ rung: named(before, stood) }] },
        after: { text: now, holds: [{ rung: named(after, now) }] },
        causes,
        example,
        is: placeOf(after.places, ['rungs', is.id]),
      }),
    ]
  })
}
