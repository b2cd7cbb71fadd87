import { figureText, intervalText } from '../quantity/figure.ts'
import { once } from '../quantity/once.ts'
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { interval, mapSpread, type Spread } from '../quantity/spread.ts'
import { degrees, radians, STANDARD_GRAVITY } from '../quantity/unit.ts'
import { atOnce, type Work } from '../quantity/work.ts'
import { bodies, men, women, type Body } from './body.ts'
import { filledIn, loadModel, type Asked, type Athlete, type Figure, type Inputs, type Keys, type Line, type Load, type Point, type Pose, type Prop } from './model.ts'
import { contactPoint, jointMoments, massesOf, supportForces, type Direction, type Forces, type Masses, type Moments } from './support-forces.ts'
import { supportStill, supportStills, type Setup, type Still } from './support-pose.ts'
import { between, cross, length, minus, point, times } from './vector.ts'

const keys = {
  facing: { choices: ['down', 'up'], says: 'where the chest looks: down in a press-up, up in a row' },
  feet: { choices: ['toes', 'heels', 'flat', 'knees'], says: 'what the body rests on besides the hands' },
  hands: { choices: ['surface', 'bar', 'straps'], says: 'what the hands are on' },
  hand_height_cm: { unit: 'cm', min: 0, max: 250, optional: true, instructs: 'hands at about {}', says: 'height of the hands above the floor' },
  lean_deg: { unit: 'deg', min: 0, max: 90, optional: true, instructs: 'lean about {} from upright', says: 'lean of the body from upright at the start of the rep' },
  anchor_height_cm: { unit: 'cm', min: 50, max: 600, optional: true, instructs: 'anchor at about {}', says: 'height of the point the straps hang from' },
  feet_from_anchor_cm: { unit: 'cm', min: -300, max: 300, optional: true, instructs: 'heels about {} past the point under the anchor', says: 'how far the point under the anchor lies behind the heels, on the side the body leans to' },
  strap_cm: { unit: 'cm', min: 20, max: 500, optional: true, instructs: 'straps about {} long', says: 'length from the anchor to the grip' },
  foot_height_cm: { unit: 'cm', min: 0, max: 150, default: 0, instructs: 'feet at about {}', says: 'height of what the feet rest on' },
  knee_deg: { unit: 'deg', min: 60, max: 180, optional: true, says: 'knee angle, 180 being straight; straight unless given, or 90 where the shanks are held up' },
  shanks: { choices: ['rest', 'lifted'], default: 'rest', says: 'kneeling: whether the shanks lie on the floor or are held up' },
  elbow_deg: { unit: 'deg', min: 40, max: 170, optional: true, says: 'elbow angle at the end of the rep, in the plane of the movement: 70 in a press-up, 90 in a row unless given' },
  working_side_percent: { unit: '%', min: 50, max: 100, default: 50, instructs: 'about {} of the force on the working side', says: 'share of the force on the hands that one side takes' },
  added_mass_percent: { unit: '% of body mass', min: 0, max: 100, default: 0, instructs: 'about {} added', says: 'mass carried' },
  added_mass_at: { choices: ['vest', 'back', 'lap'], default: 'vest', says: 'where it is carried: on the middle of the trunk, below the shoulders, in the lap' },
} as const satisfies Keys

/** Upper arms level at the bottom of a press-up; upper arms beside the ribs at the top of a row. Chosen by us, after common practice. */
const ELBOW_DEG = { down: 70, up: 90 } as const

type Input = Asked<typeof keys>

/** One still and the forces that hold it. */
type Held = { readonly still: Still; readonly forces: Forces; readonly masses: Masses }

/** The lowest point of the rep carries the load a rung is known by, with the moments at the joints there; the other end stands beside it where it can be settled. */
type Rep = { readonly lowest: Held; readonly highest: Outcome<Held>; readonly moments: Moments }

/** A press-up is lowest at its end, a row at its start. */
const lowestIsEnd = (facing: Input['facing']): boolean => facing === 'down'

const HEEL_TO_BALL = [0.5, 0, 1] // a flat foot presses in its middle, at the heel, at the ball

/** Kneeling on shanks that lie on the floor. */
const shanksRest = ({ feet, shanks }: Input): boolean => feet === 'knees' && shanks === 'rest'

