import type { MeasuredLadder } from '../measure/measure.ts'
import type { Rule } from './rule.ts'

/** Every word a ladder's coach reads, in small letters. */
const proseOf = ({ intro, rungs }: MeasuredLadder): string[] =>
  [intro, ...rungs.flatMap(({ title, equipment, cautions, words }) => [title, ...equipment, ...cautions, words?.intro, words?.set_up, ...(words?.full_rep ?? []), ...(words?.faults ?? []).map(({ remedy }) => remedy)])]
    .join(' ')
    .toLowerCase()
    .match(/[\p{Letter}\d]+/gu) ?? []

/** "two benches" speaks of a bench: any word of three letters or more will do, less its plural. */
const stems = (thing: string): string[] => (thing.toLowerCase().match(/\p{Letter}{3,}/gu) ?? []).map((word) => word.replace(/(es|s)$/, ''))

export const equipmentIsUsed: Rule = {
  name: 'equipment-is-used',
  says: 'What is listed as equipment is spoken of somewhere in the ladder.',
  why: 'A list that holds more than is used is not read the next time.',

  check(ladder) {
    const prose = proseOf(ladder)
    if (ladder.rungs.every(({ words }) => words === undefined)) return []
    return ladder.equipment.flatMap((thing, index) => ([...stems(thing), thing.toLowerCase()].some((stem) => prose.some((word) => word.startsWith(stem))) ? [] : [{ path: ['equipment', index], message: `"${thing}" is listed, but no rung speaks of it. Take it out, or say where it is used.` }]))
  },
}
