import { isSafety } from '../ladder/translation.ts'
import type { Found, Rule } from './rule.ts'
import { begun, called, pathOf, type Spoken } from './translated.ts'

const found = (one: Spoken): Found[] =>
  begun(one).flatMap((translated) =>
    translated.parts
      .filter((part) => part.differs !== undefined && !isSafety(part))
      .map((part) => ({ path: pathOf(translated, part), message: `${called(part)} has in ${translated.language} ${part.differs ?? ''}. Say the same things, in the same order.` })),
  )

export const translationsKeepTheirShape: Rule = {
  name: 'translations-keep-their-shape',
  says: 'A list or table has as many entries in every language, in the same order.',
  why: 'An entry that is missing in one language is a cue, fault or step that its readers never get.',

  check: found,

  checkPage: found,
}
