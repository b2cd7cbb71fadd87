import type { Rule } from './rule.ts'

export const equipmentIsListed: Rule = {
  name: 'equipment-is-listed',
  says: 'What a rung says it uses is in the ladder’s list of equipment, and nothing is listed twice.',
  why: 'A coach packs from the list.',

  check({ equipment, rungs }) {
    const listed = new Set(equipment.map((thing) => thing.toLowerCase()))
    const twice = equipment.flatMap((thing, index) => (equipment.findIndex((other) => other.toLowerCase() === thing.toLowerCase()) < index ? [{ path: ['equipment', index], message: `"${thing}" is listed twice. Keep one.` }] : []))
    const absent = rungs.flatMap(({ title, equipment: uses }, index) =>
      uses.flatMap((thing, at) => (listed.has(thing.toLowerCase()) ? [] : [{ path: ['rungs', index, 'equipment', at], message: `"${title}" uses "${thing}", which is not in the ladder's equipment. Add it there.` }])),
    )
    return [...twice, ...absent]
  },
}
