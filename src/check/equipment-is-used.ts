import type { MeasuredLadder } from '../measure/measure.ts'
import { kitWords, oneOfMany } from './kit.ts'
import { proseOf } from './prose.ts'
import type { Rule } from './rule.ts'

/** Every word a ladder's coach reads, each once. */
const wordsOf = (ladder: MeasuredLadder): string[] => {
  const ofRungs = ladder.rungs.flatMap(({ title, equipment, cautions, form, first_side }) => [title, ...equipment, ...cautions, ...form, first_side ?? ''])
  return [...new Set(kitWords([...ladder.form, ...ladder.stop, ...ofRungs, ...proseOf(ladder).map(({ text }) => text)].join(' ')))]
}

/** Fewer letters than this make a word like any other: of, by, up. */
const WORD = 3
/** A part of a compound word. Taste. */
const PART = 4

/** True where a word of the prose is the word for a thing, one or many of it, or one of the two is a compound of the other. */
function speaksOf(said: string, word: string): boolean {
  if (said.startsWith(word.replace(/(es|s)$/, '')) || oneOfMany(said) === oneOfMany(word)) return true
  if (/[^\p{Script=Latin}\d]/u.test(word)) return said.includes(word) // scripts that join an article to the word, or set no spaces
  const isPart = said.length >= PART && word.length - said.length >= WORD && (word.startsWith(said) || word.endsWith(said))
  return isPart || (word.length >= PART && said.endsWith(word))
}

/** "two benches" speaks of a bench: any word of three letters or more will do, or any where there is none so long. */
function isSpokenOf(thing: string, prose: readonly string[]): boolean {
  const words = kitWords(thing)
  const long = words.filter((word) => word.length >= WORD)
  return (long.length > 0 ? long : words).some((word) => prose.some((said) => speaksOf(said, word)))
}

export const equipmentIsUsed: Rule = {
  name: 'equipment-is-used',
  says: 'What is listed as equipment is spoken of somewhere in the ladder.',
  why: 'A list that holds more than is used is not read the next time.',

  check(ladder) {
    if (ladder.rungs.every(({ words }) => words === undefined)) return []
    const prose = wordsOf(ladder)
    return ladder.equipment.flatMap((thing, index) => (isSpokenOf(thing, prose) ? [] : [{ path: ['equipment', index], message: `"${thing}" is listed, but no rung speaks of it. Take it out, or say where it is used.` }]))
  },
}
