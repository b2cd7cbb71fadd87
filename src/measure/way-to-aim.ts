import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import type { MeasuredLadder, MeasuredRung } from './measure.ts'

/** Weeks from meeting the standard on one rung to meeting it on the aim, fewest and most. */
export type Weeks = readonly [few: number, many: number]

/** The rungs to climb from `from` to the aim, the aim last; undefined where the aim does not lie above. */
export function climb(ladder: MeasuredLadder, from: string): readonly MeasuredRung[] | undefined {
  const byId = new Map(ladder.rungs.map((rung) => [rung.id, rung]))
  const way: MeasuredRung[] = []
  for (let at = byId.get(ladder.aim); at && at.id !== from; at = byId.get(at.steps[0]?.from ?? '')) {
    if (way.includes(at)) return undefined
    way.unshift(at)
  }
  const [first] = way
  return from === ladder.aim || first?.steps[0]?.from === from ? way : undefined
}

/**
 * How long the way to the aim takes: the blocks of the rungs between, added up.
 *
 * Units   weeks at the ladder's own sessions a week.
 * Missing where the aim does not lie above, or a block on the way cannot be computed.
 */
export function weeksToAim(ladder: MeasuredLadder, from: string): Outcome<Weeks> {
  const way = climb(ladder, from)
  if (!way) return missing('the aim does not lie above this rung')
  let [few, many] = [0, 0]
  for (const rung of way) {
    const block = rung.steps[0]?.block
    if (block === undefined) return missing(`"${rung.title}" follows no rung`)
    if (isMissing(block)) return missing(`the time on "${rung.title}" is not computed: ${block.missing}`)
    few += block.sessions[0]
    many += block.sessions[1]
  }
  return [Math.ceil(few / ladder.sessions_per_week), Math.ceil(many / ladder.sessions_per_week)]
}
