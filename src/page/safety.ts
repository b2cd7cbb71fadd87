import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { rungPart } from '../ladder/translation.ts'
import { inBoth } from './both-units.ts'
import { langOf } from './in-original.ts'
import { inlineProse } from './prose.ts'
import type { Address } from './address.ts'
import { html, raw, type Html } from './html.ts'

const lines = (texts: readonly string[], from: Address, lang?: Html): Html => html`<ul${lang}>${texts.map((text) => html`
<li>${inlineProse(text, from)}</li>`)}
</ul>`

/** Cautions as written, then as computed; the latter are the program's own words. */
const care = (written: readonly string[], computed: readonly string[], from: Address, lang: Html | undefined): Html => html`<ul>${written.map((text) => html`
<li${lang}>${inlineProse(text, from)}</li>`)}${computed.filter((text) => !written.includes(text)).map((text) => html`
<li>${inBoth(text)}</li>`)}
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
  const written = [...new Set(rung?.cautions ?? [])]
  return html`<section class="safety" aria-labelledby="safety"${rung && raw(' data-pagefind-ignore')}><h2 id="safety">Safety</h2>
<p class="watch">${supervisionText(rung?.supervision ?? ladder.supervision)}</p>
${written.length + computed.length > 0 && html`<h3>Take care</h3>${care(written, [...new Set(computed)], from, rung && langOf(ladder, rungPart(rung.id)))}`}
<h3>Stop when</h3>${lines(ladder.stop, from, langOf(ladder, 'stop'))}
<h3>Ask a clinician first</h3>${lines(ladder.ask_first, from, langOf(ladder, 'ask_first'))}
</section>`
}
