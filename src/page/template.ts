/**
 * What a template holds for a translator: its sentences, apart from the markup around them.
 *
 * A sentence runs from one block to the next and takes inline elements with it: `After {1}: <1>{2}</1>` is one, its holes and
 * elements numbered in order. Attributes a reader hears are sentences too.
 */

/** Where a hole stands: among words, where words take no markup, in a tag, or where nothing is ever translated. */
export type Context = 'words' | 'plain' | 'tag' | 'verbatim'

/** A part of a template. A sentence has a key, and what its numbered holes and elements stand for. */
export type Piece =
  | { readonly kind: 'markup'; readonly text: string }
  | { readonly kind: 'hole'; readonly index: number; readonly context: Context }
  | { readonly kind: 'sentence'; readonly key: string; readonly context: Context; readonly holes: readonly Hole[]; readonly tags: readonly Tag[]; readonly before: string; readonly after: string; readonly pieces: readonly Piece[] }

/** A hole by its place among the template's values. */
export type Hole = { readonly index: number; readonly context: Context }

/** An inline element as it was written: its opening tag in pieces, for it may hold holes, and its end. */
export type Tag = { readonly open: readonly Piece[]; readonly close: string }

const INLINE = new Set(['a', 'strong', 'em', 'b', 'i', 'span', 'code', 'br', 'mark', 'sup', 'sub', 'small', 'abbr'])
const VOID = new Set(['br'])
const VERBATIM = new Set(['code', 'pre', 'script', 'style'])
/** Elements that may hold no other. */
const PLAIN = new Set(['title', 'option', 'text', 'tspan', 'textarea'])
const HEARD = /(\s(?:aria-label|alt|placeholder|title|label)=")([^"]*)(?=")/g
const DESCRIPTION = /(\scontent=")([^"]*)(?=")/g

const HOLE = /\u0001(\d+)\u0002/g
const LETTER = /\p{L}/u

const known = new WeakMap<readonly string[], Map<Context, readonly Piece[]>>()

/** The pieces of a template that stands in a context; worked out once for each template of the program. */
export function piecesOf(strings: readonly string[], context: Context): readonly Piece[] {
  const cached = known.get(strings) ?? new Map<Context, readonly Piece[]>()
  const pieces = cached.get(context) ?? cut(strings.map((string, index) => (index === 0 ? string : `\u0001${index - 1}\u0002${string}`)).join(''), context)
  known.set(strings, cached.set(context, pieces))
  return pieces
}

function cut(text: string, context: Context): Piece[] {
  if (context === 'tag') return tagPieces(text)
  if (context === 'verbatim') return split(text, 'verbatim')
  return blocks(text.split(/(<[^>]*>)/).filter((token) => token !== ''), context)
}

/** Text with holes as markup and holes. */
function split(text: string, context: Context): Piece[] {
  return text.split(HOLE).flatMap((piece, at): Piece[] => (at % 2 === 1 ? [{ kind: 'hole', index: Number(piece), context }] : piece === '' ? [] : [{ kind: 'markup', text: piece }]))
}

/** A tag: what it says to a reader is a sentence, all else is markup. */
function tagPieces(tag: string): Piece[] {
  const heard = /^<meta\s[^>]*name="description"/.test(tag) ? DESCRIPTION : HEARD
  const pieces: Piece[] = []
  let from = 0
  for (const { index, 1: name = '', 2: value = '' } of tag.matchAll(heard)) {
    pieces.push(...split(tag.slice(from, index + name.length), 'tag'), ...sentence([value], 'plain'))
    from = index + name.length + value.length
  }
  return [...pieces, ...split(tag.slice(from), 'tag')]
}

const nameOf = (tag: string): string => /^<\/?([a-z0-9]+)/.exec(tag)?.[1] ?? ''
const isTag = (token: string): boolean => token.startsWith('<')

/** Tokens from block to block. */
function blocks(tokens: readonly string[], around: Context): Piece[] {
  const pieces: Piece[] = []
  let run: string[] = []
  const inside: Context[] = [around]
  const ended = (): void => {
    pieces.push(...sentence(run, inside.at(-1) ?? around))
    run = []
  }
  for (const token of tokens) {
    const name = nameOf(token)
    if (!isTag(token) || (INLINE.has(name) && inside.at(-1) !== 'plain' && inside.at(-1) !== 'verbatim')) {
      run.push(token)
      continue
    }
    ended()
    pieces.push(...tagPieces(token))
    if (token.startsWith('</')) {
      if ((VERBATIM.has(name) || PLAIN.has(name)) && inside.length > 1) inside.pop()
    } else if (VERBATIM.has(name)) inside.push('verbatim')
    else if (PLAIN.has(name) && !token.endsWith('/>')) inside.push('plain')
  }
  ended()
  return pieces
}

/** An inline element with what it holds, or a run of text. */
type Node = string | { readonly open: string; readonly name: string; readonly nodes: readonly Node[]; readonly close: string }

/** Inline tokens as a tree; undefined where an element does not end here. */
function treeOf(tokens: readonly string[]): Node[] | undefined {
  const open: { tag: string; nodes: Node[] }[] = [{ tag: '', nodes: [] }]
  for (const token of tokens) {
    const top = open.at(-1)
    if (!top) return undefined
    if (!isTag(token)) top.nodes.push(token)
    else if (VOID.has(nameOf(token))) top.nodes.push({ open: token, name: nameOf(token), nodes: [], close: '' })
    else if (!token.startsWith('</')) open.push({ tag: token, nodes: [] })
    else {
      if (open.length < 2 || nameOf(top.tag) !== nameOf(token)) return undefined
      open.pop()
      open.at(-1)?.nodes.push({ open: top.tag, name: nameOf(top.tag), nodes: top.nodes, close: token })
    }
  }
  return open.length === 1 ? open[0]?.nodes : undefined
}

/** A run of inline tokens: one sentence where words stand at its top, else each of its elements by itself. */
function sentence(tokens: readonly string[], context: Context): Piece[] {
  if (context === 'verbatim') return tokens.flatMap((token) => (isTag(token) ? tagPieces(token) : split(token, context)))
  const tree = treeOf(tokens)
  if (!tree) return tokens.flatMap((token) => (isTag(token) ? tagPieces(token) : sentence([token], context)))
  const words = tree.some((node) => typeof node === 'string' && LETTER.test(node.replace(HOLE, '')))
  return words ? [sentenceOf(tree, context)] : tree.flatMap((node) => apart(node, context))
}

const contextIn = (name: string, context: Context): Context => (VERBATIM.has(name) ? 'verbatim' : context)

function apart(node: Node, context: Context): Piece[] {
  if (typeof node === 'string') return split(node, context)
  const within = contextIn(node.name, context)
  const inner = within === 'verbatim' ? node.nodes.flatMap((each) => asWritten(each)) : node.nodes.some((each) => typeof each === 'string' && LETTER.test(each.replace(HOLE, ''))) ? [sentenceOf(node.nodes, context)] : node.nodes.flatMap((each) => apart(each, context))
  return [...tagPieces(node.open), ...inner, { kind: 'markup', text: node.close }]
}

const asWritten = (node: Node): Piece[] => (typeof node === 'string' ? split(node, 'verbatim') : [...tagPieces(node.open), ...node.nodes.flatMap(asWritten), { kind: 'markup', text: node.close }])

function sentenceOf(nodes: readonly Node[], context: Context): Piece {
  const holes: Hole[] = []
  const tags: Tag[] = []
  const keyOf = (node: Node, around: Context): string => {
    if (typeof node === 'string') return node.replace(HOLE, (_, index: string) => `{${holes.push({ index: Number(index), context: around })}}`)
    const nth = tags.push({ open: tagPieces(node.open), close: node.close })
    const within = contextIn(node.name, around)
    return VOID.has(node.name) ? `<${nth}/>` : `<${nth}>${node.nodes.map((each) => keyOf(each, within)).join('')}</${nth}>`
  }
  const whole = nodes.map((node) => keyOf(node, context)).join('')
  const before = /^\s*/.exec(whole)?.[0] ?? ''
  const after = /\s*$/.exec(whole)?.[0] ?? ''
  return { kind: 'sentence', key: whole.trim().replace(/\s+/g, ' '), context, holes, tags, before, after, pieces: nodes.flatMap((node) => asIs(node, context)) }
}

/** The sentence as it stands in English. */
const asIs = (node: Node, context: Context): Piece[] =>
  typeof node === 'string' ? split(node, context) : [...tagPieces(node.open), ...node.nodes.flatMap((each) => asIs(each, contextIn(node.name, context))), { kind: 'markup', text: node.close }]
