import { compareText } from '../ladder/finding.ts'
import type { MeasuredLadder } from '../measure/measure.ts'
import { ladderAddress, linkTo, rungAddress } from './address.ts'
import { html } from './html.ts'
import type { SitePage } from './site-page.ts'

const EQUIPMENT = '/equipment/'

/** A thing, the ladders that list it, and the rungs that name it themselves. */
type Use = { readonly thing: string; readonly ladders: readonly MeasuredLadder[] }

/** Everything any ladder lists, in order of the alphabet. */
function uses(ladders: readonly MeasuredLadder[]): Use[] {
  const things = [...new Set(ladders.flatMap(({ equipment }) => equipment.map((thing) => thing.toLowerCase())))].toSorted(compareText)
  return things.map((thing) => ({ thing, ladders: ladders.filter(({ equipment }) => equipment.some((each) => each.toLowerCase() === thing)) }))
}

/** The rungs that name this thing as theirs; a ladder whose rungs name nothing uses it throughout. */
const rungsWith = ({ rungs }: MeasuredLadder, thing: string) => rungs.filter(({ equipment }) => equipment.some((each) => each.toLowerCase() === thing))

const anchor = (thing: string): string => `with-${thing.normalize('NFKD').replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '')}`

/** What can be done with what is at hand: by equipment, and without any. */
export function equipmentPage(ladders: readonly MeasuredLadder[]): SitePage {
  const link = (ladder: MeasuredLadder) => html`<a href="${linkTo(EQUIPMENT, ladderAddress(ladder.id))}">${ladder.title}</a>`
  const bare = ladders.filter(({ equipment }) => equipment.length === 0)
  const all = uses(ladders)
  const ids = all.map(({ thing }) => anchor(thing))
  return {
    address: EQUIPMENT,
    title: 'By equipment',
    description: 'What can be done with what is at hand: every ladder by the equipment it uses.',
    found: { kind: 'page' },
    body: html`<h1>By equipment</h1>
<p class="lead">What can be done with what is at hand. Each thing leads to the ladders that use it; local rules and the maker’s instructions come first.</p>
${bare.length > 0 && html`<section><h2 id="with-nothing">Nothing at all</h2><ul>${bare.map((ladder) => html`
<li>${link(ladder)}</li>`)}
</ul></section>`}
<dl class="equipment">${all.map(
      ({ thing, ladders: with_ }, index) => html`
<dt id="${ids.indexOf(ids[index] ?? '') === index ? ids[index] : `${ids[index]}-${index}`}">${thing}</dt>
${with_.map((ladder) => {
  const rungs = rungsWith(ladder, thing)
  return html`<dd>${link(ladder)}${rungs.length > 0 && html`: ${rungs.map(({ id, title }, nth) => html`${nth > 0 && ', '}<a href="${linkTo(EQUIPMENT, rungAddress(ladder.id, id))}">${title}</a>`)}`}</dd>
`
})}`,
    )}
</dl>`,
  }
}
