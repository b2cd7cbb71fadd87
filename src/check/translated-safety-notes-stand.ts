import { isSafety, stands, type TranslatedPart } from '../ladder/translation.ts'
import type { Rule } from './rule.ts'
import { begun, called, pathOf, SEAL, type Spoken } from './translated.ts'

function message(part: TranslatedPart, language: string, one: Spoken): string {
  if (part.standing === 'missing') return `The ${called(part)} of "${one.title}" are not translated into ${language}. Translate each, in the same order.`
  if (part.standing === 'stale') return `The original ${called(part)} have changed since they were translated into ${language}. Translate them again, then: ${SEAL(language, one)}`
  if (part.differs !== undefined) return `The ${called(part)} have in ${language} ${part.differs.replace(/^in cautions /, '')}. Translate each, in the same order.`
  return `The ${called(part)} are not yet sealed in ${language}. Read them beside the original, then: ${SEAL(language, one)}`
}

export const translatedSafetyNotesStand: Rule = {
  name: 'translated-safety-notes-stand',
  says: 'Stop signs, who asks first and cautions are whole and current in every language a ladder is in.',
  why: 'Whoever reads one language reads only its safety notes. This rule cannot be silenced.',

  check: (ladder) =>
    begun(ladder).flatMap((translated) =>
      translated.parts.filter((part) => isSafety(part) && !stands(part)).map((part) => ({ path: pathOf(translated, part), message: message(part, translated.language, ladder) })),
    ),
}