/** Turns centimetres and degrees into shares of stature and radians. */
function setupOf(input: Input, stature_m: number): Setup {
  const share = (height_cm: number | undefined) => (height_cm === undefined ? undefined : height_cm / 100 / stature_m)
  return {
    facing: input.facing,
    feet: input.feet,
    hands: input.hands,
    foot_height: input.foot_height_cm / 100 / stature_m,
    hand_height: share(input.hand_height_cm),
    lean: input.lean_deg === undefined ? undefined : radians(input.lean_deg),
    anchor_height: share(input.anchor_height_cm),
    feet_from_anchor: share(input.feet_from_anchor_cm),
    strap: share(input.strap_cm),
    knee: radians(input.knee_deg ?? (input.feet === 'knees' ? 90 : 180)),
    shanks_rest: shanksRest(input),
    elbow: radians(input.elbow_deg ?? ELBOW_DEG[input.facing]),
  }
}

/** What does not fit together in the set-up, as a phrase after "not computed:". */
function unfit({ facing, feet, hands, shanks, hand_height_cm, lean_deg, strap_cm, anchor_height_cm, feet_from_anchor_cm }: Input): string | undefined {
  if (facing === 'up' && feet === 'toes') return 'facing up, the feet rest on heels or flat, not on toes'
  if (facing === 'down' && feet === 'heels') return 'facing down, the feet rest on toes or flat, not on heels'
  if (facing === 'up' && hands === 'surface') return 'facing up, the hands hold a bar or straps, not a surface'
  const onStraps = hands === 'straps' && facing === 'up'
  if (hands !== 'straps' && feet_from_anchor_cm !== undefined) return 'feet_from_anchor_cm is given, but the hands are not on straps'
  if (hands === 'straps' && facing === 'down' && strap_cm !== undefined) return 'strap_cm is given, but facing down the height of the hands says where they are'
  if (feet !== 'knees' && shanks === 'lifted') return 'shanks is given, but the body does not kneel'
  if (hands !== 'straps' && (anchor_height_cm !== undefined || strap_cm !== undefined)) return 'an anchor or a strap is given, but the hands are not on straps'
  if (onStraps && anchor_height_cm === undefined) return 'anchor_height_cm is not given; straps need it'
  const given = [onStraps ? strap_cm : hand_height_cm, lean_deg].filter((value) => value !== undefined).length
  const names = onStraps ? ['strap_cm', 'lean_deg'] : ['hand_height_cm', 'lean_deg']
  if (given === 1) return undefined
  return given === 0 ? `neither ${names.join(' nor ')} is given; one of them sets the position` : `${names.join(' and ')} are both given; one of them follows from the other`
}

/** An assumption about what the body touches: which way the hands are pushed, and where a flat foot presses. */
type Touch = { readonly direction: Direction; readonly press: number }

/** One still of one body with its masses, which are the same whatever is assumed about what it touches. */
type Weighed = Pick<Held, 'still' | 'masses'>

function weighed(input: Input, setup: Setup, body: Body, still: Outcome<Still>): Outcome<Weighed> {
  if (isMissing(still)) return still
  return { still, masses: massesOf(body, still, setup.shanks_rest, input.added_mass_percent / 100, input.added_mass_at) }
}

/** The same under one assumption. */
function heldAs(setup: Setup, body: Outcome<Weighed>, { direction, press }: Touch): Outcome<Held> {
  if (isMissing(body)) return body
  const { still, masses } = body
  const forces = supportForces(still, masses, contactPoint(still, setup.feet, press, setup.foot_height), direction)
  return isMissing(forces) ? forces : { still, forces, masses }
}

/** Both ends of the rep for one body, under each assumption. */
function reps(input: Input, setup: Setup, body: Body, touches: readonly Touch[]): Outcome<Rep>[] {
  const stills = supportStills(setup, body)
  if (isMissing(stills)) return touches.map(() => stills)
  const down = lowestIsEnd(input.facing)
  const low = weighed(input, setup, body, down ? stills.end : stills.start)
  const high = weighed(input, setup, body, down ? stills.start : stills.end)
  return touches.map((touch) => {
    const lowest = heldAs(setup, low, touch)
    return isMissing(lowest) ? lowest : { lowest, highest: heldAs(setup, high, touch), moments: jointMoments(lowest.still, lowest.masses, lowest.forces) }
  })
}

/** The still at the lowest point of the rep, weighed: it carries the load a rung is known by. */
const lowestStill = (input: Input, setup: Setup, body: Body): Outcome<Weighed> => weighed(input, setup, body, supportStill(setup, body, lowestIsEnd(input.facing) ? 'end' : 'start'))

