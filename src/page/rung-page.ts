import { isMissing } from '../quantity/outcome.ts'
import { kilograms as inKilograms } from '../quantity/imperial.ts'
import type { Spread } from '../quantity/spread.ts'
import { placeOf } from '../ladder/finding.ts'
import { sources } from '../load/sources.ts'
import { decisionRules } from '../measure/decide.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { repsText } from '../measure/predict.ts'
import type { Step } from '../measure/step.ts'
import { ladderAddress, linkTo, rungAddress, type Address } from './address.ts'
import { entryWords } from './both-units.ts'
import { fromPrinted, onPaper } from './cards-page.ts'
import { figure, loadText, notComputed, spanText, spreadText, STEP_WORDS, titleOf } from './figures.ts'
import { floorMarkTable } from './floor-marks.ts'
import { foundOfRung } from './found.ts'
import { amount, capital, html, joined, say, type Html, type Part } from './html.ts'
import { ownNumbers } from './own-numbers.ts'
import { logThisRung } from './my-ladders-page.ts'
import { poseFigures } from './pose-figure.ts'
import { rungPart } from '../ladder/translation.ts'
import { langOf, untranslatedNote } from './in-original.ts'
import { inlineProse, itemProse, prose } from './prose.ts'
import { rungWorking } from './rung-working.ts'
import { safetyNotes } from './safety.ts'
import type { SitePage } from './site-page.ts'
import { noLoadOf, stepWords } from './step-words.ts'

const WORKING = '#working'

/** Body masses a reader finds theirs among, in the handbook's own units. */
const BODY_MASSES_KG = [50, 60, 70, 80, 90, 100]
const BODY_MASSES_LB = [110, 130, 155, 175, 200, 220]

function loads({ outcome }: MeasuredRung): Html {
  if (isMissing(outcome)) return html`<p class="load">${notComputed(outcome.missing)}</p>`
  const { unit, name } = outcome.quantity
  const span = spanText(outcome.load, unit)
  const beside = outcome.figures.map(({ name: what, value, unit: of }) => html`
<div><dt>${what}</dt> <dd>${isMissing(value) ? notComputed(value.missing) : figure(spreadText(value, of), WORKING)}</dd></div>`)
  return html`<p class="big-load">${figure(spreadText(outcome.load, unit), WORKING)} <span>${name}${span && html`, ${figure(span, WORKING)} over all bodies tried`}</span></p>
${unit.startsWith('% of body') && kilograms(outcome.load)}
${beside.length > 0 && html`<details class="beside-load"><summary>More about this load</summary><dl class="facts">${beside}
</dl></details>`}`
}

/** The load in kilograms for a few body masses, or in pounds; a reader without scripts finds theirs. */
const kilograms = (load: Spread): Part => (tongue) => {
  const masses: (readonly [mass_kg: number, said: Html])[] =
    tongue.units === 'imperial' ? BODY_MASSES_LB.map((mass) => [inKilograms(mass), html`${mass} lb`]) : BODY_MASSES_KG.map((mass) => [mass, html`${mass} kg`])
  const [region, caption] = tongue.units === 'imperial' ? ['The load in pounds', 'The same in pounds on one limb'] : ['The load in kilograms', 'The same in kilograms on one limb']
  return html`<div class="scroll" tabindex="0" role="region" aria-label="${region}"><table class="kilograms"><caption>${caption}</caption>
<thead><tr><th scope="row">body mass</th>${masses.map(([, said]) => html`<th scope="col">${said}</th>`)}</tr></thead>
<tbody><tr><th scope="row">load</th>${masses.map(([mass_kg]) => html`<td>${figure(amount((load.mid * mass_kg) / 100, 'kg'), WORKING)}</td>`)}</tr></tbody></table></div>`
}

function entries(rung: MeasuredRung, ladder: MeasuredLadder, from: Address): Html {
  if (rung.steps.length === 0) return html`<p>This is the first rung: begin here.</p>`
  return html`${rung.steps.map((step) => html`<p>On <a href="${linkTo(from, rungAddress(ladder.id, step.from))}">${titleOf(ladder, step.from)}</a>: <strong>${entryWords(step.entry)}</strong>, all of it in form.</p>
<p class="kind">${sizeOf(step, ladder)} ${expectation(step)}</p>`)}`
}

