import type { Rule } from './rule.ts'

export const theAimHasAWayUp: Rule = {
  name: 'the-aim-has-a-way-up',
  says: 'There is an easier rung below the aim.',
  why: 'A ladder is for those who cannot do its aim yet.',

  check: ({ aim, rungs }) => (rungs.some(({ id, after }) => id === aim && after.length === 0) ? [{ path: ['aim'], message: `The aim "${aim}" is the first rung. Put an easier version before it.` }] : []),
}
