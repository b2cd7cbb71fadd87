import { isMissing } from '../quantity/outcome.ts'
import { SUPERVISION } from '../ladder/schema.ts'
import type { Rule } from './rule.ts'

/** Models whose greater load is the same thing, only more of it. */
const MORE_OF_THE_SAME = new Set(['landing', 'one-rep-max'])

export const supervisionRisesWithRisk: Rule = {
  name: 'supervision-rises-with-risk',
  says: 'No rung is watched less than the ladder asks, and no higher drop or heavier lift less than the one it follows.',
  why: 'More of the same that may be done alone, above less of it that may not, is a slip.',

  check: ({ supervision, rungs }) => {
    const rank = (watched: (typeof SUPERVISION)[number] | undefined): number => SUPERVISION.indexOf(watched ?? supervision)
    return rungs.flatMap(({ title, supervision: own, after, model, outcome }, index) => {
      if (own !== undefined && rank(own) < rank(undefined)) return [{ path: ['rungs', index, 'supervision'], message: `"${title}" asks for less supervision (${own}) than the ladder does (${supervision}). Take it out, or raise it.` }]
      if (!MORE_OF_THE_SAME.has(model.name) || isMissing(outcome)) return []
      const below = rungs.find((other) => after.includes(other.id) && other.model === model && !isMissing(other.outcome) && other.outcome.load.mid < outcome.load.mid && rank(other.supervision) > rank(own))
      return below ? [{ path: ['rungs', index], message: `"${title}" is watched less than "${below.title}", which it follows. Write supervision: ${below.supervision}.` }] : []
    })
  },
}
