import type { Rule } from './rule.ts'

export const entriesDifferFromTheStandard: Rule = {
  name: 'entries-differ-from-the-standard',
  says: 'An entry that a rung gives for itself says something the ladder’s standard does not.',
  why: 'An entry that repeats the standard looks like an exception, and goes stale when the standard changes.',

  check: ({ standard, rungs }) =>
    rungs.flatMap(({ title, entry }, index) => {
      const given = Object.entries(entry).filter(([, value]) => value !== undefined)
      const same = given.length > 0 && given.every(([key, value]) => standard[key as keyof typeof standard] === value)
      return same ? [{ path: ['rungs', index, 'entry'], message: `The entry of "${title}" says what the standard says already. Take it out.` }] : []
    }),
}
