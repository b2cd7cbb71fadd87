import { isMissing } from '../quantity/outcome.ts'
import { markRows } from '../load/floor-marks.ts'
import { carriedBeside, isShare, limbs, sharesOfMass } from '../load/limbs.ts'
import type { Load } from '../load/model.ts'
import type { MeasuredRung } from '../measure/measure.ts'
import { html, type Html } from './html.ts'

/** A rung as far as a reader's own numbers are made from it. */
export type OwnRung = Pick<MeasuredRung, 'outcome' | 'model' | 'inputs'>

/** True of a load that is a mass, which can be put on a bar. */
export const isMass = ({ outcome }: OwnRung): boolean => !isMissing(outcome) && outcome.quantity.unit === 'kg'

const FACT = html`<div><dt></dt><dd></dd></div>`
const facts = (count: number): Html | false => count > 0 && html`<dl class="facts">${Array.from({ length: count }, () => FACT)}</dl>`

/** A share of the body: the figure with its span, both limbs, what is added, and marks for a height. */
function shareRoom(rung: OwnRung, load: Load): Html {
  const setUp = { model: rung.model.name, inputs: rung.inputs }
  const { other, both } = limbs(setUp, load.load)
  const marks = html`<p class="two more"></p><p class="room-head more"></p>${facts(markRows(rung.inputs).length)}`
  return html`<p class="room-load"><b class="figure"></b><span class="more"></span></p>${facts(Number(both !== undefined) + Number(other !== undefined))}${facts(sharesOfMass(setUp).length)}${setUp.model === 'supported-body' && marks}`
}

/** A load that is no share of the body: what it lays on it all the same. */
function besideRoom(rung: OwnRung, load: Load): Html {
  const beside = Number(load.quantity.unit === 'N·m/kg') + carriedBeside(load).length
  return html`${facts(beside) || html`<p class="more"></p>`}${facts(sharesOfMass({ model: rung.model.name, inputs: rung.inputs }).length)}`
}

const RACK_ROOM = html`<p class="about two"></p>`

/** As much room as a reader's own numbers of a rung take, without a word in it. */
export function rungRoom(rung: OwnRung): Html {
  const { outcome } = rung
  if (isMissing(outcome)) return html`<p class="two more"></p>`
  if (isMass(rung)) return html`<dl class="facts"><div><dt></dt><dd class="two"></dd></div></dl>${RACK_ROOM}`
  return isShare(outcome.quantity.unit) ? shareRoom(rung, outcome) : besideRoom(rung, outcome)
}

/** How many lines a rung takes in the table of its ladder: kilograms and newtons stand one below the other. */
const row = (rung: OwnRung): Html => (!isMissing(rung.outcome) && isShare(rung.outcome.quantity.unit) ? html`<tr><td class="two"></td></tr>` : html`<tr><td class="more"></td></tr>`)

/** The same for the table of a ladder. */
export function ladderRoom(rungs: readonly OwnRung[]): Html {
  const lifted = rungs.some(isMass)
  const shared = rungs.some(({ outcome }) => !isMissing(outcome) && isShare(outcome.quantity.unit))
  if (!lifted && !shared) return html`<p class="two more"></p>`
  return html`<table class="own-table"><thead><tr><th class="more"></th></tr></thead><tbody>${rungs.map(row)}</tbody></table>${lifted && RACK_ROOM}`
}
