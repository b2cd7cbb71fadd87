import type { MeasuredRung } from '../measure/measure.ts'
import type { Rule } from './rule.ts'

/** What makes two rungs the same rung: one load, one demand, one amount, after the same rung, with the same kit and form points. */
const sameness = ({ load, demand, after, entry, equipment, form }: MeasuredRung): string => JSON.stringify([load, demand.toSorted(), after.toSorted(), entry, equipment.toSorted(), form.toSorted()])

export const rungsDiffer: Rule = {
  name: 'rungs-differ',
  says: 'No two rungs beside one another have one load and one demand.',
  why: 'Two versions that differ in nothing a reader can tell are one.',

  check({ rungs }) {
    const samenesses = rungs.map(sameness)
    return rungs.flatMap((rung, index) => {
      if (rung.model.name === 'skill') return []
      const twin = samenesses.findIndex((same) => same === samenesses[index])
      return twin < index ? [{ path: ['rungs', index], message: `"${rung.title}" has the load and demand of "${rungs[twin]?.title}". Join the two, or name what is different.` }] : []
    })
  },
}
