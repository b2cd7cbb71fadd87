import type { Rule } from './rule.ts'

export const sealsMatch: Rule = {
  name: 'seals-match',
  says: 'The seal of a review matches the criteria, loads and safety notes that were signed.',
  why: 'A reviewer’s name under criteria they never saw is worse than no name.',

  check: ({ id, review, sealed, digest }) =>
    review && sealed === false
      ? [{ path: ['review'], message: `The criteria of this ladder are not those that ${review.by} signed on ${review.on} (now ${digest}). Have them reviewed again, with: rungbook review --seal ${id} --by NAME.` }]
      : [],
}
