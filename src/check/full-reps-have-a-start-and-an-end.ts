import type { Rule } from './rule.ts'

export const fullRepsHaveAStartAndAnEnd: Rule = {
  name: 'full-reps-have-a-start-and-an-end',
  says: 'A full rep says where it starts and where it ends.',
  why: 'Two coaches count the same repetitions only if they count from the same place to the same place.',

  check: ({ rungs }) =>
    rungs.flatMap(({ id, title, words }) => {
      const steps = words?.full_rep
      if (!steps || steps.length === 0) return []
      const absent = ['Start:', 'End:'].filter((word) => !steps.some((step) => step.startsWith(word)))
      return absent.length > 0 ? [{ path: ['rungs', id, 'full-rep'], message: `The full rep of "${title}" has no line that begins with ${absent.map((word) => `"${word}"`).join(' or ')}. Write both as a list.` }] : []
    }),
}
