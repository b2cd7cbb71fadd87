import { Parser, type CST } from 'yaml'
import type { Path } from '../ladder/finding.ts'
import { MOST_DEPTH, MOST_YAML_BYTES } from '../read/bounds.ts'

/** A key or a value as it stands in front matter: where it leads, its letters without quotes, and from where to where they stand. Offsets count UTF-16 units. */
export type Word = { readonly path: Path; readonly role: 'key' | 'value'; readonly text: string; readonly from: number; readonly to: number }

type Waiting = { readonly token: CST.Token; readonly path: Path; readonly role: Word['role'] }

/**
 * Every key and value of front matter that may be half-typed, in the order they stand.
 *
 * Only the token parser is asked: it goes on after what it does not understand, and never calls itself.
 */
export function wordsIn(yaml: string, offset = 0): Word[] {
  if (yaml.length > MOST_YAML_BYTES) return []
  const words: Word[] = []
  const waiting: Waiting[] = []
  for (const token of new Parser().parse(yaml.replace(/\r(?!\n)/g, '\n'))) {
    if (token.type === 'document' && token.value) waiting.unshift({ token: token.value, path: [], role: 'value' })
  }
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if ('items' in next.token) {
      if (next.path.length < MOST_DEPTH) waiting.push(...insideOf(next.token, next.path).toReversed())
    } else words.push(...wordOf(next, offset))
  }
  return words
}

const wordOf = ({ token, path, role }: Waiting, offset: number): Word[] => {
  const bare = bareOf(token)
  return bare ? [{ path, role, text: bare.text, from: offset + bare.from, to: offset + bare.from + bare.text.length }] : []
}

/** The letters of a plain or quoted scalar, and where they begin; of no other token. */
function bareOf(token: CST.Token | null | undefined): { readonly text: string; readonly from: number } | undefined {
  if (token?.type === 'scalar') return { text: token.source, from: token.offset }
  if (token?.type === 'double-quoted-scalar' || token?.type === 'single-quoted-scalar') return { text: token.source.replace(/^["']|["']$/g, ''), from: token.offset + 1 }
  return undefined
}

type Collection = CST.BlockMap | CST.BlockSequence | CST.FlowCollection

/** What stands one level in: the keys and values of a map, the entries of a list. */
function insideOf(token: Collection, path: Path): Waiting[] {
  const listed = token.type === 'block-seq' || (token.type === 'flow-collection' && token.start.source === '[')
  return token.items.flatMap((item, index): Waiting[] => {
    const paired = item.sep?.some(({ type }) => type === 'map-value-ind') ?? false
    if (listed && !paired) return [item.key ?? item.value].flatMap((entry) => (entry ? [{ token: entry, path: [...path, index], role: 'value' as const }] : []))
    const key = item.key ?? (paired ? undefined : item.value)
    const at = [...(listed ? [...path, index] : path), bareOf(key)?.text ?? '']
    const named = key ? [{ token: key, path: at, role: 'key' as const }] : []
    return item.value && item.value !== key ? [...named, { token: item.value, path: at, role: 'value' as const }] : named
  })
}

/** A path without the places in lists: `rungs/2/after/0` is `rungs.after`. */
export const patternOf = (path: Path): string => path.filter((step) => typeof step === 'string').join('.')

/** The word that touches an offset. */
export const wordAt = (words: readonly Word[], offset: number): Word | undefined => words.find(({ from, to }) => offset >= from && offset <= to)

/** The value at a path. */
export const valueOf = (words: readonly Word[], path: Path): string | undefined => words.find((word) => word.role === 'value' && samePath(word.path, path))?.text

export const samePath = (one: Path, other: Path): boolean => one.length === other.length && one.every((step, index) => step === other[index])
