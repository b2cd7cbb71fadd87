import { figureText, intervalText } from '../quantity/figure.ts'
import { isMissing, type Outcome } from '../quantity/outcome.ts'
import { interval, type Spread } from '../quantity/spread.ts'
import { STANDARD_GRAVITY, type Unit } from '../quantity/unit.ts'
import type { Work } from '../quantity/work.ts'
import { floorMarks, markRows } from '../load/floor-marks.ts'
import { carriedBeside, isShare, kilogramsOf, limbs, sharesOfMass } from '../load/limbs.ts'
import type { Inputs, Load } from '../load/model.ts'
import { athleteOf, bodyText, massKg, massText, type Body } from './body.ts'
import { element, linkElement } from './element.ts'
import { loadInTurn, middleFor, type RungData } from './own-loads.ts'
import { platesText, RACK, rackText } from './rack.ts'
import './more-words.ts'

/** A name and its figures, for a list of facts. */
export type Fact = { readonly name: string; readonly says: readonly (Node | string)[] }

const factList = (facts: readonly Fact[]): HTMLElement => element('dl', 'facts', ...facts.map(({ name, says }) => element('div', '', element('dt', '', name), element('dd', '', ...says))))

export const notComputed = (why: string): HTMLElement => element('span', 'no-figure', `not computed: ${why}`)

/** A figure with its unit, leading to its derivation. */
const figure = (text: string, working: string): HTMLElement => linkElement('figure', working, text)

/** "28.3 kg, 277 N", each leading to its derivation. */
export function forceFigures(mass_kg: number, unit: 'kg' | 'lb' | undefined, working: string): (Node | string)[] {
  return [figure(massText(mass_kg, unit), working), ', ', figure(figureText(mass_kg * STANDARD_GRAVITY, 'N'), working)]
}

/** The limb a load is named after: "hand" of "force on one working hand". */
const limbOf = ({ quantity }: Load): string => quantity.name.split(' ').at(-1) ?? 'limb'

/** Kilograms and newtons on the working limb, on the other where it takes less, and on both. */
function shareFigures(rung: RungData, load: Load, body: Body, working: string): Node[] {
  if (!body.mass) return [element('p', '', 'Give your body mass as well, and this load is shown in kilograms and newtons.')]
  const [own_kg, limb, { one, other, both }] = [massKg(body.mass), limbOf(load), limbs(rung, load.load)]
  const unit = body.mass.unit
  const of = (spread: Spread): (Node | string)[] => forceFigures(kilogramsOf(spread.mid, load.quantity.unit, own_kg), unit, working)
  const { low, high } = interval(one)
  const span = intervalText({ low: kilogramsOf(low, load.quantity.unit, own_kg), high: kilogramsOf(high, load.quantity.unit, own_kg) }, 'kg')
  const beside: Fact[] = [...(both ? [{ name: `both ${limb}s together`, says: of(both) }] : []), ...(other ? [{ name: `the other ${limb}`, says: of(other) }] : [])]
  return [
    element('p', 'own-load', ...of(one).filter((part) => part !== ', ').flatMap((part) => [part, ' ']), element('span', '', `${both && !other ? `on each ${limb}` : load.quantity.name}; ${span} over all bodies tried`)),
    ...(beside.length > 0 ? [factList(beside)] : []),
  ]
}

/** The share at the reader's own height beside that of the average body. */
function heightFigure(rung: RungData, load: Load, working: string): Node[] {
  const average = middleFor(rung, athleteOf(undefined))
  if (isMissing(average)) return []
  const [own, usual] = [figureText(load.load.mid, load.quantity.unit), figureText(average.mid, load.quantity.unit)]
  return [element('p', '', 'At your height the set-up as it is written loads ', figure(own, working), own === usual ? ', as it does an average body.' : `; an average body ${usual}.`)]
}

/** Where hands and feet go at the reader's own height, so that the rung is the load it is meant to be. */
function ownMarks(rung: RungData, stature_cm: number, working: string): Node[] {
  const marks = floorMarks(rung.inputs as Inputs, athleteOf(undefined), [stature_cm]) // asked of the model, which refuses what is no input
  const mark = isMissing(marks) ? marks : marks[0]?.[1]
  if (mark === undefined) return []
  const rows: Outcome<Fact[]> = isMissing(mark) ? mark : markRows(rung.inputs as Inputs).map(({ name, of }) => ({ name, says: [figure(of(mark), working)] }))
  return [element('h3', '', 'Marks for your height, so that it loads you as it does an average body'), isMissing(rows) ? element('p', '', notComputed(rows.missing)) : factList(rows)]
}

/** What a load that is no share of the body lays on it all the same. */
function besideFigures(load: Load, body: Body, working: string): Node[] {
  if (!body.mass) return []
  const own_kg = massKg(body.mass)
  const moment: Fact[] = load.quantity.unit === 'N·m/kg' ? [{ name: load.quantity.name, says: [figure(`${(load.load.mid * own_kg).toFixed(0)} N·m`, working)] }] : []
  const carried = carriedBeside(load).flatMap(({ name, unit, value }): Fact[] => (isMissing(value) ? [] : [{ name, says: forceFigures(kilogramsOf(value.mid, unit, own_kg), body.mass?.unit, working) }]))
  const facts = [...moment, ...carried]
  return [facts.length > 0 ? factList(facts) : element('p', '', 'This rung has no load that depends on your body.')]
}

/** True where a rung is a mass that can be put on a bar. */
export const isLifted = ({ load }: RungData): boolean => 'unit' in load && (load.unit as Unit) === 'kg'

/** What to put on a bar for a rung in kilograms. */
export function plates(load: Load, body: Body | undefined): Node[] {
  const rack = body?.rack ?? RACK
  return [
    factList([{ name: `on a bar, for ${figureText(load.load.mid, 'kg')}`, says: [platesText(load.load.mid, rack)] }]),
    element('p', 'about', `From ${rackText(rack)}${body?.rack ? '' : ': a rack chosen by us; give your own below'}.`),
  ]
}

/** What is hung on or taken off, where a rung gives it as a share of body mass. */
function addedFigures(rung: RungData, body: Body, working: string): Node[] {
  const { mass } = body
  if (!mass) return []
  const facts = sharesOfMass(rung).map(([key, percent]): Fact => ({ name: key.replace('_percent', '').replaceAll('_', ' '), says: [figure(massText(kilogramsOf(percent, '% of body mass', massKg(mass)), mass.unit), working)] }))
  return facts.length > 0 ? [factList(facts)] : []
}

/** Everything a rung is for one reader; it can be left off after each load that is computed. */
export function* rungFigures(rung: RungData, body: Body | undefined, working: string): Work<Node[]> {
  const load = yield* loadInTurn(rung, athleteOf(body))
  yield
  if (isMissing(load)) return body ? [element('p', '', notComputed(load.missing))] : []
  if (isLifted(rung)) return plates(load, body)
  if (!body || bodyText(body) === '') return []
  const known = [...(isShare(load.quantity.unit) ? shareFigures(rung, load, body, working) : besideFigures(load, body, working)), ...addedFigures(rung, body, working)]
  if (rung.model !== 'supported-body' || !body.height) return known
  yield
  const height = heightFigure(rung, load, working)
  yield
  return [...known, ...height, ...ownMarks(rung, 100 * athleteOf(body).stature_m, working)]
}
