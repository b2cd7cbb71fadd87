import { isNumberKey } from '../load/model.ts'
import type { MeasuredRung } from '../measure/measure.ts'
import type { Rule } from './rule.ts'

/** A number so many times its neighbours' is a typing slip: a digit too many, or two swapped. Taste. */
const SLIP = 5

/** What is set up by the same measurements: a vest on one of two rungs makes them two set-ups. */
const setUp = ({ model, inputs }: MeasuredRung): string => [model.name, ...Object.keys(inputs).toSorted()].join()

/** The figures the rungs give under a key. */
const figuresOf = (rungs: readonly MeasuredRung[], key: string): number[] =>
  rungs.flatMap(({ inputs }) => {
    const value = inputs[key]
    return typeof value === 'number' && value > 0 ? [value] : []
  })

export const measurementsArePlausible: Rule = {
  name: 'measurements-are-plausible',
  says: 'No measurement is five times that of both rungs beside it.',
  why: 'A bench of 450 cm between one of 60 and one of 30 is a slip of the finger.',

  check({ rungs }) {
    const setUps = rungs.map(setUp)
    return rungs.flatMap((rung, index) => {
      const alike = rungs.filter((_, other) => setUps[other] === setUps[index])
      const below = alike.filter(({ id }) => rung.after.includes(id))
      const above = alike.filter(({ after }) => after.includes(rung.id))
      return Object.entries(rung.inputs).flatMap(([key, value]) => {
        const spec = rung.model.keys[key]
        if (!spec || !isNumberKey(spec) || typeof value !== 'number' || value <= 0) return [] // nothing is a fifth of nothing
        const [lower, upper] = [figuresOf(below, key), figuresOf(above, key)]
        const beside = [...lower, ...upper]
        const slip = lower.length > 0 && upper.length > 0 && beside.every((figure) => value >= SLIP * figure || value * SLIP <= figure)
        return slip ? [{ path: ['rungs', index, 'load', key], message: `${key} of "${rung.title}" is ${value} ${spec.unit}, far from the ${beside.join(' and ')} ${spec.unit} beside it. Look at the digits again.` }] : []
      })
    })
  },
}
