import type { Rule } from './rule.ts'

export const levelStepsNameADemand: Rule = {
  name: 'level-steps-name-a-demand',
  says: 'A rung that loads the same as the one it follows names what else makes it harder.',
  why: 'Two rungs with one load and no other demand are one rung.',

  check: ({ rungs }) =>
    rungs.flatMap(({ title, demand, steps }, index) =>
      steps.flatMap(({ from, kind }) => {
        if (kind !== 'level' || demand.length > 0) return []
        const below = rungs.find(({ id }) => id === from)?.title ?? from
        return [{ path: ['rungs', index], message: `"${title}" loads the same as "${below}". Name its demand, or leave one of the two out.` }]
      }),
    ),
}
