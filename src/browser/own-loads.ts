import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { mapSpread, type Spread } from '../quantity/spread.ts'
import { modelNamed } from '../load/index.ts'
import { ask, askMiddle, canAnswer, type Athlete, type Inputs, type Load } from '../load/model.ts'
import type { Placeable } from '../measure/place.ts'
import type { LadderData } from '../page/data.ts'
import type { Work } from './paced.ts'

/** A rung as the handbook's data gives it. */
export type RungData = LadderData['rungs'][number]

/** The load of a rung for one body: the same model asked the same thing as when the handbook was built. */
export function loadFor({ model: name, inputs }: Pick<RungData, 'model' | 'inputs'>, athlete: Athlete): Outcome<Load> {
  const model = modelNamed(name)
  return model ? ask(model, inputs as Inputs, athlete) : missing(`no load model is named ${name}`) // ask refuses what is no input
}

/** The middle of a load, and its unit: all that a table of a ladder shows. */
export type Middle = { readonly mid: number; readonly unit: string }

/** Only the middle of that load: quicker to have where the model knows without all the rest that it answers. */
export function middleFor({ model: name, inputs, load: average }: Pick<RungData, 'model' | 'inputs' | 'load'>, athlete: Athlete): Outcome<Middle> {
  const model = modelNamed(name)
  if (model?.answers && 'unit' in average && canAnswer(model, inputs as Inputs, athlete)) {
    const mid = askMiddle(model, inputs as Inputs, athlete)
    return isMissing(mid) ? mid : { mid, unit: average.unit }
  }
  const load = loadFor({ model: name, inputs }, athlete)
  return isMissing(load) ? load : { mid: load.load.mid, unit: load.quantity.unit }
}

/** The middles of the loads of rungs for one body, in their order; it can be left off after each. */
export function* middlesOf(rungs: readonly RungData[], athlete: Athlete): Work<Outcome<Middle>[]> {
  const middles: Outcome<Middle>[] = []
  for (const rung of rungs) {
    middles.push(middleFor(rung, athlete))
    yield
  }
  return middles
}

/** The load of a rung for one body, left off once: the browser reads the model's code for the middle alone, and tries every body in the next breath. */
export function* loadInTwo({ model: name, inputs }: Pick<RungData, 'model' | 'inputs'>, athlete: Athlete): Work<Outcome<Load>> {
  const model = modelNamed(name)
  if (model?.middle) askMiddle(model, inputs as Inputs, athlete)
  yield
  return loadFor({ model: name, inputs }, athlete)
}

/** The loads of rungs for one body, in their order; it can be left off after each. */
export function* loadsOf(rungs: readonly RungData[], athlete: Athlete): Work<Outcome<Load>[]> {
  const loads: Outcome<Load>[] = []
  for (const rung of rungs) {
    loads.push(loads.length === 0 ? yield* loadInTwo(rung, athlete) : loadFor(rung, athlete))
    yield
  }
  return loads
}

/** A ladder with its loads for one body, as far as placing an athlete on it needs it. */
export const placeableWith = ({ id, first_reps, rungs }: LadderData, loads: readonly Outcome<Load>[]): Placeable => ({
  id,
  first_reps,
  rungs: rungs.flatMap((rung, index) => {
    const outcome = loads[index]
    return outcome === undefined ? [] : [{ id: rung.id, demand: rung.demand, outcome }]
  }),
})

/** Where a load of a rung lies: on one working limb, on the other, on both; those that are told apart. */
export type Limbs = { readonly one: Spread; readonly other: Spread | undefined; readonly both: Spread | undefined }

/** What the working limb takes of both, where the set-up says. Units %. */
function workingShare({ model, inputs }: Pick<RungData, 'model' | 'inputs'>): number | undefined {
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
export function limbs(rung: Pick<RungData, 'model' | 'inputs'>, one: Spread): Limbs {
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
