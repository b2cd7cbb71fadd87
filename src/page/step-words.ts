import { isMissing } from '../quantity/outcome.ts'
import type { MeasuredLadder } from '../measure/measure.ts'
import type { Step } from '../measure/step.ts'
import { kindText } from './figures.ts'
import type { Words } from './html.ts'

/** Whose missing load is why a step cannot be told: the rung's own, or that of the rung before; undefined where it is something else, or the step is told. */
export function noLoadOf({ from, to, kind }: Step, { rungs }: MeasuredLadder): 'own' | 'before' | undefined {
  if (!isMissing(kind)) return undefined
  const isOf = (id: string): boolean => {
    const outcome = rungs.find((rung) => rung.id === id)?.outcome
    return outcome !== undefined && isMissing(outcome) && outcome.missing === kind.missing
  }
  return isOf(to) ? 'own' : isOf(from) ? 'before' : undefined
}

/** What kind of step it is, in a few words; why that is not known is not said again where a rung's missing load says it. */
export function stepWords(step: Step, ladder: MeasuredLadder): Words {
  const why = noLoadOf(step, ladder)
  return why === 'own' ? 'step not computed, for that rung has no load' : why === 'before' ? 'step not computed, for the rung before has no load' : kindText(step.kind)
}
