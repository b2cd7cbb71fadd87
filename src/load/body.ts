/**
 * Bodies to compute with: segment masses, centres of mass and lengths, as shares of body mass and stature.
 *
 * Source  de Leva 1996, Table 4 as transcribed three times alike: masses, centres of mass, lengths.
 *         Winter 2009, Table 4.1 (after Dempster): a second, independent set; Fig. 4.1 (Drillis & Contini 1966): its lengths.
 *         Gordon 2014 (ANSUR II): how much lengths spread between people, SD over mean, men and women pooled.
 * Assumes arms and legs move in one plane, the trunk is one rigid piece, and the head stands in line with it.
 */

/** Share of body mass for ONE segment, its length as share of stature, and its centre of mass as share of that length. */
export type Segment = { readonly mass: number; readonly length: number; readonly centre: number }

/** Centres run from the hip end for the trunk, from the far end of the body otherwise: proximal for limbs. */
export type Body = {
  readonly name: string
  readonly trunk: Segment
  readonly thigh: Segment
  readonly shank: Segment
  readonly foot: Segment
  readonly upper_arm: Segment
  readonly forearm: Segment
  readonly hand: Segment
  /** Share of body mass; its centre stands this share of stature above the shoulder. */
  readonly head: { readonly mass: number; readonly above_shoulder: number }
  readonly ankle_height: number
  readonly ball_length: number
}

/** ANSUR II, men and women averaged: ankle height and heel-to-ball length over stature. */
const ANKLE_HEIGHT = (0.0415 + 0.0385) / 2
const BALL_LENGTH = (0.1144 + 0.1118) / 2

type Row = readonly [mass_percent: number, length_mm: number, centre_percent: number]
type Table = { readonly name: string; readonly stature_mm: number } & Readonly<
  Record<'head' | 'trunk' | 'upper_arm' | 'forearm' | 'hand' | 'thigh' | 'shank' | 'foot', Row>
>

const deLevaWomen: Table = {
  name: 'women, de Leva',
  stature_mm: 1735,
  head: [6.68, 243.7, 48.41],
  trunk: [42.57, 497.9, 37.82],
  upper_arm: [2.55, 275.1, 57.54],
  forearm: [1.38, 264.3, 45.59],
  hand: [0.56, 78.0, 74.74],
  thigh: [14.78, 368.5, 36.12],
  shank: [4.81, 438.6, 43.52],
  foot: [1.29, 228.3, 40.14],
}

const deLevaMen: Table = {
  name: 'men, de Leva',
  stature_mm: 1741,
  head: [6.94, 242.9, 50.02],
  trunk: [43.46, 515.5, 43.1],
  upper_arm: [2.71, 281.7, 57.72],
  forearm: [1.62, 268.9, 45.74],
  hand: [0.61, 86.2, 79.0],
  thigh: [14.16, 422.2, 40.95],
  shank: [4.33, 440.3, 43.95],
  foot: [1.37, 258.1, 44.15],
}

/** Turns a row of the table into shares. The trunk's centre is tabulated from the shoulder; we count from the hip. */
function fromTable(table: Table): Body {
  const segment = ([mass, length, centre]: Row): Segment => ({ mass: mass / 100, length: length / table.stature_mm, centre: centre / 100 })
  const trunk = segment(table.trunk)
  const [thigh, shank] = [segment(table.thigh), segment(table.shank)]
  const [head_mass, head_mm, head_centre] = table.head
  const shoulder = ANKLE_HEIGHT + shank.length + thigh.length + trunk.length
  return {
    name: table.name,
    trunk: { ...trunk, centre: 1 - trunk.centre },
    thigh,
    shank,
    foot: segment(table.foot),
    upper_arm: segment(table.upper_arm),
    forearm: segment(table.forearm),
    hand: segment(table.hand),
    head: { mass: head_mass / 100, above_shoulder: 1 - shoulder - (head_mm / table.stature_mm) * (head_centre / 100) },
    ankle_height: ANKLE_HEIGHT,
    ball_length: BALL_LENGTH,
  }
}

/** Reference woman of de Leva 1996. */
export const women = fromTable(deLevaWomen)
/** Reference man of de Leva 1996. */
export const men = fromTable(deLevaMen)

/** The second set: masses and centres of Winter 2009, lengths of Drillis & Contini 1966. */
export const dempster: Body = {
  name: 'Dempster',
  trunk: { mass: 0.497, length: 0.818 - 0.53, centre: 0.5 },
  thigh: { mass: 0.1, length: 0.53 - 0.285, centre: 0.433 },
  shank: { mass: 0.0465, length: 0.285 - 0.039, centre: 0.433 },
  foot: { mass: 0.0145, length: 0.152, centre: 0.5 },
  upper_arm: { mass: 0.028, length: 0.186, centre: 0.436 },
  forearm: { mass: 0.016, length: 0.146, centre: 0.43 },
  hand: { mass: 0.006, length: 0.108, centre: 0.506 },
  head: { mass: 0.081, above_shoulder: (1 - 0.818) / 2 }, // the table puts it at the ear canal; we take half-way from shoulder to vertex
  ankle_height: 0.039,
  ball_length: BALL_LENGTH,
}

/** SD over mean of a length, ANSUR II, men's and women's averaged. */
const LEG_VARIES = (0.0152 / 0.5128 + 0.0144 / 0.519) / 2
const TRUNK_VARIES = (0.0135 / 0.5231 + 0.0141 / 0.5262) / 2
const ARM_VARIES = (0.0106 / 0.3896 + 0.0117 / 0.3862) / 2
/** The 5th and 95th percentile of a normal distribution, in SD. */
const QUANTILE = 1.6449

const longer = (segment: Segment, times: number): Segment => ({ ...segment, length: segment.length * times })

function proportions(body: Body, part: 'legs' | 'trunk' | 'arms', end: 'short' | 'long'): Body {
  const sign = end === 'long' ? 1 : -1
  const name = `${body.name}, ${end} ${part}`
  if (part === 'legs') {
    const times = 1 + sign * QUANTILE * LEG_VARIES
    return { ...body, name, thigh: longer(body.thigh, times), shank: longer(body.shank, times) }
  }
  if (part === 'trunk') return { ...body, name, trunk: longer(body.trunk, 1 + sign * QUANTILE * TRUNK_VARIES) }
  const times = 1 + sign * QUANTILE * ARM_VARIES
  return { ...body, name, upper_arm: longer(body.upper_arm, times), forearm: longer(body.forearm, times) }
}

/**
 * The bodies every load is computed for: three tables, each as it stands and with legs, trunk or arms
 * at the 5th and 95th percentile. Twenty-one, always in this order.
 */
export const bodies: readonly Body[] = [women, men, dempster].flatMap((body) => [
  body,
  ...(['legs', 'trunk', 'arms'] as const).flatMap((part) => (['short', 'long'] as const).map((end) => proportions(body, part, end))),
])

/** The mass figures in kilograms are for, when nobody gave theirs: mean of the two reference bodies of de Leva 1996. Units kg. */
export const REFERENCE_MASS_KG = (61.9 + 73) / 2

/** The stature figures are drawn and floor marks explained for, when nobody gave theirs: mean of the two reference bodies. */
export const REFERENCE_STATURE_M = (1.735 + 1.741) / 2
