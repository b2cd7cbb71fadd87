import { compareText } from '../ladder/finding.ts'
import type { MeasuredCurriculum, MeasuredLadder } from '../measure/measure.ts'
import { ladderAddress, linkTo, pageAddress } from './address.ts'
import { FIND_YOUR_RUNG } from './find-your-rung-page.ts'
import { titleOf } from './figures.ts'
import { capital, html, say, type Html } from './html.ts'
import { spanRail } from './rail.ts'
import type { SitePage } from './site-page.ts'

const HOME = '/'

function ladderRow(ladder: MeasuredLadder): Html {
  const { rail, words } = spanRail(ladder)
  return html`
<li><a class="ladder-name" href="${linkTo(HOME, ladderAddress(ladder.id))}">${ladder.title}</a>
<p class="ladder-aim">${ladder.rungs.length} rungs, aim: ${titleOf(ladder, ladder.aim)}</p>
${rail}
<p class="ladder-span">${words}</p></li>`
}

/** Every movement and its ladders at a glance, with how the loads span. */
export function homePage({ handbook, ladders, pages }: MeasuredCurriculum): SitePage {
  const movements = [...new Set(ladders.map(({ movement }) => movement))].toSorted(compareText)
  return {
    address: HOME,
    title: handbook.title,
    description: say`${handbook.organisation}: ${ladders.length} ladders, from the easiest version of a movement to the hardest, with what it takes to step up.`,
    body: html`<h1>${handbook.title}</h1>
<p class="lead">Find the movement, then the rung you can do in perfect form. Each ladder shows what must be shown before the next rung, how much each rung loads, and when to stop. <a href="${linkTo(HOME, FIND_YOUR_RUNG)}">Find your rung</a> from one set.</p>
<div class="movements">${movements.map(
  (movement) => html`<section class="movement"><h2>${capital(movement)}</h2>
<ul class="ladders">${ladders.filter((ladder) => ladder.movement === movement).map(ladderRow)}
</ul></section>
`,
)}</div>
<p class="ways"><a href="${linkTo(HOME, '/movement-map/')}">All ladders side by side</a> · <a href="${linkTo(HOME, '/equipment/')}">By equipment</a></p>
<section><h2 id="pages">Read this first</h2>
<ul class="plain-list">${pages.map(({ id, title, summary }) => html`
<li><a href="${linkTo(HOME, pageAddress(id))}">${title}</a>: ${summary}</li>`)}
</ul></section>`,
  }
}
