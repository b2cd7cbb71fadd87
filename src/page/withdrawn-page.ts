import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { ladderAddress, linkTo, rungAddress } from './address.ts'
import { fromPrinted } from './cards-page.ts'
import { html, say } from './html.ts'
import type { SitePage } from './site-page.ts'

/** The rung that takes the place of a withdrawn one: its heir, or the heir's own where that is gone too. */
function heirOf({ rungs, retired = [] }: MeasuredLadder, id: string): MeasuredRung | undefined {
  const heirs = new Map(retired.map((gone) => [gone.id, gone.heir]))
  let now = id
  for (let turn = 0; turn <= retired.length; turn += 1) {
    const rung = rungs.find((each) => each.id === now)
    if (rung) return rung
    now = heirs.get(now) ?? now
  }
  return undefined
}

/** One page for each rung that was withdrawn, at the address it had: old cards and links still lead there. */
export function withdrawnPages(ladder: MeasuredLadder, edition: string): SitePage[] {
  const gone = new Map((ladder.retired ?? []).flatMap((each) => (ladder.rungs.some(({ id }) => id === each.id) ? [] : [[each.id, each.because]])))
  return [...gone].map(([id, because]) => {
    const address = rungAddress(ladder.id, id)
    const heir = heirOf(ladder, id)
    return {
      address,
      ladder: ladder.id,
      title: say`A withdrawn rung (${ladder.title})`,
      description: say`A rung of ${ladder.title} that was withdrawn: why, and what takes its place.`,
      body: html`<p class="trail"><a href="${linkTo(address, ladderAddress(ladder.id))}">${ladder.title}</a></p>
<h1>This rung was withdrawn</h1>
<p class="lead">${heir ? html`In its place: <a href="${linkTo(address, rungAddress(ladder.id, heir.id))}">${heir.title}</a>. Read there what it takes to enter before you train on it.` : html`Look for another on <a href="${linkTo(address, ladderAddress(ladder.id))}">its ladder</a>.`}</p>
<p class="amended">Why it was withdrawn: ${because}</p>
${fromPrinted(address, edition, ladder.id, id)}`,
    }
  })
}
