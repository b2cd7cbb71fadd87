import type { Found, Rule } from './rule.ts'
import type { Spoken } from './translated.ts'

const found = (one: Spoken, path: Found['path']): Found[] =>
  (one.translations ?? [])
    .filter(({ there }) => !there)
    .map(({ language }) => ({ path, message: `"${one.title}" is not translated into ${language}. Begin with: rungbook translate ${language} ${one.id}` }))

export const translationsAreThere: Rule = {
  name: 'translations-are-there',
  says: 'Every ladder and page can be read in every language of the handbook.',
  why: 'A handbook that lists a language promises it. Until then the page shows the original, and says so.',

  check: (ladder) => found(ladder, ['id']),

  checkPage: (page) => found(page, []),
}
