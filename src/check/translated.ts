import type { Path } from '../ladder/finding.ts'
import { isSafety, type Part, type Translated, type TranslatedPart } from '../ladder/translation.ts'

/** A ladder or page, as far as its translations go. */
export type Spoken = { readonly id: string; readonly title: string; readonly translations?: readonly Translated[] }

/** Each other language in which a file of it is there. */
export const begun = ({ translations = [] }: Spoken): readonly Translated[] => translations.filter(({ there }) => there)

/** Where a part of a translation stands, or would: in the topmost layer's file, or, where that has none of it, in the original. */
export function pathOf({ language, own: file }: Translated, { key, own, standing }: TranslatedPart): Path {
  if (own) return ['translations', language, ...key.split('/')]
  if (standing === 'missing' && file) return ['translations', language]
  const [first = '', ...rest] = key.split('/')
  return isTop(key) ? [key] : ['rungs', first.replace(/^rung:/, ''), ...rest]
}

const isTop = (key: string): boolean => ['title', 'because', 'intro', 'form', 'stop', 'ask_first', 'summary'].includes(key)

/** What a part is called in a sentence. */
export function called(part: Part): string {
  if (part.key === 'stop') return 'stop signs'
  if (part.key === 'ask_first') return 'reasons to ask first'
  return isSafety(part) ? `cautions of "${part.key}"` : `"${part.key}"`
}

/** How to sign for a translation that was read again. */
export const SEAL = (language: string, { id }: Spoken): string => `rungbook translate ${language} ${id} --seal`

/** Entries of one list that the other lacks, as often as it lacks them. */
export function lacking(those: readonly string[], these: readonly string[]): string[] {
  const left = new Map<string, number>()
  for (const one of these) left.set(one, (left.get(one) ?? 0) + 1)
  return those.filter((one) => {
    const count = left.get(one) ?? 0
    left.set(one, count - 1)
    return count <= 0
  })
}
