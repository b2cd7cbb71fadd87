import { figureText } from '../quantity/figure.ts'
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { mapSpread, type Spread } from '../quantity/spread.ts'
import { radians, STANDARD_GRAVITY } from '../quantity/unit.ts'
import { bodies, men, women, type Body } from './body.ts'
import { ankleFromHeel, armLumps, carriedAt, shankLumps, thighLumps, trunkLumps, weightAbout, type Lump } from './chain.ts'
import { bridge, hollow, plank, type Held } from './lever-pose.ts'
import { loadModel, type Asked, type Figure, type Joints, type Keys, type Load, type Point, type Pose, type Support } from './model.ts'
import { length, minus, plus, point, times, turned, unit } from './vector.ts'

const keys = {
  hold: { choices: ['front', 'side', 'bridge', 'hollow'], says: 'plank on the front or the side, hip bridge, or hollow hold on the back' },
  rest_on: { choices: ['forearms', 'hands'], default: 'forearms', says: 'planks: what the arms rest on' },
  feet: { choices: ['toes', 'knees'], default: 'toes', says: 'planks: what the legs rest on; toes stand for the side of the foot in a side plank' },
  other_leg: { choices: ['stacked', 'ahead', 'lifted'], optional: true, says: 'planks, for the picture: on the side the upper leg on the lower one, its foot ahead, or off it, stacked unless given; on the front one foot lifted' },
  legs: { choices: ['two', 'one'], default: 'two', says: 'bridge: how many legs work; the free one is held in line' },
  reach_cm: { unit: 'cm', min: 0, max: 45, default: 0, instructs: 'elbows about {} ahead of the shoulders', says: 'front plank: how far the elbows or hands stand ahead of the shoulders' },
  foot_height_cm: { unit: 'cm', min: 0, max: 80, default: 0, instructs: 'feet at about {}', says: 'planks and bridge: height of what the feet rest on' },
  knee_deg: { unit: 'deg', min: 60, max: 150, default: 90, says: 'bridge: knee angle' },
  leg_deg: { unit: 'deg', min: 5, max: 80, default: 20, instructs: 'legs about {} from level', says: 'hollow: lift of the straight legs from level' },
  knees: { choices: ['straight', 'tucked'], default: 'straight', says: 'hollow: legs straight, or thighs upright and shanks level' },
  arms: { choices: ['sides', 'overhead'], default: 'sides', says: 'hollow: where the arms are held' },
  added_mass_percent: { unit: '% of body mass', min: 0, max: 100, default: 0, instructs: 'about {} added', says: 'mass carried on the trunk, or in the lap of a bridge' },
} as const satisfies Keys

type Input = Asked<typeof keys>

/** What each hold does not ask. */
const IDLE: Record<Input['hold'], readonly Exclude<keyof Input, 'hold'>[]> = {
  front: ['legs', 'knee_deg', 'leg_deg', 'knees', 'arms'],
  side: ['legs', 'reach_cm', 'knee_deg', 'leg_deg', 'knees', 'arms'],
  bridge: ['other_leg', 'rest_on', 'feet', 'reach_cm', 'leg_deg', 'knees', 'arms'],
  hollow: ['other_leg', 'rest_on', 'feet', 'legs', 'reach_cm', 'foot_height_cm', 'knee_deg', 'added_mass_percent'],
}

/** What a key holds where nobody gave it; nothing for one that may stay away. */
const defaultOf = (name: Exclude<keyof Input, 'hold'>): number | string | undefined => {
  const key = keys[name]
  return 'default' in key ? key.default : undefined
}

function unfit(input: Input): string | undefined {
  const idle = IDLE[input.hold].find((key) => input[key] !== defaultOf(key))
  if (idle) return `${idle} is given, but a ${input.hold} hold does not ask it`
  if (input.hold === 'front' && input.other_leg !== undefined && (input.other_leg !== 'lifted' || input.feet === 'knees')) return `other_leg is ${input.other_leg}, but a front hold is on ${input.feet}`
  return input.hold === 'hollow' && input.knees === 'tucked' && input.leg_deg !== keys.leg_deg.default ? 'leg_deg is given, but the knees are tucked' : undefined
}

