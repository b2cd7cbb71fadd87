import { figureText, intervalText } from '../quantity/figure.ts'
import { imperialIntervalText, imperialText } from '../quantity/imperial.ts'
import type { Amount } from './html.ts'
import { finished, formOf, type Lookup } from './finished.ts'
import type { Plan } from './plan.ts'
import type { Context } from './template.ts'
import { en } from './words/en.ts'
import { es } from './words/es.ts'

/** What is said for a phrase: one sentence, or one for each plural form its language has, by the number in the first hole or in hole `of`. */
export type Entry = string | { readonly of?: number; readonly zero?: string; readonly one?: string; readonly two?: string; readonly few?: string; readonly many?: string; readonly other: string }

/** Phrases in English, with numbered holes, to what is said for them. */
export type Catalogue = Readonly<Record<string, Entry>>

/** The interface's own languages. A handbook may name others: their words come from its layers alone. */
const CATALOGUES: Readonly<Record<string, Catalogue>> = { en, es }

/** What to call a language in itself, where the platform does not know. */
const itself = (language: string): string => {
  const name = new Intl.DisplayNames([language], { type: 'language', fallback: 'code' }).of(language) ?? language
  return name.charAt(0).toLocaleUpperCase(language) + name.slice(1)
}

/** Text in a tongue, and whether all of it is known; a coach's words that nobody has translated name the language they are in. */
export type Said = { readonly text: string; readonly known: boolean; readonly language?: string }

/** One language of a handbook: how it says phrases, writes numbers, and which of the words are a coach's own. */
export type Tongue = {
  readonly language: string
  /** What it is called in itself. */
  readonly name: string
  readonly units: Units
  /** True where English is not what a reader expects. */
  readonly foreign: boolean
  entry(key: string): Entry | undefined
  /** Every phrase it has words for. */
  readonly keys: readonly string[]
  /** Finished English, or a coach's own words, in this tongue. */
  said(text: string): Said
  amount(amount: Amount): Said
  /** The same tongue beside other words of a coach. */
  among(theirs: Lookup, left: Left | undefined): Tongue
  /** The form of an entry that goes with the values of its holes. */
  form(entry: Entry, numbers: readonly (number | undefined)[]): string
  /** Phrases that were asked for and are not known. */
  readonly untranslated: Set<string>
  /** Templates as this language writes them, each worked out once. */
  readonly plans: WeakMap<readonly string[], Map<Context, Plan>>
}

/** In what a handbook shows lengths, masses and forces; it reckons in metric always. */
export type Units = 'metric' | 'imperial'

/** What a tongue is made from: its units, the words a layer lays over the catalogue, and the words that are shown as they are. */
export type Asked = { readonly units?: Units; readonly words?: Catalogue; readonly theirs?: Lookup; readonly left?: Left }

/** Words of a coach that stand in the language they were written in. */
export type Left = { readonly language: string; readonly words: Lookup }

const catalogueOf = (language: string): Catalogue => CATALOGUES[language] ?? CATALOGUES[language.split('-')[0] ?? ''] ?? {}

const metricSays = ({ low, high, unit }: Amount): string => (low === high ? figureText(low, unit) : intervalText({ low, high }, unit))
const imperialSays = ({ low, high, unit }: Amount): string | undefined => (low === high ? imperialText(low, unit) : imperialIntervalText({ low, high }, unit))

/** A language of a handbook. */
export function tongueOf(language: string, { units = 'metric', words = {}, theirs = new Set(), left }: Asked = {}): Tongue {
  const catalogue = catalogueOf(language)
  const foreign = language.split('-')[0] !== 'en'
  const plurals = new Intl.PluralRules(language)
  const entry = (key: string): Entry | undefined => (Object.hasOwn(words, key) ? words[key] : Object.hasOwn(catalogue, key) ? catalogue[key] : undefined)
  const form = (said: Entry, numbers: readonly (number | undefined)[]): string => formOf(said, numbers, plurals)
  const keys = [...new Set([...Object.keys(words), ...Object.keys(catalogue)])]
  const speaking = finished({ language, foreign, entry, form, keys })
  const saying = (beside: Lookup, unsaid: Left | undefined): Pick<Tongue, 'said' | 'amount'> => {
    const inTongue = speaking(beside)
    const said = (asked: string): Said => (unsaid?.words.has(asked.trim()) ? { text: asked, known: true, language: unsaid.language } : inTongue(asked))
    return { said, amount: (asked) => said((units === 'imperial' ? imperialSays(asked) : undefined) ?? metricSays(asked)) }
  }
  const tongue: Tongue = {
    language,
    units,
    name: itself(language),
    foreign,
    entry,
    keys,
    ...saying(theirs, left),
    among: (beside, unsaid) => ({ ...tongue, ...saying(beside, unsaid) }),
    form,
    untranslated: new Set(),
    plans: new WeakMap(),
  }
  return tongue
}

/** The language the program's own phrases are written in. */
export const ENGLISH: Tongue = tongueOf('en')
