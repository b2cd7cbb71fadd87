import { inEnglish } from '../page/html.ts'
import { figureText, intervalText } from '../quantity/figure.ts'
import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { interval } from '../quantity/spread.ts'
import { askDrawn } from '../load/drawn.ts'
import { modelNamed } from '../load/index.ts'
import { isNumberKey, type Inputs, type Load, type NumberKey } from '../load/model.ts'
import type { FullEntry } from '../measure/entry.ts'
import { repsText } from '../measure/predict.ts'
import { stepOf, type Step } from '../measure/step.ts'
import type { Demand } from '../ladder/schema.ts'
import { poseFigures, poseInWords } from '../page/pose-figure.ts'
import { kindText } from '../page/figures.ts'
import type { LadderData } from '../page/data.ts'
import { ENGLISH } from '../page/tongue.ts'
import { PREVIEW_POLICY } from '../page/trusted.ts'
import { spoken } from '../page/written.ts'
import { athleteOf } from './body.ts'
import { element } from './element.ts'
import { ladderDataAt } from './ladder-data.ts'
import { loadFor, type RungData } from './own-loads.ts'
import { vouching } from './trusted.ts'

const AVERAGE = athleteOf(undefined)

/** The figures come as text from the handbook's own code, in which every word is escaped. */
const figures = vouching(PREVIEW_POLICY, { createHTML: (drawn) => drawn })

/** The author's panel of a preview: sliders for what a rung declares, and what comes of it: load, steps, figure, derivation, and the line to paste. */
export function startAuthorPanel(document: Document, path: string): void {
  const id = document.body.dataset.ladder
  if (id === undefined) return
  const parts = path.split('/').filter((part) => part !== '')
  const wanted = parts.at(-1) === id ? undefined : parts.at(-1)
  void ladderDataAt(`/data/ladders/${id}.json`).then((ladder) => {
    if (!isMissing(ladder)) show(document, ladder, wanted)
  })
}

function show(document: Document, ladder: LadderData, wanted: string | undefined): void {
  const choice = element('select', '', ...ladder.rungs.map((rung) => new Option(rung.title, rung.id, false, rung.id === (wanted ?? ladder.aim))))
  const room = element('div', '')
  const fold = element('details', '', element('summary', '', 'For the author'), element('label', '', 'Rung ', choice), room)
  fold.open = sessionStorage.getItem(OPEN) === 'yes'
  fold.addEventListener('toggle', () => sessionStorage.setItem(OPEN, fold.open ? 'yes' : 'no'))
  const panel = element('aside', '', fold)
  panel.id = 'preview-author'
  panel.setAttribute('aria-label', 'For the author')
  const choose = (): void => {
    const rung = ladder.rungs.find((each) => each.id === choice.value)
    if (rung) room.replaceChildren(...rungPanel(ladder, rung))
  }
  choice.addEventListener('change', choose)
  choose()
  document.body.append(panel)
}

const OPEN = 'rungbook-author-open'

/** A tenth for what is small, whole numbers for the rest: as a coach would type it. */
const stepFor = ({ max, min }: NumberKey): number => (max - min <= 10 ? 0.1 : max - min <= 100 ? 0.5 : 1)

/** The load of a rung with its picture. */
function drawnFor({ model: name, inputs }: RungData): Outcome<Load> {
  const model = modelNamed(name)
  return model ? askDrawn(model, inputs as Inputs, AVERAGE) : missing(`no load model is named ${name}`) // the model refuses what is no input
}

/** The set-up with its sliders, and everything that follows from it, made again at each move. */
function rungPanel(ladder: LadderData, rung: RungData): HTMLElement[] {
  const model = modelNamed(rung.model)
  const result = element('div', 'result')
  result.setAttribute('aria-live', 'polite')
  if (!model) return [result]
  const inputs: Record<string, unknown> = { ...rung.inputs }
  const refresh = (): void => result.replaceChildren(...resultOf(ladder, { ...rung, inputs }))
  const sliders = Object.entries(model.keys).flatMap(([name, key]) => {
    const given = inputs[name]
    if (!isNumberKey(key) || typeof given !== 'number') return []
    return [slider(name, key, given, (value) => ((inputs[name] = value), refresh()))]
  })
  refresh()
  return [...(sliders.length > 0 ? sliders : [element('p', '', 'This rung declares no measurement that could be moved.')]), result]
}

