import type { Rule } from './rule.ts'

/** More words than this are not heard in the middle of a rep. Taste. */
const MOST_WORDS = 8

export const cuesAreShort: Rule = {
  name: 'cues-are-short',
  says: 'A cue has at most eight words and says what to do.',
  why: 'A cue is called across a room in the middle of a rep. What begins with "do not" puts the fault in mind.',

  check: ({ rungs }) =>
    rungs.flatMap(({ id, words }) =>
      (words?.cues ?? []).flatMap((cue, index) => {
        const path = ['rungs', id, 'cues', index]
        if (cue.split(/\s+/).length > MOST_WORDS) return [{ path, message: `"${cue}" is long for a cue. Say it in at most ${MOST_WORDS} words.` }]
        return /^(do not|don[’']t|never|avoid|no )/i.test(cue) ? [{ path, message: `"${cue}" says what not to do. Say what to do instead.` }] : []
      }),
    ),
}
