import { isMissing } from '../quantity/outcome.ts'
import { fullEntry } from '../measure/entry.ts'
import { placeOf } from '../ladder/finding.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { repsText } from '../measure/predict.ts'
import type { Step } from '../measure/step.ts'
import { wayToAim } from '../measure/way-to-aim.ts'
import { ladderAddress, linkTo, rungAddress, type Address } from './address.ts'
import { FIND_YOUR_RUNG } from './find-your-rung-page.ts'
import { entryWords } from './both-units.ts'
import { fromPrinted, onPaper } from './cards-page.ts'
import { amendedLine } from './amended-line.ts'
import { comingBack } from './coming-back.ts'
import { figure, loadText, notComputed, titleOf, workingOf } from './figures.ts'
import { foundOfLadder } from './found.ts'
import { amount, between, html, joined, say, type Html, type Part } from './html.ts'
import { langOf, untranslatedNote } from './in-original.ts'
import { ladderInWords } from './ladder-diagram.ts'
import { ownNumbers } from './own-numbers.ts'
import { inlineProse, prose } from './prose.ts'
import { loadRail, railKey } from './rail.ts'
import { safetyNotes } from './safety.ts'
import type { SitePage } from './site-page.ts'
import { stepWords } from './step-words.ts'

/** "after Hands on a bench: 3 sets of 12 repetitions, 2 sessions running" and what kind of step that is. */
const stepLine = (step: Step, ladder: MeasuredLadder): Html =>
  html`<p class="step">After ${titleOf(ladder, step.from)}: <strong>${entryWords(step.entry)}</strong>; <span class="kind">${stepWords(step, ladder)}</span></p>`

function rungRow(rung: MeasuredRung, ladder: MeasuredLadder, from: Address): Html {
  const working = workingOf(from, ladder.id, rung.id)
  return html`
<li${rung.id === ladder.aim ? html` class="aim"` : ''}>
<h3><a href="${linkTo(from, rungAddress(ladder.id, rung.id))}">${rung.title}</a>${rung.id === ladder.aim && html` <span class="badge">the aim</span>`}</h3>
${rung.demand.length > 0 && html`<p class="demand">Also: ${joined(rung.demand, ', ')}</p>`}
${loadRail(rung, ladder)}
<p class="load">${isMissing(rung.outcome) ? notComputed(rung.outcome.missing) : html`${rung.outcome.quantity.name}: ${figure(loadText(rung), working)}`}</p>
${rung.steps.length === 0 ? html`<p class="step">Begin here.</p>` : rung.steps.map((step) => stepLine(step, ladder))}
</li>`
}

/** What to expect of each step, as a table. */
function stepTable(ladder: MeasuredLadder, from: Address): Html {
  const cell = (value: Html | string): Html => html`<td>${value}</td>`
  const rows = ladder.rungs.flatMap((rung) =>
    rung.steps.map((step) => {
      const working = workingOf(from, ladder.id, rung.id)
      const { predicted, computed_entry, block } = step
      return html`
<tr><th scope="row">${titleOf(ladder, step.from)} to ${rung.title}</th>
${cell(isMissing(predicted) ? '–' : figure(say`${repsText(predicted)} reps`, working))}${cell(isMissing(computed_entry) ? '–' : figure(amount(computed_entry, 'reps'), working))}${cell(isMissing(block) ? '–' : figure(between(block.weeks[0], block.weeks[1], 'weeks'), working))}</tr>`
    }),
  )
  if (ladder.rungs.every(({ steps }) => steps.every(({ predicted }) => isMissing(predicted)))) return html``
  return html`<section><h2 id="steps">The steps</h2>
<p>First reps are what to expect on the new rung by load alone, from the fewest to the most over the formulas that hold and the bodies tried. Least entry is the fewest repetitions on the rung before that leave at least ${ladder.first_reps ?? 'as many as wanted'} on the new one. A dash: no formula answers; the rung’s page says why.</p>
<div class="scroll" tabindex="0" role="region" aria-labelledby="steps"><table>
<thead><tr><th scope="col">Step</th><th scope="col">First reps</th><th scope="col">Least entry</th><th scope="col">Time on the rung</th></tr></thead>
<tbody>${rows}
</tbody></table></div></section>`
}

/** Who reviewed it and when, and whether the criteria are still those they signed. */
function reviewText({ review, sealed }: MeasuredLadder): Part {
  if (!review) return 'not yet reviewed by a named person'
  const since = sealed === undefined ? 'not sealed' : sealed ? 'criteria unchanged since' : 'criteria changed since'
  return [joined([review.by, review.on], ', '), '; ', since]
}

