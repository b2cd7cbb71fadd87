import { nearest } from '../read/nearest.ts'
import type { Rule } from './rule.ts'

export const retiredRungsNameAnHeir: Rule = {
  name: 'retired-rungs-name-an-heir',
  says: 'A rung that was withdrawn keeps its address and names a rung that took its place.',
  why: 'Cards on walls and logs on phones still point at it.',

  check: ({ retired = [], rungs }) =>
    retired.flatMap(({ id, heir }, index) => {
      const path = ['retired', index]
      if (rungs.some((rung) => rung.id === id)) return [{ path, message: `"${id}" is listed as withdrawn, but there is such a rung. Take it off one of the two.` }]
      const like = nearest(heir, rungs.map((rung) => rung.id))
      return rungs.some((rung) => rung.id === heir) ? [] : [{ path: [...path, 'heir'], ...(like ? { edit: { old: heir, text: like } } : {}), message: `The heir of "${id}" is "${heir}", but no rung has that id. Name one of the rungs.` }]
    }),
}
