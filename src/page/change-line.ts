import { rules } from '../check/index.ts'
import type { Change, Held, Named, Side } from '../compare/change.ts'
import { bothShort, differenceText, SAYS, short } from '../compare/say.ts'
import { modelNamed } from '../load/index.ts'
import type { MeasuredCurriculum, MeasuredLadder } from '../measure/measure.ts'
import { ladderAddress, linkTo, pageAddress, rungAddress, type Address } from './address.ts'
import { nameWords } from './change-names.ts'
import { asIs, html, joined, type Html, type Part } from './html.ts'
import { markedAs, type SaidNow } from './said-now.ts'

/** What a change is told with: the page it stands on, the curriculum as its readers have it, how words of a coach are said to them, and the language those were written in. */
export type Telling = { readonly from: Address; readonly curriculum: MeasuredCurriculum; readonly said: SaidNow; readonly original: string }

/** "Press-up, Hands on the floor", led to where it still stands. */
export function subjectOf({ subject: { ladder, rung, page }, called = {} }: Change, telling: Telling): Html {
  const { curriculum, from, said } = telling
  if (page !== undefined) {
    const still = curriculum.pages.find(({ id }) => id === page)
    return html`Page ${still ? html`<a href="${linkTo(from, pageAddress(page))}">${still.title}</a>` : markedAs(said(called.page ?? page))}`
  }
  if (ladder === undefined) return html`The handbook`
  const whole = ladderOf(ladder, curriculum)
  if (!whole) return html`${markedAs(said(called.ladder ?? ladder))}`
  const name = html`<a href="${linkTo(from, ladderAddress(ladder))}">${whole.title}</a>`
  return rung === undefined ? name : html`${name}, ${rungIn(ladder, { id: rung, title: called.rung ?? rung }, telling)}`
}

const ladderOf = (id: string | undefined, { ladders }: MeasuredCurriculum): MeasuredLadder | undefined => ladders.find((ladder) => ladder.id === id)

/** A rung by its title: led to where it still stands, else as it was called. */
function rungIn(ladder: string | undefined, { id, title }: Named, { curriculum, from, said }: Telling): Part {
  const whole = ladderOf(ladder, curriculum)
  const still = whole?.rungs.find((rung) => rung.id === id)
  return whole && still ? html`<a href="${linkTo(from, rungAddress(whole.id, id))}">${still.title}</a>` : markedAs(said(title))
}

/** How a name that ends in a rung reads. */
const OF: Readonly<Record<string, (rung: Part) => Html>> = {
  'heir:': (rung) => html`heir: ${rung}`,
  'step from': (rung) => html`step from ${rung}`,
  'first reps from': (rung) => html`first reps from ${rung}`,
  'least entry from': (rung) => html`least entry from ${rung}`,
  'time on the rung from': (rung) => html`time on the rung from ${rung}`,
}

function nameOf({ name, of, example, subject }: Change, telling: Telling): Part {
  if (of) return OF[name.slice(0, -of.id.length).trim()]?.(rungIn(subject.ladder, of, telling))
  return example ? html`after ${example.reps} strict reps with ${example.reserve_reps} in reserve` : nameWords(name, ladderOf(subject.ladder, telling.curriculum)?.rungs.find(({ id }) => id === subject.rung)?.model)
}

/** Kinds whose sides are the title of what they are about. */
const TITLED = /^(ladder|rung|page)-(added|withdrawn)$|^page-reworded$/

/** One thing a side holds. */
function heldOf(held: Held, { subject: { ladder }, name }: Change, telling: Telling): Part {
  const { said, from } = telling
  if ('rung' in held) return rungIn(ladder, held.rung, telling)
  if ('gone' in held) return html`${rungIn(ladder, held.gone, telling)} → ${rungIn(ladder, held.heir, telling)}`
  if ('note' in held) return html`“${markedAs(said(held.note))}” (${asIs(held.by)}: ${markedAs(said(held.because))})`
  if ('reviewer' in held) return html`${asIs(held.reviewer)}, ${held.on}`
  if ('words' in held) return name === 'languages' ? ({ language }) => asIs(new Intl.DisplayNames([language], { type: 'language', fallback: 'code' }).of(held.words) ?? held.words) : markedAs(said(held.words))
  const rule = rules.find((each) => each.name === held.rule)
  const link = rule ? html`<a href="${linkTo(from, `/checks/${rule.name}/`)}">${rule.says}</a>` : html`<code>${asIs(held.rule)}</code>`
  const because = markedAs(said(held.because))
  return held.on ? html`until ${held.until}, on ${rungIn(ladder, held.on, telling)}: “${because}” (${link})` : html`until ${held.until}: “${because}” (${link})`
}

/** A side that is no prose: a number, a phrase of ours, a list. */
function plainSide(side: Side, change: Change, telling: Telling): Part {
  if (change.name === 'model') return modelNamed(side.text)?.says ?? side.text
  if (change.kind === 'rung-renamed') return html`<code>${asIs(side.text)}</code>`
  const { holds = [] } = side
  return holds.length > 0 ? joined(holds.map((held) => heldOf(held, change, telling)), change.name === 'languages' || change.name === 'equipment' || change.name === 'after' ? ', ' : '; ') : side.text
}

const isPlain = ({ number, ours, holds }: Side): boolean => number !== undefined || ours === true || holds !== undefined

/** Both sides, or the one there is; prose is cut where it is long. */
function sidesOf(change: Change, telling: Telling): readonly Part[] {
  const { before, after, kind } = change
  if (TITLED.test(kind)) return []
  if (before && after && !isPlain(before) && !isPlain(after)) {
    const [was, is] = [telling.said(before.text), telling.said(after.text)]
    const long = bothShort(before.text, after.text)
    if (was.language !== is.language && (long[0] !== before.text || long[1] !== after.text)) return long.map((text) => markedAs({ text, language: telling.original })) // where they part is seen in the language both are in
    const [one, other] = bothShort(was.text, is.text)
    return [markedAs({ ...was, text: one }), markedAs({ ...is, text: other })]
  }
  return [before, after].flatMap((side) => {
    if (side === undefined) return []
    const prose = telling.said(side.text)
    return [isPlain(side) ? plainSide(side, change, telling) : markedAs({ ...prose, text: short(prose.text) })]
  })
}

/** The change in one line: its kind, what it is of, and both its sides. */
export function changeLine(change: Change, telling: Telling): Part {
  const name = nameOf(change, telling)
  const sides = sidesOf(change, telling)
  const both = change.before !== undefined && change.after !== undefined
  const shown = [joined(sides, ' → '), both && asIs(differenceText(change))]
  const said = [...(name === undefined ? [] : [name]), ...(sides.length === 0 ? [] : [change.before !== undefined && !both ? html`was: ${shown}` : shown])]
  return said.length === 0 ? SAYS[change.kind] : [SAYS[change.kind], ': ', joined(said, ', ')]
}

/** What stands below a change: why a rung was withdrawn, or an athlete whom the change places elsewhere. */
export function besideLine({ kind, example, subject: { ladder, rung: id } }: Change, telling: Telling): Part {
  if (kind === 'rung-withdrawn') return ladderOf(ladder, telling.curriculum)?.retired?.find((gone) => gone.id === id)?.because
  if (!example) return undefined
  const { on, stood, stands, titles, reps, reserve_reps } = example
  const rung = (id: string, title: string): Part => rungIn(ladder, { id, title }, telling)
  return html`an athlete of average build with ${reps} strict reps on ${rung(on, titles.on)} and ${reserve_reps} in reserve: was ready for ${rung(stood, titles.stood)}, is ready for ${rung(stands, titles.stands)}`
}
