import { kitWords, oneOfMany } from './kit.ts'
import type { Rule } from './rule.ts'

/** Words that count things and do not name them. */
const COUNTS = /^(an?|the|some|one|two|three|four|pairs?|of|\d+)$/

/** What a thing is called, however many there are of it. */
const named = (thing: string): string[] => kitWords(thing).filter((word) => !COUNTS.test(word)).map(oneOfMany)

/** "mats" are among "two soft mats". */
const isAmong = (thing: string, listed: string): boolean => thing.toLowerCase() === listed.toLowerCase() || (named(thing).length > 0 && named(thing).every((word) => named(listed).includes(word)))

export const equipmentIsListed: Rule = {
  name: 'equipment-is-listed',
  says: 'What a rung says it uses is in the ladder’s list of equipment, and nothing is listed twice.',
  why: 'A coach packs from the list.',

  check({ equipment, rungs }) {
    const twice = equipment.flatMap((thing, index) => (equipment.findIndex((other) => other.toLowerCase() === thing.toLowerCase()) < index ? [{ path: ['equipment', index], message: `"${thing}" is listed twice. Keep one.` }] : []))
    const absent = rungs.flatMap(({ title, equipment: uses }, index) =>
      uses.flatMap((thing, at) => (equipment.some((listed) => isAmong(thing, listed)) ? [] : [{ path: ['rungs', index, 'equipment', at], message: `"${title}" uses "${thing}", which is not in the ladder's equipment. Add it there.` }])),
    )
    return [...twice, ...absent]
  },
}
