import { isMissing } from '../quantity/outcome.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { ladderAddress } from './address.ts'
import { besideStandard, cardCautions, cardCode, cardEntry, cardLoad, cardWatch, commonQuantity, footText, plainLine, standardWords, type Imprint } from './card-words.ts'
import { titleOf } from './figures.ts'
import { html, joined, say, type Html, type Part } from './html.ts'
import { loadRail } from './rail.ts'
import { supervisionText } from './safety.ts'
import { wallSheets } from './wall-sheets.ts'

/** One rung across the sheet: its place, what it is, its load along the rail, what it takes to enter it, its cautions. */
function row(rung: MeasuredRung, ladder: MeasuredLadder): Html {
  const care = [...cardWatch(rung, ladder), ...cardCautions(rung)]
  return html`
<li class="wall-rung">
<span class="wall-place">${ladder.rungs.indexOf(rung) + 1}</span>
<div class="wall-title"><strong>${rung.title}</strong>${rung.id === ladder.aim && html` <span class="wall-aim">the aim</span>`}${rung.demand.length > 0 && html`<br>also: ${joined(rung.demand, ', ')}`}</div>
<div class="wall-rail">${!isMissing(rung.outcome) && loadRail(rung, ladder)}</div>
<div class="wall-load">${cardLoad(rung, commonQuantity(ladder))}</div>
<div class="wall-entry">${cardEntry(rung, ladder, besideStandard(ladder)).map((line) => html`<span>${line}</span> `)}</div>
${care.length > 0 && html`<div class="wall-care">${care.map((line) => html`<span>${line}</span> `)}</div>`}
</li>`
}

const notes = (title: string, texts: readonly string[], kind = 'wall-note'): Html => html`<div class="${kind}"><h3>${title}</h3><ul>${texts.map((text) => html`
<li>${plainLine(text)}</li>`)}
</ul></div>`

/** What the rails show. */
function legend(ladder: MeasuredLadder): Html | undefined {
  const quantity = commonQuantity(ladder)
  if (ladder.rungs.every(({ outcome }) => isMissing(outcome))) return undefined
  return html`<p>${quantity && [say`Load: ${quantity}.`, ' ']}The thick bar is for an average body, the thin line spans the bodies tried.</p>`
}

/** One sheet: some of the rungs, and everything of the ladder that has to be read beside any of them. */
function sheet(rungs: readonly MeasuredRung[], ladder: MeasuredLadder, imprint: Imprint, nth: Part): Html {
  return html`
<section class="wall-sheet">
<header class="wall-head">
<div>
<p class="wall-movement">${ladder.movement}${nth && [' · ', nth]}</p>
<h2>${ladder.title}</h2>
<p>Aim: ${titleOf(ladder, ladder.aim)}. The standard before each next rung: <strong>${standardWords(ladder)}</strong>, all of it in form. ${supervisionText(ladder.supervision)}</p>
${legend(ladder)}
</div>
${cardCode(imprint, ladderAddress(ladder.id), ladder.title)}
</header>
<ol class="wall-rungs" start="${ladder.rungs.indexOf(rungs[0] ?? failed()) + 1}">${rungs.map((rung) => row(rung, ladder))}
</ol>
<div class="wall-notes">${notes('Every rep shows', ladder.form)}${notes('Stop when', ladder.stop, 'wall-stop')}${notes('Ask a clinician first', ladder.ask_first)}</div>
<footer class="wall-foot">${footText(imprint, ladderAddress(ladder.id))}</footer>
</section>`
}

const failed = (): never => {
  throw new Error('bug: a sheet without a rung')
}

/** A ladder for the wall, on as many sheets as it takes; each carries the form points, stop signs and ask-first list. */
export const wallCard = (ladder: MeasuredLadder, imprint: Imprint): Part => (tongue) => {
  const cut = wallSheets(ladder, tongue)
  if (isMissing(cut)) return html`<p class="no-figure">No wall card is drawn: ${cut.missing}. Use the pocket cards.</p>`
  const { notes: column, sheets } = cut
  return html`<article class="wall-card wall-${column}">${sheets.map((rungs, index) => sheet(rungs, ladder, imprint, sheets.length > 1 && say`sheet ${index + 1} of ${sheets.length}`))}
</article>`
}
