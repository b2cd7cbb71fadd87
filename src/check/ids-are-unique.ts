import type { Rule } from './rule.ts'

export const idsAreUnique: Rule = {
  name: 'ids-are-unique',
  says: 'No two rungs of a ladder share an id.',
  why: 'The id is the address of the rung: on its page, on a wall card, in an athlete’s log.',

  check: ({ rungs }) =>
    rungs.flatMap(({ id, title }, index) => {
      const first = rungs.findIndex((other) => other.id === id)
      return first < index ? [{ path: ['rungs', index, 'id'], message: `"${title}" has the id "${id}", which "${rungs[first]?.title}" has already. Give it another.` }] : []
    }),
}
