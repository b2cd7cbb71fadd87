import type { Rule } from './rule.ts'

export const firstRepsLeaveRoom: Rule = {
  name: 'first-reps-leave-room',
  says: 'Where repetitions are counted, the fewest to begin with are given, and are fewer than the standard.',
  why: 'Without them no step can be called climbable; as many as the standard, and nobody could begin.',

  check({ standard, first_reps, rungs }) {
    if (standard.reps === undefined) return first_reps === undefined || rungs.some(({ entry }) => entry.reps !== undefined) ? [] : [{ path: ['first_reps'], message: 'first_reps is given, but the standard counts no repetitions. Take it out.' }]
    if (standard.reps === 1 && (first_reps ?? 1) === 1) return [] // one roll, one lift: nobody begins with fewer
    if (first_reps === undefined) return [{ path: ['standard'], message: 'first_reps is not given. Say with how many strict repetitions work on a new rung may begin.' }]
    return first_reps >= standard.reps ? [{ path: ['first_reps'], message: `first_reps is ${first_reps}, and the standard only ${standard.reps}. Begin with fewer.` }] : []
  },
}
