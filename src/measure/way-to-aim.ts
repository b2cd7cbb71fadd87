import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import type { MeasuredLadder, MeasuredRung } from './measure.ts'
import type { Step } from './step.ts'

/** Weeks from meeting the standard on one rung to meeting it on the aim, fewest and most. */
export type Weeks = readonly [few: number, many: number]

/** One rung on a way up, and the step that leads to it. */
export type Stretch = { readonly rung: MeasuredRung; readonly step: Step }

/** The rungs to climb from `from` to the aim, the aim last, by the ways that are named first; undefined where the aim does not lie above. */
export function climb(ladder: MeasuredLadder, from: string): readonly Stretch[] | undefined {
  const byId = new Map(ladder.rungs.map((rung) => [rung.id, rung]))
  const tried = new Set<string>()
  const upTo = (id: string): readonly Stretch[] | undefined => {
    const rung = byId.get(id)
    if (!rung || tried.has(id)) return undefined
    if (id === from) return []
    tried.add(id)
    for (const step of rung.steps) {
      const way = upTo(step.from)
      if (way) return [...way, { rung, step }]
    }
    return undefined
  }
  return upTo(ladder.aim)
}

/** How long the way to the aim takes on the rungs where that can be computed, and why not on each of the others. */
export type WayToAim = { readonly weeks: Weeks; readonly told: readonly MeasuredRung[]; readonly untold: readonly { readonly rung: MeasuredRung; readonly why: string }[] }

/**
 * How long the way to the aim takes: the blocks of the rungs between, added up where they can be computed.
 *
 * Units   weeks at the ladder's own sessions a week; of the rungs in `told` alone.
 * Missing where the aim does not lie above.
 */
export function wayToAim(ladder: MeasuredLadder, from: string): Outcome<WayToAim> {
  const way = climb(ladder, from)
  if (!way) return missing('the aim does not lie above this rung')
  let [few, many] = [0, 0]
  const told: MeasuredRung[] = []
  const untold: { rung: MeasuredRung; why: string }[] = []
  for (const { rung, step } of way) {
    if (isMissing(step.block)) {
      untold.push({ rung, why: step.block.missing })
      continue
    }
    told.push(rung)
    few += step.block.sessions[0]
    many += step.block.sessions[1]
  }
  const weeks = (sessions: number): number => Math.max(0, Math.ceil(sessions / ladder.sessions_per_week - 1e-9)) // 21 sessions at 1.4 a week are 15 weeks
  return { weeks: [weeks(few), weeks(many)], told, untold }
}
