import { HANDBOOK_FILE } from '../read/read-curriculum.ts'
import { languageIn } from '../read/read-translation.ts'
import { mentionsIn, type Mention } from './mention.ts'
import { valueOf, wordsIn, type Word } from './word.ts'

export type Kind = 'ladder' | 'amendment' | 'translation' | 'page' | 'page-translation' | 'handbook' | 'words'

/** What a file holds, however far its typing has come. Offsets count UTF-16 units. */
export type Outline = {
  readonly text: string
  readonly kind: Kind
  readonly words: readonly Word[]
  /** The end of the front matter, and the beginning of the body. */
  readonly yaml_to: number
  readonly body_from: number
  /** The ladder it states, changes or translates. */
  readonly ladder: string | undefined
  readonly mentions: readonly Mention[]
}

/** A file of a workspace or of a layer below. `layer` counts from the one that is extended first; `own` says whether it is ours to change. */
export type EditorFile = {
  readonly file: string
  readonly shown: string
  readonly layer: number
  readonly own: boolean
  text(): string
  outline(): Outline
}

/** Outlines a file by its name in its workspace and its text. */
export function outlineOf(file: string, text: string): Outline {
  const { from, to, body_from } = partsOf(file, text)
  const words = wordsIn(text.slice(from, to), from)
  const kind = kindOf(file, words)
  const ladder = { ladder: ['id'], amendment: ['amends'], translation: ['translates'], page: undefined, 'page-translation': undefined, handbook: undefined, words: undefined }[kind]
  const named = ladder && valueOf(words, ladder)
  return { text, kind, words, yaml_to: to, body_from, ladder: named, mentions: mentionsIn(text, kind, words, body_from, named) }
}

function kindOf(file: string, words: readonly Word[]): Kind {
  if (file === HANDBOOK_FILE) return 'handbook'
  const has = (key: string): boolean => words.some(({ role, path }) => role === 'key' && path.length === 1 && path[0] === key)
  if (file.endsWith('.yaml')) return 'words'
  const translated = languageIn(file) !== undefined
  if (file.startsWith('content/')) return translated ? 'page-translation' : 'page'
  return translated ? 'translation' : has('amends') ? 'amendment' : 'ladder'
}

/** Front matter that was opened and not closed runs to the end. */
function partsOf(file: string, text: string): { readonly from: number; readonly to: number; readonly body_from: number } {
  if (file.endsWith('.yaml')) return { from: 0, to: text.length, body_from: text.length }
  const open = /^\ufeff?---[ \t]*(?:\r\n|\n|\r|$)/.exec(text)
  if (!open) return { from: 0, to: 0, body_from: 0 }
  const from = open[0].length
  const close = /(?:^|\r\n|\n|\r)---[ \t]*(?:\r\n|\n|\r|$)/.exec(text.slice(from))
  if (!close) return { from, to: text.length, body_from: text.length }
  return { from, to: from + close.index + (/^[\r\n]+/.exec(close[0])?.[0].length ?? 0), body_from: from + close.index + close[0].length }
}
