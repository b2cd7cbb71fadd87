import { rounded } from '../quantity/figure.ts'
import { isMissing } from '../quantity/outcome.ts'
import { models } from '../load/index.ts'
import { agreement, differences, heldOut, publishedValues, type Measured } from '../load/measured-bodies.ts'
import { isChoiceKey, isListKey, isNumberKey, type Key } from '../load/model.ts'
import { repetitionFormulas } from '../load/repetitions.ts'
import { sources } from '../load/sources.ts'
import { placeOf } from '../ladder/finding.ts'
import type { Stretch } from '../ladder/curriculum.ts'
import type { MeasuredPage } from '../measure/measure.ts'
import { pageAddress } from './address.ts'
import { asIs, html, type Html } from './html.ts'
import { pageParts } from '../read/parts.ts'
import { untranslatedNote } from './in-original.ts'
import { prose } from './prose.ts'
import type { SitePage } from './site-page.ts'

/** The body in stretches of one language each. */
const stretchesOf = ({ stretches, spoken, body }: MeasuredPage): readonly Stretch[] => stretches ?? [{ language: spoken?.language ?? '', body }]

/** A hand-written page. */
export function contentPage(page: MeasuredPage): SitePage {
  const address = pageAddress(page.id)
  return {
    address,
    title: page.title,
    description: page.summary,
    found: { kind: 'page' },
    body: html`<h1>${page.title}</h1>
${untranslatedNote(page, pageParts(page).map(({ name }) => name))}<div class="prose">${stretchesOf(page).map(({ language, body }) => {
      const said = prose(body, { from: address, first_heading: 2, file: () => placeOf(page.places, ['body']).file })
      return page.spoken === undefined || language === page.spoken.language ? said : html`<div lang="${language}">${said}</div>`
    })}</div>`,
  }
}

const keyText = (key: Key): string => (isNumberKey(key) ? `${key.min} to ${key.max} ${key.unit}` : isChoiceKey(key) ? key.choices.join(', ') : isListKey(key) ? `${key.list}, ${key.min} to ${key.max} ${key.units.join(', ')}` : 'words')

/** Every model with what it asks and cites, every formula, every source and how far it was followed back. */
export function sourcesPage(): SitePage {
  return {
    address: '/sources/',
    title: 'Where the numbers come from',
    description: 'Every load model, what it asks and gives, its sources, and how far each source was followed back.',
    found: { kind: 'page' },
    body: html`<h1>Where the numbers come from</h1>
<p class="lead">Loads are computed from the set-up of a rung by published models, for an average body and for the spread of bodies around it. On each rung’s page, every number leads to its own derivation. None of them is a measurement of you.</p>
<section><h2 id="models">Load models</h2>${models.map(modelEntry)}</section>
<section><h2 id="repetitions">Repetitions and load</h2>
<p>How many repetitions a load allows is taken from every formula that holds at that many repetitions; the interval spans their answers. People differ more than formulas do.</p>
<ul>${repetitionFormulas.map(({ name, source, reps }) => html`
<li>${name}: holds from ${reps.min} to ${reps.max} repetitions. ${sources[source].cite}.</li>`)}
</ul></section>
${agreementSection()}
<section><h2 id="list">All sources</h2>
<ul>${Object.entries(sources).map(([key, source]) => html`
<li id="source-${key}">${source.cite}${'doi' in source && html`, DOI ${source.doi}`} (${source.seen})</li>`)}
</ul></section>`,
  }
}

function signed(value: number): string {
  const size = rounded(Math.abs(value), '% of body weight')
  return size === '0' ? size : `${value < 0 ? '−' : '+'}${size}`
}

/** Every published condition: measured, computed, and what is between. */
function agreementSection(): Html {
  const table = (id: string, title: string, rows: readonly Measured[]): Html => {
    const compared = agreement(rows)
    const { mean, worst } = differences(compared)
    return html`<h3 id="${id}">${title}</h3>
<p>Mean absolute difference ${mean.toFixed(1)} % of body weight, largest ${worst.toFixed(1)} % of body weight.</p>
<div class="scroll" tabindex="0" role="region" aria-labelledby="${id}"><table><thead><tr><th scope="col">condition, source</th><th scope="col">measured</th><th scope="col">computed</th><th scope="col">difference</th></tr></thead><tbody>${compared.map(
      ({ measured, computed, difference }) => html`
<tr><th scope="row">${measured.condition}, ${sources[measured.source].cite} (${sources[measured.source].seen})<br><span class="source">${measured.choices}</span></th><td>${measured.percent} %${measured.sd_percent !== undefined && ` (SD ${measured.sd_percent})`}</td><td>${isMissing(computed) ? '–' : `${rounded(computed, '% of body weight')} %`}</td><td>${isMissing(difference) ? '–' : `${signed(difference)} %`}</td></tr>`,
    )}
</tbody></table></div>`
  }
  return html`<section><h2 id="agreement">Agreement with measured bodies</h2>
<p>What laboratories measured on the hands, in % of body weight, beside what the model gives for the same condition. Laboratories differ from one another by 5 to 10 % of body weight for the same exercise. No constant was set for a single row; what had to be chosen stands under each. The limit to the grip of the feet was added after the rows with raised feet had been seen.</p>
${table('agreement-known', 'Values the model was built beside', publishedValues)}
${table('agreement-held-out', 'Values looked at only afterwards', heldOut)}</section>`
}

function modelEntry({ name, says, keys, cites }: (typeof models)[number]): Html {
  const rows = Object.entries<Key>(keys).map(([key, spec]) => html`
<tr><th scope="row"><code>${asIs(key)}</code></th><td>${keyText(spec)}</td><td>${spec.says}</td></tr>`)
  return html`<section><h3 id="model-${name}">${name}</h3><p>Gives the ${says}.</p>
${rows.length > 0 && html`<div class="scroll" tabindex="0" role="region" aria-label="What ${name} asks"><table><thead><tr><th scope="col">asks</th><th scope="col">from, to</th><th scope="col">meaning</th></tr></thead><tbody>${rows}
</tbody></table></div>`}
<ul>${cites.map(({ source, at }) => html`
<li>${sources[source].cite}; ${at}.</li>`)}
</ul></section>`
}
