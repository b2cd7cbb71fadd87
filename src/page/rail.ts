import { isMissing } from '../quantity/outcome.ts'
import { interval } from '../quantity/spread.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { between, html, say, type Html, type Words } from './html.ts'

/** Width of a rail in its own units. */
const LONG = 1000

/** The heaviest end of any interval of the ladder, for one quantity: the right end of its rails. */
export function heaviest({ rungs }: MeasuredLadder, quantity: string): number {
  return Math.max(...rungs.map(({ outcome }) => (isMissing(outcome) || outcome.quantity.name !== quantity ? 0 : interval(outcome.load).high)), 0)
}

const at = (value: number, end: number): string => (end === 0 ? '0' : ((LONG * value) / end).toFixed(0))

/**
 * A rung's load as length along a rail: the bar ends at the average body, the thin line spans the bodies tried.
 * The same fact stands beside it in words, so it is hidden from readers of words.
 */
export function loadRail(rung: MeasuredRung, ladder: MeasuredLadder): Html {
  const { outcome } = rung
  if (isMissing(outcome)) return html`<svg class="rail" viewBox="0 0 ${LONG} 24" preserveAspectRatio="none" aria-hidden="true"><line class="rail-unknown" x1="0" y1="12" x2="${LONG}" y2="12"/></svg>`
  const end = heaviest(ladder, outcome.quantity.name)
  const { low, mid, high } = interval(outcome.load)
  return html`<svg class="rail" viewBox="0 0 ${LONG} 24" preserveAspectRatio="none" aria-hidden="true"><rect class="rail-ground" x="0" y="9" width="${LONG}" height="6"/><rect class="rail-load" x="0" y="5" width="${at(mid, end)}" height="14"/><path class="rail-span" d="M${at(low, end)} 2V22M${at(high, end)} 2V22M${at(low, end)} 12H${at(high, end)}"/></svg>`
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
