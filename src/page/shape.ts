/** A place in a picture: pixels from its left and its top. */
export type Place = readonly [x: number, y: number]

/** One thing in a picture of flat colours: a box, or a line with round ends. Painted in order. Units px. */
export type Shape =
  | { readonly kind: 'box'; readonly at: Place; readonly wide: number; readonly high: number; readonly colour: string }
  | { readonly kind: 'stroke'; readonly from: Place; readonly to: Place; readonly thick: number; readonly colour: string }

/** A picture made of shapes on one ground. */
export type Picture = { readonly wide: number; readonly high: number; readonly ground: string; readonly shapes: readonly Shape[] }
