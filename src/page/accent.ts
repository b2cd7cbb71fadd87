/** The handbook's one colour, made dark or light enough to read on each paper. */
export type Accent = { readonly onLight: string; readonly onDark: string }

/** The colour of a handbook that names none. */
export const STARTER_ACCENT = '#7a3b12'

/** The two papers of handbook.css. */
export const LIGHT_PAPER = '#fbf9f4'
export const DARK_PAPER = '#191816'

/** WCAG 2.2, 1.4.3: text needs 4.5 to 1. A little more, for tinted grounds. */
const ENOUGH = 5

type Rgb = readonly [number, number, number]

const rgb = (hex: string): Rgb => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)) as unknown as Rgb
const hex = (colour: Rgb): string => `#${colour.map((part) => Math.round(part).toString(16).padStart(2, '0')).join('')}`

/** Relative luminance. Source  WCAG 2.2, definition of relative luminance. */
function luminance(colour: Rgb): number {
  const [r, g, b] = colour.map((part) => (part / 255 <= 0.04045 ? part / 255 / 12.92 : ((part / 255 + 0.055) / 1.055) ** 2.4)) as unknown as Rgb
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

/** Contrast ratio of two colours, 1 to 21. Source  WCAG 2.2, definition of contrast ratio. */
export function contrast(one: string, other: string): number {
  const [a, b] = [luminance(rgb(one)), luminance(rgb(other))]
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
}

/** Mixes a colour towards black or white, a fiftieth at a time, until it can be read on the paper. */
function readable(accent: string, paper: string, towards: 0 | 255): string {
  const from = rgb(accent)
  for (let step = 0; step <= 50; step += 1) {
    const mixed = hex(from.map((part) => part + ((towards - part) * step) / 50) as unknown as Rgb)
    if (contrast(mixed, paper) >= ENOUGH) return mixed
  }
  return towards === 0 ? '#000000' : '#ffffff'
}

/** Shape one colour to two, each at least 5 to 1 on its paper. */
export const accentOf = (colour: string): Accent => ({ onLight: readable(colour, LIGHT_PAPER, 0), onDark: readable(colour, DARK_PAPER, 255) })
