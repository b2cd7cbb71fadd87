import type { Found, Rule } from './rule.ts'

/** Fewer letters than this say nothing: "fog" stops a session on the water. Taste. */
const FEWEST_LETTERS = 3
/** A note to oneself, to be filled in later. */
const NOTE = /^\P{Letter}*(tb[ad]|xxx|todo|fixme)\P{Letter}*$/iu
/** Where one sign is a syllable or a word, it counts for two letters. */
const WHOLE = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}]/gu

const lettersIn = (line: string): number => [/\p{Letter}/gu, WHOLE].reduce((count, sign) => count + (line.match(sign) ?? []).length, 0)

const saysNothing = (line: string): boolean => lettersIn(line) < FEWEST_LETTERS || NOTE.test(line)
const sayNothing = (lines: readonly string[]): boolean => lines.length === 0 || lines.some(saysNothing)

export const stopSignsAreGiven: Rule = {
  name: 'stop-signs-are-given',
  says: 'Every ladder says when to stop, and who should ask a clinician first.',
  why: 'The work can hurt someone. Whoever reads one ladder may read no other page.',

  check({ stop, ask_first, rungs }) {
    const found: Found[] = []
    if (sayNothing(stop)) found.push({ path: ['stop'], message: 'There is no stop sign here, or one that says nothing. Write when to stop, such as: sharp or spreading pain.' })
    if (sayNothing(ask_first)) found.push({ path: ['ask_first'], message: 'This does not say who should ask first. Name who sees a clinician before starting.' })
    for (const { id, cautions } of rungs) {
      if (cautions.some(saysNothing)) found.push({ path: ['rungs', id, 'cautions'], message: 'A caution here says nothing. Write what to watch for, or take it out.' })
    }
    return found
  },
}
