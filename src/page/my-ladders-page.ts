import type { MeasuredCurriculum, MeasuredLadder } from '../measure/measure.ts'
import { linkTo, pageAddress, type Address } from './address.ts'
import { html, type Html } from './html.ts'
import type { SitePage } from './site-page.ts'

/** Where the log is. */
export const MY_LADDERS = pageAddress('my-ladders')

/** The way from a rung's page to the log, with that rung chosen. */
export const logThisRung = (from: Address, ladder: string, rung: string): Html => html`<p class="log-this"><a href="${linkTo(from, MY_LADDERS)}?ladder=${ladder}&amp;rung=${rung}">Log this rung</a></p>`

/** Every ladder a session can be logged on, by movement. */
function ladderOptions(ladders: readonly MeasuredLadder[]): Html {
  const movements = [...new Set(ladders.map(({ movement }) => movement))]
  return html`${movements.map((movement) => html`
<optgroup label="${movement}">${ladders.filter((ladder) => ladder.movement === movement).map(({ id, title }) => html`<option value="${id}">${title}</option>`)}</optgroup>`)}`
}

const athletes = html`<section class="log-athletes"><h2 id="log-who" tabindex="-1">Athlete</h2>
<p class="log-row" id="log-choose" hidden><label for="log-athlete">Whose session</label> <select id="log-athlete" autocomplete="off"></select></p>
<details id="log-new"><summary>Add an athlete</summary>
<form id="log-add" class="log-row"><label for="log-name">Name</label> <input id="log-name" autocomplete="off" maxlength="120" required> <button>Add</button></form></details>
<p id="log-who-says" class="log-says" role="status"></p>
</section>`

const session = (ladders: readonly MeasuredLadder[]): Html => html`<section id="log-session" hidden><h2 id="log-a-session" tabindex="-1">Log a session</h2>
<form id="log-form" autocomplete="off">
<div class="log-row"><label for="log-ladder">Ladder</label> <select id="log-ladder" autocomplete="off">${ladderOptions(ladders)}</select></div>
<div id="log-fields">
<div class="log-row"><label for="log-rung">Rung</label> <select id="log-rung" autocomplete="off"></select></div>
<p id="log-asks" class="about"></p>
<fieldset id="log-sets"><legend>Sets</legend><div id="log-amounts" class="log-amounts"></div>
<p class="log-buttons"><button type="button" id="log-more">One more set</button> <button type="button" id="log-fewer">One set fewer</button> <button type="button" id="log-same" hidden>As last time</button></p></fieldset>
<fieldset><legend>Sets in which a form point was lost</legend><div id="log-out-of-form" class="log-chips"></div></fieldset>
<fieldset><legend>Pain during, 0 (none) to 10 (worst)</legend><div id="log-pain" class="log-chips"></div></fieldset>
<details id="log-besides"><summary>Another day, pain next morning, a note</summary>
<div class="log-row"><label for="log-on">Day</label> <input id="log-on" type="date" min="2000-01-01" required></div>
<div class="log-row"><label for="log-morning">Pain next morning</label> <select id="log-morning"></select></div>
<div class="log-row"><label for="log-usual">Pain on usual mornings</label> <select id="log-usual"></select></div>
<div class="log-row log-wide"><label for="log-note">Note</label> <input id="log-note" maxlength="300"></div></details>
<p class="log-buttons"><button id="log-save" class="log-chief">Save the session</button> <button type="button" id="log-leave" hidden>Leave it as it was</button></p>
</div><p id="log-form-says" class="log-says" role="status"></p></form></section>`

const files = html`<section id="log-files"><h2 id="log-file">As a file</h2>
<p class="log-buttons"><button type="button" id="log-export">Save the whole log</button> <button type="button" id="log-export-one" hidden>Save this athlete’s log</button></p>
<p class="log-row"><label for="log-import">Add the log in a file</label> <input id="log-import" type="file" accept=".json,application/json"></p>
<p class="about">Adding a file loses nothing: what is in both is kept once.</p>
<div id="log-file-says" class="log-says" role="status"></div>
</section>`

