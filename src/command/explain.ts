import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { figureText, intervalText } from '../quantity/figure.ts'
import { isMissing, type Outcome } from '../quantity/outcome.ts'
import { interval, type Spread } from '../quantity/spread.ts'
import { REFERENCE_MASS_KG, REFERENCE_STATURE_M } from '../load/body.ts'
import { sources } from '../load/sources.ts'
import { isNumberKey, type Athlete } from '../load/model.ts'
import { entryText } from '../measure/entry.ts'
import { measureLadder, type MeasuredLadder, type MeasuredRung } from '../measure/measure.ts'
import { repsText } from '../measure/predict.ts'
import type { Step } from '../measure/step.ts'
import { readLadderFile } from '../read/read-ladder.ts'
import { checkedWorkspace, workspaceOption, type Checked } from './curriculum.ts'
import { placementText } from './explain-placement.ts'
import { namedRungs } from './named.ts'
import { FORMATS } from './report.ts'
import { asJson } from './report-json.ts'
import { forTerminal } from './report-text.ts'
import { EXIT, Misuse, type Console, type Typed, type Verb } from './verb.ts'

/** `rungbook explain`: where each number of a ladder comes from. */
export const explainVerb: Verb = {
  name: 'explain',
  says: 'shows where the numbers of a ladder or a rung come from',
  usage: 'rungbook explain LADDER[/RUNG]|FILE.md [--workspace DIR] [--format text|json] [--stature-cm N] [--mass-kg N]\nrungbook explain LADDER/RUNG --reps N [--reserve N]',
  examples: ['rungbook explain press-up', 'rungbook explain press-up/floor --stature-cm 160 --mass-kg 55', 'rungbook explain press-up/floor --reps 12 --reserve 2', 'rungbook explain ladders/press-up.md --format json'],
  choices: { format: ['text', 'json'] },
  options: { ...workspaceOption, format: { type: 'string' }, 'stature-cm': { type: 'string' }, 'mass-kg': { type: 'string' }, reps: { type: 'string' }, reserve: { type: 'string' } },

  async run(typed, console) {
    const { ladder, rungs, checked } = await named(typed, console)
    if (!ladder) {
      if (checked) console.note(FORMATS.text(checked, false))
      return EXIT.findings
    }
    if (typed.options.reps !== undefined) {
      const [rung] = rungs
      if (!rung || rungs.length > 1) throw new Misuse('Name the one rung the set was done on, such as press-up/floor.')
      console.out(placementText(ladder, rung.id, countOf(typed, 'reps', 1, 100), countOf(typed, 'reserve', 0, 10)))
      return EXIT.fine
    }
    if (typed.options.format === 'json') console.out(asJson({ version: 1, ladder: ladder.id, rungs: rungs.map(rungFacts) }))
    else console.out(rungs.map((rung) => explained(rung, ladder)).join('\n'))
    return EXIT.fine
  },
}

/** A ladder file by itself, as `git diff` hands it over: no workspace around it. */
async function fromFile(file: string, folder: string, athlete: Athlete): Promise<{ ladder: MeasuredLadder; rungs: readonly MeasuredRung[] }> {
  const bytes = await readFile(path.resolve(folder, file)).catch(() => undefined)
  if (!bytes) throw new Misuse(`There is no file "${file}".`)
  const { value, findings } = readLadderFile(file, bytes, '')
  if (value?.kind !== 'ladder') throw new Misuse(`"${file}" is no ladder that can be read: ${findings[0]?.message ?? 'it is an amendment.'}`)
  const ladder = measureLadder(value.ladder, { rungs: new Set(), pages: new Set() }, athlete)
  return { ladder, rungs: ladder.rungs }
}

async function named(typed: Typed, console: Console): Promise<{ ladder?: MeasuredLadder; rungs: readonly MeasuredRung[]; checked?: Checked }> {
  const span = (option: string, unless: number, from: number, to: number): number => {
    const value = Number(typed.options[option] ?? unless)
    if (!(value >= from && value <= to)) throw new Misuse(`--${option} must be a number from ${from} to ${to}.`)
    return value
  }
  const athlete = { stature_m: span('stature-cm', REFERENCE_STATURE_M * 100, 100, 230) / 100, mass_kg: span('mass-kg', REFERENCE_MASS_KG, 20, 300) }
  const [file] = typed.rest
  if (file !== undefined && /[.]md$|^[./]/.test(file)) return fromFile(file, console.folder, athlete)
  const checked = await checkedWorkspace(typed, console, athlete)
  return checked.measured ? { ...namedRungs(checked.measured, typed.rest, 'ladder or rung'), checked } : { rungs: [], checked }
}

