import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { askMiddle, canAnswer, isNumberKey, type Athlete, type Inputs, type Key, type LoadModel } from './model.ts'
import { rootWithin } from './root.ts'

/** One measurement that gives a load, and the load it gives. */
export type Fit = { readonly key: string; readonly value: number; readonly load: number }

/** Places tried along the span before looking closer. Chosen by us: 5 cm of a hand height, 2 degrees of a lean. */
const PLACES = 48
/** How close the root is taken, over the span of the key. */
const TOLERANCE = 1e-7
/** How near the load has to come, in its own unit. Chosen by us: less than a page prints. */
const CLOSE = 1e-3

/** One set-up with one key left open: what it loads at a value of that key, and whether every body tried can take it there. */
type Open = { readonly at: (value: number) => number | undefined; readonly forEveryBody: (value: number) => boolean; readonly width: number }

/**
 * Asks a model backwards: which value of one key gives this load.
 *
 * Shape   a model, the other inputs, a key and a load to the value nearest to the one that stood there.
 * Units   the load in the model's own unit, on one working limb; the value in the key's.
 * Missing when no value in the key's span gives it to every body tried, with the nearest load that one does.
 * Source  bracketing, then `rootWithin`: arithmetic anyone can repeat.
 */
export function fit(model: LoadModel, inputs: Inputs, key: string, load: number, athlete: Athlete): Outcome<Fit> {
  const spec: Key | undefined = model.keys[key]
  if (!spec || !isNumberKey(spec)) return missing(`${model.name} has no measurement "${key}" to solve for`)
  const open: Open = {
    at(value) {
      const outcome = askMiddle(model, { ...inputs, [key]: value }, athlete)
      return isMissing(outcome) ? undefined : outcome
    },
    forEveryBody: (value) => canAnswer(model, { ...inputs, [key]: value }, athlete),
    width: TOLERANCE * (spec.max - spec.min),
  }
  const step = (spec.max - spec.min) / PLACES
  const tried = Array.from({ length: PLACES + 1 }, (_, index) => place(spec.min + index * step, open.at))
  const near = typeof inputs[key] === 'number' ? inputs[key] : spec.min
  const found = nearest(tried, near, load, open)
  if (found) return { key, ...found }
  const whole = withEdges(tried, open)
  const beyond = nearest(whole, near, load, open)
  if (beyond) return { key, ...beyond }
  const [closest] = whole.flatMap(settled).toSorted((a, b) => Math.abs(a.load - load) - Math.abs(b.load - load))
  if (!closest) return missing(`no ${key} gives a load with the rest of this set-up`)
  if (Math.abs(closest.load - load) <= CLOSE) return { key, ...closest } // at an end of the span, but for the last digits
  return missing(`no ${key} gives that load; the nearest is ${closest.load.toFixed(1)} at ${closest.value.toFixed(1)} ${spec.unit}`)
}

/** A value, and the load it gives, asked once and only if somebody wants to know. */
type Place = { readonly value: number; readonly load: () => number | undefined }
type Settled = { readonly value: number; readonly load: number }

function place(value: number, at: Open['at']): Place {
  let known: { load: number | undefined } | undefined
  return { value, load: () => (known ??= { load: at(value) }).load }
}

function settled({ value, load: asked }: Place): Settled[] {
  const load = asked()
  return load === undefined ? [] : [{ value, load }]
}

/** The value that gives the load, looking outward from `near`. Where the load jumps it is passed, and nothing gives it. */
function nearest(places: readonly Place[], near: number, load: number, open: Open): Settled | undefined {
  const cells = places.flatMap((low, index) => {
    const high = places[index + 1]
    return high ? [{ low, high }] : []
  })
  for (const { low, high } of cells.toSorted((a, b) => Math.abs(a.low.value - near) - Math.abs(b.low.value - near))) {
    const [below, above] = [low, high].flatMap(settled)
    if (!below || !above || (below.load - load) * (above.load - load) > 0) continue
    const value = rootWithin((at) => off(open.at(at), load), { at: below.value, gives: below.load - load }, { at: above.value, gives: above.load - load }, open.width)
    const given = value === undefined ? undefined : open.at(value)
    if (value !== undefined && given !== undefined && Math.abs(given - load) <= CLOSE && open.forEveryBody(value)) return { value, load: given }
  }
  return undefined
}

/** How far a load lies above the one that is wanted. */
const off = (given: number | undefined, load: number): number | undefined => given === undefined ? undefined : given - load

/** The places that every body can take, and beside each that none follows, the last that they can: by halving. */
function withEdges(tried: readonly Place[], { at, forEveryBody, width }: Open): Place[] {
  const taken = tried.map(({ value }) => forEveryBody(value))
  return tried.flatMap((here, index) => {
    const next = tried[index + 1]
    const own = taken[index] === true ? [here] : []
    if (next === undefined || taken[index] === taken[index + 1]) return own
    let [possible, not] = taken[index] === true ? [here.value, next.value] : [next.value, here.value]
    while (Math.abs(possible - not) > width) {
      const value = (possible + not) / 2
      if (forEveryBody(value)) possible = value
      else not = value
    }
    return [...own, place(possible, at)]
  })
}

/** The key a rung would be fitted by: the first of the model's own order that the coach gave. */
export const fittedKey = (model: LoadModel, inputs: Inputs): string | undefined => model.solves.find((key) => typeof inputs[key] === 'number')
