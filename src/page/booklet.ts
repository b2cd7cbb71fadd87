import { isMissing } from '../quantity/outcome.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { ladderAddress, rungAddress } from './address.ts'
import { cardCautions, cardCode, cardEntry, cardLoad, editionText, footText, placeText, plainLine, plainLines, standardWords, type Imprint } from './card-words.ts'
import { html, joined, say, type Html, type Part } from './html.ts'
import { posePictures } from './pose-figure.ts'
import { heightIn, sum, type Column } from './room.ts'
import { supervisionText } from './safety.ts'
import type { Tongue } from './tongue.ts'

/** A sheet holds this much on A4 and on Letter, less what the head, the pictures and the foot take. Units mm, pt. */
const HIGH_MM = 251
/** Room between two paragraphs or two rows of a list. */
const BETWEEN_MM = 1.2
const HEAD_MM = 27
/** Pictures stand beside the code, which is in the head already. */
const PICTURES_MM = 37
const HEADING_MM = 6
const WHOLE: Column = { wide_mm: 178, size_pt: 9, line: 1.3 }
const HALF: Column = { wide_mm: 84, size_pt: 9, line: 1.3 }
const CELL: Column = { wide_mm: 40, size_pt: 9, line: 1.3 }

/** What of a rung fits on its sheet: its safety always does, or the sheet says where to read it. */
type Plan = { readonly faults: boolean; readonly pictures: boolean; readonly safe: boolean }

const hasPictures = ({ outcome }: MeasuredRung): boolean => !isMissing(outcome) && outcome.poses.length > 0

const safetyOf = (rung: MeasuredRung, ladder: MeasuredLadder): readonly (readonly [string, readonly Part[]])[] => [
  ['Watching', [supervisionText(rung.supervision ?? ladder.supervision)]],
  ['Take care', cardCautions(rung)],
  ['Stop when', ladder.stop.map(plainLine)],
  ['Ask a clinician first', ladder.ask_first.map(plainLine)],
]

/** The two columns of a sheet: how to set up and what a full rep is; what to say and what every rep must show. */
const columnsOf = ({ words, form }: MeasuredRung, ladder: MeasuredLadder): readonly (readonly (readonly [string, readonly string[]])[])[] => [
  [
    ['Set up', plainLines(words?.set_up ?? '')],
    ['Full rep', (words?.full_rep ?? []).map(plainLine)],
  ],
  [
    ['Cues', (words?.cues ?? []).map(plainLine)],
    ['What every rep must show', [...ladder.form, ...form].map(plainLine)],
  ],
]

function planOf(rung: MeasuredRung, ladder: MeasuredLadder, imprint: Imprint, tongue: Tongue): Plan {
  const high = heightIn(tongue)
  const lists = (all: readonly (readonly [string, readonly Part[]])[], column: Column): number => sum(all.map(([, texts]) => (texts.length === 0 ? 0 : HEADING_MM + BETWEEN_MM + high(texts, column))))
  const safety = sum(safetyOf(rung, ladder).map(([name, texts]) => (texts.length === 0 ? 0 : BETWEEN_MM + high([[name, ' ', joined(texts, '; ')]], WHOLE))))
  const facts = high([cardLoad(rung), ...cardEntry(rung, ladder), rung.demand.join(', ')], WHOLE) + BETWEEN_MM * (2 + rung.steps.length)
  const foot = 3 + high([footText(imprint, rungAddress(ladder.id, rung.id))], WHOLE)
  const held = HEAD_MM + foot + facts + safety + Math.max(...columnsOf(rung, ladder).map((column) => lists(column, HALF)))
  const faults = HEADING_MM * 2 + sum((rung.words?.faults ?? []).map((fault) => 2 + Math.max(...[fault.seen, fault.cause, fault.say, fault.remedy].map((text) => high([plainLine(text)], CELL)))))
  const pictures = hasPictures(rung) ? PICTURES_MM : 0
  const fits = (more: number): boolean => held + more <= HIGH_MM
  return { faults: fits(faults + pictures) || (!fits(pictures) && fits(faults)), pictures: fits(pictures), safe: HEAD_MM + foot + safety <= HIGH_MM }
}

