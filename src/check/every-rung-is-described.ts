import type { RungWords } from '../ladder/curriculum.ts'
import type { Rule } from './rule.ts'

/** What a coach on the floor needs and does not find. */
function lacking(words: RungWords): string[] {
  const absent = (name: string, lines: { readonly length: number } | undefined) => (lines === undefined || lines.length === 0 ? [name] : [])
  return [...absent('Set up', words.set_up), ...absent('Full rep', words.full_rep), ...absent('Cues', words.cues), ...absent('Faults', words.faults)]
}

export const everyRungIsDescribed: Rule = {
  name: 'every-rung-is-described',
  says: 'Every rung says how to set up, what a full rep is, what to cue and which faults to look for.',
  why: 'A coach on the floor opens one rung. What is not written there will be made up.',

  check: ({ rungs }) =>
    rungs.flatMap(({ id, title, words }, index) => {
      if (!words) return [{ path: ['rungs', index], message: `"${title}" is not described. Write a section "## ${title} {#${id}}" with Set up, Full rep, Cues and Faults.` }]
      const gaps = lacking(words)
      return gaps.length > 0 ? [{ path: ['rungs', index], message: `"${title}" lacks ${gaps.join(', ')}. Write ${gaps.length === 1 ? 'it' : 'them'} under its heading.` }] : []
    }),
}