/** Only the lowest point of the rep. */
function lowestOf(input: Input, setup: Setup, body: Body, touch: Touch): Outcome<Held> {
  return heldAs(setup, lowestStill(input, setup, body), touch)
}

/** One body under one assumption: what a comparison with measured bodies asks for. */
export const supportedRep = (input: Input, stature_m: number, body: Body, touch: Touch): Outcome<Rep> =>
  reps(input, setupOf(input, stature_m), body, [touch])[0] ?? missing('nothing was asked')

/**
 * Every body under every assumption that differs, and for each point of a spread, in its fixed order, which of them stands there;
 * beside them the two the middle is made of.
 */
type Tried = { readonly woman: Rep; readonly man: Rep; readonly reps: readonly Rep[]; readonly points: readonly number[] }

/** The touches that differ, the likely one first, and for each of the six places of a spread which of them stands there. */
function touchesOf({ hands, feet }: Input): { distinct: [Touch, ...Touch[]]; places: number[]; presses: number } {
  const directions: Direction[] = hands === 'straps' ? ['strap'] : ['along the arm', 'vertical']
  const presses = feet === 'flat' ? HEEL_TO_BALL : [0.5]
  const [first, ...others] = directions.flatMap((direction) => presses.map((press) => ({ direction, press })))
  const places = [0, 1].flatMap((way) => [0, 1, 2].map((press) => Math.min(way, directions.length - 1) * presses.length + Math.min(press, presses.length - 1)))
  return { distinct: [first ?? { direction: 'strap', press: 0.5 }, ...others], places, presses: presses.length }
}

function* everyRep(input: Input, stature_m: number): Work<Outcome<Tried>> {
  const { distinct, places, presses } = touchesOf(input)
  const setup = setupOf(input, stature_m)
  const [hers, his] = [reps(input, setup, women, distinct), reps(input, setup, men, distinct)]
  const [woman = UNASKED, man = UNASKED] = [hers[0], his[0]]
  if (isMissing(woman)) return woman
  if (isMissing(man)) return man
  const all: Rep[] = []
  const points: number[] = []
  for (const body of bodies) {
    const own = body === women ? hers : body === men ? his : reps(input, setup, body, distinct)
    const first = all.length
    for (const [index, rep] of own.entries()) {
      const held = isMissing(rep) ? (own[index % presses] ?? rep) : rep // a direction that cannot hold the pose is no answer; the likely one stands in
      if (isMissing(held)) return missing(`${held.missing} (${body.name})`)
      all.push(held)
    }
    for (const place of places) points.push(first + place)
    yield
  }
  return { woman, man, reps: all, points }
}

const UNASKED = missing('nothing was asked')

const OVER = 'bodies, directions, pressure under the foot'

/** One figure of the rep over everything tried; its middle is the mean of the reference woman and man. */
function over({ woman, man, reps, points }: Tried, figure: (rep: Rep) => number): Spread {
  const figures = reps.map(figure)
  return { mid: (figure(woman) + figure(man)) / 2, points: points.map((index) => figures[index] ?? 0), over: OVER }
}

/** The same for the other end of the rep, where it is settled for every body tried. */
function overHighest(tried: Tried, figure: (held: Held) => number): Outcome<Spread> {
  const unsettled = [tried.woman, tried.man, ...tried.reps].map(({ highest }) => highest).find(isMissing)
  if (unsettled) return unsettled
  return over(tried, ({ highest }) => (isMissing(highest) ? 0 : figure(highest))) // none is missing, as checked above
}

const percent = (spread: Outcome<Spread>): Outcome<Spread> => (isMissing(spread) ? spread : mapSpread(spread, (share) => share * 100))

/** "at the start" and "at the end", in the order lowest, highest. */
const ends = (facing: Input['facing']): readonly [string, string] => (lowestIsEnd(facing) ? ['at the end', 'at the start'] : ['at the start', 'at the end'])

