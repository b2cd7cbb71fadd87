import { linkTo, type Address } from './address.ts'
import { html, type Html, type Part } from './html.ts'
import { isMass, ladderRoom, rungRoom, type OwnRung } from './own-room.ts'
import type { Units } from './tongue.ts'

/** What a page's own numbers are of: a ladder, or one rung of it. */
export type OwnOf = { readonly ladder: string; readonly rung?: string; readonly rungs: readonly OwnRung[] }

/** Rungs of the longest ladder that keeps room: below more of them nobody sees anything move, and whoever waits for the first sight waits less. Chosen by us. */
const KEEP_ROOM = 16

/** Asks the device whether it keeps a body before anything below is drawn. */
const kept = (from: Address): Html => html`<script src="${linkTo(from, '/assets/kept.js')}"></script>
`

/** The room that its numbers take, there before they are. */
const roomOf = ({ rung, rungs }: OwnOf): Html => html`<div class="own-room" aria-hidden="true">${rung === undefined ? ladderRoom(rungs) : rungs.map(rungRoom)}</div>`

const number = (id: string, label: string, height?: 'cm' | 'ft-in'): Html =>
  html`<span class="own-part"${height && html` data-height="${height}"`}><label for="own-${id}">${label}</label><input id="own-${id}" inputmode="decimal" size="6"></span>`

/** A choice of units, the handbook's own chosen. */
const unit = (id: string, label: string, units: readonly (readonly [value: string, says: string, of: Units])[]): Part => (tongue) =>
  html`<span class="own-part"><label for="own-${id}">${label}</label><select id="own-${id}">${units.map(([value, says, of]) => html`<option value="${value}"${of === tongue.units && of === 'imperial' && html` selected`}>${says}</option>`)}</select></span>`

/**
 * The form for a reader's own body, hidden until a script shows it. Its fields have no names: even sent by itself it would carry nothing.
 * Without scripts the tables for a few body masses and heights stand as they are.
 */
export function ownNumbers(from: Address, of?: OwnOf): Html {
  const room = of && of.rungs.length <= KEEP_ROOM ? of : undefined
  return html`<section class="own" id="own-numbers" data-pagefind-ignore hidden${of && html` data-file="${linkTo(from, `/data/ladders/${of.ladder}.json`)}"`}${of?.rung !== undefined && html` data-rung="${of.rung}"`}${of && of.rungs.some(isMass) && html` data-lifted`}>
${room && kept(from)}<h2 id="own">Your own numbers</h2>
<div class="own-shown">${room && roomOf(room)}<div id="own-figures"></div></div>
<details><summary>Give your body mass and height</summary>
<form autocomplete="off" novalidate>
<div class="own-row">${number('mass', 'Body mass')}${unit('mass-unit', 'Unit', [['kg', 'kg', 'metric'], ['lb', 'lb', 'imperial']])}</div>
<div class="own-row">${number('cm', 'Height', 'cm')}${number('feet', 'Height, feet', 'ft-in')}${number('inches', 'inches', 'ft-in')}${unit('height-unit', 'Unit', [['cm', 'cm', 'metric'], ['ft-in', 'ft and in', 'imperial']])}</div>
<fieldset id="own-rack" hidden><legend>What you have to load</legend>
<div class="own-row">${number('bar', 'Bar, kg')}<span class="own-part own-wide"><label for="own-plates">Plates, kg</label><input id="own-plates"></span>${number('pairs', 'Pairs of each')}</div></fieldset>
<p class="own-row"><button>Show my numbers</button><button type="button" id="own-forget">Forget my body</button></p>
<p class="about">Kept on this device and sent to nobody. Mass or height may be left out: an average body stands in for what is not given. All of it is an estimate.</p>
</form></details>
<p id="own-says" role="status"></p>
</section>`
}
