import type { Rule } from './rule.ts'

const plain = (title: string): string => title.trim().toLowerCase().replace(/\s+/g, ' ')

export const titlesAreUnique: Rule = {
  name: 'titles-are-unique',
  says: 'No two rungs of a ladder have one title.',
  why: 'Called across a room, a title is all there is.',

  check: ({ rungs }) =>
    rungs.flatMap(({ title }, index) => {
      const first = rungs.findIndex((other) => plain(other.title) === plain(title))
      return first < index ? [{ path: ['rungs', index, 'title'], message: `"${title}" is the title of two rungs. Say in one of them what is different.` }] : []
    }),
}
