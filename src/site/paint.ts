import type { Picture, Shape } from '../page/shape.ts'

/** Red, green, blue, row by row from the top left. */
export type Pixels = { readonly wide: number; readonly high: number; readonly rgb: Uint8Array }

type Colour = readonly [number, number, number]
const colourOf = (hex: string): Colour => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as unknown as Colour

/** How much of the pixel about a place a shape covers, 0 to 1. */
function covers(shape: Shape): (x: number, y: number) => number {
  const part = (inside: number): number => Math.min(1, Math.max(0, inside + 0.5))
  if (shape.kind === 'box') {
    const { at, wide, high } = shape
    const along = (value: number, from: number, long: number): number => Math.max(0, Math.min(value + 0.5, from + long) - Math.max(value - 0.5, from))
    return (x, y) => along(x, at[0], wide) * along(y, at[1], high)
  }
  const [fromX, fromY] = shape.from
  const [dx, dy] = [shape.to[0] - fromX, shape.to[1] - fromY]
  const square = dx * dx + dy * dy || 1
  return (x, y) => {
    const along = Math.min(1, Math.max(0, ((x - fromX) * dx + (y - fromY) * dy) / square))
    return part(shape.thick / 2 - Math.hypot(x - fromX - along * dx, y - fromY - along * dy))
  }
}

/** The pixels a shape may touch: left, top, right, bottom. */
function reach(shape: Shape): readonly [number, number, number, number] {
  if (shape.kind === 'box') return [shape.at[0], shape.at[1], shape.at[0] + shape.wide, shape.at[1] + shape.high]
  const { from, to, thick } = shape
  return [Math.min(from[0], to[0]) - thick, Math.min(from[1], to[1]) - thick, Math.max(from[0], to[0]) + thick, Math.max(from[1], to[1]) + thick]
}

/** A picture painted, edges softened by how much of a pixel a shape covers. The same pixels everywhere: no fonts, no library. */
export function paint({ wide, high, ground, shapes }: Picture): Pixels {
  const rgb = new Uint8Array(wide * high * 3)
  const base = colourOf(ground)
  for (let at = 0; at < rgb.length; at += 1) rgb[at] = base[at % 3] ?? 0
  for (const shape of shapes) {
    const [cover, colour, [left, top, right, bottom]] = [covers(shape), colourOf(shape.colour), reach(shape)]
    for (let y = Math.max(0, Math.floor(top)); y < Math.min(high, Math.ceil(bottom) + 1); y += 1) {
      for (let x = Math.max(0, Math.floor(left)); x < Math.min(wide, Math.ceil(right) + 1); x += 1) {
        const share = cover(x + 0.5, y + 0.5)
        if (share === 0) continue
        const at = (y * wide + x) * 3
        for (const part of [0, 1, 2] as const) rgb[at + part] = Math.round((rgb[at + part] ?? 0) * (1 - share) + colour[part] * share)
      }
    }
  }
  return { wide, high, rgb }
}
