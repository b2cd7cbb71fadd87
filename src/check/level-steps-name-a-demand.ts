import { isMissing, type Outcome } from '../quantity/outcome.ts'
import type { Load } from '../load/model.ts'
import type { Rule } from './rule.ts'

/** A mass that was weighed or a height that was measured is known exactly: 252.5 kg is more than 250 kg, however near. */
const isExact = (load: Load['load']): boolean => load.points.every((point) => point === load.mid)
const surelyHeavier = (above: Outcome<Load>, below: Outcome<Load>): boolean => !isMissing(above) && !isMissing(below) && isExact(above.load) && isExact(below.load) && above.load.mid > below.load.mid

export const levelStepsNameADemand: Rule = {
  name: 'level-steps-name-a-demand',
  says: 'A rung that loads the same as the one it follows names what else makes it harder.',
  why: 'Two rungs with one load and no other demand are one rung.',

  check: ({ rungs }) =>
    rungs.flatMap(({ title, demand, outcome, steps }, index) =>
      steps.flatMap(({ from, kind }) => {
        if (kind !== 'level' || demand.length > 0) return []
        const below = rungs.find(({ id }) => id === from)
        if (below && surelyHeavier(outcome, below.outcome)) return []
        return [{ path: ['rungs', index], message: `"${title}" loads the same as "${below?.title ?? from}". Name its demand, or leave one of the two out.` }]
      }),
    ),
}
