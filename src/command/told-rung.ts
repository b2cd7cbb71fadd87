import { figureText, intervalText } from '../quantity/figure.ts'
import { isMissing } from '../quantity/outcome.ts'
import { interval } from '../quantity/spread.ts'
import { models, modelNamed } from '../load/index.ts'
import type { Inputs, Key, LoadModel } from '../load/model.ts'
import { ladderSchema } from '../ladder/schema.ts'
import { measureLadder, type MeasuredRung } from '../measure/measure.ts'
import { repsText } from '../measure/predict.ts'
import { nearest } from '../read/nearest.ts'
import { fitted } from '../read/plain-words.ts'
import { readLadderFile } from '../read/read-ladder.ts'
import { readYaml } from '../read/yaml.ts'
import { ladderText, type Told, type ToldRung } from './ladder-text.ts'

/** What stands under `load`. */
export type SetUp = ToldRung['load']

/** A set-up as it was typed, "hand_height_cm: 45, feet: knees", laid over that of the rung below; or why it cannot be one. */
export function setUpOf(typed: string, below: SetUp | undefined): { readonly value: Partial<SetUp> } | { readonly wrong: string } {
  const { value, findings } = readYaml('answer', `{ ${typed.replace(/^[a-z-]+(?= *(?:,|$))/, 'model: $&')} }`, 1) // a model's name alone will do
  if (!value) return { wrong: findings[0]?.message ?? 'This cannot be read.' }
  const given = value.value as Inputs
  const { model } = given
  const names: readonly string[] = models.map(({ name }) => name)
  if (model !== undefined && !names.includes(String(model))) return { wrong: `There is no model "${String(model)}". ${didYouMean(nearest(String(model), names), names)}` }
  if (model === undefined && below === undefined) return { wrong: `Begin with what its load is computed by: ${names.join(', ')}.` }
  const kept = below !== undefined && (model === undefined || model === below.model) ? below : {}
  const all = { ...kept, ...given } as Partial<SetUp>
  const known = Object.keys(modelNamed(all.model ?? '')?.keys ?? {})
  const stranger = all.model === undefined ? undefined : Object.keys(all).find((key) => key !== 'model' && !known.includes(key))
  if (stranger !== undefined) return { wrong: `${String(all.model)} has no "${stranger}". ${didYouMean(nearest(stranger, known), known)}` }
  return { value: all }
}

const didYouMean = (like: string | undefined, known: readonly string[]): string => (like ? `Did you mean ${like}?` : `There are: ${known.join(', ')}.`)

/** What the model asks and was not told, in the model's own order. */
export const lacking = (model: LoadModel, setUp: Partial<SetUp>): readonly (readonly [name: string, key: Key])[] =>
  Object.entries<Key>(model.keys).filter(([name, key]) => setUp[name] === undefined && !('default' in key) && !('optional' in key))

/** Why a rung cannot be written as it is, in the words in which `check` would say it. */
export function unfitRung(rung: ToldRung): string | undefined {
  const { id, title, load } = rung
  return fitted(ladderSchema.shape.rungs.element, { id, title, load }, () => new Map([['', { file: 'answer', line: 1, column: 1 }]])).findings[0]?.message
}

/** The ladder as far as it is told, measured: the last of its rungs. */
export function measuredLast(told: Told): MeasuredRung {
  const { value, findings } = readLadderFile(`ladders/${told.id}.md`, new TextEncoder().encode(ladderText(told)), '')
  if (value?.kind !== 'ladder') throw new Error(`bug: what was told is no ladder: ${findings[0]?.message}`)
  const last = measureLadder(value.ladder, { rungs: new Set(), pages: new Set() }).rungs.at(-1)
  if (!last) throw new Error('bug: a ladder without rungs was measured')
  return last
}

/** What a coach is told of a rung as soon as it is entered: its load, the step to it, and a warning where that is no step to take. */
export function rungSays({ outcome, steps: [step] }: MeasuredRung): string[] {
  if (isMissing(outcome)) return [`not computed: ${outcome.missing}`]
  const { unit } = outcome.quantity
  const load = `${figureText(outcome.load.mid, unit)} (${intervalText(interval(outcome.load), unit)} from body to body)`
  if (!step) return [load]
  const times = isMissing(step.times) ? [] : [`${figureText(step.times.mid, 'ratio')} times the rung below`]
  const first = isMissing(step.predicted) ? [] : [`${repsText(step.predicted)} repetitions to expect at first`]
  return [[load, ...times, ...first].join('; '), ...warning(step)]
}

type Step = MeasuredRung['steps'][number]

function warning({ kind, missing_rung }: Step): string[] {
  if (isMissing(kind)) return []
  const between = missing_rung === undefined || isMissing(missing_rung) ? '' : ` Between them lies: ${missing_rung.says}.`
  if (kind === 'too steep') return [`WARNING: this step is too steep.${between}`]
  if (kind === 'uncertain') return [`This step suits some athletes and not others.${between}`]
  if (kind === 'backwards') return ['WARNING: this rung loads less than the one below it. Rungs go from the easiest to the hardest.']
  return []
}
