/**
 * Body segments, typed a second time from the published tables, in the tables' own units and from the tables' own ends.
 * `src/load/body.ts` holds the first copy; tests hold the two against each other.
 */

/** % of body mass for ONE segment, length in mm, centre of mass in % of the length from the first end. */
type Row = readonly [mass_percent: number, length_mm: number, centre_percent: number]
export const SEGMENTS = ['head', 'trunk', 'upper_arm', 'forearm', 'hand', 'thigh', 'shank', 'foot'] as const
export type SegmentTable = Readonly<Record<(typeof SEGMENTS)[number], Row>> & { readonly stature_mm: number }

/**
 * de Leva 1996. First ends: vertex of the head, shoulder of the trunk (mid-shoulder to mid-hip), shoulder, elbow,
 * wrist (to the third knuckle), hip, knee, heel (to the tip of the toes).
 */
export const deLevaWomen: SegmentTable = {
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

export const deLevaMen: SegmentTable = {
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

/**
 * Winter 2009, Table 4.1 after Dempster, on a body of 1000 mm with the lengths of Drillis & Contini 1966: heights of
 * ankle 39, knee 285, hip 530, shoulder 818. The trunk runs from the hip end in the table, at one half, which is one half from either end.
 * The head is taken half-way from shoulder to vertex: a choice of the model, not of the table.
 */
export const winter: SegmentTable = {
  stature_mm: 1000,
  head: [8.1, 182, 50],
  trunk: [49.7, 288, 50],
  upper_arm: [2.8, 186, 43.6],
  forearm: [1.6, 146, 43],
  hand: [0.6, 108, 50.6],
  thigh: [10, 245, 43.3],
  shank: [4.65, 246, 43.3],
  foot: [1.45, 152, 50],
}

/** Height of the ankle over stature: ANSUR II, men 0.0415 and women 0.0385, averaged; and Drillis & Contini. */
export const ANKLE_HEIGHT = { deLeva: 0.04, winter: 0.039 } as const
