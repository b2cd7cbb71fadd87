import type { Found, Rule } from './rule.ts'

/** Fewer letters than this say nothing. Taste. */
const FEWEST_LETTERS = 4

const sayNothing = (lines: readonly string[]): boolean => lines.length === 0 || lines.some((line) => (line.match(/\p{Letter}/gu) ?? []).length < FEWEST_LETTERS)

export const stopSignsAreGiven: Rule = {
  name: 'stop-signs-are-given',
  says: 'Every ladder says when to stop, and who should ask a clinician first.',
  why: 'The work can hurt someone. Whoever reads one ladder may read no other page.',

  check({ stop, ask_first }) {
    const found: Found[] = []
    if (sayNothing(stop)) found.push({ path: ['stop'], message: 'There is no stop sign here, or one that says nothing. Write when to stop, such as: sharp or spreading pain.' })
    if (sayNothing(ask_first)) found.push({ path: ['ask_first'], message: 'This does not say who should ask first. Name who sees a clinician before starting.' })
    return found
  },
}
