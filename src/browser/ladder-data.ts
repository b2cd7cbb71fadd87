import { missing, type Outcome } from '../quantity/outcome.ts'
import type { LadderData } from '../page/data.ts'

const isLadder = (value: unknown): value is LadderData => typeof value === 'object' && value !== null && 'version' in value && value.version === 1 && 'rungs' in value && Array.isArray(value.rungs)

/** One ladder's data, from the handbook's own host, or why it is not to be had. */
export function ladderDataAt(address: string): Promise<Outcome<LadderData>> {
  const failed = (): Outcome<LadderData> => missing('the numbers of this ladder could not be loaded; try again with a signal')
  return fetch(address).then(async (response) => {
    const value: unknown = response.ok ? await response.json() : undefined
    return isLadder(value) ? value : failed()
  }).then((data) => data, failed)
}
