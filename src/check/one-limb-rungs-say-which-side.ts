import type { Rule } from './rule.ts'

export const oneLimbRungsSayWhichSide: Rule = {
  name: 'one-limb-rungs-say-which-side',
  says: 'A one-limb rung says which side goes first, and carries a caution.',
  why: 'Common practice: the weaker side first, the other matches it. One limb carries what two did.',

  check: ({ rungs }) =>
    rungs.flatMap(({ title, demand, first_side, cautions }, index) => {
      if (!demand.includes('one side')) return []
      if (first_side === undefined) return [{ path: ['rungs', index], message: `"${title}" works one side at a time but does not say which first. Add first_side.` }]
      return !cautions.some((caution) => /\p{Letter}/u.test(caution)) ? [{ path: ['rungs', index], message: `"${title}" works one side at a time but carries no caution. Add cautions.` }] : []
    }),
}
