import { missing, type Outcome } from '../quantity/outcome.ts'
import { loadable, type Rack } from '../load/plates.ts'

/** A light bar and small plates, with larger ones for later. Chosen by us: it makes every mass of a light bar's ladder. Units kg. */
export const RACK: Rack = { bar_kg: 6, plates_kg: [0.5, 1, 1.25, 2.5, 5, 10, 20], pairs: 2 }

/** What a rack may be. Chosen by us: no bar is heavier, and plates come in no finer steps. Units kg. */
const MOST_BAR_KG = 50
const MOST_PLATE_KG = 50
const MOST_SIZES = 12
const MOST_PAIRS = 6
const GRAIN_KG = 0.25

const isPlate = (value: unknown): value is number => typeof value === 'number' && value >= GRAIN_KG && value <= MOST_PLATE_KG && Number.isInteger(value / GRAIN_KG)

/** A rack from anything at all, or what is wrong with it; undefined where none is given. */
export function rackIn(value: unknown): Outcome<Rack | undefined> {
  if (value === undefined) return undefined
  const { bar_kg, plates_kg, pairs } = (value ?? {}) as Readonly<Record<string, unknown>> // every part of it is checked below
  if (typeof bar_kg !== 'number' || !(bar_kg >= 0 && bar_kg <= MOST_BAR_KG)) return missing(`the bar must be a number from 0 to ${MOST_BAR_KG} kg`)
  if (!Array.isArray(plates_kg) || plates_kg.length === 0 || plates_kg.length > MOST_SIZES || !plates_kg.every(isPlate)) return missing(`plates must be 1 to ${MOST_SIZES} numbers from ${GRAIN_KG} to ${MOST_PLATE_KG} kg, in steps of ${GRAIN_KG} kg`)
  if (typeof pairs !== 'number' || !Number.isInteger(pairs) || pairs < 1 || pairs > MOST_PAIRS) return missing(`pairs of each plate must be a whole number from 1 to ${MOST_PAIRS}`)
  return { bar_kg, plates_kg: [...plates_kg], pairs }
}

/** "a bar of 6 kg, and 2 pairs each of 0.5, 1 and 5 kg" */
export function rackText({ bar_kg, plates_kg, pairs }: Rack): string {
  const sizes = plates_kg.length === 1 ? `${plates_kg[0]}` : `${plates_kg.slice(0, -1).join(', ')} and ${plates_kg.at(-1)}`
  return `a bar of ${bar_kg} kg, and ${pairs} ${pairs === 1 ? 'pair' : 'pairs'} ${plates_kg.length === 1 ? 'of' : 'each of'} ${sizes} kg`
}

/** What to put on each end for a mass, in words, with what it comes to where that is another mass. */
export function platesText(wanted_kg: number, rack: Rack): string {
  if (wanted_kg < rack.bar_kg) return `less than the bar of ${rack.bar_kg} kg: take a lighter bar or a weight for one hand`
  const { kg, each_side_kg } = loadable(wanted_kg, rack)
  const plates = each_side_kg.length === 0 ? `the bar of ${rack.bar_kg} kg alone` : `${each_side_kg.join(' + ')} kg on each end of the bar of ${rack.bar_kg} kg`
  return kg === wanted_kg ? plates : `${plates}, which is ${kg} kg: the nearest this rack makes`
}
