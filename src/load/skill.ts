import { missing } from '../quantity/outcome.ts'
import { loadModel } from './model.ts'

/**
 * A rung whose difficulty is not a load: criteria only.
 *
 * Units   none.
 * Missing always, with the reason.
 * Source  none is needed: nothing is claimed.
 */
export const skill = loadModel({
  name: 'skill',
  says: 'no load: the criteria alone decide',
  keys: {},
  solves: [],
  cites: [{ source: 'mechanics', at: 'nothing is computed' }],
  compute: () => missing('this rung is a skill: what counts is how it is done, not how much it loads'),
})