/** How big a step it is, or why that is not known. */
function sizeOf(step: Step, ladder: MeasuredLadder): Html {
  if (!isMissing(step.kind)) return html`${capital(STEP_WORDS[step.kind])}.`
  const why = noLoadOf(step, ladder)
  if (why === undefined) return html`How big a step it is: ${notComputed(step.kind.missing)}.`
  return html`<span class="no-figure">${why === 'own' ? 'How big a step it is cannot be computed, for this rung has no load.' : 'How big a step it is cannot be computed, for the rung before has no load.'}</span>`
}

/** What to expect at first, or why not, where that has not been said of the step itself. */
const expectation = ({ predicted, entry, kind }: Step): Html =>
  isMissing(predicted) ? (entry.amount?.unit === 'reps' && !(isMissing(kind) && kind.missing === predicted.missing) ? html`First reps ${notComputed(predicted.missing)}.` : html``) : html`Expect ${figure(say`${repsText(predicted)} reps`, WORKING)} at first.`

function described({ id: rung, words }: MeasuredRung, ladder: MeasuredLadder, from: Address): Html | undefined {
  if (!words) return undefined
  const file = (...part: readonly (string | number)[]) => (): string => placeOf(ladder.places, ['rungs', rung, ...part]).file
  const lang = (section: string): Html | undefined => langOf(ladder, rungPart(rung, section))
  const list = (name: string, id: string, texts: readonly string[] | undefined, kind: string) =>
    texts && html`<section class="${kind}"><h2 id="${id}">${name}</h2><ul${lang(id)}>${texts.map((text, index) => html`
<li>${itemProse(text, from, `${id}-${index + 1}`, file(id, index))}</li>`)}
</ul></section>`
  return html`${words.set_up && html`<section><h2 id="set-up">Set up</h2>${inLang(lang('set-up'), prose(words.set_up, { from, first_heading: 3, part: 'set-up', file: file('set-up') }))}</section>`}
${list('Full rep', 'full-rep', words.full_rep, 'full-rep')}
${list('Cues', 'cues', words.cues, 'cues')}
${words.faults && html`<section class="faults"><h2 id="faults">Faults</h2>${words.faults.map(
    ({ seen, cause, say, remedy }) => html`
<details><summary${lang('faults')}>${inlineProse(seen, from, file('faults'))}</summary>
<dl class="facts">
<div><dt>likely cause</dt> <dd${lang('faults')}>${inlineProse(cause, from, file('faults'))}</dd></div>
<div><dt>say</dt> <dd class="say"${lang('faults')}>${inlineProse(say, from, file('faults'))}</dd></div>
<div><dt>if it stays</dt> <dd${lang('faults')}>${inlineProse(remedy, from, file('faults'))}</dd></div>
</dl></details>`,
  )}</section>`}
${words.notes.map(({ body }) => html`<section><h2 id="notes">Notes</h2>${inLang(lang('notes'), prose(body, { from, first_heading: 3, part: 'notes', file: file('notes') }))}</section>`)}`
}

/** What a coach decides at the end of a session on this rung, in this ladder's own numbers, and the rule behind each. */
function decisions(rung: MeasuredRung, ladder: MeasuredLadder, above: readonly MeasuredRung[], from: Address): Html {
  const below = rung.steps.map(({ from: id }) => html`<a href="${linkTo(from, rungAddress(ladder.id, id))}">${titleOf(ladder, id)}</a>`)
  const onward = above.map((next) => {
    const step = next.steps.find(({ from: id }) => id === rung.id)
    return html`
<li>to <a href="${linkTo(from, rungAddress(ladder.id, next.id))}">${next.title}</a>: ${step && entryWords(step.entry)}${step && html`; ${stepWords(step, ladder)}`}</li>`
  })
  return html`<section class="decide" data-pagefind-ignore><h2 id="decide">Move on, hold, step back, stop</h2>
<p>After each session, the first of these that is true decides.</p>
<ol>${decisionRules.map(({ decision, rule, source }) => html`
<li><strong>${decision}</strong>: ${rule} <span class="source">${source === 'common practice' ? 'Common practice' : html`${sources[source].cite} (${sources[source].seen})`}.</span></li>`)}
</ol>
<dl class="facts">
<div><dt>move on</dt> <dd>${onward.length > 0 ? html`<ul>${onward}
</ul>` : 'This rung is the end of its branch: keep it, or add sessions.'}</dd></div>
<div><dt>step back</dt> <dd>${below.length > 0 ? html`to ${below.map((link, index) => html`${index > 0 && ' or '}${link}`)}` : 'There is no easier rung here: shorten the set, rest longer, and ask a coach.'}</dd></div>
</dl></section>`
}

