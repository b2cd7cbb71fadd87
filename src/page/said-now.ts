import type { MeasuredCurriculum } from '../measure/measure.ts'
import { stands, type Translated, type Words } from '../ladder/translation.ts'
import { asIs, html, type Part } from './html.ts'

/** Words of a coach as a page shows them, and the language they are in where it is not the page's. */
export type Shown = { readonly text: string; readonly language?: string }

/** What is shown for words a coach wrote, in this edition or an earlier one. */
export type SaidNow = (text: string) => Shown

/** As markup that says which language it is in. */
export const markedAs = ({ text, language }: Shown): Part => (language === undefined ? asIs(text) : html`<span lang="${language}">${asIs(text)}</span>`)

/**
 * How a page says words of a coach that it did not find in the curriculum itself: as their translation stands today, by the
 * whole or line by line; else as they were written, marked as the language they are in.
 */
export function saidNow({ handbook, ladders, pages, words }: MeasuredCurriculum): SaidNow {
  const [original = 'en'] = handbook.languages
  const language = [...ladders, ...pages].find(({ spoken }) => spoken)?.spoken?.language
  if (language === undefined) return (text) => ({ text })
  const now = new Map(words?.get(language))
  for (const { translations = [] } of [...ladders, ...pages]) for (const [text, said] of pairsIn(translations, language)) now.set(text, said)
  const lines = (text: string): readonly string[] | undefined => {
    const said = text.split('\n').map((line) => now.get(line))
    return said.every((line) => line !== undefined) ? said : undefined
  }
  return (text) => {
    const said = now.get(text) ?? lines(text)?.join('\n')
    return said === undefined ? { text, language: original } : { text: said }
  }
}

/** Each text of the original, and what stands for it. */
const pairsIn = (translations: readonly Translated[], language: string): [string, string][] =>
  translations.flatMap((one) => (one.language === language ? one.parts.flatMap((part) => (stands(part) && part.said !== undefined ? pairsOf(part.words, part.said) : [])) : []))

function pairsOf(text: Words, said: Words): [string, string][] {
  if (typeof text === 'string' || typeof said === 'string') return typeof text === 'string' && typeof said === 'string' ? [[text, said]] : []
  const other = said as Readonly<Record<string, Words>>
  return Object.entries(text).flatMap(([key, inside]: [string, Words]) => (other[key] === undefined ? [] : pairsOf(inside, other[key])))
}
