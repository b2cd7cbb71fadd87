import { isMissing } from '../quantity/outcome.ts'
import { interval } from '../quantity/spread.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import type { StepKind } from '../measure/step.ts'
import { mainStep, STEP_WORDS } from './figures.ts'
import { between, html, raw, say, type Html, type Words } from './html.ts'

/** Width of a rail in its own units. */
const LONG = 1000

/** The heaviest end of any interval of the ladder, for one quantity: the right end of its rails. */
export function heaviest({ rungs }: MeasuredLadder, quantity: string): number {
  return Math.max(...rungs.map(({ outcome }) => (isMissing(outcome) || outcome.quantity.name !== quantity ? 0 : interval(outcome.load).high)), 0)
}

const at = (value: number, end: number): string => (end === 0 ? '0' : ((LONG * value) / end).toFixed(0))

/** A step is never drawn narrower than this, so that its kind is seen. */
const STEP_LEAST = 16

/** The part of the bar that the step adds, drawn by its kind: whole, hollow, hollow and struck through, a double end, or a ghost of the load before. */
function stepMark(kind: StepKind, before: number, mid: number): string {
  const [from, to] = before <= mid ? [Math.min(before, mid - STEP_LEAST), mid] : [mid, Math.max(before, mid + STEP_LEAST)]
  const box = `M${from.toFixed(0)} 6H${to.toFixed(0)}V18H${from.toFixed(0)}Z`
  if (kind === 'comfortable') return `<path class="rail-notch" d="M${from.toFixed(0)} 5V19"/>`
  if (kind === 'level') return `<path class="rail-notch" d="M${(mid - 8).toFixed(0)} 5V19M${(mid - 16).toFixed(0)} 5V19"/>`
  if (kind === 'uncertain') return `<path class="rail-open" d="${box}"/>`
  if (kind === 'backwards') return `<path class="rail-ghost" d="${box}"/>`
  const strokes = Array.from({ length: 3 }, (_, index) => from + ((to - from) * (index + 0.5)) / 3).map((x) => `M${(x - 4).toFixed(0)} 18L${(x + 4).toFixed(0)} 6`)
  return `<path class="rail-open" d="${box}${strokes.join('')}"/>`
}

/** The mark of the step that leads to a rung, where both loads are known and of one kind. */
function markOf(rung: MeasuredRung, { rungs }: MeasuredLadder, end: number): Html | undefined {
  const step = mainStep(rung)
  const before = step && rungs.find(({ id }) => id === step.from)?.outcome
  if (!step || isMissing(step.kind) || !before || isMissing(before) || isMissing(rung.outcome) || before.quantity.name !== rung.outcome.quantity.name || end === 0) return undefined
  return raw(stepMark(step.kind, (LONG * before.load.mid) / end, (LONG * rung.outcome.load.mid) / end))
}

/** What the marks on the rails mean, of the kinds this ladder has, each with its sample. */
export function railKey(ladder: MeasuredLadder): Html {
  const kinds = new Set(ladder.rungs.flatMap((rung) => mainStep(rung)?.kind ?? []).flatMap((kind) => (isMissing(kind) ? [] : [kind])))
  const samples = (Object.keys(STEP_WORDS) as StepKind[]).filter((kind) => kinds.has(kind))
  if (samples.length === 0) return html``
  return html`<ul class="rail-key" aria-hidden="true">${samples.map((kind) => {
    const mid = kind === 'backwards' ? 55 : 90
    const bar = raw(`<svg class="rail" viewBox="0 0 100 24" preserveAspectRatio="none"><rect class="rail-ground" x="0" y="9" width="100" height="6"/><rect class="rail-load" x="0" y="5" width="${mid}" height="14"/>${stepMark(kind, kind === 'backwards' ? 90 : 55, mid)}</svg>`)
    return html`<li>${bar} ${STEP_WORDS[kind]}</li>`
  })}</ul>
`
}

/**
 * A rung's load as length along a rail: the bar ends at the average body, its last part is drawn by the kind of step that leads here,
 * the thin line spans the bodies tried.
 * The same fact stands beside it in words, so it is hidden from readers of words.
 */
export function loadRail(rung: MeasuredRung, ladder: MeasuredLadder): Html {
  const { outcome } = rung
  if (isMissing(outcome)) return html`<svg class="rail" viewBox="0 0 ${LONG} 24" preserveAspectRatio="none" aria-hidden="true"><line class="rail-unknown" x1="0" y1="12" x2="${LONG}" y2="12"/></svg>`
  const end = heaviest(ladder, outcome.quantity.name)
  const { low, mid, high } = interval(outcome.load)
  return html`<svg class="rail" viewBox="0 0 ${LONG} 24" preserveAspectRatio="none" aria-hidden="true"><rect class="rail-ground" x="0" y="9" width="${LONG}" height="6"/><rect class="rail-load" x="0" y="5" width="${at(mid, end)}" height="14"/>${markOf(rung, ladder, end)}<path class="rail-span" d="M${at(low, end)} 2V22M${at(high, end)} 2V22M${at(low, end)} 12H${at(high, end)}"/></svg>`
}

/** All rungs of a ladder on one rail, the aim marked; beside it the words say from where to where. */
export function spanRail(ladder: MeasuredLadder): { readonly rail: Html; readonly words: Words } {
  const known = ladder.rungs.flatMap((rung) => (isMissing(rung.outcome) ? [] : [{ id: rung.id, mid: rung.outcome.load.mid, quantity: rung.outcome.quantity }]))
  const [first] = known
  if (!first) return { rail: html`<svg class="rail" viewBox="0 0 ${LONG} 24" preserveAspectRatio="none" aria-hidden="true"><line class="rail-unknown" x1="0" y1="12" x2="${LONG}" y2="12"/></svg>`, words: 'skill: no load' }
  const alike = known.filter(({ quantity }) => quantity.name === first.quantity.name && quantity.unit === first.quantity.unit)
  const mids = alike.map(({ mid }) => mid)
  const [low, high] = [Math.min(...mids), Math.max(...mids)]
  const marks = alike.map(({ id, mid }) => html`<rect class="${id === ladder.aim ? 'rail-aim' : 'rail-mark'}" x="${(Number(at(mid, high)) * 0.985).toFixed(0)}" y="${id === ladder.aim ? 1 : 6}" width="15" height="${id === ladder.aim ? 22 : 12}"/>`)
  const { unit, name } = first.quantity
  return {
    rail: html`<svg class="rail" viewBox="0 0 ${LONG} 24" preserveAspectRatio="none" aria-hidden="true"><rect class="rail-ground" x="0" y="10" width="${LONG}" height="4"/>${marks}</svg>`,
    words: say`${name}: ${between(low, high, unit)}`,
  }
}
