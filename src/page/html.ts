import type { Unit } from '../quantity/unit.ts'
import { escaped } from './escaped.ts'
import { ENGLISH, type Tongue } from './tongue.ts'
import { spoken, written } from './written.ts'

/**
 * Markup that is safe to put into a page, not yet written in any language. Made only by `html` and `raw`.
 *
 * What stands in a template is the interface's own English, by which `written` finds the same in another language; what stands
 * in a hole is a value.
 */
export type Html = { readonly strings: readonly string[]; readonly parts: readonly Part[] } | { readonly raw: string }

/** A sentence with holes that is no markup: a title, a description, a label. */
export type Phrase = { readonly says: readonly string[]; readonly holes: readonly Part[] }

/** A number that keeps its unit until it is written, so that it is rounded once, in the reader's units. With two ends it is an interval. */
export type Amount = { readonly unit: Unit; readonly low: number; readonly high: number }

/** A text that is no language's: an address, a name. */
export type Kept = { readonly kept: string }

/** Words of a page before they are written: finished ones, or a phrase with holes. */
export type Words = string | Phrase | Amount | Kept

/** What a hole may hold. A function is asked only when the page is written, and is told in which tongue. */
export type Part = Html | Words | number | undefined | false | readonly Part[] | ((tongue: Tongue) => Part)

/** Markup made elsewhere by code that escapes: the Markdown renderer, the drawings. It is written as it stands in every language. */
export const raw = (markup: string): Html => ({ raw: markup })

/** A template whose every hole is escaped, unless it holds markup already. Lists are joined; undefined and false are nothing. */
export const html = (strings: TemplateStringsArray, ...parts: readonly Part[]): Html => ({ strings, parts })

/** The whole of a piece of markup in English. */
export const inEnglish = (markup: Html): string => written(markup, ENGLISH)

/** A sentence with holes, for a place that takes no markup. */
export const say = (says: TemplateStringsArray, ...holes: readonly Part[]): Phrase => ({ says, holes })

/** A text that is written as it is in every language. */
export const asIs = (kept: string): Kept => ({ kept })

/** A number with its unit, not yet rounded. */
export const amount = (value: number, unit: Unit): Amount => ({ unit, low: value, high: value })

/** Two ends with their unit, not yet rounded. */
export const between = (low: number, high: number, unit: Unit): Amount => ({ unit, low, high })

/** Parts one after the other with something between them: items of a list. */
export const joined = (parts: readonly Part[], separator: string): Part => parts.flatMap((part, index) => (index === 0 ? [part] : [separator, part]))

/** The first letter made large, in the language it is written in. */
export const capital =
  (words: Words): Part =>
  (tongue) => {
    const text = spoken(words, tongue)
    return raw(escaped(text.charAt(0).toLocaleUpperCase(tongue.language) + text.slice(1)))
  }
