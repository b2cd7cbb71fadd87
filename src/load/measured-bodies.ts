import { isMissing, type Outcome } from '../quantity/outcome.ts'
import { men, REFERENCE_STATURE_M, women, type Body } from './body.ts'
import type { Key } from './model.ts'
import type { SourceKey } from './sources.ts'
import { supportedBody, supportedRep } from './supported-body.ts'

type Input = Parameters<typeof supportedRep>[0]
type Touch = Parameters<typeof supportedRep>[3]
/** What a coach would write; the rest is as the model fills it in. */
type SetUp = Pick<Input, 'facing' | 'feet' | 'hands'> & Partial<Input>

/**
 * Loads on the hands that somebody measured, in % of body weight, and what of the model each is held against.
 *
 * Choices that hold for every row: stature 1.738 m, the body straight from heel to ear, held still. Facing down, a straight arm stands upright
 * over the wrist on a level floor, and a bent arm has its elbow at 70°, in the plane of the movement.
 */
export type Measured = {
  readonly source: SourceKey
  readonly condition: string
  readonly percent: number
  /** Between people, where the source gives it. */
  readonly sd_percent?: number
  /** S seen in the source or in two transcriptions that agree, M value from memory. */
  readonly mark: 'S' | 'M'
  readonly body: 'reference man' | 'reference woman' | 'mean of reference woman and man'
  /** A force plate measures the upright part; a dynamometer in the strap measures all of it. */
  readonly quantity: 'upright part of the force on both hands' | 'force along the strap'
  readonly at: 'start' | 'end'
  readonly setUp: SetUp
  readonly touch: Touch
  /** What the model had to be told that the source does not say. */
  readonly choices: string
}

const toes = { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 0 } as const
const knees = { ...toes, feet: 'knees' } as const
const alongTheArm: Touch = { direction: 'along the arm', press: 0.5 }

const FLOOR = 'on a level floor the upright part does not depend on the direction of the force'
const SHANKS = `shanks at rest, the model’s default: held up at 120° they would take 3 % off; from the knees, ${FLOOR} but for the height of the knee, 5 cm`
const PEAK = 'the source gives the peak of a moving press-up; held against the start of the rep, arms straight, the force along the arm, which counts as soon as hands and feet are not level'

const plate = { quantity: 'upright part of the force on both hands', touch: alongTheArm } as const
const mier = { ...plate, source: 'mier2014', mark: 'S', body: 'reference man' } as const
const suprak = { ...plate, source: 'suprak2011', mark: 'M', body: 'reference man' } as const
const ebben = { ...plate, source: 'ebben2011', mark: 'M', body: 'mean of reference woman and man', at: 'start' } as const

/** Feet flat, the middle of the foot under the anchor at 180 cm, pressure three quarters of the way from heel to ball. */
const leanBack = (lean_deg: number): SetUp => ({ facing: 'up', feet: 'flat', hands: 'straps', anchor_height_cm: 180, feet_from_anchor_cm: -10, lean_deg })
const melrose = {
  source: 'melroseDawes2015',
  mark: 'S',
  body: 'mean of reference woman and man',
  quantity: 'force along the strap',
  at: 'start',
  touch: { direction: 'strap', press: 0.75 },
  choices:
    'height of the anchor, place of the feet under it and pressure under them are not known to us; chosen once for every lean, knowing the values at 30° and 60°: feet flat, middle of the foot under the anchor, anchor at 180 cm, pressure three quarters of the way from heel to ball. So agreement at 30° and 60° says that the model can be made to fit, not that it predicts',
} as const

export const publishedValues: readonly Measured[] = [
  { ...mier, condition: 'press-up on toes, held still, arms straight', percent: 67.0, sd_percent: 3.8, at: 'start', setUp: toes, choices: FLOOR },
  { ...mier, condition: 'press-up on toes, held still, arms bent', percent: 74.6, sd_percent: 3.6, at: 'end', setUp: toes, choices: `elbow 70°; ${FLOOR}` },
  { ...mier, condition: 'press-up from the knees, held still, arms straight', percent: 52.5, sd_percent: 3.7, at: 'start', setUp: knees, choices: SHANKS },
  { ...mier, condition: 'press-up from the knees, held still, arms bent', percent: 60.1, sd_percent: 4.5, at: 'end', setUp: knees, choices: `elbow 70°; ${SHANKS}` },
  { ...suprak, condition: 'press-up on toes, up', percent: 69.16, at: 'start', setUp: toes, choices: FLOOR },
  { ...suprak, condition: 'press-up on toes, down', percent: 75.04, at: 'end', setUp: toes, choices: `elbow 70°; ${FLOOR}` },
  { ...suprak, condition: 'press-up from the knees, up', percent: 53.56, at: 'start', setUp: knees, choices: SHANKS },
  { ...suprak, condition: 'press-up from the knees, down', percent: 61.8, at: 'end', setUp: knees, choices: `elbow 70°; ${SHANKS}` },
  { ...ebben, condition: 'press-up, hands and feet on the floor', percent: 64, setUp: toes, choices: PEAK },
  { ...ebben, condition: 'press-up, feet on 30.48 cm', percent: 70, setUp: { ...toes, foot_height_cm: 30.48 }, choices: PEAK },
  { ...ebben, condition: 'press-up, feet on 60.96 cm', percent: 74, setUp: { ...toes, foot_height_cm: 60.96 }, choices: PEAK },
  { ...ebben, condition: 'press-up, hands on 30.48 cm', percent: 55, setUp: { ...toes, hand_height_cm: 30.48 }, choices: PEAK },
  { ...ebben, condition: 'press-up, hands on 60.96 cm', percent: 41, setUp: { ...toes, hand_height_cm: 60.96 }, choices: PEAK },
  { ...melrose, condition: 'lean-back at arm’s length, feet under the anchor, 30° from upright', percent: 37.44, sd_percent: 1.45, setUp: leanBack(30), choices: melrose.choices },
  { ...melrose, condition: 'lean-back at arm’s length, feet under the anchor, 60° from upright', percent: 68.08, sd_percent: 1.95, setUp: leanBack(60), choices: melrose.choices },
]

