import { asIs, html, type Html } from './html.ts'
import type { Choice } from './search-choices.ts'
import type { SearchKind } from './search-kinds.ts'
import type { SitePage } from './site-page.ts'

/** What a search begins with, so that a browser asks for all of it at once: the scripts first, which can be made ready while the files come. */
export type Opening = {
  /** How many parts the index has. */
  readonly parts: number
  /** Changes with the index: by it each part's entry is asked for. */
  readonly tag: string
  /** Scripts below the root of the handbook, modules all. */
  readonly scripts: readonly string[]
  /** Files of the index below the same, in the order they are wanted. */
  readonly files: readonly string[]
}

const NAMES: Readonly<Record<SearchKind, Html>> = { movement: html`movement`, equipment: html`equipment`, demand: html`demand` }

const list = ({ kind, values }: Choice): Html => html`
<label>${NAMES[kind]}<select name="${kind}" autocomplete="off"><option value="">any ${NAMES[kind]}</option>${values.map(([value, pages]) => html`
<option value="${asIs(value)}">${asIs(`${value} (${pages})`)}</option>`)}
</select></label>`

const scriptAhead = (name: string): Html => html`<link rel="modulepreload" href="../${asIs(name)}">
`

/** A request is answered by what was asked for ahead only where both are the same: hence the mode of `fetch`, and the tag. */
const fileAhead = (name: string, tag: string): Html => html`<link rel="preload" as="fetch" crossorigin href="../${asIs(name)}${asIs(name.endsWith('.json') ? `?ts=${tag}` : '')}">
`

/** The search page: the script fills it; without one it says where to look instead. A handbook that is not searched opens no index. */
export function searchPage(choices: readonly Choice[], opening?: Opening): SitePage {
  return {
    address: '/search/',
    title: 'Search',
    description: 'Search ladders, rungs, cues, faults and pages of this handbook.',
    body: html`${opening && [...opening.scripts.map(scriptAhead), ...opening.files.map((name) => fileAhead(name, opening.tag))]}<h1>Search</h1>
<div id="search-filters">${choices.map(list)}
</div>
<p id="search-says" role="status"><noscript>Searching needs scripts. Without them, every ladder is on the <a href="../">first page</a>.</noscript></p>
<ol id="search-results" class="results"${opening && html` data-tag="${asIs(opening.tag)}"${opening.parts > 1 && html` data-parts="${opening.parts}"`}`}></ol>`,
  }
}
