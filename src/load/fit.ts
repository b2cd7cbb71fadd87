import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { askMiddle, isNumberKey, type Athlete, type Inputs, type Key, type LoadModel } from './model.ts'

/** One measurement that gives a load, and the load it gives. */
export type Fit = { readonly key: string; readonly value: number; readonly load: number }

/** Places tried along the span before looking closer. Chosen by us: 5 cm of a hand height, 2 degrees of a lean. */
const PLACES = 48
/** How close the root is taken, over the span of the key. */
const TOLERANCE = 1e-7
/** How near the load has to come, in its own unit. Chosen by us: less than a page prints. */
const CLOSE = 1e-3

/**
 * Asks a model backwards: which value of one key gives this load.
 *
 * Shape   a model, the other inputs, a key and a load to the value nearest to the one that stood there.
 * Units   the load in the model's own unit, on one working limb; the value in the key's.
 * Missing when no value in the key's span gives it, with the nearest load that one does.
 * Source  bracketing and halving: arithmetic anyone can repeat.
 */
export function fit(model: LoadModel, inputs: Inputs, key: string, load: number, athlete: Athlete): Outcome<Fit> {
  const spec: Key | undefined = model.keys[key]
  if (!spec || !isNumberKey(spec)) return missing(`${model.name} has no measurement "${key}" to solve for`)
  const at = (value: number): number | undefined => {
    const outcome = askMiddle(model, { ...inputs, [key]: value }, athlete)
    return isMissing(outcome) ? undefined : outcome
  }
  const step = (spec.max - spec.min) / PLACES
  const tried = Array.from({ length: PLACES + 1 }, (_, index) => spec.min + index * step).map((value) => ({ value, load: at(value) }))
  const known = tried.filter((place): place is Place => place.load !== undefined)
  const near = typeof inputs[key] === 'number' ? inputs[key] : spec.min
  const brackets = tried
    .flatMap((low, index) => crossing(low, tried[index + 1], load))
    .toSorted((a, b) => Math.abs(a[0].value - near) - Math.abs(b[0].value - near))
  for (const bracket of brackets) {
    const value = halved(bracket, load, at, TOLERANCE * (spec.max - spec.min))
    const given = at(value)
    if (given !== undefined && Math.abs(given - load) <= CLOSE) return { key, value, load: given } // where the load jumps it is passed, and nothing gives it
  }
  const [closest] = known.toSorted((a, b) => Math.abs(a.load - load) - Math.abs(b.load - load))
  if (!closest) return missing(`no ${key} gives a load with the rest of this set-up`)
  if (Math.abs(closest.load - load) <= CLOSE) return { key, ...closest } // at an end of the span, but for the last digits
  return missing(`no ${key} gives that load; the nearest is ${closest.load.toFixed(1)} at ${closest.value.toFixed(1)} ${spec.unit}`)
}

type Place = { readonly value: number; readonly load: number }

/** Two neighbours between which the load is passed. */
function crossing(low: { value: number; load: number | undefined }, high: { value: number; load: number | undefined } | undefined, load: number): [Place, Place][] {
  if (low.load === undefined || high?.load === undefined) return []
  return (low.load - load) * (high.load - load) <= 0 ? [[{ value: low.value, load: low.load }, { value: high.value, load: high.load }]] : []
}

/** The root between two neighbours, by halving; a gap in the middle ends it where the load is still known. */
function halved([low, high]: [Place, Place], load: number, at: (value: number) => number | undefined, width: number): number {
  let [below, above] = [low, high]
  while (above.value - below.value > width) {
    const value = (below.value + above.value) / 2
    const found = at(value)
    if (found === undefined) break
    if ((below.load - load) * (found - load) <= 0) above = { value, load: found }
    else below = { value, load: found }
  }
  return (below.value + above.value) / 2
}

/** The key a rung would be fitted by: the first of the model's own order that the coach gave. */
export const fittedKey = (model: LoadModel, inputs: Inputs): string | undefined => model.solves.find((key) => typeof inputs[key] === 'number')