/** "12 to 40 weeks", from meeting the standard on the first rung to meeting it on the aim; on which rungs of the way that cannot be computed, and why. */
function weeksText(ladder: MeasuredLadder): Part {
  const way = wayToAim(ladder, ladder.rungs[0]?.id ?? '')
  if (isMissing(way)) return html`not computed: ${way.missing}`
  const { weeks, told, untold } = way
  const whole = say`${between(weeks[0], weeks[1], 'weeks')} at ${ladder.sessions_per_week} sessions a week`
  if (untold.length === 0) return whole
  const reasons = joined([...new Set(untold.map(({ why }) => why))], '; ')
  if (told.length === 0) return html`not computed on any rung of the way: ${reasons}`
  return html`${whole} on ${told.length} of the ${told.length + untold.length} rungs on the way. Not computed on ${joined(untold.map(({ rung }) => html`<a href="${linkTo(ladderAddress(ladder.id), rungAddress(ladder.id, rung.id))}">${rung.title}</a>`), ', ')}: ${reasons}`
}

function facts(ladder: MeasuredLadder): Html {
  const fact = (name: string, value: Part): Html => html`<div><dt>${name}</dt> <dd>${value}</dd></div>`
  return html`<dl class="facts">
${fact('Movement', ladder.movement)}
${fact('Aim', titleOf(ladder, ladder.aim))}
${fact('Standard for stepping up', entryWords(fullEntry(ladder.standard, {})))}
${fact('Rest', say`${ladder.standard.rest_s} s between sets`)}
${ladder.standard.reps !== undefined && fact('Keep in reserve', amount(ladder.standard.reserve_reps, 'reps'))}
${fact('Equipment', ladder.equipment.length > 0 ? joined(ladder.equipment, ', ') : 'none')}
${fact('From the first rung to the aim', weeksText(ladder))}
${fact('Review', reviewText(ladder))}
</dl>`
}

/** One ladder: its rungs along a rail, its diagram with the same in words, its steps, its safety notes. */
export function ladderPage(ladder: MeasuredLadder, diagram: Html, edition: string): SitePage {
  const address = ladderAddress(ladder.id)
  return {
    address,
    ladder: ladder.id,
    own: true,
    title: ladder.title,
    description: say`${ladder.title}: ${ladder.rungs.length} rungs, from ${ladder.rungs[0]?.title ?? ''} on; aim: ${titleOf(ladder, ladder.aim)}.`,
    found: foundOfLadder(ladder),
    body: html`<p class="trail">${ladder.movement}</p>
<h1>${ladder.title}</h1>
${untranslatedNote(ladder, ['title', 'intro', 'form', 'stop', 'ask_first'])}<div class="lead"${langOf(ladder, 'intro')}>${prose(ladder.intro, { from: address, first_heading: 2, file: () => placeOf(ladder.places, ['intro']).file })}</div>
${ladder.amended.map((each) => amendedLine(each, ladder))}
${ladder.withdrawn_notes.map(({ note, because, by, layer }) => html`<p class="amended">Safety note withdrawn by ${by} for ${layer}: “${note}”. ${because}</p>`)}
${facts(ladder)}
${onPaper(address, ladder.id)}
${fromPrinted(address, edition, ladder.id)}
<section><h2 id="rungs">Rungs</h2>
${railKey(ladder)}<ol class="rungs">${ladder.rungs.map((rung) => rungRow(rung, ladder, address))}
</ol>
<p><a href="${linkTo(address, FIND_YOUR_RUNG)}?ladder=${ladder.id}">Find your rung on this ladder</a></p></section>
${ownNumbers(address, { ladder: ladder.id, rungs: ladder.rungs })}
<section><h2 id="form">What every rep must show</h2>
<ul${langOf(ladder, 'form')}>${ladder.form.map((point) => html`
<li>${inlineProse(point, address)}</li>`)}
</ul></section>
${safetyNotes(ladder, address)}
<section><h2 id="diagram">The ladder at a glance</h2>
<div class="beside"><figure class="diagram" role="img" aria-label="Ladder diagram; the list beside it says the same.">${diagram}</figure>
<div>${ladderInWords(ladder, address)}</div></div></section>
${stepTable(ladder, address)}
${comingBack()}
${(ladder.sources ?? []).length > 0 && html`<section><h2 id="sources">Sources</h2><ul>${(ladder.sources ?? []).map(({ cite }) => html`
<li>${cite}</li>`)}
</ul></section>`}`,
  }
}