function figuresOf(input: Input, tried: Tried, stature_m: number): Figure[] {
  const [low, high] = ends(input.facing)
  const both = (name: string, figure: (held: Held) => number): Figure[] => [
    { name: `${name} ${low} of the rep`, value: percent(over(tried, ({ lowest }) => figure(lowest))), unit: '% of body weight' },
    { name: `${name} ${high} of the rep`, value: percent(overHighest(tried, figure)), unit: '% of body weight' },
  ]
  const moment = (joints: string, joint: keyof Moments): Figure => ({
    name: `moment at the ${joints} ${low} of the rep`,
    value: over(tried, (rep) => rep.moments[joint] * STANDARD_GRAVITY * stature_m),
    unit: 'N·m/kg',
  })
  const length_cm = (name: string, figure: (still: Still) => number): Figure => ({
    name,
    value: over(tried, (rep) => 100 * stature_m * figure(startOf(input, rep))),
    unit: 'cm',
  })
  const settled = overHighest(tried, ({ forces }) => forces.hands)
  const anchor = (name: string, factor: number): Figure => ({
    name,
    value: isMissing(settled) ? missing(`the end of the rep is not settled (${settled.missing}); a competent person must say what the anchor has to hold`) : percent(over(tried, (rep) => factor * heaviest(rep))),
    unit: '% of body weight',
  })
  return [
    ...both('force on both hands', ({ forces }) => forces.hands),
    ...both('upright part of that force', ({ forces }) => forces.on_hands.y),
    ...both('what the feet carry', ({ forces }) => forces.at_feet.y),
    { name: 'friction the feet need', value: over(tried, mostFriction), unit: 'ratio' },
    length_cm('hands above the floor', ({ hand }) => hand.y),
    length_cm('feet to hands, along the floor', (still) => feetToHands(input, still)),
    { name: 'lean of the body at the start', value: over(tried, (rep) => leanOf(input, rep)), unit: 'deg' },
    ...(input.hands === 'straps' && input.facing === 'up' ? [length_cm('strap from anchor to grip', strapOf)] : []),
    moment('shoulders', 'shoulder'),
    moment('hips', 'hip'),
    moment('knees', 'knee'),
    ...(input.hands === 'straps' ? [anchor('force on the anchor, held still', 1), anchor('force on the anchor, loaded suddenly', SUDDEN)] : []),
  ]
}

/** How far the hands lie from the feet along the floor, over stature. */
const feetToHands = ({ feet }: Input, { hand, heel, ball, knee }: Still): number => hand.x - (feet === 'toes' ? ball.x : feet === 'knees' ? knee.x : heel.x)

/** From the anchor to the grip, over stature. */
const strapOf = ({ anchor, hand }: Still): number => (anchor ? length(minus(anchor, hand)) : 0)

/** Where a coach puts things for one set-up. Units cm, deg. */
export type Places = { readonly hands_cm: number; readonly feet_to_hands_cm: number; readonly lean_deg: number; readonly strap_cm: number | undefined }

/**
 * Where hands and feet are at the start, and how long the strap is: the same numbers as `compute` gives, and nothing besides.
 *
 * Missing where the reference woman or man cannot take the set-up.
 */
export function supportedPlaces(inputs: Inputs, { stature_m }: Athlete): Outcome<Places> {
  const input = filledIn(supportedBody, inputs)
  if (isMissing(input)) return input
  const why = unfit(input)
  if (why) return missing(why)
  const [likely] = touchesOf(input).distinct
  const [woman, man] = [supportedRep(input, stature_m, women, likely), supportedRep(input, stature_m, men, likely)]
  if (isMissing(woman)) return woman
  if (isMissing(man)) return man
  const mean = (figure: (rep: Rep) => number): number => (figure(woman) + figure(man)) / 2
  const mean_cm = (figure: (still: Still) => number): number => mean((rep) => 100 * stature_m * figure(startOf(input, rep)))
  return {
    hands_cm: mean_cm(({ hand }) => hand.y),
    feet_to_hands_cm: mean_cm((still) => feetToHands(input, still)),
    lean_deg: mean((rep) => leanOf(input, rep)),
    strap_cm: input.hands === 'straps' && input.facing === 'up' ? mean_cm(strapOf) : undefined,
  }
}

/** The feet have to grip at both ends of the rep, where both are settled. */
const mostFriction = ({ lowest, highest }: Rep): number => (isMissing(highest) ? lowest.forces.friction : Math.max(lowest.forces.friction, highest.forces.friction))

/** The anchor has to hold the heavier end of the rep, where both are settled. */
const heaviest = ({ lowest, highest }: Rep): number => (isMissing(highest) ? lowest.forces.hands : Math.max(lowest.forces.hands, highest.forces.hands))

/** The still the athlete sets up in: the start of the rep, or the end where only that can be settled. */
function startOf(input: Input, { lowest, highest }: Rep): Still {
  return lowestIsEnd(input.facing) && !isMissing(highest) ? highest.still : lowest.still
}

