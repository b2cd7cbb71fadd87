import { figureText } from '../quantity/figure.ts'
import { isMissing } from '../quantity/outcome.ts'
import type { Rule } from './rule.ts'

/** Equivalent fall heights quoted in the design of jumps: benign, suggested, most. Units cm. Source minetti1998, levy2015. */
const BENIGN_CM = 50
const SUGGESTED_CM = 100

export const landingsStayWithinLimits: Rule = {
  name: 'landings-stay-within-limits',
  says: 'A landing as hard as a fall from 50 cm has a coach watching, one from 100 cm a coach qualified for it.',
  why: 'Half a metre is quoted as benign and a metre as a suggested limit in the design of jumps (Minetti 1998, Levy 2015).',

  check: ({ supervision, rungs }) =>
    rungs.flatMap(({ title, outcome, supervision: own }, index) => {
      if (isMissing(outcome) || outcome.quantity.name !== 'equivalent fall height') return []
      const watching = own ?? supervision
      const hard = outcome.load.mid
      const enough = hard < BENIGN_CM || watching === 'qualified coach' || (hard < SUGGESTED_CM && watching === 'coach')
      const needed = hard < SUGGESTED_CM ? 'coach' : 'qualified coach'
      return enough ? [] : [{ path: ['rungs', index], message: `"${title}" lands as hard as a fall from ${figureText(hard, 'cm')}, with supervision: ${watching}. Lower it, or write supervision: ${needed}.` }]
    }),
}
