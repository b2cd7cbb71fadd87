import type { Change, ChangeKind, Comparison, Weight } from './change.ts'

/** What each kind of change is called, in a coach's words. */
export const SAYS: Record<ChangeKind, string> = {
  'ladder-added': 'new ladder',
  'ladder-withdrawn': 'ladder withdrawn',
  'rung-added': 'new rung',
  'rung-withdrawn': 'rung withdrawn',
  'rung-renamed': 'rung has a new id',
  'note-added': 'safety note added',
  'note-removed': 'safety note removed',
  'note-reworded': 'safety note said otherwise',
  'supervision-raised': 'more supervision',
  'supervision-lowered': 'less supervision',
  'criterion-raised': 'criterion raised',
  'criterion-lowered': 'criterion lowered',
  'criterion-given': 'criterion given',
  'criterion-taken-out': 'criterion taken out',
  'criterion-unit-changed': 'criterion counted in another unit',
  'criterion-reworded': 'criterion said otherwise',
  'form-point-added': 'form point added',
  'form-point-removed': 'form point removed',
  'demand-added': 'demand added',
  'demand-dropped': 'demand dropped',
  'set-up-raised': 'set-up raised',
  'set-up-lowered': 'set-up lowered',
  'set-up-changed': 'set-up changed',
  'set-up-given': 'set-up given',
  'set-up-taken-out': 'set-up taken out',
  'order-changed': 'follows another rung',
  'aim-moved': 'another aim',
  'wording-changed': 'wording',
  'list-changed': 'list changed',
  'page-added': 'new page',
  'page-withdrawn': 'page withdrawn',
  'page-reworded': 'page said otherwise',
  'handbook-changed': 'handbook.yaml changed',
  'translation-added': 'new translation',
  'translation-withdrawn': 'translation withdrawn',
  'translation-reworded': 'translation said otherwise',
  'translation-no-longer-stands': 'translation no longer stands',
  'translation-stands-again': 'translation stands again',
  'load-rises': 'load rises',
  'load-falls': 'load falls',
  'load-now-computed': 'load now computed',
  'load-no-longer-computed': 'load no longer computed',
  'step-steepens': 'step steepens',
  'step-eases': 'step eases',
  'steep-step-comes': 'new step that is too steep',
  'steep-step-goes': 'step that was too steep is gone',
  'step-now-told': 'step can now be told',
  'step-no-longer-told': 'step can no longer be told',
  'first-reps-rise': 'more first reps to expect',
  'first-reps-fall': 'fewer first reps to expect',
  'least-entry-rises': 'least entry rises',
  'least-entry-falls': 'least entry falls',
  'block-lengthens': 'more time on the rung',
  'block-shortens': 'less time on the rung',
  'placement-rises': 'placed higher',
  'placement-falls': 'placed lower',
  'seal-broken': 'criteria changed since the review',
  'seal-mended': 'review matches again',
}

/** What each weight means for the next edition. */
export const WEIGHS: Record<Weight, string> = {
  're-placing': 're-placing: an athlete placed correctly before may now be placed wrongly or unsafely',
  'to judge': 'to judge: nothing in the data says what it does; somebody has to read it',
  growth: 'growth: there is more to choose from, nobody is placed otherwise',
  wording: 'wording: nobody is placed otherwise',
}

/** Where a change is: "press-up/floor", "page safety", "handbook". */
export const whereOf = ({ subject: { ladder, rung, page } }: Change): string => (page !== undefined ? `page ${page}` : ladder === undefined ? 'handbook' : rung === undefined ? ladder : `${ladder}/${rung}`)

/** Letters of a side that are shown: long prose is named, not repeated. Chosen by us. */
const LONG = 90

/** A text as it is, or its beginning where it is long. */
export const short = (text: string): string => (text.length > LONG || text.includes('\n') ? `${text.replaceAll('\n', ' ').slice(0, LONG)}…` : text)

/** Letters of what both sides share that are shown before the place where they part. Chosen by us. */
const BEFORE_PARTING = 24

/** Both sides, long ones cut so that what differs is seen: from a few words before the place where they part. */
export function bothShort(one: string, other: string): readonly [string, string] {
  if (Math.max(one.length, other.length) <= LONG) return [short(one), short(other)]
  let same = 0
  while (same < Math.min(one.length, other.length) && one[same] === other[same]) same += 1
  const from = one.lastIndexOf(' ', same - BEFORE_PARTING) + 1
  const cut = (text: string): string => short(from === 0 ? text : `…${text.slice(from)}`)
  return same <= BEFORE_PARTING ? [short(one), short(other)] : [cut(one), cut(other)]
}

/** ", +3": what was added to a number or taken from it, where both sides are numbers of one unit. */
export function differenceText({ before, after }: Change): string {
  const difference = before?.number !== undefined && after?.number !== undefined && before.unit === after.unit ? after.number - before.number : 0
  const rounded = Number(Math.abs(difference).toFixed(1))
  return rounded === 0 ? '' : `, ${difference < 0 ? '−' : '+'}${rounded}`
}

/** "12 reps → 15 reps, +3": both sides, and the difference where both are numbers of one unit. */
export function sidesText(change: Change): string {
  const { before, after } = change
  if (before === undefined) return after === undefined ? '' : short(after.text)
  if (after === undefined) return `was: ${short(before.text)}`
  return `${bothShort(before.text, after.text).join(' → ')}${differenceText(change)}`
}

/** Names that say no more than the kind does. */
const PLAIN = new Set(['load', 'ladder', 'page', 'supervision', 'aim', 'demand'])

/** The change in one line, without its place. */
export function changeText(change: Change): string {
  const named = PLAIN.has(change.name) ? [] : [change.name]
  const said = [...named, sidesText(change)].filter((part) => part !== '').join(', ')
  return said === '' ? SAYS[change.kind] : `${SAYS[change.kind]}: ${said}`
}

/** An example athlete, as a person could check it with `explain`. */
export const exampleText = ({ example }: Change): string | undefined =>
  example && `an athlete of average build with ${example.reps} strict reps on ${example.on} and ${example.reserve_reps} in reserve: was ready for ${example.stood}, is ready for ${example.stands}`

/** How many of each weight, the weightiest first. */
export function tally({ typed, followed }: Comparison): readonly (readonly [Weight, number])[] {
  const all = [...typed, ...followed]
  return (Object.keys(WEIGHS) as Weight[]).map((weight) => [weight, all.filter((change) => change.weight === weight).length] as const)
}