/** Lean of the trunk from upright at the start. Units deg. */
function leanOf(input: Input, rep: Rep): number {
  const { hip, shoulder } = startOf(input, rep)
  return degrees(Math.atan2(Math.abs(shoulder.x - hip.x), shoulder.y - hip.y))
}

/** A load applied at once, without a drop, pulls twice as hard as at rest. Source mechanics. */
const SUDDEN = 2

/** A friction coefficient above this is more than a dry shoe surely gives. Chosen by us, after common practice. */
const SLIPPERY = 0.5

function cautionsOf(input: Input, tried: Tried): string[] {
  const friction = over(tried, mostFriction).mid
  const slips = friction > SLIPPERY ? ['The feet need good grip here: set them against a wall or on a mat that cannot slide.'] : []
  const anchored = input.hands === 'straps' ? ['Use an anchor rated by a competent person for at least the sudden force.'] : []
  return [...slips, ...anchored]
}

/** The balance of moments written out for both reference bodies, at the lowest point of the rep. */
function workingOf(input: Input, tried: Tried, load: Spread): Line[] {
  const [low] = ends(input.facing)
  const line = (who: string, { lowest: { forces, still } }: Rep): Line => {
    const arm = cross(minus(still.hand, forces.contact), times(forces.on_hands, 1 / forces.hands))
    return {
      says: `Force on both hands ${low} of the rep, ${who}: moments about the feet, lengths over stature`,
      formula: 'F/W = Σ mᵢ (xᵢ − x_C) / [(H − C) × u]',
      numbers: `${(forces.hands * arm).toFixed(4)} / ${arm.toFixed(4)} = ${forces.hands.toFixed(4)}`,
    }
  }
  const both = over(tried, ({ lowest }) => lowest.forces.hands)
  const { low: least, high: most } = interval(load)
  return [
    line('reference woman', tried.woman),
    line('reference man', tried.man),
    {
      says: 'Mean of the two, and the part of it that one working hand takes',
      formula: 'q = F/W × share of the working side',
      numbers: `${both.mid.toFixed(4)} × ${input.working_side_percent} % = ${figureText(load.mid, '% of body weight')}`,
    },
    {
      says: 'Lowest and highest over every body and assumption tried',
      formula: 'min q to max q',
      numbers: `${intervalText({ low: least, high: most }, '% of body weight')}, of ${load.points.length} tried`,
    },
  ]
}

/** The reference man's joints in metres, for drawing, with the mean of the forces on him and on the reference woman. */
function poseOf(name: 'start' | 'end', { still, forces }: Held, hers: Forces, input: Input, stature_m: number): Pose {
  const { heel, ball, toe, ankle, knee, hip, shoulder, head, elbow, wrist, hand, anchor } = still
  const metres = (at: Point): Point => times(at, stature_m)
  const held: Prop[] = anchor
    ? [{ kind: 'strap', from: metres(anchor), to: metres(hand) }]
    : input.hands === 'bar'
      ? [{ kind: 'bar', at: metres(hand) }]
      : hand.y > 0
        ? [{ kind: 'surface', at: metres(hand) }]
        : []
  return {
    name,
    joints: {
      heel: metres(heel),
      ball: metres(ball),
      toe: metres(input.feet === 'toes' ? point(ball.x + length(minus(toe, ball)), ball.y) : toe), // bent up from the floor; weighed with the rest of the foot as one piece
      ankle: metres(ankle),
      knee: metres(knee),
      hip: metres(hip),
      shoulder: metres(shoulder),
      head: metres(head),
      elbow: metres(elbow),
      wrist: metres(wrist),
      hand: metres(hand),
    },
    props: [{ kind: 'ground', y: 0 }, ...(input.foot_height_cm > 0 ? [{ kind: 'surface', at: metres(forces.contact) } as const] : []), ...held],
    forces: [
      { on: 'hands', at: metres(hand), per_weight: between(forces.on_hands, hers.on_hands, 0.5) },
      { on: 'feet', at: metres(forces.contact), per_weight: between(forces.at_feet, hers.at_feet, 0.5) },
    ],
  }
}

/** The pictures, when somebody looks; of all that was tried only the two they are made of are kept. */
const posesLater = (input: Input, pair: Pick<Tried, 'man' | 'woman'>, stature_m: number): (() => Pose[]) => once(() => posesOf(input, pair, stature_m))

