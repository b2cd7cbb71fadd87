import { isMissing } from '../quantity/outcome.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { rungAddress } from './address.ts'
import { cardCautions, cardCode, cardEntry, cardLoad, footText, placeText, plainLine, type Imprint } from './card-words.ts'
import { html, joined, type Html, type Part } from './html.ts'
import { pocketPlan, pocketSheets, type Places, type PocketPlan } from './pocket-sheets.ts'
import { posePictures } from './pose-figure.ts'
import { supervisionText } from './safety.ts'
import { spoken } from './written.ts'

const SIZES: Record<Places, string> = { 1: 'a6', 2: 'a5', 4: 'a4' }

/** What stands between a text and the next: nothing where a full stop does. */
const ended =
  (text: Part): Part =>
  (tongue) => !spoken(text, tongue).endsWith('.') && ';'

/** A run of texts behind their heading, in one paragraph. */
const run = (heading: string, texts: readonly Part[], kind = ''): Html | undefined =>
  texts.length === 0 ? undefined : html`<div class="run ${kind}"><h3>${heading}</h3> <ul>${texts.map((text, index) => html`<li>${text}${index < texts.length - 1 && ended(text)}</li> `)}</ul></div>`

/** What to say, how to set up, and all of the rung's safety. */
const texts = (rung: MeasuredRung, ladder: MeasuredLadder, set_up: readonly string[]): Html => html`${rung.words?.cues && html`<ul class="pocket-cues">${rung.words.cues.map((cue) => html`<li>${plainLine(cue)}</li>`)}</ul>`}
${run('Set up', set_up)}
${run('Watching', [supervisionText(rung.supervision ?? ladder.supervision)])}
${run('Take care', cardCautions(rung), 'pocket-care')}
${run('Stop when', ladder.stop.map(plainLine), 'pocket-stop')}
${run('Ask a clinician first', ladder.ask_first.map(plainLine))}`

/** One rung for the pocket: a picture, how to set up, what to say, when to enter and when to stop, and its code. */
function card({ rung, places, set_up, whole, safe }: PocketPlan, ladder: MeasuredLadder, imprint: Imprint): Html {
  const pictures = !isMissing(rung.outcome) && rung.outcome.poses.length > 0 && html`<div class="pocket-poses">${posePictures(rung.outcome.poses, rung.title)}</div>`
  const facts = html`<div class="pocket-facts"><p>${cardLoad(rung)}${rung.demand.length > 0 && html`; also: ${joined(rung.demand, ', ')}`}</p>
${cardEntry(rung, ladder).map((line) => html`<p><strong>Before this rung:</strong> ${line}</p>`)}</div>`
  const more = whole ? [] : [imprint.address === undefined ? 'More in the handbook.' : 'More by the code.']
  return html`
<article class="pocket-card pocket-${SIZES[places]}" id="card-${rung.id}">
<div class="pocket-top">
<div><p>${placeText(rung, ladder)}</p>
<h2>${rung.title}</h2>
${pictures || facts}</div>
${cardCode(imprint, rungAddress(ladder.id, rung.id), rung.title)}
</div>
<div class="pocket-text">
${pictures && facts}
${safe ? texts(rung, ladder, [...set_up, ...more]) : html`<p class="pocket-stop"><strong>The safety notes of this rung are longer than a sheet holds. Read its page in the handbook before anyone starts.</strong></p>`}
</div>
<footer>${footText(imprint, rungAddress(ladder.id, rung.id))}</footer>
</article>`
}

/** A card for every rung of a ladder, four A6 cards to a sheet of A4; a card with more to say takes the room of two, or the sheet. */
export const pocketCards = (ladder: MeasuredLadder, imprint: Imprint): Part => (tongue) => {
  const sheets = pocketSheets(ladder.rungs.map((rung) => pocketPlan(rung, ladder, imprint, tongue)))
  return html`<div class="pocket-cards">${sheets.map((plans) => html`<div class="pocket-sheet">${plans.map((plan) => card(plan, ladder, imprint))}</div>`)}
</div>`
}
