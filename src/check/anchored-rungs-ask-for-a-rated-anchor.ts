import type { Rule } from './rule.ts'

/** Words that speak of the anchor, here and in neighbouring languages, or of who rated it. */
const ANCHOR = /anchor|ancla|ancra|ancor|ank[ae]r|\brated\b|\bcompetent person/i

export const anchoredRungsAskForARatedAnchor: Rule = {
  name: 'anchored-rungs-ask-for-a-rated-anchor',
  says: 'A rung on straps asks for an anchor that a competent person has rated.',
  why: 'The anchor carries the athlete, and twice as much when it is loaded at once.',

  check: ({ rungs }) =>
    rungs.flatMap(({ title, load, cautions }, index) =>
      'hands' in load && load.hands === 'straps' && !cautions.some((caution) => ANCHOR.test(caution))
        ? [{ path: ['rungs', index], message: `"${title}" hangs on an anchor, but none of its cautions speaks of it. Ask for an anchor rated by a competent person.` }]
        : [],
    ),
}