/** What holds the body, over body weight and stature. */
type Result = { readonly held: Held; readonly hip: number; readonly shoulder: number; readonly near: number; readonly far: number }

/**
 * One body in one hold.
 *
 *     R_near = Σ mᵢ (xᵢ − x_far) / (x_near − x_far)                    (1)
 *     M_hip  = R_far (x_hip − x_far) − Σ_legs mᵢ (x_hip − xᵢ)          (2)   both hips of a plank, the working one of a bridge
 *     M_sh   = R_near (x_near − x_shoulder) − Σ_arms mᵢ (xᵢ − x_shoulder)   (3)
 */
function holdOf(input: Input, body: Body, stature_m: number, press: number): Outcome<Result> {
  const held =
    input.hold === 'hollow'
      ? hollow(body, radians(input.leg_deg), input.knees === 'tucked', input.arms === 'overhead')
      : input.hold === 'bridge'
        ? bridge(body, radians(input.knee_deg), input.foot_height_cm / 100 / stature_m, press)
        : plank(body, input.hold, input.feet, input.rest_on, input.reach_cm / 100 / stature_m, input.foot_height_cm / 100 / stature_m, press)
  if (isMissing(held)) return held
  const shanksRest = input.feet === 'knees' && (input.hold === 'front' || input.hold === 'side')
  const working = [...shankLumps(body, held, shanksRest), ...thighLumps(body, held)].map(half)
  const free = input.hold === 'bridge' && input.legs === 'one' ? straightLeg(body, held) : working
  const legs = [...working, ...free]
  const arms = armLumps(body, held.shoulder, held.elbow, held.wrist, held.hand)
  const carried = carriedAt(body, held, input.added_mass_percent / 100, input.hold === 'bridge' ? 'lap' : 'vest')
  const trunk = trunkLumps(body, held, carried)
  if (input.hold === 'hollow') return { held, hip: Math.abs(leverOf(legs, held)), shoulder: Math.abs(weightAbout([arms], held.shoulder.x).first_moment), near: 0, far: 0 }
  const resting = input.hold === 'bridge' ? [] : arms // in a bridge the arms lie on the floor
  const all = [legs, trunk, resting]
  const { mass } = weightAbout(all, 0)
  const near = weightAbout(all, held.far.x).first_moment / (held.near.x - held.far.x) // eq. 1
  const far = mass - near
  const foot = far * (held.hip.x - held.far.x)
  const hip = input.hold !== 'bridge' ? Math.abs(foot + leverOf(legs, held)) : input.legs === 'one' ? Math.abs(foot + leverOf(working, held)) : Math.abs(foot + leverOf(legs, held)) / 2 // eq. 2
  const shoulder = Math.abs(near * (held.near.x - held.shoulder.x) - weightAbout([resting], held.shoulder.x).first_moment) // eq. 3
  return { held, hip, shoulder, near, far }
}

/** First moment of the legs about the hip. */
const leverOf = (legs: readonly Lump[], { hip }: Held): number => weightAbout([legs], hip.x).first_moment

const half = ({ mass, at }: Lump): Lump => ({ mass: mass / 2, at })

/** The free leg of a one-leg bridge, straight along its thigh. */
function straightLeg(body: Body, { hip, knee }: Held): Lump[] {
  const along = unit(minus(knee, hip))
  return [
    { mass: body.thigh.mass, at: plus(hip, times(along, body.thigh.length * body.thigh.centre)) },
    { mass: body.shank.mass, at: plus(knee, times(along, body.shank.length * body.shank.centre)) },
    { mass: body.foot.mass, at: plus(knee, times(along, body.shank.length + body.ankle_height)) },
  ]
}

const PRESSES = [0, 0.25, 0.5]

