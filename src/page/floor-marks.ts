import { centimetres } from '../quantity/imperial.ts'
import { onceOfEach } from '../quantity/once.ts'
import { isMissing } from '../quantity/outcome.ts'
import { floorMarks, markRows, type MarkRow } from '../load/floor-marks.ts'
import type { Inputs, LoadModel } from '../load/model.ts'
import { AVERAGE, type MeasuredRung } from '../measure/measure.ts'
import { figure, notComputed } from './figures.ts'
import { amount, html, type Html, type Part } from './html.ts'

const WORKING = '#working'

/** Body heights that fit a phone, in the handbook's own units. */
const SHOWN_CM = [150, 160, 170, 180, 190, 200]
const SHOWN_IN = [60, 63, 66, 70, 74, 78]

/** The marks are the same in every language. */
const inCentimetres = onceOfEach((inputs: Inputs) => floorMarks(inputs, AVERAGE, SHOWN_CM))
const inInches = onceOfEach((inputs: Inputs) => floorMarks(inputs, AVERAGE, SHOWN_IN.map(centimetres)))

/** A reason with what a key is for in place of the key. */
const inWords = (reason: string, { keys }: LoadModel): string => reason.replace(/\b[a-z]+(?:_[a-z0-9]+)+\b/g, (key) => keys[key]?.says ?? key)

/** Where hands and feet go for each body height, so that this rung is one load for all. */
export const floorMarkTable = (rung: MeasuredRung): Part => (tongue) => {
  if (rung.model.name !== 'supported-body' || isMissing(rung.outcome)) return undefined
  const marks = tongue.units === 'imperial' ? inInches(rung.inputs) : inCentimetres(rung.inputs)
  if (isMissing(marks)) return undefined
  const cell = (row: MarkRow, mark: (typeof marks)[number][1]): Html => {
    const value = isMissing(mark) ? undefined : row.value(mark)
    return html`<td>${value === undefined ? '–' : figure(amount(value, row.unit), WORKING)}</td>`
  }
  const unable = marks.flatMap(([stature_cm, mark]) => (isMissing(mark) ? [html`<p>At ${amount(stature_cm, 'cm')}: ${notComputed(inWords(mark.missing, rung.model))}</p>`] : []))
  return html`<section data-pagefind-ignore><h2 id="marks">Set up by body height</h2>
<p>So that this rung is the same load for a tall and a short athlete.</p>
<div class="scroll" tabindex="0" role="region" aria-labelledby="marks"><table class="floor-marks">
<thead><tr><th scope="col">body height</th>${marks.map(([stature_cm]) => html`<th scope="col">${amount(stature_cm, 'cm')}</th>`)}</tr></thead>
<tbody>${markRows(rung.inputs).map((row) => html`
<tr><th scope="row">${row.name}</th>${marks.map(([, mark]) => cell(row, mark))}</tr>`)}
</tbody></table></div>${unable}</section>`
}
