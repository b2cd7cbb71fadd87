import { isMissing } from '../quantity/outcome.ts'
import type { Change, Comparison, Weight } from '../compare/change.ts'
import { editionKind } from '../compare/compare.ts'
import type { MeasuredCurriculum } from '../measure/measure.ts'
import { linkTo, type Address } from './address.ts'
import { besideLine, changeLine, subjectOf, type Telling } from './change-line.ts'
import { html, say, type Html } from './html.ts'
import { saidNow } from './said-now.ts'
import type { SitePage } from './site-page.ts'

/** What came with one edition, or why that cannot be said. Newest first in a list. */
export type EditionChanges = {
  readonly edition: string
  readonly on: string | undefined
  readonly note: string | undefined
  readonly since: string
  readonly comparison: Comparison | { readonly missing: string }
  /** True where only the handbook's own files of the edition before were kept: what it extends is taken as it is now. */
  readonly own_only: boolean
  /** Where that edition itself can still be read. */
  readonly kept: Address | undefined
  /** True where only its own files were kept. */
  readonly kept_own_only: boolean
}

/** What an edition is, to those who use it. */
export const EDITION_SAYS: Record<Weight | 'no change', string> = {
  're-placing': 'Look at your rung again: criteria or loads have changed.',
  'to judge': 'Read what was said otherwise: whether it changes your rung is for you to judge.',
  growth: 'There is more to choose from; your rung is what it was.',
  wording: 'Some words have changed; your rung is what it was.',
  'no change': 'Nothing has changed.',
}

const CHANGES = '/changes/'

/** Words in other languages: hundreds in an edition that brings one. They are counted; a review tells them one by one. */
export const isTranslation = ({ kind, unsafe }: Change): boolean => kind.startsWith('translation-') && !unsafe

function list(all: readonly Change[], telling: Telling): Html {
  const changes = all.filter((change) => !isTranslation(change))
  const translations = all.length - changes.length
  return html`<ul>${changes.map((change) => {
    const beside = besideLine(change, telling)
    return html`
<li>${change.unsafe && html`<strong>Safety:</strong> `}${subjectOf(change, telling)}: ${changeLine(change, telling)}${beside && html`<br><span class="source">${beside}</span>`}</li>`
  })}${translations > 0 && html`
<li>${translations} translations are new, gone or said otherwise.</li>`}
</ul>`
}

function section({ edition, on, note, since, comparison, own_only, kept, kept_own_only }: EditionChanges, telling: Telling): Html {
  const id = `edition-${edition.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`
  const head = html`<h2 id="${id}">${say`Edition ${edition}`}${on !== undefined && html` <span class="source">${on}</span>`}</h2>
${note !== undefined && html`<p>${note}</p>`}
${kept !== undefined && html`<p><a href="${linkTo(CHANGES, kept)}">Read edition ${edition} as it was</a>${kept_own_only && ', over what it extends as that is today'}</p>`}`
  if ('missing' in comparison) return html`<section>${head}<p class="no-figure">What changed since ${since} cannot be said: ${comparison.missing}</p></section>`
  const moved = comparison.followed.filter(({ before, after }) => before?.number !== undefined && after?.number !== undefined)
  const others = comparison.followed.filter((change) => !moved.includes(change))
  return html`<section>${head}
<p>Since ${since}: ${EDITION_SAYS[editionKind(comparison)]}</p>
${own_only && html`<p class="source">Compared are the files of this handbook alone; the curriculum it extends is taken as it is today.</p>`}
${comparison.typed.length > 0 && html`<h3>What was changed</h3>${list(comparison.typed, telling)}`}
${moved.length > 0 && html`<h3>Numbers that moved</h3>${list(moved, telling)}`}
${others.length > 0 && html`<h3>What follows</h3>${list(others, telling)}`}
</section>`
}

/** Changes between editions, the newest first: the same comparison that a reviewer sees. */
export function changesPage(curriculum: MeasuredCurriculum, editions: readonly EditionChanges[]): SitePage {
  const telling: Telling = { from: CHANGES, curriculum, said: saidNow(curriculum), original: curriculum.handbook.languages[0] ?? 'en' }
  return {
    address: CHANGES,
    title: 'What has changed',
    description: say`What changed from edition to edition of ${curriculum.handbook.title}, with every number that moved.`,
    found: { kind: 'page' },
    body: html`<h1>What has changed</h1>
<p class="lead">This is edition ${curriculum.handbook.edition}. ${editions.length === 0 ? 'No earlier edition is listed.' : 'What was typed and what follows from it are told apart.'}</p>
${editions.map((each) => section(each, telling))}`,
  }
}

export const isTold = (changes: EditionChanges): changes is EditionChanges & { comparison: Comparison } => !isMissing(changes.comparison)
