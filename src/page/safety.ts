import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { inlineProse } from './prose.ts'
import type { Address } from './address.ts'
import { html, raw, type Html } from './html.ts'

const lines = (texts: readonly string[], from: Address): Html => html`<ul>${texts.map((text) => html`
<li>${inlineProse(text, from)}</li>`)}
</ul>`

/** Who has to be there, as a sentence. */
export const supervisionText = (supervision: MeasuredLadder['supervision']): string =>
  ({
    none: 'Nobody need be there, once a coach has shown it.',
    partner: 'With a partner, never alone.',
    coach: 'Only with a coach watching.',
    'qualified coach': 'Only with a coach qualified for it.',
  })[supervision]

/** Stop signs, who asks first, who watches, and the cautions of a rung where there is one. */
export function safetyNotes(ladder: MeasuredLadder, from: Address, rung?: MeasuredRung): Html {
  const computed = rung && !('missing' in rung.outcome) ? rung.outcome.cautions : []
  const cautions = [...new Set([...(rung?.cautions ?? []), ...computed])]
  return html`<section class="safety" aria-labelledby="safety"${rung && raw(' data-pagefind-ignore')}><h2 id="safety">Safety</h2>
<p class="watch">${supervisionText(rung?.supervision ?? ladder.supervision)}</p>
${cautions.length > 0 && html`<h3>Take care</h3>${lines(cautions, from)}`}
<h3>Stop when</h3>${lines(ladder.stop, from)}
<h3>Ask a clinician first</h3>${lines(ladder.ask_first, from)}
</section>`
}
