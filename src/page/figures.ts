import { figureText } from '../quantity/figure.ts'
import { isMissing, type Outcome } from '../quantity/outcome.ts'
import { interval, type Spread } from '../quantity/spread.ts'
import type { Unit } from '../quantity/unit.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import type { Step, StepKind } from '../measure/step.ts'
import { linkTo, rungAddress, type Address } from './address.ts'
import { inBoth } from './both-units.ts'
import { amount, between, html, say, type Amount, type Html, type Words } from './html.ts'

/** A number with its unit, leading to the place where it is derived. */
export const figure = (text: Words, href: string): Html => html`<a class="figure" href="${href}">${text}</a>`

/** Where the numbers of a rung are derived. */
export const workingOf = (from: Address, ladder: string, rung: string): string => linkTo(from, `${rungAddress(ladder, rung)}#working`)

/** "not computed: why", set apart from numbers. */
export const notComputed = (why: string): Html => html`<span class="no-figure">not computed: ${inBoth(why)}</span>`

/** "72 % of body weight" */
export const spreadText = (value: Spread, unit: Unit): Amount => amount(value.mid, unit)

/** "70 to 74 % of body weight", or nothing where everybody is alike. */
export function spanText(value: Spread, unit: Unit): Amount | undefined {
  const { low, high } = interval(value)
  return figureText(low, unit) === figureText(high, unit) ? undefined : between(low, high, unit)
}

/** The load a rung is known by, in words: on one working limb. */
export function loadText({ outcome }: MeasuredRung): Words {
  return isMissing(outcome) ? say`not computed: ${outcome.missing}` : spreadText(outcome.load, outcome.quantity.unit)
}

/** What each kind of step means to an athlete, in a few words. */
export const STEP_WORDS: Record<StepKind, string> = {
  comfortable: 'a comfortable step',
  uncertain: 'a step that suits some bodies and not others: try it with a coach',
  'too steep': 'a step too steep to take at once',
  level: 'no heavier: the demand is what is new',
  backwards: 'lighter than the rung before',
}

export const kindText = (kind: Outcome<StepKind>): Words => (isMissing(kind) ? say`step not computed: ${kind.missing}` : STEP_WORDS[kind])

/** The step from the rung above in the file, or the first there is. */
export const mainStep = ({ steps }: MeasuredRung): Step | undefined => steps[0]

/** Titles by id, for steps that name the rung they come from. */
export const titleOf = ({ rungs }: MeasuredLadder, id: string): string => rungs.find((rung) => rung.id === id)?.title ?? id
