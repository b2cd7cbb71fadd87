import type { MeasuredRung } from '../measure/measure.ts'
import type { Found, Rule } from './rule.ts'

/** Rungs that can be climbed to from a first rung, following `after` upward. */
function climbed(rungs: readonly MeasuredRung[]): Set<string> {
  const above = new Map<string, string[]>()
  for (const { id, after } of rungs) for (const below of after) above.set(below, [...(above.get(below) ?? []), id])
  const seen = new Set<string>()
  const waiting = rungs.filter(({ after }) => after.length === 0).map(({ id }) => id)
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (seen.has(next)) continue
    seen.add(next)
    waiting.push(...(above.get(next) ?? []))
  }
  return seen
}

export const everyRungIsReachable: Rule = {
  name: 'every-rung-is-reachable',
  says: 'There is one first rung, and every other can be climbed to from it.',
  why: 'A rung nobody can reach, or that follows itself, is a slip in the order.',

  check({ rungs }) {
    const ids = new Set(rungs.map(({ id }) => id))
    const found: Found[] = []
    for (const [index, { title, after }] of rungs.entries()) {
      const absent = after.find((below) => !ids.has(below))
      if (absent !== undefined) found.push({ path: ['rungs', index, 'after'], message: `"${title}" comes after "${absent}", but no rung has that id. Name one of the rungs.` })
    }
    if (found.length > 0) return found
    const seen = climbed(rungs)
    for (const [index, { title, id, after }] of rungs.entries()) {
      if (!seen.has(id)) found.push({ path: ['rungs', index, 'after'], message: `"${title}" cannot be climbed to from the first rung: what it comes after leads back to itself. Mend the order.` })
      else if (after.length === 0 && index > 0) found.push({ path: ['rungs', index, 'after'], message: `"${title}" follows no rung, so the ladder has two first rungs. Say what it comes after.` })
    }
    return found
  },
}
