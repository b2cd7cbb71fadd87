import { isNumberKey } from '../load/model.ts'
import type { Rule } from './rule.ts'

/** "95 cm", "60 degrees", "24 kg" in a title. */
const NAMED = /(\d+(?:\.\d+)?)\s?(cm|kg|degrees|°|%)/g
const UNITS: Record<string, readonly string[]> = { cm: ['cm'], kg: ['kg'], degrees: ['deg'], '°': ['deg'], '%': ['%', '% of body mass', '% of 1RM', '% of body weight'] }

/** Words by which a title speaks of one of two. */
const PAIR = /\b(two|both|each|pair)\b/i

export const titlesAgreeWithLoads: Rule = {
  name: 'titles-agree-with-loads',
  says: 'A measurement in a rung’s title is the one its load was computed from.',
  why: 'The title is set up; the load is believed. One of them would be wrong.',

  check: ({ rungs }) =>
    rungs.flatMap(({ title, model, inputs }, index) =>
      [...title.matchAll(NAMED)].flatMap(([said, figure, unit = '']) => {
        const given = Object.entries(model.keys).flatMap(([key, spec]) => (isNumberKey(spec) && UNITS[unit]?.includes(spec.unit) && typeof inputs[key] === 'number' ? [inputs[key]] : []))
        const each = PAIR.test(title) ? 2 : 1
        if (given.length === 0 || given.some((value) => value === Number(figure) || value === each * Number(figure))) return []
        return [{ path: ['rungs', index, 'load'], message: `The title "${title}" says ${said}, the load is computed from ${given.join(' and ')}. Make them the same.` }]
      }),
    ),
}
