import { figureText } from '../quantity/figure.ts'
import { missing, type Outcome } from '../quantity/outcome.ts'
import { exactly } from '../quantity/spread.ts'
import { loadModel, type Figure, type Keys, type Load } from './model.ts'
import { possibleReps, repetitionFormulas } from './repetitions.ts'

const keys = {
  load_kg: { unit: 'kg', min: 0.5, max: 500, optional: true, instructs: 'about {}', says: 'mass lifted' },
  percent_1rm: { unit: '% of 1RM', min: 20, max: 100, optional: true, instructs: 'about {}', says: 'mass lifted, as a share of the most that can be lifted once' },
  one_rep_max_kg: { unit: 'kg', min: 1, max: 600, optional: true, says: 'the most this athlete lifts once' },
  lift: { choices: ['floor lift', 'one-leg floor lift', 'suitcase lift', 'overhead press', 'one-hand press', 'carry'], optional: true, says: 'what is done with it, for the picture; nothing is drawn unless given' },
  block_cm: { unit: 'cm', min: 0, max: 80, optional: true, says: 'height of the block or box the weight is lifted from; the floor unless given' },
  knee_deg: { unit: 'deg', min: 70, max: 175, optional: true, says: 'knee angle at the start of a lift from below, 180 being straight; 110 unless given, 155 on one leg' },
} as const satisfies Keys

/** Repetitions to expect at a share of 1RM, over every formula that answers there. */
function expectedReps(fraction: number): Figure {
  const name = 'repetitions to expect'
  const answers = repetitionFormulas.map((formula) => possibleReps(formula, fraction)).filter((reps) => typeof reps === 'number')
  const [first, ...others] = answers
  if (first === undefined) return { name, value: missing('no repetition formula holds at this share of the maximum'), unit: 'reps' }
  const mid = [first, ...others].toSorted((a, b) => a - b)[Math.floor(answers.length / 2)] ?? first
  return { name, value: { mid, points: answers, over: 'repetition formulas' }, unit: 'reps' }
}

/**
 * A lift given in kilograms, or as a share of the one-repetition maximum.
 *
 *     kg = % of 1RM × 1RM / 100
 *
 * Shape   a mass or a share, and where known the maximum, to the load lifted.
 * Units   kg, % of 1RM in; kg where a mass is known, else % of 1RM.
 * Missing when neither or too many of the three are given.
 * Source  the repetition formulas, each as cited in `repetitions.ts`.
 */
export const oneRepMax = loadModel({
  name: 'one-rep-max',
  says: 'a mass that is lifted, in kilograms or as a share of the most that can be lifted once',
  keys,
  solves: ['load_kg', 'percent_1rm'],
  cites: [
    { source: 'epley1985', at: 'the equation' },
    { source: 'brzycki1993', at: 'the equation' },
    { source: 'wathan1994', at: 'the equation' },
    { source: 'mayhew1992', at: 'the equation' },
    { source: 'lombardi1989', at: 'the equation' },
    { source: 'oConner1989', at: 'the equation' },
    { source: 'reynolds2006', at: 'no more than 10 repetitions in linear equations' },
  ],
  compute({ load_kg, percent_1rm, one_rep_max_kg }): Outcome<Load> {
    if (load_kg === undefined && percent_1rm === undefined) return missing('neither load_kg nor percent_1rm is given')
    if (load_kg !== undefined && percent_1rm !== undefined) return missing('load_kg and percent_1rm are both given; one follows from the other')
    const kg = load_kg ?? (one_rep_max_kg === undefined ? undefined : (one_rep_max_kg * (percent_1rm ?? 0)) / 100)
    const percent = percent_1rm ?? (one_rep_max_kg === undefined ? undefined : (100 * (load_kg ?? 0)) / one_rep_max_kg)
    if (percent !== undefined && percent > 100) return missing('the mass is more than the most that can be lifted once')
    const unit = kg === undefined ? '% of 1RM' : 'kg'
    const value = kg ?? percent ?? 0
    return {
      quantity: { name: 'mass lifted', unit, repeats: true },
      load: exactly(value),
      figures: percent === undefined ? [] : [{ name: 'share of the maximum', value: exactly(percent), unit: '% of 1RM' }, expectedReps(percent / 100)],
      poses: [],
      working: [
        kg !== undefined && percent !== undefined
          ? { says: 'Mass lifted', formula: 'w = share × 1RM', numbers: `${figureText(percent, '% of 1RM')} × ${one_rep_max_kg} kg = ${figureText(kg, 'kg')}` }
          : { says: 'Mass lifted, as declared', formula: 'w', numbers: figureText(value, unit) },
      ],
      assumes: ['The lift is done in the same strict form each time, over the same range.'],
      cautions: [],
    }
  },
})
