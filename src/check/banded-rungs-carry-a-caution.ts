import type { Rule } from './rule.ts'

/** What a band is called, here and in neighbouring languages. */
const BAND = /band|[eé]last|rubber|tubing|\bloops?\b|gumm|\bgoma|\bliga/i

export const bandedRungsCarryACaution: Rule = {
  name: 'banded-rungs-carry-a-caution',
  says: 'A rung with a stretched band says to check it and to stand clear.',
  why: 'A band that slips or snaps strikes the face. Common practice: check it before every set.',

  check: ({ rungs }) =>
    rungs.flatMap(({ title, load, cautions }, index) =>
      'band_points' in load && load.band_points !== undefined && !cautions.some((caution) => BAND.test(caution))
        ? [{ path: ['rungs', index], message: `"${title}" stretches a band, but none of its cautions speaks of it. Ask for it to be checked before every set.` }]
        : [],
    ),
}
