import { figureText } from '../quantity/figure.ts'
import { isMissing } from '../quantity/outcome.ts'
import type { Rule } from './rule.ts'

export const rungsRise: Rule = {
  name: 'rungs-rise',
  says: 'Each rung loads at least as much as the rung it follows, or names what else makes it harder.',
  why: 'A reader climbs the ladder in order. A rung that loads less is out of place, or its numbers are.',

  check: ({ rungs }) =>
    rungs.flatMap(({ title, outcome, steps }, index) =>
      steps.flatMap(({ from, kind }) => {
        const below = rungs.find(({ id }) => id === from)
        if (kind !== 'backwards' || !below || isMissing(outcome) || isMissing(below.outcome)) return []
        const { unit } = outcome.quantity
        const [here, there] = [figureText(outcome.load.mid, unit), figureText(below.outcome.load.mid, unit)]
        return [{ path: ['rungs', index, 'load'], message: `"${title}" loads ${here}, less than "${below.title}" below it (${there}). Swap them, check the inputs, or name its demand.` }]
      }),
    ),
}