/** Every body, under each of three places of pressure, after the two the middle is made of. */
function tried(input: Input, stature_m: number): Outcome<{ readonly pair: readonly [Result, Result]; readonly all: readonly Result[] }> {
  const one = (body: Body, press: number) => holdOf(input, body, stature_m, press)
  const [woman, man] = [one(women, 0.25), one(men, 0.25)]
  if (isMissing(woman)) return woman
  if (isMissing(man)) return man
  const all: Result[] = []
  for (const body of bodies) {
    for (const press of PRESSES) {
      const result = one(body, press)
      if (isMissing(result)) return missing(`${result.missing} (${body.name})`)
      all.push(result)
    }
  }
  return { pair: [woman, man], all }
}

/**
 * What a held position asks of the hips and shoulders: planks on the front and side and their longer levers, bridges, hollow holds.
 *
 * Shape   one hold to the moment at the hips, over 21 bodies and three places of pressure on the forearm or foot.
 * Units   cm, deg, % in; N·m per kg of body mass out.
 * Missing when a key does not belong to the hold, or the body cannot take the position.
 * Source  deLeva1996, winter2009, gordon2014 for the body; mechanics for the statics of eqs. 1 to 3.
 * Assumes both places carry upright forces only; in a bridge the arms rest on the floor; a hollow hold rests on the small of the back.
 */
export const leverHold = loadModel({
  name: 'lever-hold',
  says: 'moment that hips and shoulders hold in a plank, a bridge or a hollow hold',
  keys,
  solves: ['reach_cm', 'leg_deg', 'foot_height_cm', 'added_mass_percent'],
  cites: [
    { source: 'deLeva1996', at: 'Table 4: masses, lengths and centres of mass' },
    { source: 'winter2009', at: 'Table 4.1 and Fig. 4.1: the second set of segments' },
    { source: 'gordon2014', at: 'means and SD of leg, trunk and arm length over stature' },
    { source: 'mechanics', at: 'balance of moments about the far support' },
  ],
  compute(input, { stature_m }): Outcome<Load> {
    const why = unfit(input)
    if (why) return missing(why)
    const results = tried(input, stature_m)
    if (isMissing(results)) return results
    const { pair, all } = results
    const over = (figure: (result: Result) => number): Spread => ({ mid: (figure(pair[0]) + figure(pair[1])) / 2, points: all.map(figure), over: 'bodies, pressure under arm or foot' })
    const moment = (spread: Spread): Spread => mapSpread(spread, (value) => value * STANDARD_GRAVITY * stature_m)
    const load = moment(over(({ hip }) => hip))
    const name = input.hold === 'bridge' ? 'moment at one working hip' : 'moment at the hips'
    return {
      quantity: { name, unit: 'N·m/kg', repeats: false },
      load,
      figures: figuresOf(input, over, moment),
      poses: [poseOf(pair[1], input, stature_m)],
      working: pair.map(({ hip }, index) => ({
        says: `${name}, reference ${index === 0 ? 'woman' : 'man'}: share of body weight times stature, made a moment`,
        formula: 'M/m = |R_far (x_hip − x_far) − Σ_legs mᵢ (x_hip − xᵢ)| × g × stature',
        numbers: `${hip.toFixed(4)} × ${STANDARD_GRAVITY} m/s² × ${stature_m.toFixed(2)} m = ${figureText(hip * STANDARD_GRAVITY * stature_m, 'N·m/kg')}`,
      })),
      assumes: [
        'The body is held still; what carries it pushes straight up.',
        ...(input.hold === 'bridge' ? ['The arms rest on the floor and carry themselves; the head is weighed as held up with the trunk.'] : []),
        ...(input.hold === 'side' ? ['The upper arm counts as if it were beside the lower.', 'The picture is seen from the front: the joints of the lower side lie where they were computed, the upper side above them by breadths chosen by us, with its hand on the hip.'] : []),
        'How long a position can be held does not follow from its moment: the standard in seconds is the coach’s.',
      ],
      cautions: [],
    }
  },
})

