import type { Path } from '../ladder/finding.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'

/** A piece of a ladder's prose, with the way to where it stands. */
export type Prose = { readonly path: Path; readonly text: string }

/** Everything a coach wrote below the front matter, piece by piece. */
export const proseOf = ({ intro, rungs }: MeasuredLadder): Prose[] => [{ path: ['intro'], text: intro }, ...rungs.flatMap(ofRung)]

/** All that a coach wrote and a page shows as Markdown: the prose, and the lines of the front matter. */
export const writtenIn = (ladder: MeasuredLadder): Prose[] => {
  const lines = (path: Path, texts: readonly string[]): Prose[] => texts.map((text, index) => ({ path: [...path, index], text }))
  return [
    ...lines(['form'], ladder.form),
    ...lines(['stop'], ladder.stop),
    ...lines(['ask_first'], ladder.ask_first),
    ...ladder.rungs.flatMap(({ id, form, cautions, first_side }) => [
      ...lines(['rungs', id, 'form'], form),
      ...lines(['rungs', id, 'cautions'], cautions),
      { path: ['rungs', id, 'first_side'], text: first_side ?? '' },
    ]),
    ...proseOf(ladder),
  ]
}

function ofRung({ id, words }: MeasuredRung): Prose[] {
  if (!words) return []
  const at = (part: Path, text: string): Prose => ({ path: ['rungs', id, ...part], text })
  return [
    at(['section'], words.intro),
    at(['set-up'], words.set_up ?? ''),
    ...(words.full_rep ?? []).map((step, index) => at(['full-rep', index], step)),
    ...(words.cues ?? []).map((cue, index) => at(['cues', index], cue)),
    ...(words.faults ?? []).flatMap(({ seen, cause, say, remedy }, index) => [seen, cause, say, remedy].map((text) => at(['faults', index], text))),
    ...words.notes.map(({ body }) => at(['notes'], body)),
  ]
}
