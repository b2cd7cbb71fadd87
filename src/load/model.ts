import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import type { Spread } from '../quantity/spread.ts'
import type { Unit } from '../quantity/unit.ts'
import type { Work } from '../quantity/work.ts'
import type { SourceKey } from './sources.ts'

/** A measurement a model asks for, and the closed span in which it may be asked. */
export type NumberKey = {
  readonly unit: Unit
  readonly min: number
  readonly max: number
  readonly says: string
  readonly default?: number
  readonly optional?: true
  /** How a coach is told to set it up, `{}` standing for the figure with its unit. */
  readonly instructs?: string
}

/** A choice a model asks for, by name. */
export type ChoiceKey = { readonly choices: readonly string[]; readonly says: string; readonly default?: string; readonly optional?: true }

/** Words a model asks for: the condition under which something was measured. */
export type WordsKey = { readonly words: true; readonly says: string; readonly optional?: true }

/** A list of numbers, or of pairs of them: measured points, plates at hand. */
export type ListKey = { readonly list: 'numbers' | 'pairs'; readonly units: readonly Unit[]; readonly min: number; readonly max: number; readonly most: number; readonly says: string; readonly optional?: true }

/** One thing a model asks for. */
export type Key = NumberKey | ChoiceKey | WordsKey | ListKey
/** Everything a model asks for, by name. */
export type Keys = Readonly<Record<string, Key>>

type ValueOf<K extends Key> = K extends ChoiceKey ? K['choices'][number] : K extends WordsKey ? string : K extends { readonly list: 'pairs' } ? Pairs : K extends ListKey ? readonly number[] : number
/** Pairs of numbers, each with a unit of its own. */
export type Pairs = readonly (readonly [number, number])[]

type MayBeAbsent<K extends Key> = K extends { readonly optional: true } ? undefined : never

/** What `compute` receives: every key of the model, defaults filled in. */
export type Asked<K extends Keys> = { readonly [name in keyof K]: ValueOf<K[name]> | MayBeAbsent<K[name]> }

/** What a coach wrote under one key. */
export type Input = number | string | readonly number[] | Pairs | undefined
/** What a coach wrote under `load`, less the model's name. */
export type Inputs = Readonly<Record<string, Input>>

/** A point in the plane of the movement: metres, x level, y up, feet at the origin. */
export type Point = { readonly x: number; readonly y: number }

/** A joint, or an end of the body, that a figure is drawn by. */
export type Joint = 'toe' | 'ball' | 'heel' | 'ankle' | 'knee' | 'hip' | 'shoulder' | 'elbow' | 'wrist' | 'hand' | 'head'

/** Where the joints are that a pose knows. */
export type Joints = Readonly<Partial<Record<Joint, Point>>>

/** One still of a movement: the joints of the reference man as the statics used them, with the mean of the forces on him and on the reference woman. */
export type Pose = {
  readonly name: 'start' | 'end' | 'hold' | 'lowest' | 'touch-down'
  readonly joints: Joints
  /** The other leg, where it is not beside the working one. */
  readonly other_leg?: Joints
  /** The other arm, where it is not beside the working one. */
  readonly other_arm?: Joints
  readonly props: readonly Prop[]
  readonly forces: readonly { readonly on: Support; readonly at: Point; readonly per_weight: Point }[]
  /** A body that lies on its side and rests on one arm, and what its upper leg does. It is seen from the front. */
  readonly lies?: { readonly on: 'the side'; readonly top_leg: 'stacked' | 'ahead' | 'lifted' }
  /** A body that stands: the angle of its working knee, the lean of its trunk, what of the drawing was chosen and not computed, and how it holds a bar. */
  readonly standing?: { readonly knee_deg: number; readonly trunk_deg: number; readonly chosen?: string; readonly force_is?: 'mean'; readonly holds?: string }
}

/** What a body rests on, and what hangs on it. */
export type Support = 'hands' | 'forearms' | 'feet' | 'knees' | 'shoulders' | 'rear foot' | 'weight' | 'belt' | 'band'

/** A thing drawn around the body, to the same scale. A seat is a box the hips touch, a drop the edge the feet fall from, a flight how high they were. */
export type Prop =
  | { readonly kind: 'ground'; readonly y: number; readonly slope_deg?: number }
  | { readonly kind: 'surface' | 'bar' | 'seat' | 'mat' | 'block' | 'drop' | 'flight' | 'rear surface' | 'high bar' | 'rails'; readonly at: Point }
  | { readonly kind: 'strap' | 'band'; readonly from: Point; readonly to: Point }
  | { readonly kind: 'mass'; readonly at: Point; readonly radius_m: number }

/** A named result beside the load: its name is a phrase a page can print before the number. */
export type Figure = { readonly name: string; readonly value: Outcome<Spread>; readonly unit: Unit }

/** One line of the working: the equation in symbols, and the same with the numbers in. */
export type Line = { readonly says: string; readonly formula: string; readonly numbers: string }

/** What a model gives for one rung. */
export type Load = {
  /** What the load is a measure of. Only loads of one quantity are compared. */
  readonly quantity: { readonly name: string; readonly unit: Unit; readonly repeats: boolean }
  /** The load on one working limb, at the point of the rep that the model says. */
  readonly load: Spread
  readonly figures: readonly Figure[]
  /** The stills the numbers were computed from. Where they need none, `drawn.ts` makes a picture for them. */
  readonly poses: readonly Pose[]
  readonly working: readonly Line[]
  readonly assumes: readonly string[]
  readonly cautions: readonly string[]
}

/** The poses of a rung, or why it has none; and what their drawing assumes. */
export type Picture = { readonly poses: Outcome<readonly Pose[]>; readonly assumes: string }

