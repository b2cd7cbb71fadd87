import type { Rule } from './rule.ts'

export const standardsSuitTheLoad: Rule = {
  name: 'standards-suit-the-load',
  says: 'An entry counts what the rung it is shown on is done in: nobody holds a landing for seconds.',
  why: 'Repetitions of a hold, or seconds of a landing, cannot be shown.',

  check: ({ rungs, standard }) =>
    rungs.flatMap(({ title, steps, entry }, index) =>
      steps.flatMap(({ from, entry: full }) => {
        const below = rungs.find(({ id }) => id === from)
        if (!below || below.model.name !== 'landing' || full.amount === undefined || full.amount.unit === 'reps') return []
        const path = Object.keys(entry).length > 0 ? ['rungs', index, 'entry'] : standard.reps === undefined ? ['standard'] : ['rungs', index]
        return [{ path, message: `"${title}" asks for ${full.amount.unit} of "${below.title}", which is a landing. Ask for repetitions that are stuck.` }]
      }),
    ).slice(0, 1),
}
