import { isNumberKey } from '../load/model.ts'
import type { MeasuredRung } from '../measure/measure.ts'
import type { Rule } from './rule.ts'

/** A number so many times its neighbours' is a typing slip: a digit too many, or two swapped. Taste. */
const SLIP = 5

/** The figure a neighbour of the same model gives under a key. */
const figureOf = (rung: MeasuredRung | undefined, model: MeasuredRung['model'], key: string): number | undefined => {
  const value = rung?.model === model ? rung.inputs[key] : undefined
  return typeof value === 'number' && value > 0 ? value : undefined
}

export const measurementsArePlausible: Rule = {
  name: 'measurements-are-plausible',
  says: 'No measurement is five times that of both rungs beside it.',
  why: 'A bench of 450 cm between one of 60 and one of 30 is a slip of the finger.',

  check: ({ rungs }) =>
    rungs.flatMap(({ title, model, inputs }, index) =>
      Object.entries(inputs).flatMap(([key, value]) => {
        const spec = model.keys[key]
        if (!spec || !isNumberKey(spec) || typeof value !== 'number' || value <= 0) return [] // nothing is a fifth of nothing
        const beside = [figureOf(rungs[index - 1], model, key), figureOf(rungs[index + 1], model, key)].filter((figure) => figure !== undefined)
        const slip = beside.length === 2 && beside.every((figure) => value >= SLIP * figure || value * SLIP <= figure)
        return slip ? [{ path: ['rungs', index, 'load', key], message: `${key} of "${title}" is ${value} ${spec.unit}, far from the ${beside.join(' and ')} ${spec.unit} beside it. Look at the digits again.` }] : []
      }),
    ),
}
