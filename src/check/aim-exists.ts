import { nearest } from '../read/nearest.ts'
import type { Rule } from './rule.ts'

export const aimExists: Rule = {
  name: 'aim-exists',
  says: 'The aim is one of the rungs.',
  why: 'A ladder exists for one rung; what is below it is a way there, what is above it is for those who want more.',

  check({ aim, rungs }) {
    if (rungs.some(({ id }) => id === aim)) return []
    const like = nearest(aim, rungs.map(({ id }) => id))
    return [{ path: ['aim'], ...(like ? { edit: { old: aim, text: like } } : {}), message: `The aim is "${aim}", but no rung has that id. The rungs are: ${rungs.map(({ id }) => id).slice(0, 12).join(', ')}.` }]
  },
}
