import { isMissing } from '../quantity/outcome.ts'
import { entryText } from '../measure/entry.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { loadText } from './figures.ts'

/** What a ladder diagram shows of a rung, and the list beside it says. */
export type RungFact = { readonly id: string; readonly title: string; readonly load: string; readonly demand: string; readonly aim: boolean }
/** What stands on an arrow: what must be shown on `from` to enter `to`. */
export type StepFact = { readonly from: string; readonly to: string; readonly entry: string }

const factOf = (rung: MeasuredRung, aim: string): RungFact => ({
  id: rung.id,
  title: rung.title,
  load: isMissing(rung.outcome) ? 'load not computed' : `${loadText(rung)}${limb(rung)}`,
  demand: rung.demand.length > 0 ? `also: ${rung.demand.join(', ')}` : '',
  aim: rung.id === aim,
})

/** Which limb a load is on, where it is on one. */
function limb({ outcome }: MeasuredRung): string {
  if (isMissing(outcome)) return ''
  const { name } = outcome.quantity
  return name.endsWith('hand') ? ' a hand' : name.endsWith('leg') ? ' a leg' : ''
}

/** One list of facts, from which the diagram and its twin in words are both made. */
export function ladderFacts(ladder: MeasuredLadder): { readonly rungs: readonly RungFact[]; readonly steps: readonly StepFact[] } {
  return {
    rungs: ladder.rungs.map((rung) => factOf(rung, ladder.aim)),
    steps: ladder.rungs.flatMap((rung) => rung.steps.map(({ from, to, entry }) => ({ from, to, entry: entryText(entry) }))),
  }
}