const list = (name: string, texts: readonly Part[]): Html | undefined => (texts.length === 0 ? undefined : html`<h3>${name}</h3><ul>${texts.map((text) => html`<li>${text}</li>`)}</ul>`)

/** A run of texts behind their heading, in one paragraph. */
const run = ([heading, texts]: readonly [string, readonly Part[]]): Html | undefined => (texts.length === 0 ? undefined : html`<p class="booklet-safety"><strong>${heading}:</strong> ${texts.map((text, index) => [text, index < texts.length - 1 && (typeof text === 'string' && text.endsWith('.') ? ' ' : '; ')])}</p>`)

const faultTable = ({ words }: MeasuredRung): Html | undefined =>
  words?.faults &&
  html`<table><caption>Faults</caption><thead><tr><th scope="col">seen</th><th scope="col">likely cause</th><th scope="col">say</th><th scope="col">if it stays</th></tr></thead><tbody>${words.faults.map(({ seen, cause, say: words_, remedy }) => html`
<tr>${[seen, cause, words_, remedy].map((text) => html`<td>${plainLine(text)}</td>`)}</tr>`)}
</tbody></table>`

/** One rung on a sheet of its own, with everything that keeps an athlete safe on it. */
function sheet(rung: MeasuredRung, ladder: MeasuredLadder, imprint: Imprint, tongue: Tongue): Html {
  const { faults, pictures, safe } = planOf(rung, ladder, imprint, tongue)
  return html`
<article class="booklet-sheet" id="sheet-${rung.id}">
<header class="booklet-head"><div><p>${placeText(rung, ladder)}</p><h2>${rung.title}</h2>
${pictures && hasPictures(rung) && html`<div class="booklet-poses">${posePictures(isMissing(rung.outcome) ? [] : rung.outcome.poses, rung.title)}</div>`}</div>${cardCode(imprint, rungAddress(ladder.id, rung.id), rung.title)}</header>
<p>${cardLoad(rung)}${rung.demand.length > 0 && html`; also: ${joined(rung.demand, ', ')}`}</p>
${cardEntry(rung, ladder).map((line) => html`<p><strong>Before this rung:</strong> ${line}</p>`)}
${safe ? safetyOf(rung, ladder).map(run) : html`<p class="booklet-safety"><strong>The safety notes of this rung are longer than a sheet holds. Read its page in the handbook before anyone starts.</strong></p>`}
<div class="booklet-columns">${columnsOf(rung, ladder).map((column) => html`<div>${column.map(([name, texts]) => list(name, texts))}</div>`)}</div>
${faults ? faultTable(rung) : (rung.words?.faults ?? []).length > 0 && html`<p>Faults and what to do about them stand on the page of this rung.</p>`}
<footer>${footText(imprint, rungAddress(ladder.id, rung.id))}</footer>
</article>`
}

/** A whole ladder as a booklet: a first sheet that says what it is, then a sheet for each rung. */
export const booklet = (ladder: MeasuredLadder, imprint: Imprint): Part => (tongue) => html`<div class="booklet">
<article class="booklet-sheet">
<header class="booklet-head"><div><p>${ladder.movement}</p><h2>${ladder.title}</h2></div>${cardCode(imprint, ladderAddress(ladder.id), ladder.title)}</header>
<p>${editionText(imprint)} · ${imprint.organisation}</p>
${plainLines(ladder.intro).slice(0, 4).map((line) => html`<p>${line}</p>`)}
<p><strong>Standard for stepping up:</strong> ${standardWords(ladder)}</p>
<h3>Rungs</h3>
<ol>${ladder.rungs.map((rung) => html`
<li><strong>${rung.title}</strong>${rung.id === ladder.aim && say` (the aim)`}: ${cardLoad(rung)}</li>`)}
</ol>
<footer>${footText(imprint, ladderAddress(ladder.id))}</footer>
</article>${ladder.rungs.map((rung) => sheet(rung, ladder, imprint, tongue))}
</div>`
