import type { Rule } from './rule.ts'

export const sealsMatch: Rule = {
  name: 'seals-match',
  says: 'The seal of a review matches the criteria, loads and safety notes that were signed.',
  why: 'A reviewer’s name under criteria they never saw is worse than no name.',

  check: (ladder) =>
    ladder.review && ladder.sealed === false
      ? [{ path: ['review'], message: `The criteria of this ladder are not those that ${ladder.review.by} signed on ${ladder.review.on} (now ${ladder.digest}). Have them reviewed again, with: rungbook review --seal ${ladder.id} --by NAME.` }]
      : [],
}
