import { isMissing } from '../quantity/outcome.ts'
import type { Unit } from '../quantity/unit.ts'
import { isNumberKey } from '../load/model.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import type { MissingRung } from '../measure/missing-rung.ts'
import { ladderAddress, linkTo, rungAddress } from './address.ts'
import { figure, titleOf, workingOf } from './figures.ts'
import { amount, html, type Html, type Words } from './html.ts'
import type { SitePage } from './site-page.ts'

const MAP = '/movement-map/'
const LONG = 1000

/** Ladders whose loads are of one kind stand on one scale. */
type Scale = { readonly quantity: string; readonly unit: Unit; readonly end: number; readonly ladders: readonly MeasuredLadder[] }

type Loaded = { readonly rung: MeasuredRung; readonly mid: number }

const loadedIn = ({ rungs }: MeasuredLadder, quantity: string, unit: Unit): Loaded[] =>
  rungs.flatMap((rung) => (!isMissing(rung.outcome) && rung.outcome.quantity.name === quantity && rung.outcome.quantity.unit === unit ? [{ rung, mid: rung.outcome.load.mid }] : []))

/** One scale for each kind of load there is, in the order the ladders come. */
function scales(ladders: readonly MeasuredLadder[]): Scale[] {
  const kinds = new Map<string, { quantity: string; unit: Unit }>()
  for (const { rungs } of ladders) for (const { outcome } of rungs) if (!isMissing(outcome)) kinds.set(`${outcome.quantity.name} ${outcome.quantity.unit}`, { quantity: outcome.quantity.name, unit: outcome.quantity.unit })
  return [...kinds.values()].map(({ quantity, unit }) => {
    const own = ladders.filter((ladder) => loadedIn(ladder, quantity, unit).length > 0)
    return { quantity, unit, ladders: own, end: Math.max(...own.flatMap((ladder) => loadedIn(ladder, quantity, unit).map(({ mid }) => mid))) }
  })
}

function row(ladder: MeasuredLadder, { quantity, unit, end }: Scale): Html {
  const loaded = loadedIn(ladder, quantity, unit).toSorted((a, b) => a.mid - b.mid)
  const aimLast = loaded.toSorted((a, b) => Number(a.rung.id === ladder.aim) - Number(b.rung.id === ladder.aim))
  const marks = aimLast.map(({ rung, mid }) => html`<rect class="${rung.id === ladder.aim ? 'rail-aim' : 'rail-mark'}" x="${((LONG - 15) * (mid / end)).toFixed(0)}" y="${rung.id === ladder.aim ? 1 : 6}" width="15" height="${rung.id === ladder.aim ? 22 : 12}"/>`)
  const [first, last] = [loaded[0], loaded.at(-1)]
  const said = (at: Loaded | undefined): Html | undefined => at && html`<a href="${linkTo(MAP, rungAddress(ladder.id, at.rung.id))}">${at.rung.title}</a> ${figure(amount(at.mid, unit), workingOf(MAP, ladder.id, at.rung.id))}`
  return html`
<li><a class="ladder-name" href="${linkTo(MAP, ladderAddress(ladder.id))}">${ladder.title}</a>
<svg class="rail" viewBox="0 0 ${LONG} 24" preserveAspectRatio="none" aria-hidden="true"><rect class="rail-ground" x="0" y="10" width="${LONG}" height="4"/>${marks}</svg>
<p class="ladder-span">from ${said(first)}${last !== first && html` to ${said(last)}`}</p></li>`
}

/** How a coach is told to set up the rung that is missing, in the handbook's own units. */
function missingSays({ key, value, says }: MissingRung, { model }: MeasuredRung): Words {
  const spec = model.keys[key]
  return spec && isNumberKey(spec) && spec.instructs !== undefined ? { says: spec.instructs.split('{}'), holes: [amount(value, spec.unit)] } : says
}

/** Steps that suit some bodies and not others, and steps too steep: where the curriculum wants a rung. */
function gaps(ladders: readonly MeasuredLadder[]): Html {
  const steep = ladders.flatMap((ladder) => ladder.rungs.flatMap((rung) => rung.steps.flatMap((step) => (step.kind === 'uncertain' || step.kind === 'too steep' ? [{ ladder, rung, step }] : []))))
  if (steep.length === 0) return html`<p>No step that can be told is uncertain or too steep.</p>`
  return html`<ul>${steep.map(({ ladder, rung, step }) => {
    const between = step.missing_rung !== undefined && !isMissing(step.missing_rung) && html`, between them: ${missingSays(step.missing_rung, rung)}`
    return html`
<li><a href="${linkTo(MAP, rungAddress(ladder.id, rung.id))}">${ladder.title}: ${titleOf(ladder, step.from)} to ${rung.title}</a>, ${isMissing(step.kind) ? '' : step.kind}${between}</li>`
  })}
</ul>`
}

/** All ladders side by side, each on the scale of its own kind of load, and where the curriculum has gaps. */
export function movementMap(ladders: readonly MeasuredLadder[]): SitePage {
  const skill = ladders.filter(({ rungs }) => rungs.every(({ outcome }) => isMissing(outcome)))
  return {
    address: MAP,
    title: 'All ladders side by side',
    description: 'Every ladder on the scale of its kind of load, and where the curriculum has gaps.',
    found: { kind: 'page' },
    body: html`<h1>All ladders side by side</h1>
<p class="lead">Loads of one kind stand on one scale; loads of different kinds cannot be compared. Each mark is a rung, the tall one the aim.</p>
${scales(ladders).map((scale) => html`<section><h2>${scale.quantity}, up to ${amount(scale.end, scale.unit)}</h2><ul class="ladders">${scale.ladders.map((ladder) => row(ladder, scale))}
</ul></section>
`)}${skill.length > 0 && html`<section><h2>Skills, without a load</h2><ul>${skill.map((ladder) => html`
<li><a href="${linkTo(MAP, ladderAddress(ladder.id))}">${ladder.title}</a></li>`)}
</ul></section>`}
<section><h2 id="gaps">Where a rung is wanted</h2>${gaps(ladders)}</section>`,
  }
}