/** A whole number from an option; nothing typed is the least. */
function countOf({ options }: Typed, option: string, from: number, to: number): number {
  const value = Number(options[option] ?? from)
  if (!Number.isInteger(value) || value < from || value > to) throw new Misuse(`--${option} must be a whole number from ${from} to ${to}.`)
  return value
}

const orReason = <Value>(outcome: Outcome<Value>, text: (value: Value) => string): string => (isMissing(outcome) ? `not computed: ${outcome.missing}` : text(outcome))

/** The derivation of one rung, as a person would write it down. */
function explained(rung: MeasuredRung, ladder: MeasuredLadder): string {
  const lines = [forTerminal(`${ladder.title}: ${rung.title}  (${ladder.id}/${rung.id})`), '', `  model     ${rung.model.name}: ${rung.model.says}`, ...inputLines(rung)]
  const { outcome } = rung
  if (isMissing(outcome)) lines.push(`  load      not computed: ${outcome.missing}`)
  else {
    const { unit, name } = outcome.quantity
    const spread = (value: Spread, of = unit) => `${figureText(value.mid, of)}, from ${intervalText(interval(value), of)}`
    lines.push(`  load      ${name}: ${spread(outcome.load)}`)
    for (const { says, formula, numbers } of outcome.working) lines.push(`            ${says}`, `              ${formula}`, `              ${numbers}`)
    for (const { name: what, value, unit: of } of outcome.figures) lines.push(`  beside    ${what}: ${orReason(value, (figure) => spread(figure, of))}`)
    for (const assumption of outcome.assumes) lines.push(`  assumes   ${assumption}`)
  }
  for (const { source, at } of rung.model.cites) lines.push(`  source    ${sources[source].cite}; ${at} (${sources[source].seen})`)
  for (const step of rung.steps) lines.push(...stepLines(step, ladder))
  return `${lines.join('\n')}\n`
}

/** Every key of the model with its value, its unit, and whether the coach gave it. */
function inputLines({ model, load }: MeasuredRung): string[] {
  const given: Readonly<Record<string, unknown>> = load
  return Object.entries(model.keys).flatMap(([name, key]) => {
    const value = given[name] ?? ('default' in key ? key.default : undefined)
    if (value === undefined) return []
    const unit = isNumberKey(key) ? ` ${key.unit}` : ''
    return [`  input     ${name} = ${String(value)}${unit}${given[name] === undefined ? ' (unless given)' : ''}`]
  })
}

function stepLines(step: Step, ladder: MeasuredLadder): string[] {
  return [
    `  step      from ${step.from}: ${orReason(step.kind, (kind) => kind)}`,
    `    entry     ${entryText(step.entry)}`,
    `    heavier   ${orReason(step.times, (times) => `${times.mid.toFixed(2)} times, ${interval(times).low.toFixed(2)} to ${interval(times).high.toFixed(2)} over the bodies tried`)}`,
    `    predicted first reps  ${orReason(step.predicted, (predicted) => `${repsText(predicted)} by ${predicted.formulas.join(', ')}`)}`,
    `    computed entry        ${orReason(step.computed_entry, (reps) => `${figureText(reps, 'reps')} leave at least ${ladder.first_reps}`)}`,
    ...(step.missing_rung ? [`    the rung that is missing  ${orReason(step.missing_rung, ({ says, load }) => `${says}, for a load of ${load.toFixed(1)}`)}`] : []),
    `    block                 ${orReason(step.block, ({ sessions, weeks }) => `${intervalText({ low: sessions[0], high: sessions[1] }, 'sessions')}, ${intervalText({ low: weeks[0], high: weeks[1] }, 'weeks')}`)}`,
  ]
}

/** The same, as values. Points of a spread are left out: the interval says what they span. */
function rungFacts(rung: MeasuredRung): unknown {
  const outcome = isMissing(rung.outcome)
    ? rung.outcome
    : {
        quantity: rung.outcome.quantity,
        load: interval(rung.outcome.load),
        figures: rung.outcome.figures.map(({ name, value, unit }) => ({ name, unit, value: isMissing(value) ? value : interval(value) })),
        working: rung.outcome.working,
        assumes: rung.outcome.assumes,
      }
  return {
    id: rung.id,
    title: rung.title,
    model: rung.model.name,
    inputs: rung.load,
    outcome,
    sources: rung.model.cites.map(({ source, at }) => ({ ...sources[source], at })),
    steps: rung.steps.map((step) => ({ ...step, times: isMissing(step.times) ? step.times : interval(step.times) })),
  }
}
