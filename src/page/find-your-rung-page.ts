import { compareText } from '../ladder/finding.ts'
import { isMissing } from '../quantity/outcome.ts'
import type { MeasuredCurriculum, MeasuredLadder } from '../measure/measure.ts'
import { ladderAddress, linkTo } from './address.ts'
import { html, type Html } from './html.ts'
import { ownNumbers } from './own-numbers.ts'
import type { SitePage } from './site-page.ts'

/** Where it stands. */
export const FIND_YOUR_RUNG = '/find-your-rung/'

/** Ladders on which some step says how many repetitions to expect. */
const predicts = ({ rungs }: MeasuredLadder): boolean => rungs.some(({ steps }) => steps.some(({ predicted }) => !isMissing(predicted)))

const byMovement = (ladders: readonly MeasuredLadder[]): (readonly [movement: string, ladders: readonly MeasuredLadder[]])[] =>
  [...new Set(ladders.map(({ movement }) => movement))].toSorted(compareText).map((movement) => [movement, ladders.filter((ladder) => ladder.movement === movement)])

const choice = ([movement, ladders]: readonly [string, readonly MeasuredLadder[]]): Html =>
  html`<optgroup label="${movement}">${ladders.map(({ id, title }) => html`<option value="${id}">${title}</option>`)}</optgroup>`

/** The way that needs neither script nor device: one set, and the table of steps on the ladder's page. */
const byHand = (ladders: readonly MeasuredLadder[]): Html => html`<section class="by-hand"><h2 id="by-hand">By hand</h2>
<ol>
<li>Choose a rung you can do, and do one set on it, each rep in form. Stop before form goes, and say how many more you could have done.</li>
<li>Open the steps of its ladder below, and look for the row that begins with your rung.</li>
<li>If your repetitions reach its least entry, keeping in reserve what the ladder asks, the rung it leads to leaves enough to work with: work there. If they do not, stay, and add repetitions.</li>
<li>If you cannot do the ladder’s first reps on your rung, go down one and begin again.</li>
</ol>
<ul class="plain-list">${ladders.filter(predicts).map(({ id, title, first_reps }) => html`
<li><a href="${linkTo(FIND_YOUR_RUNG, `${ladderAddress(id)}#steps`)}">Steps of ${title}</a>${first_reps !== undefined && html`: first reps at least ${first_reps}`}</li>`)}
</ul></section>`

/** From one strict set on any rung to the repetitions to expect on every rung of its ladder. */
export function findYourRungPage({ ladders }: MeasuredCurriculum): SitePage {
  return {
    address: FIND_YOUR_RUNG,
    title: 'Find your rung',
    description: 'From one strict set on any rung: the repetitions to expect on every rung of its ladder, and the rung to work on.',
    found: { kind: 'page' },
    body: html`<h1>Find your rung</h1>
<p class="lead">One set, done strictly on any rung of a ladder, says roughly where you stand on all of it. It counts load alone: balance, reach and nerve are for a coach to see.</p>
<div class="finding">
<form class="find" id="find" method="get" data-root="${linkTo(FIND_YOUR_RUNG, '/')}" data-pagefind-ignore hidden>
<div class="own-row"><span class="own-part"><label for="find-ladder">Ladder</label><select id="find-ladder" name="ladder">${byMovement(ladders).map(choice)}</select></span>
<span class="own-part own-wide"><label for="find-rung">A rung you can do</label><select id="find-rung" name="rung"></select></span></div>
<div class="own-row"><span class="own-part"><label for="find-reps">Reps in your best strict set</label><input id="find-reps" name="reps" inputmode="numeric" size="6" autocomplete="off"></span>
<span class="own-part"><label for="find-reserve">How many more you could have done</label><select id="find-reserve" name="reserve">${[0, 1, 2, 3, 4, 5].map((reps) => html`<option value="${reps}">${reps === 0 ? 'none' : reps}</option>`)}</select></span>
<button>Find my rung</button></div>
</form>
<p id="find-says" role="status"></p>
<div id="find-found" data-pagefind-ignore></div>
${ownNumbers(FIND_YOUR_RUNG)}
</div>
${byHand(ladders)}
<section><h2 id="people-differ">People differ</h2>
<p>The repetitions are what several published formulas expect of a trained adult whose maximum they do not know; the interval spans the formulas that hold and the bodies tried, and people differ by more than that. A coach who sees you move decides. Pain, or a stop sign of the ladder, decides before any number.</p></section>`,
  }
}