function posesOf(input: Input, { man, woman }: Pick<Tried, 'man' | 'woman'>, stature_m: number): Pose[] {
  const ordered = (rep: Rep) => (lowestIsEnd(input.facing) ? [rep.highest, rep.lowest] : [rep.lowest, rep.highest])
  const hers = ordered(woman)
  return ordered(man).flatMap((his, index) => {
    const beside = hers[index]
    return beside === undefined || isMissing(his) || isMissing(beside) ? [] : [poseOf(index === 0 ? 'start' : 'end', his, beside.forces, input, stature_m)]
  })
}

function assumptions(input: Input): string[] {
  return [
    'The body is held still, in one plane; fast repetitions load more.',
    'The load is taken at the lowest point of the rep.',
    input.hands === 'straps'
      ? 'The force on the hands lies along the strap.'
      : 'A rigid surface leaves the direction of the force open: along the arm is taken as likely, turned upright as far as the feet need for their grip; quite upright is the other end of the interval.',
    ...(input.feet === 'flat' ? ['A flat foot may press anywhere from heel to ball.'] : []),
    ...(input.feet === 'knees' ? [input.shanks === 'rest' ? 'The shanks rest on the floor and carry themselves.' : 'The shanks are held off the floor.'] : []),
    'The interval spans two tables of body segments and the 5th to 95th percentile of leg, trunk and arm length.',
  ]
}

function* inTurn(input: Input, { stature_m }: Athlete): Work<Outcome<Load>> {
  const why = unfit(input)
  if (why) return missing(why)
  const tried = yield* everyRep(input, stature_m)
  if (isMissing(tried)) return tried
  const poses = posesLater(input, { man: tried.man, woman: tried.woman }, stature_m)
  const load = mapSpread(over(tried, ({ lowest }) => lowest.forces.hands), (share) => share * input.working_side_percent)
  yield
  const figures = figuresOf(input, tried, stature_m)
  yield
  return {
    quantity: { name: 'force on one working hand', unit: '% of body weight', repeats: true },
    load,
    figures,
    get poses() {
      return poses()
    },
    working: workingOf(input, tried, load),
    assumes: assumptions(input),
    cautions: cautionsOf(input, tried),
  }
}

/**
 * The share of body weight the hands carry when the body leans on hands and feet: press-ups, rows, their easier and harder versions.
 *
 * The body is a planar chain of segments; the balance of moments about the feet gives the force on the hands.
 *
 * Shape   one set-up to the load on one working hand, over 21 bodies, two directions of the force and three points under the foot.
 * Units   cm, deg, % in; % of body weight out.
 * Missing when the set-up does not close, or the hands would have to pull the body down.
 * Source  deLeva1996, winter2009 for segments; gordon2014 for the spread; mechanics for the statics.
 * Assumes see `assumptions`; they stand beside the number on the page.
 */
export const supportedBody = loadModel({
  name: 'supported-body',
  says: 'force on the hands of a body that leans on hands and feet',
  keys,
  solves: ['lean_deg', 'hand_height_cm', 'strap_cm', 'foot_height_cm', 'working_side_percent', 'added_mass_percent'],
  cites: [
    { source: 'deLeva1996', at: 'Table 4: masses, lengths and centres of mass' },
    { source: 'winter2009', at: 'Table 4.1 and Fig. 4.1: the second set of segments' },
    { source: 'gordon2014', at: 'means and SD of leg, trunk and arm length over stature' },
    { source: 'mechanics', at: 'balance of moments about the feet' },
  ],
  compute: (input, athlete) => atOnce(inTurn(input, athlete)),
  inTurn,
  middle(input, { stature_m }): Outcome {
    const why = unfit(input)
    if (why) return missing(why)
    const [likely] = touchesOf(input).distinct
    const setup = setupOf(input, stature_m)
    const [woman, man] = [lowestOf(input, setup, women, likely), lowestOf(input, setup, men, likely)]
    if (isMissing(woman)) return woman
    if (isMissing(man)) return man
    return ((woman.forces.hands + man.forces.hands) / 2) * input.working_side_percent
  },
  answers(input, { stature_m }): boolean {
    if (unfit(input)) return false
    const { distinct, presses } = touchesOf(input)
    const setup = setupOf(input, stature_m)
    const likely = distinct.slice(0, presses) // another direction that cannot hold the pose has the likely one stand in for it
    return bodies.every((body) => {
      const lowest = lowestStill(input, setup, body)
      return likely.every((touch) => !isMissing(heldAs(setup, lowest, touch)))
    })
  },
})