const KEYS: readonly (readonly [key: string, holds: string])[] = [
  ['ladder', 'the ladder’s short name, such as press-up; one this handbook does not have is kept as well'],
  ['rung', 'the rung’s short name; a rung withdrawn since carries its sessions to the rung that took its place'],
  ['on', 'the day, such as 2026-10-03'],
  ['unit', 'what the amounts are: reps, seconds or metres'],
  ['amounts', 'a list of 1 to 30 numbers, one a set'],
  ['sets_out_of_form', 'in how many of the sets a form point was lost'],
  ['pain_during', 'a whole number from 0 (none) to 10 (worst)'],
  ['pain_next_morning', 'the same, for the morning after; may be left out'],
  ['pain_usual', 'the same, for usual mornings; may be left out'],
  ['note', 'at most 300 letters on one line; may be left out'],
  ['edition', 'the edition of the handbook it was logged with'],
]

const EXAMPLE = `{"log": "my-ladders", "version": 1, "athletes": [
  {"name": "Isolde Farrow", "sessions": [
    {"ladder": "press-up", "rung": "floor", "on": "2026-10-03", "unit": "reps",
     "amounts": [12, 12, 11], "sets_out_of_form": 0, "pain_during": 0, "edition": "2026.2"}
  ]}
]}
`

const format = html`<details class="log-format"><summary>What stands in the file</summary>
<p>JSON in UTF-8: <code>log</code> is <code>my-ladders</code>, <code>version</code> is 1, and <code>athletes</code> is a list of at most 50, each with a <code>name</code> of at most 60 letters and its <code>sessions</code>, at most 20,000 in all. A session holds these keys and no others:</p>
<dl class="facts">${KEYS.map(([key, holds]) => html`
<div><dt><code>${key}</code></dt> <dd>${holds}</dd></div>`)}
</dl>
<pre tabindex="0" aria-label="An example of the file">${EXAMPLE}</pre></details>`

/** Where the log is kept and who can see it, in full. */
const kept = html`<section class="log-kept"><h2 id="log-stays">Where the log is</h2>
<ul>
<li>The log stays on this device. Nothing in it is sent anywhere.</li>
<li>It leaves only as a file its owner saves.</li>
<li>A shared phone shows it to everybody who uses it.</li>
<li>Clearing the browser’s data deletes it, and some browsers clear it by themselves when a site is not opened for a while. Save a file now and then.</li>
</ul></section>`

/** The log of sessions: the page holds its form and its words; a script does the rest, on the reader's device. */
export function myLaddersPage({ handbook, ladders }: MeasuredCurriculum): SitePage {
  return {
    address: MY_LADDERS,
    title: 'My ladders',
    description: 'A log of sessions that never leaves the device: what was done on which rung, and what the ladder’s rules make of it.',
    found: { kind: 'page' },
    body: html`<h1>My ladders</h1>
<p class="lead">Log a session, and see what the rules make of it: move on, hold, step back or stop. The log stays on this device; <a href="#log-stays">who can see it</a>.</p>
<p id="log-says" role="status">The log needs scripts. Without them, keep it on paper: every rung’s page gives the same rules.</p>
<div id="log-trouble" role="alert"></div>
<div id="my-ladders" data-edition="${handbook.edition}" data-root="${linkTo(MY_LADDERS, '/')}" data-pagefind-ignore hidden>
${athletes}
${session(ladders)}
<section id="log-decided" hidden></section>
<section id="log-past" hidden><h2 id="log-history" tabindex="-1">History</h2><div id="log-chart"></div><ol id="log-list" class="log-list"></ol><p id="log-older" class="log-buttons"></p><p id="log-past-says" class="log-says" role="status"></p><div id="log-table" class="log-table"></div></section>
${files}
<section id="log-manage" hidden><details><summary>Rename or delete this athlete</summary>
<p id="log-rename-says" class="about"></p>
<form id="log-rename" class="log-row"><label for="log-new-name">Another name</label> <input id="log-new-name" autocomplete="off" maxlength="120" required> <button>Rename</button></form>
<p class="log-buttons"><button type="button" id="log-delete-one">Delete this athlete</button></p>
<div id="log-delete"></div><p id="log-manage-says" class="log-says" role="status"></p></details></section>
</div>
${kept}
${format}`,
  }
}
