import { isMissing } from '../quantity/outcome.ts'
import { interval, type Spread } from '../quantity/spread.ts'
import { sources } from '../load/sources.ts'
import { isListKey, isNumberKey, type Key } from '../load/model.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { repsText } from '../measure/predict.ts'
import type { Step } from '../measure/step.ts'
import { linkTo, rungAddress, type Address } from './address.ts'
import { inBoth } from './both-units.ts'
import { notComputed, titleOf } from './figures.ts'
import { amount, asIs, between, html, type Html } from './html.ts'

/** An input as it was asked: a number with its unit, pairs with both of theirs. */
function valueText(key: Key, value: unknown): string {
  if (isNumberKey(key)) return `${String(value)} ${key.unit}`
  if (!isListKey(key) || !Array.isArray(value)) return String(value)
  return value.map((entry: unknown) => (Array.isArray(entry) ? entry.map((part, index) => `${String(part)} ${key.units[index] ?? ''}`).join(' at ') : `${String(entry)} ${key.units[0] ?? ''}`)).join('; ')
}

/** Where every number of a rung comes from: what was asked, the equations, what is assumed, each step, and the sources. */
export function rungWorking(rung: MeasuredRung, ladder: MeasuredLadder, from: Address): Html {
  const given: Readonly<Record<string, unknown>> = rung.load
  const inputs = Object.entries(rung.model.keys).flatMap(([name, key]) => {
    const value = given[name] ?? ('default' in key ? key.default : undefined)
    return value === undefined ? [] : [html`
<tr><th scope="row"><code>${asIs(name)}</code></th><td>${inBoth(valueText(key, value))}</td><td>${key.says}${given[name] === undefined && ' (unless given)'}</td></tr>`]
  })
  const { outcome } = rung
  return html`<section class="working" data-pagefind-ignore><h2 id="working">Where the numbers come from</h2>
<p>Model: <a href="${linkTo(from, `/sources/#model-${rung.model.name}`)}">${rung.model.name}</a>, ${rung.model.says}.</p>
${inputs.length > 0 && html`<div class="scroll" tabindex="0" role="region" aria-label="Inputs"><table><thead><tr><th scope="col">input</th><th scope="col">value</th><th scope="col">meaning</th></tr></thead><tbody>${inputs}</tbody></table></div>`}
${isMissing(outcome) ? html`<p>${notComputed(outcome.missing)}</p>` : html`<ol class="lines">${outcome.working.map(({ says, formula, numbers }) => html`
<li>${says}<br><code>${formula}</code><br><code>${numbers}</code></li>`)}
</ol>
<p>Assumed:</p><ul>${outcome.assumes.map((assumption) => html`
<li>${inBoth(assumption)}</li>`)}
</ul>`}
${rung.steps.map((step) => stepWorking(step, ladder, from))}
<p>Sources:</p><ul>${rung.model.cites.map(({ source, at }) => html`
<li>${sources[source].cite}; ${at} (${sources[source].seen})</li>`)}
</ul></section>`
}

/** "1.12 times, 1.10 to 1.14 over the bodies tried"; one number where all bodies are alike. */
function timesText(times: Spread): Html {
  const [low, high] = [interval(times).low, interval(times).high].map((end) => end.toFixed(2))
  return low === high ? html`${times.mid.toFixed(2)} times` : html`${times.mid.toFixed(2)} times, ${low} to ${high} over the bodies tried`
}

function stepWorking({ from: below, times, predicted, computed_entry, block, entry }: Step, ladder: MeasuredLadder, from: Address): Html {
  const line = (name: string, value: Html): Html => html`
<li>${name}: ${value}</li>`
  const whys = new Set([times, predicted, computed_entry, block].map((outcome) => (isMissing(outcome) ? outcome.missing : undefined)))
  const [why] = whys
  if (whys.size === 1 && why !== undefined) return html`<p>The step from <a href="${linkTo(from, rungAddress(ladder.id, below))}">${titleOf(ladder, below)}</a>: ${notComputed(why)}</p>`
  return html`<p>The step from <a href="${linkTo(from, rungAddress(ladder.id, below))}">${titleOf(ladder, below)}</a>:</p><ul>${line('heavier', isMissing(times) ? notComputed(times.missing) : timesText(times))}${line(
    'first reps',
    isMissing(predicted) ? notComputed(predicted.missing) : html`${repsText(predicted)} reps, from ${entry.amount?.value ?? ''} done and ${entry.reserve_reps} in reserve, by ${predicted.formulas.join(', ')}: p⁻¹(q₂ / q₁ × p(r))`,
  )}${line('least entry', isMissing(computed_entry) ? notComputed(computed_entry.missing) : html`${amount(computed_entry, 'reps')}`)}${line('time on the rung', isMissing(block) ? notComputed(block.missing) : html`${between(block.sessions[0], block.sessions[1], 'sessions')}, one rep more a set each`)}
</ul>`
}
