import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import type { Work } from '../quantity/work.ts'
import { modelNamed } from '../load/index.ts'
import { ask, askInTurn, askMiddle, canAnswer, type Athlete, type Inputs, type Load } from '../load/model.ts'
import type { Placeable } from '../measure/place.ts'
import type { LadderData } from '../page/data.ts'

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

/** The same, left off again and again: first the browser reads the model's code for the middle alone. */
export function* loadInTurn({ model: name, inputs }: Pick<RungData, 'model' | 'inputs'>, athlete: Athlete): Work<Outcome<Load>> {
  const model = modelNamed(name)
  if (!model) return missing(`no load model is named ${name}`)
  if (model.middle) askMiddle(model, inputs as Inputs, athlete)
  yield
  return yield* askInTurn(model, inputs as Inputs, athlete)
}

/** The loads of rungs for one body, in their order. */
export function* loadsOf(rungs: readonly RungData[], athlete: Athlete): Work<Outcome<Load>[]> {
  const loads: Outcome<Load>[] = []
  for (const rung of rungs) {
    loads.push(yield* loadInTurn(rung, athlete))
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
