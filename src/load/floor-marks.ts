import { figureText } from '../quantity/figure.ts'
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import type { Unit } from '../quantity/unit.ts'
import { fit } from './fit.ts'
import { askMiddle, type Athlete, type Inputs, type LoadModel } from './model.ts'
import { supportedBody, supportedPlaces, type Places } from './supported-body.ts'

/** How one body height sets up, so that the rung loads it as it loads the average body. Units cm, deg. */
export type Mark = Places & { readonly stature_cm: number }

/** Body heights a handbook prints. Chosen by us: most of the adults ANSUR II and NHANES measured. Units cm. */
export const STATURES_CM = [150, 155, 160, 165, 170, 175, 180, 185, 190, 195, 200]

/** The keys that place hands or body, in the order they are solved for. */
const PLACES = ['lean_deg', 'hand_height_cm', 'strap_cm'] as const

/**
 * Where hands and feet go for each body height, so that the rung is the same load for a tall and a short athlete.
 *
 * Shape   the inputs of one rung to a mark for each stature, in order.
 * Units   cm and deg; loads in % of body weight inside.
 * Missing for a height at which no set-up gives the load.
 * Source  supported-body, solved for the key the coach gave.
 */
export function floorMarks(inputs: Inputs, average: Athlete, statures_cm: readonly number[] = STATURES_CM): Outcome<readonly (readonly [stature_cm: number, mark: Outcome<Mark>])[]> {
  const key = PLACES.find((name) => typeof inputs[name] === 'number')
  if (key === undefined) return missing('nothing in this set-up can be moved')
  const target = askMiddle(supportedBody, inputs, average)
  if (isMissing(target)) return target
  return statures_cm.map((stature_cm) => {
    const athlete = { ...average, stature_m: stature_cm / 100 }
    const fitted = fit(supportedBody as unknown as LoadModel, inputs, key, target, athlete)
    if (isMissing(fitted)) return [stature_cm, fitted]
    const mark = supportedPlaces({ ...inputs, [key]: fitted.value }, athlete)
    return [stature_cm, isMissing(mark) ? mark : { stature_cm, ...mark }]
  })
}

/** One thing to mark: what it is called, its value with its unit, and how a mark says it in metric. */
export type MarkRow = { readonly name: string; readonly unit: Unit; readonly value: (mark: Mark) => number | undefined; readonly of: (mark: Mark) => string }

const markRow = (name: string, unit: Unit, value: MarkRow['value']): MarkRow => ({
  name,
  unit,
  value,
  of: (mark) => {
    const measured = value(mark)
    return measured === undefined ? '–' : figureText(measured, unit)
  },
})

/** What a coach marks, for the rung's own way of setting up. */
export function markRows(inputs: Inputs): MarkRow[] {
  const hands = markRow('hands above the floor', 'cm', ({ hands_cm }) => hands_cm)
  const lean = markRow('lean from upright', 'deg', ({ lean_deg }) => lean_deg)
  const apart = markRow('feet to hands, along the floor', 'cm', ({ feet_to_hands_cm }) => Math.abs(feet_to_hands_cm))
  if (inputs.hands !== 'straps') return [hands, apart]
  return [lean, markRow('strap, anchor to grip', 'cm', ({ strap_cm }) => strap_cm), apart]
}