function figuresOf(input: Input, over: (figure: (result: Result) => number) => Spread, moment: (spread: Spread) => Spread): Figure[] {
  const shoulder: Figure = { name: 'moment at the shoulders', value: moment(over((result) => result.shoulder)), unit: 'N·m/kg' }
  if (input.hold === 'hollow') return [shoulder]
  const near = input.hold === 'bridge' ? 'what the shoulders carry' : input.rest_on === 'forearms' ? 'what the forearms carry' : 'what the hands carry'
  const carried: Figure = { name: near, value: mapSpread(over((result) => result.near), (share) => share * 100), unit: '% of body weight' }
  return input.hold === 'bridge' ? [carried] : [carried, shoulder]
}

/** What is drawn otherwise than it is weighed: the whole foot of a hollow hold, and a head that would lie under the floor in a bridge. */
function drawnFor(hold: Input['hold'], { ankle, toe, shoulder, head }: Held): Partial<Held> {
  if (hold === 'hollow') {
    const along = unit(minus(toe, ankle))
    const heel = plus(ankle, plus(times(along, -ankleFromHeel(men)), times(turned(along, Math.PI / 2), men.ankle_height)))
    return { heel, ball: plus(heel, times(along, men.ball_length)), toe: plus(heel, times(along, men.foot.length)) }
  }
  if (hold !== 'bridge' || head.y >= shoulder.y) return {}
  return { head: plus(shoulder, point(Math.sign(head.x - shoulder.x) * length(minus(head, shoulder)), 0)) }
}

/** A lifted foot of a plank is a hand's breadth off the floor. Chosen by us. */
const LIFTED = radians(-7)

/** The free leg as it is drawn: lifted off the floor in a plank, in line with its thigh in a bridge, the foot square to it. */
function freeLeg(hold: Input['hold'], { heel: back, ball: under, toe: tip, ankle: low, hip, knee }: Held): Pick<Held, 'heel' | 'ball' | 'toe' | 'ankle' | 'knee' | 'hip'> {
  const up = (at: Point): Point => plus(hip, turned(minus(at, hip), LIFTED))
  if (hold === 'front') return { hip, knee: up(knee), ankle: up(low), heel: up(back), ball: up(under), toe: up(tip) }
  const along = unit(minus(knee, hip))
  const toeward = turned(along, -Math.PI / 2)
  const ankle = plus(knee, times(along, men.shank.length))
  const heel = plus(plus(ankle, times(along, men.ankle_height)), times(toeward, -ankleFromHeel(men)))
  return { hip, knee, ankle, heel, ball: plus(heel, times(toeward, men.ball_length)), toe: plus(heel, times(toeward, men.foot.length)) }
}

/** The reference man's joints in metres, for drawing. */
function poseOf({ held, near, far: carried }: Result, { hold, legs, rest_on, other_leg = 'stacked' }: Input, stature_m: number): Pose {
  const arms: Support = hold === 'bridge' ? 'shoulders' : rest_on
  const { far, near: at, ...joints } = held
  const metres = (places: Joints): Joints => Object.fromEntries(Object.entries(places).map(([joint, place]) => [joint, times(place, stature_m)]))
  return {
    name: 'hold',
    ...(hold === 'side' ? { lies: { on: 'the side', top_leg: other_leg } as const } : {}),
    joints: metres({ ...joints, ...drawnFor(hold, held) }),
    ...(legs === 'one' || (hold === 'front' && other_leg === 'lifted') ? { other_leg: metres(freeLeg(hold, held)) } : {}),
    props: [{ kind: 'ground', y: 0 }, ...(far.y > 0.01 ? [{ kind: 'surface', at: times(far, stature_m) } as const] : [])],
    forces: near === 0 ? [] : [{ on: arms, at: times(at, stature_m), per_weight: { x: 0, y: near } }, { on: 'feet', at: times(far, stature_m), per_weight: { x: 0, y: carried } }],
  }
}
