import type { Shape } from './shape.ts'

/** A ladder leaning on nothing: two rails and three rungs, in a square of 32. */
const LINES = [
  [10, 28, 13, 4],
  [22, 28, 19, 4],
  [9, 23, 23, 23],
  [10, 16, 22, 16],
  [11, 9, 21, 9],
] as const
export const ICON_WIDE = 32
const THICK = 3

/** The icon as a drawing. */
export const iconSvg = (accent: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${ICON_WIDE} ${ICON_WIDE}"><path d="${LINES.map(([x, y, toX, toY]) => `M${x} ${y}L${toX} ${toY}`).join('')}" fill="none" stroke="${accent}" stroke-width="${THICK}" stroke-linecap="round"/></svg>\n`

/** The icon as shapes, in a square of `wide` whose corner is at a place. */
export const iconShapes = (colour: string, x: number, y: number, wide: number): Shape[] => {
  const part = wide / ICON_WIDE
  return LINES.map((line) => ({ kind: 'stroke', from: [x + line[0] * part, y + line[1] * part], to: [x + line[2] * part, y + line[3] * part], thick: THICK * part, colour }))
}
