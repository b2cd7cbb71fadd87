import { figureText } from '../quantity/figure.ts'
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { fit } from '../load/fit.ts'
import { isNumberKey, type Athlete, type Inputs, type Load, type LoadModel } from '../load/model.ts'

/** A rung that would split a step evenly: what to set, and how a coach is told to. */
export type MissingRung = { readonly key: string; readonly value: number; readonly load: number; readonly says: string }

/** One end of the step. */
type End = { readonly model: LoadModel; readonly inputs: Inputs; readonly outcome: Outcome<Load> }

/**
 * The rung that is missing from a step: the set-up of the upper rung with one measurement moved, so that both new steps are as steep as one another.
 *
 *     q = √(q_k q_{k+1})
 *
 * Shape   both ends of a step to one measurement.
 * Missing when the two rungs differ in more than one measurement, or no set-up gives that load.
 * Source  arithmetic: equal ratios.
 */
export function missingRung(from: End, to: End, athlete: Athlete): Outcome<MissingRung> {
  if (isMissing(from.outcome)) return from.outcome
  if (isMissing(to.outcome)) return to.outcome
  if (from.model !== to.model) return missing('the two rungs are computed by different models')
  const differing = Object.keys(from.model.keys).filter((key) => JSON.stringify(asked(from, key)) !== JSON.stringify(asked(to, key)))
  const [key] = differing
  const spec = key === undefined ? undefined : from.model.keys[key]
  if (key === undefined || !spec || !isNumberKey(spec)) return missing('the two rungs differ in no measurement that could lie between')
  if (differing.length > 1) return missing(`the two rungs differ in ${differing.join(' and ')}; change one at a time`)
  const load = Math.sqrt(from.outcome.load.mid * to.outcome.load.mid)
  const fitted = fit(to.model, { ...to.inputs, [key]: between(asked(from, key), asked(to, key)) }, key, load, athlete)
  if (isMissing(fitted)) return fitted
  const said = figureText(fitted.value, spec.unit)
  return { ...fitted, says: spec.instructs?.replace('{}', said) ?? `${key}: ${said}` }
}

/** What a rung's model is asked under a key, its default where the coach gave nothing. */
const asked = ({ model, inputs }: End, key: string): Inputs[string] => {
  const spec = model.keys[key]
  return inputs[key] ?? (spec && 'default' in spec ? spec.default : undefined)
}

const between = (one: Inputs[string], other: Inputs[string]): Inputs[string] => (typeof one === 'number' && typeof other === 'number' ? (one + other) / 2 : other)
