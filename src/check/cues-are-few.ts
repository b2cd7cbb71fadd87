import type { Rule } from './rule.ts'

/** More than this, and none is heard. Taste. */
const MOST = 6

export const cuesAreFew: Rule = {
  name: 'cues-are-few',
  says: 'A rung has at most six cues, each once.',
  why: 'One cue at a time is heard; a page of them is read by nobody.',

  check: ({ rungs }) =>
    rungs.flatMap(({ id, title, words }, index) => {
      const cues = words?.cues ?? []
      const many = cues.length > MOST ? [{ path: ['rungs', index], message: `"${title}" has ${cues.length} cues. Keep the ${MOST} that change most.` }] : []
      const twice = cues.flatMap((cue, at) => (cues.indexOf(cue) < at ? [{ path: ['rungs', id, 'cues', at], message: `The cue "${cue}" stands twice. Keep one.` }] : []))
      return [...many, ...twice]
    }),
}
