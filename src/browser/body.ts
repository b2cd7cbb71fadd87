import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { figureText } from '../quantity/figure.ts'
import { REFERENCE_MASS_KG, REFERENCE_STATURE_M } from '../load/body.ts'
import type { Athlete } from '../load/model.ts'
import type { Rack } from '../load/plates.ts'
import { rackIn } from './rack.ts'

/** Exact by definition: the international pound and inch. */
export const KG_PER_LB = 0.45359237
export const CM_PER_IN = 2.54
const IN_PER_FT = 12

/** A body mass and a height as they were typed, so that they come back as they were typed. */
export type Mass = { readonly unit: 'kg' | 'lb'; readonly value: number }
export type Height = { readonly unit: 'cm'; readonly value: number } | { readonly unit: 'ft-in'; readonly feet: number; readonly inches: number }

/** What is kept of a reader: either measure may be left out. The version rises when a reader of it would have to change. */
export type Body = { readonly version: 1; readonly mass: Mass | undefined; readonly height: Height | undefined; readonly rack: Rack | undefined }

/** Adults, with room to spare: the segment tables are of adults. Chosen by us. Units kg, cm. */
const MASS_KG = { min: 30, max: 250 }
const HEIGHT_CM = { min: 120, max: 220 }

const MASS_SAYS = 'body mass must be a number from 30 to 250 kg (67 to 551 lb)'
const HEIGHT_SAYS = 'height must be a number from 120 to 220 cm (4 ft 0 in to 7 ft 2 in)'

/** Units kg. */
export const massKg = ({ unit, value }: Mass): number => (unit === 'kg' ? value : value * KG_PER_LB)

/** Units cm. */
export const heightCm = (height: Height): number => (height.unit === 'cm' ? height.value : (height.feet * IN_PER_FT + height.inches) * CM_PER_IN)

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null && !Array.isArray(value)
const within = (value: number, { min, max }: { readonly min: number; readonly max: number }): boolean => value >= min && value <= max

function massIn(value: unknown): Outcome<Mass | undefined> {
  if (value === undefined) return undefined
  if (!isRecord(value) || typeof value.value !== 'number' || (value.unit !== 'kg' && value.unit !== 'lb')) return missing(MASS_SAYS)
  const mass: Mass = { unit: value.unit, value: value.value }
  return within(massKg(mass), MASS_KG) ? mass : missing(MASS_SAYS)
}

function heightIn(value: unknown): Outcome<Height | undefined> {
  if (value === undefined) return undefined
  const height = isRecord(value) ? heightOf(value) : undefined
  return height && within(heightCm(height), HEIGHT_CM) ? height : missing(HEIGHT_SAYS)
}

function heightOf({ unit, value, feet, inches }: Readonly<Record<string, unknown>>): Height | undefined {
  if (unit === 'cm' && typeof value === 'number') return { unit, value }
  if (unit !== 'ft-in' || typeof feet !== 'number' || typeof inches !== 'number') return undefined
  return Number.isInteger(feet) && feet >= 0 && inches >= 0 && inches < IN_PER_FT ? { unit, feet, inches } : undefined
}

/**
 * A body from anything at all: what was kept, or what was typed. Nothing is believed that was not checked here.
 *
 * Missing with the first thing that is wrong.
 */
export function bodyIn(value: unknown): Outcome<Body> {
  if (!isRecord(value)) return missing('it is no record of a body')
  if (value.version !== 1) return missing('it was kept by another edition of this handbook')
  const [mass, height, rack] = [massIn(value.mass), heightIn(value.height), rackIn(value.rack)]
  if (isMissing(mass)) return mass
  if (isMissing(height)) return height
  if (isMissing(rack)) return rack
  return { version: 1, mass, height, rack }
}

/** What stands in the fields of the form. */
export type Typed = Readonly<Record<'mass' | 'mass_unit' | 'cm' | 'feet' | 'inches' | 'height_unit', string>>

/** A number as people type it, with a point or a comma; anything else is not a number. */
export const numberIn = (text: string): number => (/^\d{1,3}([.,]\d{1,2})?$/.test(text.trim()) ? Number(text.trim().replace(',', '.')) : NaN)

/** A body from a form: empty fields are left out. */
export function bodyFrom({ mass, mass_unit, cm, feet, inches, height_unit }: Typed, rack: Rack | undefined): Outcome<Body> {
  const inCm = cm.trim() === '' ? undefined : { unit: 'cm', value: numberIn(cm) }
  const inFeet = feet.trim() === '' && inches.trim() === '' ? undefined : { unit: 'ft-in', feet: numberIn(feet), inches: inches.trim() === '' ? 0 : numberIn(inches) }
  const height = height_unit === 'cm' ? inCm : inFeet
  if (mass.trim() === '' && height === undefined && rack === undefined) return missing('give a body mass, a height or both')
  return bodyIn({ version: 1, mass: mass.trim() === '' ? undefined : { unit: mass_unit, value: numberIn(mass) }, height, rack })
}

/** The athlete a model is asked for: the reader's own measures, and the average body's where one is not known. */
export const athleteOf = (body: Body | undefined): Athlete => ({
  stature_m: body?.height ? heightCm(body.height) / 100 : REFERENCE_STATURE_M,
  mass_kg: body?.mass ? massKg(body.mass) : REFERENCE_MASS_KG,
})

/** "31.4 kg", and for who thinks in pounds "31.4 kg (69.2 lb)". */
export const massText = (mass_kg: number, unit: Mass['unit'] | undefined): string => figureText(mass_kg, 'kg') + (unit === 'lb' ? ` (${(mass_kg / KG_PER_LB).toFixed(1)} lb)` : '')

/** The body in words, as it was typed. */
export function bodyText({ mass, height }: Body): string {
  const tall = height && (height.unit === 'cm' ? `${height.value} cm` : `${height.feet} ft ${height.inches} in`)
  return [mass && `${mass.value} ${mass.unit}`, tall].filter(Boolean).join(', ')
}
