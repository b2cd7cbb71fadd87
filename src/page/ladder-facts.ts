import { isMissing } from '../quantity/outcome.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { entryWords } from './both-units.ts'
import { loadText } from './figures.ts'
import { joined, say, type Part, type Words } from './html.ts'

/** What a ladder diagram shows of a rung, and the list beside it says. */
export type RungFact = { readonly id: string; readonly title: string; readonly load: Words; readonly demand: Words; readonly aim: boolean }
/** What stands on an arrow: what must be shown on `from` to enter `to`. */
export type StepFact = { readonly from: string; readonly to: string; readonly entry: Part }

const factOf = (rung: MeasuredRung, aim: string): RungFact => ({
  id: rung.id,
  title: rung.title,
  load: isMissing(rung.outcome) ? 'load not computed' : limb(rung),
  demand: rung.demand.length > 0 ? say`also: ${joined(rung.demand, ', ')}` : '',
  aim: rung.id === aim,
})

/** The load, and which limb it is on, where it is on one. */
function limb(rung: MeasuredRung): Words {
  const name = isMissing(rung.outcome) ? '' : rung.outcome.quantity.name
  const load = loadText(rung)
  return name.endsWith('hand') ? say`${load} a hand` : name.endsWith('leg') ? say`${load} a leg` : load
}

/** One list of facts, from which the diagram and its twin in words are both made. */
export function ladderFacts(ladder: MeasuredLadder): { readonly rungs: readonly RungFact[]; readonly steps: readonly StepFact[] } {
  return {
    rungs: ladder.rungs.map((rung) => factOf(rung, ladder.aim)),
    steps: ladder.rungs.flatMap((rung) => rung.steps.map(({ from, to, entry }) => ({ from, to, entry: entryWords(entry) }))),
  }
}
