import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { ask, askMiddle, isNumberKey, type Athlete, type Inputs, type Key, type LoadModel } from './model.ts'

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
 * Missing when no value in the key's span gives it to every body tried, with the nearest load that one does.
 * Source  bracketing and halving: arithmetic anyone can repeat.
 */
export function fit(model: LoadModel, inputs: Inputs, key: string, load: number, athlete: Athlete): Outcome<Fit> {
  const spec: Key | undefined = model.keys[key]
  if (!spec || !isNumberKey(spec)) return missing(`${model.name} has no measurement "${key}" to solve for`)
  const answered = (outcome: Outcome): number | undefined => (isMissing(outcome) ? undefined : outcome)
  const at = (value: number): number | undefined => answered(askMiddle(model, { ...inputs, [key]: value }, athlete))
  const forEveryBody = (value: number): boolean => !isMissing(ask(model, { ...inputs, [key]: value }, athlete))
  const step = (spec.max - spec.min) / PLACES
  const tried = Array.from({ length: PLACES + 1 }, (_, index) => spec.min + index * step).map((value) => ({ value, load: at(value) }))
  const width = TOLERANCE * (spec.max - spec.min)
  const near = typeof inputs[key] === 'number' ? inputs[key] : spec.min
  const search = (places: readonly Tried[]): Fit | undefined => {
    const brackets = places.flatMap((low, index) => crossing(low, places[index + 1], load)).toSorted((a, b) => Math.abs(a[0].value - near) - Math.abs(b[0].value - near))
    for (const bracket of brackets) {
      const value = halved(bracket, load, at, width)
      const given = at(value)
      if (given !== undefined && Math.abs(given - load) <= CLOSE && forEveryBody(value)) return { key, value, load: given } // where the load jumps it is passed, and nothing gives it
    }
    return undefined
  }
  const found = search(tried)
  if (found) return found
  const known = withEdges(tried, (value) => (forEveryBody(value) ? at(value) : undefined), width)
  const beyond = search(known)
  if (beyond) return beyond
  const closest = known.filter(isKnown).toSorted((a, b) => Math.abs(a.load - load) - Math.abs(b.load - load)).find(({ value }) => forEveryBody(value))
  if (!closest) return missing(`no ${key} gives a load with the rest of this set-up`)
  if (Math.abs(closest.load - load) <= CLOSE) return { key, ...closest } // at an end of the span, but for the last digits
  return missing(`no ${key} gives that load; the nearest is ${closest.load.toFixed(1)} at ${closest.value.toFixed(1)} ${spec.unit}`)
}

type Tried = { readonly value: number; readonly load: number | undefined }
type Place = { readonly value: number; readonly load: number }

const isKnown = (place: Tried): place is Place => place.load !== undefined

/** The same places, and between a neighbour that is possible and one that is not, the last that is: by halving. */
function withEdges(tried: readonly Tried[], at: (value: number) => number | undefined, width: number): Tried[] {
  const whole = tried.map(({ value, load }) => ({ value, load: load === undefined ? undefined : at(value) }))
  return whole.flatMap((place, index) => {
    const next = whole[index + 1]
    if (next === undefined || isKnown(place) === isKnown(next)) return [place]
    let [possible, not] = isKnown(place) ? [place.value, next.value] : [next.value, place.value]
    while (Math.abs(possible - not) > width) {
      const value = (possible + not) / 2
      if (at(value) === undefined) not = value
      else possible = value
    }
    return [place, { value: possible, load: at(possible) }]
  })
}

/** Two neighbours between which the load is passed. */
function crossing(low: Tried, high: Tried | undefined, load: number): [Place, Place][] {
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
