import type { Rule } from './rule.ts'

/** What a line says before its colon, less bold and italics: "Start", or "Start and end" where the rep comes back to its start. */
const labels = (step: string): string[] => (/^([^:]*):/.exec(step)?.[1] ?? '').replace(/[*_]/g, '').split(/ and | & /)

export const fullRepsHaveAStartAndAnEnd: Rule = {
  name: 'full-reps-have-a-start-and-an-end',
  says: 'A full rep says where it starts and where it ends.',
  why: 'Two coaches count the same repetitions only if they count from the same place to the same place.',

  check: ({ rungs }) =>
    rungs.flatMap(({ id, title, words }) => {
      const steps = words?.full_rep
      if (!steps || steps.length === 0) return []
      const absent = ['Start:', 'End:'].filter((word) => !steps.some((step) => labels(step).some((label) => label.trim().split(/\P{Letter}/u)[0]?.toLowerCase() === word.slice(0, -1).toLowerCase())))
      return absent.length > 0 ? [{ path: ['rungs', id, 'full-rep'], message: `The full rep of "${title}" has no line that begins with ${absent.map((word) => `"${word}"`).join(' or ')}. Write both as a list.` }] : []
    }),
}
