import type { MeasuredRung } from '../measure/measure.ts'
import { nearest } from '../read/nearest.ts'
import type { Found, Rule } from './rule.ts'

/** Everything that is come to from `starts` by `next`, the starts among it only where something leads back to them. */
function cameTo(starts: readonly string[], next: (id: string) => readonly string[]): Set<string> {
  const seen = new Set<string>()
  const waiting = starts.flatMap(next)
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    if (seen.has(at)) continue
    seen.add(at)
    waiting.push(...next(at))
  }
  return seen
}

/** What is wrong with the order of rungs whose `after` all name a rung. */
function misplaced(rungs: readonly MeasuredRung[]): Found[] {
  const above = new Map<string, string[]>()
  for (const { id, after } of rungs) for (const below of after) above.set(below, [...(above.get(below) ?? []), id])
  const below = new Map(rungs.map(({ id, after }) => [id, after]))
  const starts = rungs.filter(({ after }) => after.length === 0).map(({ id }) => id)
  const climbed = cameTo(starts, (id) => above.get(id) ?? [])
  return rungs.flatMap(({ id, title, after }, index) => {
    const path = ['rungs', index, 'after']
    if (after.length === 0) return id === starts[0] ? [] : [{ path, message: `"${title}" follows no rung, so the ladder has two first rungs. Say what it comes after.` }]
    if (!climbed.has(id)) return [{ path, message: `"${title}" cannot be climbed to from the first rung: what it comes after leads back to itself. Mend the order.` }]
    return cameTo([id], (at) => below.get(at) ?? []).has(id) ? [{ path, message: `"${title}" comes after itself, by way of what it comes after. Mend the order.` }] : []
  })
}

export const everyRungIsReachable: Rule = {
  name: 'every-rung-is-reachable',
  says: 'There is one first rung, and every other can be climbed to from it.',
  why: 'A rung nobody can reach, or that follows itself, is a slip in the order.',

  check({ rungs }) {
    const ids = new Set(rungs.map(({ id }) => id))
    if (ids.size < rungs.length) return [] // two rungs of one id cannot be told apart here
    const dangling = rungs.flatMap(({ title, after }, index): Found[] => {
      const nth = after.findIndex((below) => !ids.has(below))
      const absent = after[nth]
      if (absent === undefined) return []
      const like = nearest(absent, [...ids])
      return [{ path: ['rungs', index, 'after', nth], ...(like ? { edit: { old: absent, text: like } } : {}), message: `"${title}" comes after "${absent}", but no rung has that id. Name one of the rungs.` }]
    })
    return dangling.length > 0 ? dangling : misplaced(rungs)
  },
}
