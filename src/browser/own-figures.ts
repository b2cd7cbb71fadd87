import { isMissing, type Outcome } from '../quantity/outcome.ts'
import type { LadderData } from '../page/data.ts'
import { athleteOf, type Body } from './body.ts'
import { element } from './element.ts'
import { ladderFigures } from './own-ladder.ts'
import { middlesOf } from './own-loads.ts'
import { notComputed, rungFigures } from './own-rung.ts'
import { paced } from './paced.ts'

/** The numbers of a page for one reader: of its rung, or of every rung of its ladder. */
export async function figuresOn(ladder: Outcome<LadderData>, on: string | undefined, body: Body | undefined): Promise<Node[]> {
  if (isMissing(ladder)) return [element('p', '', notComputed(ladder.missing))]
  if (on === undefined) return ladderFigures(ladder.rungs, await paced(middlesOf(ladder.rungs, athleteOf(body))), body)
  const rung = ladder.rungs.find(({ id }) => id === on)
  return rung ? paced(rungFigures(rung, body, '#working')) : []
}
