import { isMissing, type Outcome } from '../quantity/outcome.ts'
import { exactly } from '../quantity/spread.ts'
import { isShare, kilogramsOf, limbs } from '../load/limbs.ts'
import { bodyText, massKg, type Body } from './body.ts'
import { element, linkElement } from './element.ts'
import { forceFigures, isLifted, notComputed } from './own-rung.ts'
import type { Middle, RungData } from './own-loads.ts'
import { platesText, RACK, rackText } from './rack.ts'

function cell(span: number, ...within: readonly (Node | string)[]): HTMLTableCellElement {
  const made = element('td', '', ...within)
  made.colSpan = span
  return made
}

function cells(rung: RungData, middle: Outcome<Middle>, body: Body | undefined, working: string): HTMLTableCellElement[] {
  if (isMissing(middle)) return [cell(2, notComputed(middle.missing))]
  if (isLifted(rung)) return [cell(2, platesText(middle.mid, body?.rack ?? RACK))]
  if (!isShare(middle.unit) || !body?.mass) return [cell(2, '–')]
  const { mass } = body
  const { one, both } = limbs(rung, exactly(middle.mid))
  const of = (mid: number): (Node | string)[] => forceFigures(kilogramsOf(mid, middle.unit, massKg(mass)), mass.unit, working).map((part) => (part === ', ' ? ' ' : part))
  return [cell(1, ...of(one.mid)), cell(1, ...(both ? of(both.mid) : ['–']))]
}

function head(...names: readonly string[]): HTMLElement {
  return element('thead', '', element('tr', '', ...names.map((name) => {
    const made = element('th', '', name)
    made.scope = 'col'
    return made
  })))
}

function row(rung: RungData, middle: Outcome<Middle>, body: Body | undefined): HTMLElement {
  const name = element('th', '', linkElement('', `${rung.id}/`, rung.title))
  name.scope = 'row'
  return element('tr', '', name, ...cells(rung, middle, body, `${rung.id}/#working`))
}

/** Every rung of a ladder with its load for one reader, as a table; nothing where neither their body nor a rack says anything of it. */
export function ladderFigures(rungs: readonly RungData[], middles: readonly Outcome<Middle>[], body: Body | undefined): Node[] {
  const lifted = rungs.some(isLifted)
  const shared = rungs.some(({ load }) => 'unit' in load && isShare(load.unit))
  if (!lifted && !(shared && body?.mass)) return body && bodyText(body) !== '' ? [element('p', '', shared ? 'Give your body mass as well, and each load is shown in kilograms and newtons.' : 'No load of this ladder is a share of your body; each rung’s page says what there is.')] : []
  const table = element('table', 'own-table', shared ? head('Rung', 'On one working limb', 'On both together') : head('Rung', 'On a bar'), element('tbody', '', ...rungs.flatMap((rung, index) => middles[index] === undefined ? [] : [row(rung, middles[index], body)])))
  const scroll = element('div', 'scroll', table)
  scroll.tabIndex = 0
  scroll.setAttribute('role', 'region')
  scroll.setAttribute('aria-labelledby', 'own')
  return [scroll, ...(lifted ? [element('p', 'about', `From ${rackText(body?.rack ?? RACK)}${body?.rack ? '' : ': a rack chosen by us; give your own below'}.`)] : [])]
}