function slider(name: string, key: NumberKey, given: number, moved: (value: number) => void): HTMLElement {
  const shown = element('output', '', figureText(given, key.unit))
  const input = element('input', '')
  Object.assign(input, { type: 'range', min: String(key.min), max: String(key.max), step: String(stepFor(key)), value: String(given) })
  input.addEventListener('input', () => {
    shown.textContent = `${input.value} ${key.unit}`
    moved(Number(input.value))
  })
  return element('label', 'slider', element('span', '', name), input, shown)
}

function resultOf(ladder: LadderData, rung: RungData): HTMLElement[] {
  const load = drawnFor(rung)
  const line = element('input', '')
  Object.assign(line, { readOnly: true, value: `load: ${flow({ model: rung.model, ...rung.inputs })}` })
  line.addEventListener('focus', () => line.select())
  const paste = element('label', 'paste', element('span', '', 'To paste'), line)
  if (isMissing(load)) return [element('p', 'no-figure', `not computed: ${load.missing}`), ...stepLines(ladder, rung), paste]
  const unit = load.quantity.unit
  const { low, high } = interval(load.load)
  const span = low === high ? '' : ` (${intervalText({ low, high }, unit)})`
  return [element('p', 'load', `${load.quantity.name}: ${figureText(load.load.mid, unit)}${span}`), ...stepLines(ladder, rung), paste, ...figureOf(load, ladder, rung), derivation(load)]
}

/** The steps into the rung and out of it, as they would be with what the sliders say. */
function stepLines(ladder: LadderData, rung: RungData): HTMLElement[] {
  const rungs = new Map(ladder.rungs.map((each) => [each.id, each.id === rung.id ? rung : each]))
  const steps = [...rungs.values()].flatMap((to) => to.steps.filter(({ from }) => to.id === rung.id || from === rung.id).flatMap((step) => stepBetween(ladder, rungs.get(step.from), to, step.entry) ?? []))
  return steps.map((step) => {
    const [from, to] = [rungs.get(step.from)?.title ?? step.from, rungs.get(step.to)?.title ?? step.to]
    const reps = isMissing(step.predicted) ? '' : `, ${repsText(step.predicted)} first reps`
    return element('p', step.kind === 'too steep' ? 'step steep' : 'step', `${from} to ${to}: ${spoken(kindText(step.kind), ENGLISH)}${reps}`)
  })
}

function stepBetween(ladder: LadderData, from: RungData | undefined, to: RungData, entry: RungData['steps'][number]['entry']): Step | undefined {
  const [below, above] = [from && loadOf(from), loadOf(to)]
  if (!below || !above) return undefined
  return stepOf({ from: below, to: { ...above, demand: to.demand as readonly Demand[] }, athlete: AVERAGE, entry: full(entry), standard: full(ladder.standard), first_reps: ladder.first_reps, sessions_per_week: ladder.sessions_per_week })
}

const full = ({ amount, ...entry }: LadderData['standard']): FullEntry => ({ ...entry, amount })

function loadOf(rung: RungData): { id: string; model: NonNullable<ReturnType<typeof modelNamed>>; inputs: Inputs; outcome: Outcome<Load> } | undefined {
  const model = modelNamed(rung.model)
  return model && { id: rung.id, model, inputs: rung.inputs as Inputs, outcome: loadFor(rung, AVERAGE) } // the model refuses what is no input
}

/** The figure, made by the very code that draws it in the handbook. */
function figureOf({ poses }: Load, ladder: LadderData, rung: RungData): HTMLElement[] {
  if (poses.length === 0) return []
  const drawn = new DOMParser().parseFromString(figures.createHTML(inEnglish(poseFigures(poses, ladder.title, rung.title))), 'text/html')
  const shown = element('div', 'figures', ...drawn.body.childNodes)
  shown.setAttribute('aria-label', poses.map(poseInWords).join(' '))
  return [shown]
}

function derivation({ working, assumes }: Load): HTMLElement {
  const lines = working.map(({ says, formula, numbers }) => element('li', '', says, element('br', ''), element('code', '', formula), element('br', ''), element('code', '', numbers)))
  return element('details', 'derivation', element('summary', '', 'How the number comes about'), element('ol', '', ...lines), element('ul', '', ...assumes.map((each) => element('li', '', each))))
}

/** A value as it may stand in front matter. */
function flow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flow).join(', ')}]`
  if (typeof value === 'object' && value !== null) return `{ ${Object.entries(value).flatMap(([key, held]) => (held === undefined ? [] : [`${key}: ${flow(held)}`])).join(', ')} }`
  return typeof value === 'string' && !/^[A-Za-z][A-Za-z0-9 -]*$/.test(value) ? JSON.stringify(value) : String(value)
}
