/** Words of one part of a ladder or page: a line or Markdown, lines, rows of a table, or a few keys of a rung or section. */
export type Words = string | readonly string[] | readonly (readonly string[])[] | Readonly<Record<string, string | readonly string[]>>

/** A part of what is translated. `key` names it in a file, `name` in the whole. */
export type Part = { readonly name: string; readonly key: string; readonly words: Words; readonly by?: string }

/** Whether the words of another language stand for those that stand now. */
export type Standing = 'current' | 'stale' | 'unsealed' | 'missing'

/** A part of the original, and what another language has for it. */
export type TranslatedPart = Part & {
  /** Digest of the original's words. */
  readonly digest: string
  readonly standing: Standing
  /** What was written in the other language, whether it stands or not. */
  readonly said?: Words
  /** How its shape differs from the original's, in words. */
  readonly differs?: string
  /** Whether the topmost layer wrote it. */
  readonly own: boolean
}

/** A ladder or page in one other language. */
export type Translated = {
  readonly language: string
  /** Whether any layer has a file of it. */
  readonly there: boolean
  /** The topmost layer's own file of it, and all that stands there, by key. */
  readonly own: { readonly file: string; readonly parts: ReadonlyMap<string, Words> } | undefined
  readonly parts: readonly TranslatedPart[]
  /** Words shared by all that have no translation: equipment, movement. */
  readonly unworded: readonly string[]
}

/** What a ladder or page was put into: parts named in `fellBack` stand in `original`. */
export type Spoken = { readonly language: string; readonly original: string; readonly fellBack: ReadonlySet<string> }

/** Words to show in place of others, by language: equipment, movements, titles of handbook.yaml, words of the interface. */
export type WordLists = ReadonlyMap<string, ReadonlyMap<string, string>>

/** Names that parts of a ladder have, which a rung of the same name must not take. */
const TAKEN = new Set(['title', 'because', 'intro', 'form', 'stop', 'ask_first'])

/** "floor" and "floor/cues": how parts of a rung are called. */
export const rungPart = (rung: string, section?: string): string => `${TAKEN.has(rung) ? `rung:${rung}` : rung}${section === undefined ? '' : `/${section}`}`

/** True for a part that keeps somebody from being hurt: stop signs, who asks first, a rung with cautions. */
export const isSafety = ({ key, words }: Part): boolean => key === 'stop' || key === 'ask_first' || (typeof words === 'object' && 'cautions' in words)

/** True where the other language's words may stand in place of the original's. */
export const stands = ({ standing, differs }: TranslatedPart): boolean => standing === 'current' && differs === undefined

/** The language a part of a ladder or page is in, where it is not that of the whole. */
export const fellBackTo = ({ spoken }: { readonly spoken?: Spoken }, part: string): string | undefined => (spoken?.fellBack.has(part) ? spoken.original : undefined)

/** Every text in a part, one after the other. */
export const textsIn = (words: Words): string[] => (typeof words === 'string' ? [words] : Object.values(words).flatMap((inside: Words) => textsIn(inside)))
