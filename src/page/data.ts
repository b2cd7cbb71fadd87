import { z } from 'zod'
import { isMissing, type Outcome } from '../quantity/outcome.ts'
import { interval } from '../quantity/spread.ts'
import { sources } from '../load/sources.ts'
import type { MeasuredCurriculum, MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import type { Step } from '../measure/step.ts'
import { ladderAddress, rungAddress } from './address.ts'

const missing = z.strictObject({ missing: z.string() })
const orReason = <Value extends z.ZodType>(value: Value) => z.union([value, missing])
const ends = z.strictObject({ low: z.number(), mid: z.number(), high: z.number() })
const reps = z.union([z.number(), z.literal('beyond')])

const entry = z.strictObject({
  sets: z.number(),
  amount: z.strictObject({ unit: z.enum(['reps', 'seconds', 'metres']), value: z.number() }).optional(),
  sessions: z.number(),
  reserve_reps: z.number(),
})

const step = z.strictObject({
  from: z.string(),
  entry,
  times: orReason(ends),
  kind: orReason(z.string()),
  predicted: orReason(z.strictObject({ low: reps, high: reps, formulas: z.array(z.string()) })),
  computed_entry: orReason(z.number()),
  block: orReason(z.strictObject({ sessions: z.tuple([z.number(), z.number()]), weeks: z.tuple([z.number(), z.number()]) })),
})

const rung = z.strictObject({
  id: z.string(),
  title: z.string(),
  address: z.string(),
  demand: z.array(z.string()),
  supervision: z.string(),
  /** What its load is computed from: a page's scripts ask the same model the same thing for another body. */
  model: z.string(),
  inputs: z.record(z.string(), z.unknown()),
  load: orReason(z.strictObject({ quantity: z.string(), unit: z.string(), repeats: z.boolean(), value: ends })),
  figures: z.array(z.strictObject({ name: z.string(), unit: z.string(), value: orReason(ends) })),
  steps: z.array(step),
  form: z.array(z.string()),
  cautions: z.array(z.string()),
})

/** What `data/ladders/ID.json` holds. The version rises when a reader would have to change. */
export const ladderDataSchema = z.strictObject({
  version: z.literal(1),
  edition: z.string(),
  id: z.string(),
  title: z.string(),
  address: z.string(),
  movement: z.string(),
  aim: z.string(),
  equipment: z.array(z.string()),
  standard: entry,
  first_reps: z.number().optional(),
  sessions_per_week: z.number(),
  form: z.array(z.string()),
  stop: z.array(z.string()),
  ask_first: z.array(z.string()),
  retired: z.array(z.strictObject({ id: z.string(), heir: z.string() })),
  rungs: z.array(rung),
})

/** What `data/index.json` holds. */
export const indexDataSchema = z.strictObject({
  version: z.literal(1),
  title: z.string(),
  organisation: z.string(),
  edition: z.string(),
  ladders: z.array(z.strictObject({ id: z.string(), title: z.string(), movement: z.string(), data: z.string() })),
  sources: z.record(z.string(), z.strictObject({ cite: z.string(), doi: z.string().optional(), seen: z.string() })),
})

export type LadderData = z.infer<typeof ladderDataSchema>
export type IndexData = z.infer<typeof indexDataSchema>

const settled = <Value, To>(outcome: Outcome<Value>, to: (value: Value) => To): To | { missing: string } => (isMissing(outcome) ? { missing: outcome.missing } : to(outcome))

const stepData = ({ from, entry: full, times, kind, predicted, computed_entry, block }: Step): LadderData['rungs'][number]['steps'][number] => ({
  from,
  entry: entryData(full),
  times: settled(times, interval),
  kind: settled(kind, (value) => value),
  predicted: settled(predicted, ({ low, high, formulas }) => ({ low, high, formulas: [...formulas] })),
  computed_entry: settled(computed_entry, (value) => value),
  block: settled(block, ({ sessions, weeks }) => ({ sessions: [sessions[0], sessions[1]], weeks: [weeks[0], weeks[1]] })),
})

const entryData = ({ sets, amount, sessions, reserve_reps }: Step['entry']): LadderData['standard'] => ({ sets, ...(amount ? { amount: { ...amount } } : {}), sessions, reserve_reps })

function rungData(each: MeasuredRung, ladder: MeasuredLadder): LadderData['rungs'][number] {
  const { outcome } = each
  return {
    id: each.id,
    title: each.title,
    address: rungAddress(ladder.id, each.id),
    demand: [...each.demand],
    supervision: each.supervision ?? ladder.supervision,
    model: each.model.name,
    inputs: { ...each.inputs },
    load: settled(outcome, ({ quantity, load }) => ({ quantity: quantity.name, unit: quantity.unit, repeats: quantity.repeats, value: interval(load) })),
    figures: isMissing(outcome) ? [] : outcome.figures.map(({ name, unit, value }) => ({ name, unit, value: settled(value, interval) })),
    steps: each.steps.map(stepData),
    form: [...ladder.form, ...each.form],
    cautions: [...each.cautions],
  }
}

/** One ladder as data: everything that was computed, and what it was computed from. */
export function ladderData(ladder: MeasuredLadder, edition: string): LadderData {
  const { id, title, movement, aim, equipment, first_reps, sessions_per_week, form, stop, ask_first, retired = [], rungs } = ladder
  const [first] = rungs
  if (!first) throw new Error('bug: a ladder without rungs')
  return {
    version: 1,
    edition,
    id,
    title,
    address: ladderAddress(id),
    movement,
    aim,
    equipment: [...equipment],
    standard: entryData(first.standard),
    ...(first_reps === undefined ? {} : { first_reps }),
    sessions_per_week,
    form: [...form],
    stop: [...stop],
    ask_first: [...ask_first],
    retired: retired.map(({ id: old, heir }) => ({ id: old, heir })),
    rungs: rungs.map((each) => rungData(each, ladder)),
  }
}

/** A file of data: its name below the handbook, and its text. */
export type DataFile = { readonly name: string; readonly bytes: string }

const json = (value: unknown): string => `${JSON.stringify(value, null, 1)}\n`

/** One ladder's file of data. */
export const ladderDataFile = (ladder: MeasuredLadder, edition: string): DataFile => ({ name: `data/ladders/${ladder.id}.json`, bytes: json(ladderData(ladder, edition)) })

/** Every ladder, rung, number and source as JSON, with the schemas they keep to. */
export const dataFiles = (curriculum: MeasuredCurriculum): DataFile[] => [...curriculum.ladders.map((ladder) => ladderDataFile(ladder, curriculum.handbook.edition)), ...commonDataFiles(curriculum)]

/** The same without the ladders' own files. */
export function commonDataFiles({ handbook, ladders }: MeasuredCurriculum): DataFile[] {
  const index: IndexData = {
    version: 1,
    title: handbook.title,
    organisation: handbook.organisation,
    edition: handbook.edition,
    ladders: ladders.map(({ id, title, movement }) => ({ id, title, movement, data: `data/ladders/${id}.json` })),
    sources,
  }
  return [
    { name: 'data/index.json', bytes: json(index) },
    { name: 'data/index.schema.json', bytes: json(z.toJSONSchema(indexDataSchema, { target: 'draft-7' })) },
    { name: 'data/ladder.schema.json', bytes: json(z.toJSONSchema(ladderDataSchema, { target: 'draft-7' })) },
  ]
}
