import type { Rule } from './rule.ts'
import { begun } from './translated.ts'

export const sharedWordsAreTranslated: Rule = {
  name: 'shared-words-are-translated',
  says: 'The movement and the equipment of a ladder have words in every language it is in.',
  why: 'They stand on many pages, and in the search, so they are said once, in a list of words.',

  check: (ladder) =>
    begun(ladder).flatMap(({ language, unworded }) =>
      unworded.length === 0 ? [] : [{ path: ['movement'], message: `words.${language}.yaml has no words for: ${unworded.join(', ')}. Write a line for each, such as "bench: banco"; a word that stays the same stands beside itself.` }],
    ),
}
