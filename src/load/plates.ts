/** What is at hand to load: a bar, and pairs of plates. Units kg. */
export type Rack = { readonly bar_kg: number; readonly plates_kg: readonly number[]; readonly pairs: number }

/** What is put on: the nearest that can be loaded, and the plates on each side, heaviest first. */
export type Loaded = { readonly kg: number; readonly each_side_kg: readonly number[] }

/** Whole grams, so that sums are exact whatever plates there are. */
const GRAMS = 1000

/**
 * The mass nearest to the one wanted that bar and plates can make; of two as near, the lighter.
 *
 * Shape   a mass and a rack to what is loaded; the same size of plate may be used up to `pairs` times a side.
 * Units   kg.
 * Source  arithmetic: every sum of plates a side, by least number of plates.
 */
export function loadable(wanted_kg: number, { bar_kg, plates_kg, pairs }: Rack): Loaded {
  const sizes = [...new Set(plates_kg)].toSorted((a, b) => b - a)
  const most = Math.ceil(Math.max(0, wanted_kg - bar_kg) * GRAMS) + Math.max(0, ...sizes) * 2 * GRAMS
  const best = new Map<number, readonly number[]>([[0, []]])
  for (const size of sizes) {
    const without = [...best] // `best` grows below; a size is added only to what was made without it
    for (const [sum, plates] of without) {
      for (let count = 1; count <= pairs; count += 1) {
        const next = sum + count * Math.round(size * GRAMS)
        const each = [...plates, ...Array.from({ length: count }, () => size)]
        if (next * 2 > most) break
        if ((best.get(next)?.length ?? Infinity) > each.length) best.set(next, each)
      }
    }
  }
  const made = [...best].map(([sum, each_side_kg]) => ({ kg: bar_kg + (2 * sum) / GRAMS, each_side_kg }))
  return made.reduce((near, other) => (closer(other.kg, near.kg, wanted_kg) ? other : near), { kg: bar_kg, each_side_kg: [] as readonly number[] })
}

const closer = (one: number, other: number, wanted: number): boolean => {
  const [a, b] = [Math.abs(one - wanted), Math.abs(other - wanted)]
  return a < b || (a === b && one < other)
}
