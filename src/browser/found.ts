import { isMissing } from '../quantity/outcome.ts'
import { placement, type Placeable, type Placement } from '../measure/place.ts'
import { repsText } from '../measure/predict.ts'
import type { LadderData } from '../page/data.ts'
import { bodyText, type Body } from './body.ts'
import { element, linkElement } from './element.ts'
import { notComputed } from './own-rung.ts'

/** One strict set: on which rung, how many repetitions, and how many more were possible. */
export type StrictSet = { readonly on: string; readonly reps: number; readonly reserve_reps: number }

const repsWord = (text: string): string => `${text} ${text === '1' ? 'rep' : 'reps'}`

/** Whose loads they are, in words. */
function whose(body: Body | undefined): string {
  if (body?.height) return `Loads are computed for ${bodyText(body)}, with every rung set up as it is written.`
  return 'Loads are computed for an average body; give your height below for your own.'
}

function verdictOf({ highest, rungs }: Placement, { rungs: of, address, first_reps }: LadderData, root: string): (Node | string)[] {
  if (isMissing(highest)) return ['No rung to work on is named: ', notComputed(highest.missing), '.']
  const title = of.find(({ id }) => id === highest)?.title ?? highest
  const predicted = rungs.find(({ id }) => id === highest)?.predicted
  const fewest = predicted === undefined || isMissing(predicted) ? undefined : predicted.low === predicted.high || predicted.low === 'beyond' ? repsText(predicted) : String(predicted.low)
  return ['Work on ', linkElement('found-rung', `${root}${address.slice(1)}${highest}/`, title), `, the heaviest rung on which even the fewest to expect, ${repsWord(fewest ?? '')}, reach the ${repsWord(String(first_reps ?? ''))} to begin with.`]
}

function tableOf({ rungs }: Placement, ladder: LadderData, { on }: StrictSet, highest: string | undefined, root: string): HTMLElement {
  const heads = ['Rung', 'Reps to expect'].map((name) => {
    const head = element('th', '', name)
    head.scope = 'col'
    return head
  })
  const rows = ladder.rungs.map((rung) => {
    const predicted = rungs.find(({ id }) => id === rung.id)?.predicted
    const name = element('th', '', linkElement('', `${root}${rung.address.slice(1)}`, rung.title))
    name.scope = 'row'
    if (rung.id === highest) name.append(' ', element('span', 'badge', 'work on this'))
    if (rung.demand.length > 0) name.append(element('span', 'about', `Also: ${rung.demand.join(', ')}`))
    const says = predicted === undefined || isMissing(predicted) ? [notComputed(predicted?.missing ?? 'it was not asked')] : [linkElement('figure', `${root}${rung.address.slice(1)}#working`, repsWord(repsText(predicted))), rung.id === on ? ', as done' : '']
    return element('tr', rung.id === highest ? 'found' : '', name, element('td', '', ...says))
  })
  return element('table', 'placed', element('thead', '', element('tr', '', ...heads)), element('tbody', '', ...rows))
}

/** What one strict set says of every rung of its ladder, whose loads for this body are there: the rung to work on, and a table, made when it is asked for. */
export function foundNodes(ladder: LadderData, placeable: Placeable, set: StrictSet, body: Body | undefined, root: string): { readonly verdict: (Node | string)[]; readonly nodes: () => Node[] } {
  const placed = placement(placeable, set.on, set.reps, set.reserve_reps)
  if (isMissing(placed)) return { verdict: [notComputed(placed.missing)], nodes: () => [] }
  return {
    verdict: verdictOf(placed, ladder, root),
    nodes: () => [
      tableOf(placed, ladder, set, isMissing(placed.highest) ? undefined : placed.highest, root),
      element('p', 'about', `${whose(body)} People differ by more than these intervals: a coach who sees you move decides.`),
    ],
  }
}
