import { finished, formOf } from '../page/finished.ts'
import type { Entry } from '../page/tongue.ts'
import { once } from '../quantity/once.ts'

type Words = Readonly<Record<string, Entry>>

/** The words of the page's language that every page's scripts may say, put here as JSON when the handbook is built. */
declare const SCRIPT_WORDS: string | undefined

const language = typeof document === 'undefined' ? 'en' : document.documentElement.lang || 'en'
const plurals = once(() => new Intl.PluralRules(language))

/** How sentences are said with some words. */
const speaking = (words: Words): ((text: string) => { readonly text: string }) =>
  finished({
    language,
    foreign: language.split('-')[0] !== 'en',
    entry: (key) => (Object.hasOwn(words, key) ? words[key] : undefined),
    form: (entry, numbers) => formOf(entry, numbers, { select: (number) => plurals().select(number) }),
    keys: Object.keys(words),
    bold: true,
  })(new Set())

let known: Words = typeof SCRIPT_WORDS === 'undefined' ? {} : (JSON.parse(SCRIPT_WORDS) as Words)
let speak = speaking(known)

/** Takes up the words of scripts that are fetched only where they are wanted. */
export function learn(more: Words): void {
  known = { ...known, ...more }
  speak = speaking(known)
}

/** A sentence of ours in the language of the page; what it does not know, a coach's words or an athlete's, it leaves as it is. */
export const said = (text: string): string => speak(text).text
