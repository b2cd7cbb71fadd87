import { sources } from '../load/sources.ts'
import { comeBack } from '../measure/come-back.ts'
import { html, say, type Html, type Words } from './html.ts'

/** Weeks off that are told apart. Longer than half a year is for a coach, as any long break is. */
const WEEKS = Array.from({ length: 27 }, (_, weeks) => weeks)

/** Stretches of weeks off after which the same is said. */
function stretches(): { readonly from: number; readonly to: number; readonly begin: string; readonly less_percent: readonly number[] }[] {
  const all: { from: number; to: number; begin: string; less_percent: readonly number[] }[] = []
  for (const weeks of WEEKS) {
    const { begin, less_percent } = comeBack(weeks)
    const last = all.at(-1)
    if (last && last.begin === begin && last.less_percent.length === less_percent.length) last.to = weeks
    else all.push({ from: weeks, to: weeks, begin, less_percent })
  }
  return all
}

const weeksOff = (from: number, to: number): Words => (from === 0 ? say`less than ${to + 1} weeks` : to === WEEKS.length - 1 ? say`${from} weeks or more` : say`${from} to ${to} weeks`)

/** Where to begin on a ladder after weeks off, and how much less to do at first. */
export const comingBack = (): Html => html`<section><h2 id="coming-back">Coming back after weeks off</h2>
<div class="scroll" tabindex="0" role="region" aria-labelledby="coming-back"><table>
<thead><tr><th scope="col">Weeks off</th><th scope="col">Begin on</th><th scope="col">Sets and repetitions in the first weeks</th></tr></thead>
<tbody>${stretches().map(({ from, to, begin, less_percent }) => html`
<tr><th scope="row">${weeksOff(from, to)}</th><td>${begin}</td><td>${less_percent.length === 0 ? 'as before, a few repetitions short of your last' : say`at least ${less_percent.slice(0, -1).join(', ')} and ${less_percent.at(-1) ?? ''} % less in weeks 1 to ${less_percent.length}`}</td></tr>`)}
</tbody></table></div>
<p class="source">Volume: ${sources.caterisano2019.cite} (${sources.caterisano2019.seen}). Where to begin is common practice. After an illness, an injury or an operation ask a clinician first.</p></section>`
