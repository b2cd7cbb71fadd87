import type { Rule } from './rule.ts'

/** Words, or a count such as "3, 2, 1". */
const SAYS = /[\p{Letter}\p{Number}]/u

export const faultsHaveRemedies: Rule = {
  name: 'faults-have-remedies',
  says: 'Every fault says what is seen, why, what to say, and what to do if it stays.',
  why: 'A fault without a remedy is only a complaint.',

  check: ({ rungs }) =>
    rungs.flatMap(({ id, words }) =>
      (words?.faults ?? []).flatMap((fault, index) => {
        const empty = Object.entries({ seen: fault.seen, 'likely cause': fault.cause, say: fault.say, 'if it stays': fault.remedy }).find(([, text]) => !SAYS.test(text))
        return empty ? [{ path: ['rungs', id, 'faults', index], message: `The fault "${fault.seen}" has nothing under "${empty[0]}". Fill it in.` }] : []
      }),
    ),
}