/** Values of the same sources that nothing was chosen by: read in the abstracts after the set-ups above were settled. */
export const heldOut: readonly Measured[] = [
  { ...melrose, condition: 'lean-back, 45° from upright', percent: 52.88, sd_percent: 0.59, setUp: leanBack(45), choices: 'the set-up chosen at 30° and 60°' },
  { ...melrose, condition: 'lean-back, 75° from upright', percent: 79.38, sd_percent: 2.14, setUp: leanBack(75), choices: 'the set-up chosen at 30° and 60°' },
  { ...mier, body: 'reference woman', condition: 'women, press-up on toes, held still, arms straight', percent: 65.1, sd_percent: 3.1, at: 'start', setUp: toes, choices: FLOOR },
  { ...mier, body: 'reference woman', condition: 'women, press-up on toes, held still, arms bent', percent: 70.3, sd_percent: 3.1, at: 'end', setUp: toes, choices: `elbow 70°, though the women measured went down half as far as they could; ${FLOOR}` },
  { ...mier, body: 'reference woman', condition: 'women, press-up from the knees, held still, arms straight', percent: 51.5, sd_percent: 3.1, at: 'start', setUp: knees, choices: SHANKS },
  { ...mier, body: 'reference woman', condition: 'women, press-up from the knees, held still, arms bent', percent: 56.6, sd_percent: 2.7, at: 'end', setUp: knees, choices: `elbow 70°; ${SHANKS}` },
]

/** The model's defaults, and nothing for what may be left out. */
const UNSAID = Object.fromEntries(Object.entries<Key>(supportedBody.keys).map(([name, key]) => [name, 'default' in key ? key.default : undefined])) as Omit<Input, 'facing' | 'feet' | 'hands'> // every key is there, as the model lists it

const BODIES: Record<Measured['body'], readonly Body[]> = { 'reference man': [men], 'reference woman': [women], 'mean of reference woman and man': [women, men] }

/** What the model gives for the condition that was measured. Units % of body weight. */
export function computedFor({ body, quantity, at, setUp, touch }: Measured): Outcome {
  let sum = 0
  for (const each of BODIES[body]) {
    const rep = supportedRep({ ...UNSAID, ...setUp }, REFERENCE_STATURE_M, each, touch)
    if (isMissing(rep)) return rep
    const held = (setUp.facing === 'down') === (at === 'end') ? rep.lowest : rep.highest // a press-up starts high, a row low
    if (isMissing(held)) return held
    sum += quantity === 'force along the strap' ? held.forces.hands : held.forces.on_hands.y
  }
  return (100 * sum) / BODIES[body].length
}

/** The width within which a computed value agrees: two standard deviations, or 6 % where the source gives none, as laboratories differ by 5 to 10. */
export const widthOf = ({ sd_percent }: Measured): number => (sd_percent === undefined ? 6 : 2 * sd_percent)

/** One row of the comparison with measured bodies. */
export type Agreement = { readonly measured: Measured; readonly computed: Outcome; readonly difference: Outcome }

/** Every published value beside what the model gives for it. */
export const agreement = (rows: readonly Measured[]): Agreement[] =>
  rows.map((measured) => {
    const computed = computedFor(measured)
    return { measured, computed, difference: isMissing(computed) ? computed : computed - measured.percent }
  })

/** The mean and the largest absolute difference. Units % of body weight. */
export function differences(rows: readonly Agreement[]): { readonly mean: number; readonly worst: number } {
  const off = rows.flatMap(({ difference }) => (isMissing(difference) ? [] : [Math.abs(difference)]))
  return { mean: off.reduce((sum, each) => sum + each, 0) / Math.max(1, off.length), worst: Math.max(0, ...off) }
}
