import type { Words } from '../ladder/translation.ts'
import { markdown } from './markdown.ts'

/** What of Markdown has to be as often in every language. */
const COUNTED = { list_item_open: ['entry in its lists', 'entries in its lists'], tr_open: ['table row', 'table rows'], dt_open: ['term', 'terms'] } as const

function counts(text: string): Map<string, number> {
  const found = new Map<string, number>()
  for (const { type } of markdown.parse(text, {})) if (Object.hasOwn(COUNTED, type)) found.set(type, (found.get(type) ?? 0) + 1)
  return found
}

const number = (count: number, [one, many]: readonly [one: string, many: string], original: number): string => `${count} ${count === 1 ? one : many}, the original ${original}`

/** What a list, a table or a list of terms cannot be without. */
const COUNTABLE = /^\s*(?:[-+*:|]|\d+[.)])|\|/m

function textDiffers(said: string, original: string): string | undefined {
  if (!COUNTABLE.test(said) && !COUNTABLE.test(original)) return undefined
  const [is, was] = [counts(said), counts(original)]
  for (const [type, what] of Object.entries(COUNTED)) if (is.get(type) !== was.get(type)) return number(is.get(type) ?? 0, what, was.get(type) ?? 0)
  return undefined
}

const isLines = (words: Words | undefined): words is readonly string[] | readonly (readonly string[])[] => Array.isArray(words)

/**
 * How a translation differs from its original in what may be counted: entries of a list, rows of a table, keys of a rung.
 *
 * Shape   two words of one part to a stretch of a sentence, "3 entries, the original 4"; undefined where they are alike.
 */
export function shapeDiffers(said: Words, original: Words): string | undefined {
  if (typeof said === 'string' && typeof original === 'string') return textDiffers(said, original)
  if (isLines(said) && isLines(original)) return said.length === original.length ? undefined : number(said.length, Array.isArray(original[0]) ? ['row', 'rows'] : ['entry', 'entries'], original.length)
  if (typeof said === 'string' || typeof original === 'string' || isLines(said) || isLines(original)) return 'something of another kind'
  for (const [key, value] of Object.entries(original)) {
    const other = said[key]
    if (other === undefined) return `no ${key}`
    const differs = shapeDiffers(other, value)
    if (differs !== undefined) return key === 'body' ? differs : `in ${key} ${differs}`
  }
  const more = Object.keys(said).find((key) => !Object.hasOwn(original, key))
  return more === undefined ? undefined : `${more}, which the original does not have`
}
