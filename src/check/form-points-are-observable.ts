import type { Found, Rule } from './rule.ts'

/** Words that judge, or speak of what only the athlete can feel; the good leg is the one that is not injured, and a lock is seen to be engaged. Taste, after common practice. */
const UNSEEN = new RegExp(
  [
    /\b(proper|properly|correct|correctly|nice|quality|feel|feels|feeling|comfortable|comfortably|optimal)\b/,
    /\bgood\b(?! (leg|arm|hand|foot|knee|side|morning)s?\b)/,
    /(?<!\b(brake|lock|latch|pin|clip|catch|gate|gear|hook|buckle)(e?s)?( is| are)? )\b(engaged?|activated?)\b/,
    /(?<=\b(in|your|the|a|clear|calm) )mind\b|\bmind(?=[ -]muscle)/,
  ]
    .map(({ source }) => source)
    .join('|'),
  'i',
)
/** More than this cannot be watched in one rep. Taste. */
const MOST = 7

export const formPointsAreObservable: Rule = {
  name: 'form-points-are-observable',
  says: 'There are form points, few enough to watch, and each is something a coach can see.',
  why: 'A rep counts or does not. Two coaches agree on what they see, not on what is good.',

  check({ form, rungs }) {
    const judged = (points: readonly string[], path: Found['path']): Found[] =>
      points.flatMap((point, index) => {
        const word = UNSEEN.exec(point)?.[0]
        return word ? [{ path: [...path, index], message: `The form point "${point}" cannot be seen: "${word}". Say what it looks like.` }] : []
      })
    if (form.length === 0) return [{ path: ['form'], message: 'There is no form point. Say what must be seen in every rep for it to count.' }]
    const many = form.length > MOST ? [{ path: ['form'], message: `${form.length} form points are too many to watch in one rep. Keep the ${MOST} that matter most.` }] : []
    return [...many, ...judged(form, ['form']), ...rungs.flatMap((rung, index) => judged(rung.form, ['rungs', index, 'form']))]
  },
}
