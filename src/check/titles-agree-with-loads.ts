import { isNumberKey } from '../load/model.ts'
import type { MeasuredRung } from '../measure/measure.ts'
import type { Rule } from './rule.ts'

/** "95 cm", "60 degrees", "12,5 kg", "2 × 8 kg", "90–95 cm" in a title, but not "15 °C" nor "2 kg/m". */
const NAMED = /(?:(\d+)\s?[×x]\s?)?(?:(\d+(?:[.,]\d+)?)\s?(?:[-–]|to|and)\s?)?(\d+(?:[.,]\d+)?)\s?(cm|kg|degrees|°|%)(?![\p{Letter}\d/²³])/gu
const UNITS: Record<string, readonly string[]> = { cm: ['cm'], kg: ['kg'], degrees: ['deg'], '°': ['deg'], '%': ['%', '% of body mass', '% of 1RM', '% of body weight'] }

/** Words by which a title speaks of one of two. */
const PAIR = /\b(two|both|each|pair)\b/i
/** Plates at both ends of a bar that weighs something too. */
const ENDS = /\b(a|per|each|either) (side|end)\b/i
/** Joints whose angle is a measurement of its own, beside the lean. */
const JOINT = /\b(elbow|knee)s?\b/i

/** A measurement in a title: how many of it, and the span it names. */
type Named = { readonly said: string; readonly unit: string; readonly times: number; readonly low: number; readonly high: number }

const number = (figure: string): number => Number(figure.replace(',', '.'))

const namedIn = (title: string): Named[] =>
  [...title.matchAll(NAMED)].map(([said, times = '1', low, high = '', unit = '']) => ({ said, unit, times: Number(times), low: number(low ?? high), high: number(high) }))

/** True where a value may be what a title names: the figure itself, all of several, a value in its span or both its ends together. */
function agrees(value: number, title: string, { unit, times, low, high }: Named): boolean {
  if (low !== high && ((value >= low && value <= high) || value === low + high)) return true
  const paired = unit === 'kg' || PAIR.test(title) // weights come in pairs, in every language
  return value === high || value === times * high || (paired && value === 2 * high) || (ENDS.test(title) && value > 2 * high)
}

/** Two measurements of one unit, such as a bar and its plates, are added up or taken from one another; one alone is the load's. */
const alone = (named: readonly Named[]): Named[] => named.filter(({ unit }) => named.filter((other) => UNITS[other.unit]?.[0] === UNITS[unit]?.[0]).length === 1)

/** What the load was computed from in the unit of a measurement; nothing where the title speaks of a joint whose angle it leaves out. */
function givenFor({ title, model, inputs }: MeasuredRung, unit: string): number[] {
  const keys = Object.entries(model.keys).flatMap(([key, spec]) => (isNumberKey(spec) && UNITS[unit]?.includes(spec.unit) ? [key] : []))
  const joint = `${JOINT.exec(title)?.[1]?.toLowerCase()}_deg`
  return keys.includes(joint) && inputs[joint] === undefined ? [] : keys.map((key) => inputs[key]).filter((value) => typeof value === 'number')
}

export const titlesAgreeWithLoads: Rule = {
  name: 'titles-agree-with-loads',
  says: 'A measurement in a rung’s title is the one its load was computed from.',
  why: 'The title is set up; the load is believed. One of them would be wrong.',

  check: ({ rungs }) =>
    rungs.flatMap((rung, index) =>
      alone(namedIn(rung.title)).flatMap((named) => {
        const given = givenFor(rung, named.unit)
        if (given.length === 0 || given.some((value) => agrees(value, rung.title, named))) return []
        return [{ path: ['rungs', index, 'load'], message: `The title "${rung.title}" says ${named.said}, the load is computed from ${given.join(' and ')}. Make them the same.` }]
      }),
    ),
}
