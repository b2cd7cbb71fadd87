import { isMissing } from '../quantity/outcome.ts'
import type { Rule } from './rule.ts'

export const loadsAreComputed: Rule = {
  name: 'loads-are-computed',
  says: 'Every rung has a load that can be computed, or says plainly that it is a skill.',
  why: 'A number that is silently absent looks like a number nobody thought of.',

  check: ({ rungs }) =>
    rungs.flatMap(({ title, model, outcome }, index) =>
      isMissing(outcome) && model.name !== 'skill'
        ? [{ path: ['rungs', index, 'load'], message: `The load of "${title}" is not computed: ${outcome.missing}. Change the set-up, or write model: skill.` }]
        : [],
    ),
}