/** The body a load is computed for. Shares of body weight need only the stature; a band pulls in newtons, and needs the mass. */
export type Athlete = { readonly stature_m: number; readonly mass_kg: number }

/** One published way of turning measurements into a load. */
export type LoadModel<K extends Keys = Keys> = {
  readonly name: string
  readonly says: string
  readonly keys: K
  /** The measurements it may be solved for, in the order a coach would move them. */
  readonly solves: readonly (keyof K & string)[]
  readonly cites: readonly { readonly source: SourceKey; readonly at: string }[]
  compute(inputs: Asked<K>, athlete: Athlete): Outcome<Load>
  /** The same, left off after each body tried: for a page that must not keep a finger waiting. */
  readonly inTurn?: (inputs: Asked<K>, athlete: Athlete) => Work<Outcome<Load>>
  /** Only the middle of the load, where that is quicker to have than everything `compute` gives. The same number, or one where some other body has none. */
  readonly middle?: (inputs: Asked<K>, athlete: Athlete) => Outcome
  /** Only whether `compute` gives a load, where that is quicker to know. */
  readonly answers?: (inputs: Asked<K>, athlete: Athlete) => boolean
}

/** Keeps the exact type of the keys, so that `compute` is checked against them. */
export const loadModel = <const K extends Keys>(model: LoadModel<K>): LoadModel<K> => model

/** True of a key that holds one measurement. */
export const isNumberKey = (key: Key): key is NumberKey => 'unit' in key
/** True of a key that holds a list of measurements. */
export const isListKey = (key: Key): key is ListKey => 'list' in key
/** True of a key that holds one of a few names. */
export const isChoiceKey = (key: Key): key is ChoiceKey => 'choices' in key

/** Why this value cannot be asked of this key, if it cannot. */
function refusal(model: string, name: string, key: Key, value: Input): string | undefined {
  if (value === undefined) return 'optional' in key ? undefined : `${name} is not given; ${model} needs it`
  if (isNumberKey(key)) {
    const within = typeof value === 'number' && value >= key.min && value <= key.max
    return within ? undefined : `${name} is ${value}; ${model} holds from ${key.min} to ${key.max} ${key.unit}`
  }
  if (isListKey(key)) {
    if (key.list === 'pairs' && !(Array.isArray(value) && value.every((pair) => Array.isArray(pair) && pair.length === 2))) return `${name} must hold pairs of numbers`
    const within = Array.isArray(value) && value.length > 0 && value.length <= key.most && value.flat().every((entry) => typeof entry === 'number' && entry >= key.min && entry <= key.max)
    return within ? undefined : `${name} must hold 1 to ${key.most} ${key.list} from ${key.min} to ${key.max}`
  }
  if (isChoiceKey(key)) return key.choices.includes(String(value)) ? undefined : `${name} is ${value}; ${model} knows ${key.choices.join(', ')}`
  return undefined
}

/**
 * Asks `model`, unless an input is absent or lies outside its span. Never throws on a coach's numbers.
 *
 * Missing with the key, its value and the span, or with the model's own reason.
 * Throws  bug, when a model gives a number that is not finite.
 */
export function ask<K extends Keys>(model: LoadModel<K>, inputs: Inputs, athlete: Athlete): Outcome<Load> {
  const filled = filledIn(model, inputs)
  return isMissing(filled) ? filled : finite(model, inputs, model.compute(filled, athlete))
}

/** The same, left off where the model can be. */
export function* askInTurn<K extends Keys>(model: LoadModel<K>, inputs: Inputs, athlete: Athlete): Work<Outcome<Load>> {
  if (!model.inTurn) return ask(model, inputs, athlete)
  const filled = filledIn(model, inputs)
  return isMissing(filled) ? filled : finite(model, inputs, yield* model.inTurn(filled, athlete))
}

function finite<K extends Keys>({ name }: LoadModel<K>, inputs: Inputs, load: Outcome<Load>): Outcome<Load> {
  if (isMissing(load) || [load.load, ...load.figures.map(({ value }) => value)].every(isFiniteOrMissing)) return load
  throw new Error(`bug: ${name} gave a number that is not finite for ${JSON.stringify(inputs)}`)
}

/** Asks only for the middle of the load: what solving backwards needs, many times over. */
export function askMiddle<K extends Keys>(model: LoadModel<K>, inputs: Inputs, athlete: Athlete): Outcome {
  const filled = filledIn(model, inputs)
  if (isMissing(filled)) return filled
  if (model.middle) return model.middle(filled, athlete)
  const load = model.compute(filled, athlete)
  return isMissing(load) ? load : load.load.mid
}

/** Whether `ask` would give a load. */
export function canAnswer<K extends Keys>(model: LoadModel<K>, inputs: Inputs, athlete: Athlete): boolean {
  const filled = filledIn(model, inputs)
  if (isMissing(filled)) return false
  return model.answers ? model.answers(filled, athlete) : !isMissing(model.compute(filled, athlete))
}

/** The inputs with defaults filled in, or why the model may not be asked them. */
export function filledIn<K extends Keys>(model: LoadModel<K>, inputs: Inputs): Outcome<Asked<K>> {
  const filled: Record<string, Input> = {}
  for (const [name, key] of Object.entries<Key>(model.keys)) {
    const value = inputs[name] ?? ('default' in key ? key.default : undefined)
    const why = refusal(model.name, name, key, value)
    if (why) return missing(why)
    filled[name] = value
  }
  return filled as Asked<K> // every key was checked against its own span above
}

const isFiniteOrMissing = (value: Outcome<Spread>): boolean => isMissing(value) || (Number.isFinite(value.mid) && value.points.every(Number.isFinite))