/** Where a script puts a timer for the rest between sets, and for the hold where the standard is one. */
const timer = ({ standard }: MeasuredRung, { standard: { rest_s } }: MeasuredLadder): Html =>
  html`<div id="timer" class="timer" role="group" aria-label="Timer" hidden data-rest="${rest_s}"${standard.amount?.unit === 'seconds' && html` data-hold="${standard.amount.value}"`}></div>`

/** The parts of a ladder that are a rung's own words. */
const partsOf = ({ id, words }: MeasuredRung): string[] => {
  const written = { intro: words?.intro, 'set-up': words?.set_up, 'full-rep': words?.full_rep, cues: words?.cues, faults: words?.faults, notes: words?.notes[0] }
  return [rungPart(id), ...Object.entries(written).flatMap(([section, said]) => (said === undefined || said === '' ? [] : [rungPart(id, section)]))]
}

/** Prose in an element of its own where it is in another language than the page. */
const inLang = (lang: Html | undefined, said: Html): Html => (lang === undefined ? said : html`<div${lang}>${said}</div>`)

/** One rung: what a coach on the floor needs, then where its numbers come from. */
export function rungPage(rung: MeasuredRung, ladder: MeasuredLadder, edition: string): SitePage {
  const address = rungAddress(ladder.id, rung.id)
  const above = ladder.rungs.filter(({ steps }) => steps.some(({ from }) => from === rung.id))
  const [below] = rung.steps
  const [next] = above
  const lang = langOf(ladder, rungPart(rung.id))
  const form = [...ladder.form.map((point) => ({ point, lang: langOf(ladder, 'form') })), ...rung.form.map((point) => ({ point, lang }))]
  return {
    address,
    ladder: ladder.id,
    own: true,
    title: say`${rung.title} (${ladder.title})`,
    description: say`${ladder.title}, ${rung.title}: set-up, full rep, cues, faults, what it takes to enter and to move on.`,
    found: { ...foundOfRung(rung, ladder), ...(isMissing(rung.outcome) ? {} : { load: loadText(rung) }) },
    body: html`<p class="trail"><a href="${linkTo(address, ladderAddress(ladder.id))}">${ladder.title}</a> · rung ${ladder.rungs.indexOf(rung) + 1} of ${ladder.rungs.length}${rung.id === ladder.aim && html` · <strong>the aim</strong>`}</p>
<h1>${rung.title}</h1>
${rung.demand.length > 0 && html`<p class="demand">Also: ${joined(rung.demand, ', ')}</p>`}
${untranslatedNote(ladder, partsOf(rung))}${rung.words && html`<div class="lead"${langOf(ladder, rungPart(rung.id, 'intro'))}>${prose(rung.words.intro, { from: address, first_heading: 2, part: 'intro', file: () => placeOf(ladder.places, ['rungs', rung.id, 'section']).file })}</div>`}
${isMissing(rung.outcome) || rung.outcome.poses.length === 0 ? '' : html`<div class="poses">${poseFigures(rung.outcome.poses, ladder.title, rung.title)}</div>`}
<section class="loads"><h2 id="load">Load</h2>${loads(rung)}</section>
${ownNumbers(address, { ladder: ladder.id, rung: rung.id, rungs: [rung] })}
<section class="entry"><h2 id="entry">Before this rung</h2>${entries(rung, ladder, address)}</section>
${rung.first_side && html`<p class="first-side"${lang}>${inlineProse(rung.first_side, address)}</p>`}
${floorMarkTable(rung)}
${timer(rung, ladder)}
${described(rung, ladder, address)}
<section><h2 id="form">What every rep must show</h2><ul>${form.map(({ point, lang: of }) => html`
<li${of}>${inlineProse(point, address)}</li>`)}
</ul></section>
${decisions(rung, ladder, above, address)}
${logThisRung(address, ladder.id, rung.id)}
${safetyNotes(ladder, address, rung)}
${onPaper(address, ladder.id, rung.id)}
${fromPrinted(address, edition, ladder.id, rung.id)}
<p class="on-paper">Weeks off? <a href="${linkTo(address, ladderAddress(ladder.id))}#coming-back">Where to begin again</a>.</p>
<nav class="neighbours" aria-label="Neighbouring rungs">${below && html`<a rel="prev" href="${linkTo(address, rungAddress(ladder.id, below.from))}">Easier: ${titleOf(ladder, below.from)}</a>`}${next && html`<a rel="next" href="${linkTo(address, rungAddress(ladder.id, next.id))}">Harder: ${next.title}</a>`}</nav>
${rungWorking(rung, ladder, address)}`,
  }
}
