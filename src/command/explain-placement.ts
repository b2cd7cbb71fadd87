import { isMissing } from '../quantity/outcome.ts'
import { placement } from '../measure/place.ts'
import type { MeasuredLadder } from '../measure/measure.ts'
import { repsText } from '../measure/predict.ts'

/** Where one strict set on a rung would put an athlete: what to expect on every rung of the ladder, and the rung to work on. */
export function placementText(ladder: MeasuredLadder, on: string, reps: number, reserve_reps: number): string {
  const placed = placement(ladder, on, reps, reserve_reps)
  const head = `${reps} strict reps on ${on}, ${reserve_reps} in reserve`
  if (isMissing(placed)) return `${head}: not computed: ${placed.missing}\n`
  const rows = placed.rungs.map(({ id, predicted }) => `  ${id.padEnd(24)} ${isMissing(predicted) ? `not computed: ${predicted.missing}` : `${repsText(predicted)} reps`}`)
  return `${head}\n${rows.join('\n')}\n  ready for ${isMissing(placed.highest) ? `no rung: ${placed.highest.missing}` : placed.highest}\n`
}
