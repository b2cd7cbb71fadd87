import { isMissing } from '../quantity/outcome.ts'
import { repsText } from '../measure/predict.ts'
import type { Rule } from './rule.ts'

export const stepsAreClimbable: Rule = {
  name: 'steps-are-climbable',
  says: 'Whoever meets the entry can do the first repetitions on the next rung.',
  why: 'A step that is too steep is practised with bad form, or not at all. Common practice: put an easier version between.',

  untold: ({ rungs, standard }) =>
    standard.reps === undefined
      ? []
      : rungs.flatMap(({ title, steps }, index) =>
          steps.flatMap(({ from, kind }) =>
            isMissing(kind) ? [{ path: ['rungs', index], message: `Whether the step from "${rungs.find(({ id }) => id === from)?.title ?? from}" to "${title}" can be climbed cannot be told: ${kind.missing}.` }] : [],
          ),
        ),

  check: ({ rungs, first_reps }) =>
    rungs.flatMap(({ title, steps }, index) =>
      steps.flatMap(({ from, kind, predicted, computed_entry, missing_rung }) => {
        if (kind !== 'too steep' || isMissing(predicted)) return []
        const below = rungs.find(({ id }) => id === from)?.title ?? from
        const between = missing_rung === undefined || isMissing(missing_rung) ? 'put a rung between' : `put a rung between: ${missing_rung.says}`
        const remedy = isMissing(computed_entry) ? `P${between.slice(1)}` : `Ask for ${computed_entry} repetitions on "${below}", or ${between}`
        return [{ path: ['rungs', index], message: `The step from "${below}" to "${title}" is too steep: ${repsText(predicted)} repetitions to expect where ${first_reps} are wanted. ${remedy}.` }]
      }),
    ),
}
