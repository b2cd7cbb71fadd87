import { isMissing } from '../quantity/outcome.ts'
import { mapSpread, type Spread } from '../quantity/spread.ts'
import { modelNamed } from './index.ts'
import { isNumberKey, type Load } from './model.ts'

/** Where a load of a rung lies: on one working limb, on the other, on both; those that are told apart. */
export type Limbs = { readonly one: Spread; readonly other: Spread | undefined; readonly both: Spread | undefined }

/** What a rung's load is computed from: a model's name, and what the coach wrote for it. */
export type SetUp = { readonly model: string; readonly inputs: Readonly<Record<string, unknown>> }

/** What the working limb takes of both, where the set-up says. Units %. */
function workingShare({ model, inputs }: SetUp): number | undefined {
  const given = (name: string): number => (typeof inputs[name] === 'number' ? inputs[name] : 50)
  if (model === 'supported-body' || model === 'assisted') return given('working_side_percent')
  if (model !== 'leg-press-of-body') return undefined
  return inputs.stance === 'one leg' ? 100 : given('front_leg_percent') // two legs share evenly: the model refuses a share there
}

/**
 * The load on the working limb, told apart from the other and from both together.
 *
 *     both = q / s        other = both − q
 *
 * Units   those of the load; s in %.
 */
export function limbs(rung: SetUp, one: Spread): Limbs {
  const share = workingShare(rung)
  if (share === undefined || share === 100) return { one, other: undefined, both: undefined }
  return { one, other: share === 50 ? undefined : mapSpread(one, (load) => (load * (100 - share)) / share), both: mapSpread(one, (load) => (load * 100) / share) }
}

/** True where a load is a share of the body, so that a body mass makes it kilograms. */
export const isShare = (unit: string): boolean => unit.startsWith('% of body')

/** Units a share of the body, or times body weight, to kilograms. */
export const kilogramsOf = (value: number, unit: string, mass_kg: number): number => (isShare(unit) ? value / 100 : value) * mass_kg

/** What a rung lays on a body beside a load that is no share of it: what forearms carry in a plank, what a landing stops with. */
export const carriedBeside = ({ figures }: Load): Load['figures'] => figures.filter(({ unit, value }) => !isMissing(value) && (isShare(unit) || unit === '× body weight'))

/** What is hung on or taken off as a share of body mass, by the model's keys, in their order. Units % of body mass. */
export const sharesOfMass = ({ model, inputs }: SetUp): (readonly [key: string, percent: number])[] =>
  Object.entries(modelNamed(model)?.keys ?? {}).flatMap(([name, key]) => {
    const percent = inputs[name]
    return isNumberKey(key) && key.unit === '% of body mass' && typeof percent === 'number' && percent !== 0 ? [[name, percent] as const] : []
  })
