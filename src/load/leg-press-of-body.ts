import { figureText } from '../quantity/figure.ts'
import { missing, type Outcome } from '../quantity/outcome.ts'
import type { Spread } from '../quantity/spread.ts'
import { bodies, men, women, type Body } from './body.ts'
import { poseKeys, unfitPose } from './leg-press-keys.ts'
import { loadModel, type Asked, type Keys, type Line, type Load } from './model.ts'

const keys = {
  stance: { choices: ['two legs', 'split', 'step-up', 'one leg'], says: 'what the body stands on; in a step-up the lower foot pushes with what the working leg leaves it' },
  front_leg_percent: { unit: '%', min: 50, max: 100, default: 50, instructs: 'about {} of the load on the working leg', says: 'share that the working leg takes in a split stance or a step-up' },
  added_mass_percent: { unit: '% of body mass', min: 0, max: 200, default: 0, instructs: 'about {} added', says: 'mass held or carried on the back' },
  ...poseKeys,
} as const satisfies Keys

type Input = Asked<typeof keys>

/** Mass below the knee, and below the hip, of one leg: shares of body mass. */
const belowKnee = ({ shank, foot }: Body): number => shank.mass + foot.mass
const belowHip = (body: Body): number => belowKnee(body) + body.thigh.mass

/** Stances in which one leg takes a declared share and the other the rest. */
const isShared = ({ stance }: Input): boolean => stance === 'split' || stance === 'step-up'

/** Legs that stand on the ground carry their own lower parts; the working leg takes `share` of everything above. */
function carried(input: Input, body: Body, below: (body: Body) => number): number {
  const added = input.added_mass_percent / 100
  if (input.stance === 'one leg') return 100 * (1 + added - below(body)) // the free leg hangs on the standing one
  const share = isShared(input) ? input.front_leg_percent / 100 : 0.5
  return 100 * share * (1 + added - 2 * below(body))
}

/** What does not fit together, as a phrase after "not computed:". */
const unfit = (input: Input): string | undefined =>
  !isShared(input) && input.front_leg_percent !== 50 ? `front_leg_percent is given, but the stance is ${input.stance}, not split` : unfitPose(input)

const OVER = 'body tables'

const over = (input: Input, below: (body: Body) => number): Spread => ({
  mid: (carried(input, women, below) + carried(input, men, below)) / 2,
  points: bodies.map((body) => carried(input, body, below)),
  over: OVER,
})

function workingOf(input: Input): Line[] {
  return [women, men].map((body) => {
    const below = 100 * belowKnee(body)
    const [formula, numbers] =
      input.stance === 'one leg'
        ? ['q = 100 % + added − below one knee', `100 + ${input.added_mass_percent} − ${below.toFixed(2)}`]
        : ['q = share × (100 % + added − below both knees)', `${isShared(input) ? input.front_leg_percent : 50} % × (100 + ${input.added_mass_percent} − 2 × ${below.toFixed(2)})`]
    return { says: `Load on the working knee, ${body.name}`, formula, numbers: `${numbers} = ${figureText(carried(input, body, belowKnee), '% of body mass')}` }
  })
}

/**
 * What one leg carries in a squat, a split squat, a step-up or on one leg: the mass above its knee, and above its hip.
 *
 *     q = s (1 + a − 2 m)        two legs or split, s the working leg's share
 *     q = 1 + a − m              one leg: the free leg is carried too
 *
 * m is the mass of one leg below the joint, a the added mass, over body mass.
 *
 * Shape   a stance to the load on the working knee.
 * Units   % in, % of body mass out.
 * Missing when a share is given for a stance that is not split.
 * Source  deLeva1996, winter2009: masses of thigh, shank and foot; mechanics.
 * Assumes slow movement; says nothing of joint angles, so a deeper squat of the same load is a demand, not a load. Depth, boxes and stance are for the picture alone.
 */
export const legPressOfBody = loadModel({
  name: 'leg-press-of-body',
  says: 'what one leg carries of the body above it',
  keys,
  solves: ['front_leg_percent', 'added_mass_percent'],
  cites: [
    { source: 'deLeva1996', at: 'Table 4: masses of thigh, shank and foot' },
    { source: 'winter2009', at: 'Table 4.1: the second set of segments' },
    { source: 'mechanics', at: 'weight above a joint' },
  ],
  compute(input): Outcome<Load> {
    const why = unfit(input)
    if (why) return missing(why)
    return {
      quantity: { name: 'load on one working leg', unit: '% of body mass', repeats: true },
      load: over(input, belowKnee),
      figures: [{ name: 'load at the hip of the working leg', value: over(input, belowHip), unit: '% of body mass' }],
      poses: [],
      working: workingOf(input),
      assumes: ['Slow movement; depth and balance are demands beside the load, not part of it.', ...(isShared(input) ? ['The share of the working leg is as declared.'] : [])],
      cautions: [],
    }
  },
  middle(input): Outcome {
    const why = unfit(input)
    return why ? missing(why) : (carried(input, women, belowKnee) + carried(input, men, belowKnee)) / 2
  },
})
