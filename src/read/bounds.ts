import { Parser, type CST } from 'yaml'

/**
 * Bounds on front matter, checked before any parser that recurses sees it.
 *
 * The stock composer goes one call deeper a bracket, and can exhaust the stack of the whole process on two
 * kilobytes of brackets; the lexer and the token parser under it are iterative, so their output is walked
 * here, no deeper than a few levels.
 */
export const MOST_YAML_BYTES = 64 * 1024
/** Levels of nesting. A ladder needs five. */
export const MOST_DEPTH = 12
/** Keys and entries. A ladder of five hundred rungs needs fewer. */
export const MOST_ENTRIES = 8000
/** Keys in one map: looking for twins among them costs the square of their number. */
export const MOST_KEYS = 500

/** Things that do not belong, before the rest is not looked at: the stock composer takes a second over sixty thousand. */
export const MOST_ERRORS = 100

/** What is refused, and where: an offset into the text. */
export type Refusal = { readonly offset: number; readonly message: string }

const PLAINLY = { anchor: 'an anchor (&)', alias: 'an alias (*)', tag: 'a tag (!)' }

/** The tokens of a text that keeps within bounds, or the first thing in it that front matter may not hold. `newLine` is told where each line begins. */
export function boundedTokens(yaml: string, newLine: (offset: number) => void): { readonly tokens: readonly CST.Token[] } | { readonly refused: Refusal } {
  if (new TextEncoder().encode(yaml).length > MOST_YAML_BYTES) return { refused: { offset: 0, message: `The front matter is larger than ${MOST_YAML_BYTES / 1024} KiB. Move prose below it.` } }
  const tokens = [...new Parser(newLine).parse(yaml)]
  const refused = refusal(tokens)
  return refused ? { refused } : { tokens }
}

function refusal(tokens: readonly CST.Token[]): Refusal | undefined {
  const errors = tokens.filter((token) => token.type === 'error')
  if (errors[0] && errors.length > MOST_ERRORS) return { offset: errors[0].offset, message: `From here on more than ${MOST_ERRORS} things do not belong. Take out what was pasted in by mistake.` }
  const documents = tokens.filter(({ type }) => type === 'document')
  const second = documents[1]
  if (second) return { offset: second.offset, message: 'The front matter holds a second document. Remove the line of --- or ... inside it.' }
  const counted = { entries: 0 }
  for (const document of documents) {
    const refused = refusedIn(document, 0, counted)
    if (refused) return refused
  }
  return undefined
}

/** The first thing that is refused in a token and all within it. It goes no deeper than the depth that is refused. */
function refusedIn(token: CST.Token | CST.SourceToken, depth: number, counted: { entries: number }): Refusal | undefined {
  if (token.type === 'anchor' || token.type === 'alias' || token.type === 'tag') {
    return { offset: token.offset, message: `The front matter holds ${PLAINLY[token.type]}. Write the value out in full; put quotes around words that begin with & * or !.` }
  }
  if ('items' in token) {
    if (depth >= MOST_DEPTH) return { offset: offsetOf(token), message: `The front matter is nested more than ${MOST_DEPTH} levels deep. A ladder needs no more than five.` }
    counted.entries += token.items.length
    if (counted.entries > MOST_ENTRIES || (isMap(token) && token.items.length > MOST_KEYS)) return { offset: offsetOf(token), message: `The front matter holds too many entries: at most ${MOST_KEYS} keys together, ${MOST_ENTRIES} in all.` }
  }
  const deeper = 'items' in token ? depth + 1 : depth
  for (const inside of childrenOf(token)) {
    const refused = refusedIn(inside, deeper, counted)
    if (refused) return refused
  }
  return undefined
}

const isMap = (token: CST.Token | CST.SourceToken): boolean => token.type === 'block-map' || token.type === 'flow-collection'
const offsetOf = (token: CST.Token | CST.SourceToken): number => ('offset' in token ? token.offset : 0)

/** The tokens one level in: starts, keys, separators and values. */
function childrenOf(token: CST.Token | CST.SourceToken): (CST.Token | CST.SourceToken)[] {
  const inside: (CST.Token | CST.SourceToken)[] = []
  if ('start' in token && Array.isArray(token.start)) inside.push(...token.start)
  if (token.type === 'document' && token.value) inside.push(token.value)
  if ('items' in token) {
    for (const { start, key, sep, value } of token.items) {
      inside.push(...start)
      if (key) inside.push(key)
      if (sep) inside.push(...sep)
      if (value) inside.push(value)
    }
  }
  if ('props' in token) inside.push(...token.props.filter(({ type }) => type === 'anchor' || type === 'tag'))
  return inside
}
