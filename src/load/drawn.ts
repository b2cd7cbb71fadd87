/** Loads with their pictures, for whoever shows them. The numbers know nothing of this, so a page that only computes stays small. */
import { once } from '../quantity/once.ts'
import { isMissing, orNone, type Outcome } from '../quantity/outcome.ts'
import { hangDrawn } from './hang-drawn.ts'
import { landingDrawn } from './landing-drawn.ts'
import { legsDrawn } from './leg-press-pose.ts'
import { liftDrawn } from './lift-drawn.ts'
import { ask, filledIn, type Athlete, type Inputs, type Keys, type Load, type LoadModel, type Picture } from './model.ts'

/** What draws the rungs of a model whose numbers need no pose, by the model's name. */
const pictures: Readonly<Record<string, (input: never, load: Load, athlete: Athlete) => Picture | undefined>> = {
  'leg-press-of-body': legsDrawn,
  'one-rep-max': liftDrawn,
  assisted: hangDrawn,
  landing: landingDrawn,
}

/** A load as `ask` gives it, with the picture of its rung, made when somebody first looks: it costs more than the numbers. */
export function askDrawn<K extends Keys>(model: LoadModel<K>, inputs: Inputs, athlete: Athlete): Outcome<Load> {
  const load = ask(model, inputs, athlete)
  const draw = pictures[model.name]
  if (isMissing(load) || !draw) return load
  const picture = once(() => draw(filledIn(model, inputs) as never, load, athlete)) // what the model of that name was asked
  return {
    ...load,
    get poses() {
      return orNone(picture()?.poses ?? [])
    },
    get assumes() {
      return [...load.assumes, ...says(picture())]
    },
  }
}

const says = (picture: Picture | undefined): string[] => (picture === undefined ? [] : [isMissing(picture.poses) ? `No picture: ${picture.poses.missing}.` : picture.assumes])
