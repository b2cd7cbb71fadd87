import type { Rule } from './rule.ts'

/** More words than this are not heard in the middle of a rep. Taste. */
const MOST_WORDS = 8

/** How many words are called out; a dash between two of them is none. */
const spoken = (cue: string): number => cue.split(/\s+/).filter((word) => /[\p{Letter}\p{Number}]/u.test(word)).length

/** Ways to begin with what not to do; "avoider" and "nevertheless" are none. */
const BAN = /^(no |(do not|don[’']t|never|avoid)(?!\p{Letter}))/iu

export const cuesAreShort: Rule = {
  name: 'cues-are-short',
  says: 'A cue has at most eight words and says what to do.',
  why: 'A cue is called across a room in the middle of a rep. What begins with "do not" puts the fault in mind.',

  check: ({ rungs }) =>
    rungs.flatMap(({ id, words }) =>
      (words?.cues ?? []).flatMap((item, index) => {
        const cue = item.split('\n')[0] ?? '' // what stands below it is not called out
        const path = ['rungs', id, 'cues', index]
        if (spoken(cue) > MOST_WORDS) return [{ path, message: `"${cue}" is long for a cue. Say it in at most ${MOST_WORDS} words.` }]
        return BAN.test(cue) ? [{ path, message: `"${cue}" says what not to do. Say what to do instead.` }] : []
      }),
    ),
}
