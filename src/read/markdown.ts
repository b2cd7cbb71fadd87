import MarkdownIt from 'markdown-it'
import definitionLists from 'markdown-it-deflist'
import footnotes from 'markdown-it-footnote'

const parser = () => new MarkdownIt({ html: false, linkify: false, typographer: false }).use(definitionLists).use(footnotes)

/**
 * The Markdown of ladders and pages: CommonMark, tables, definition lists and footnotes that stand on lines of their own. Raw HTML stays text.
 *
 * A parser holds no state between calls, so one serves for reading and for pages.
 */
export const markdown = parser()
markdown.inline.ruler.disable('footnote_inline')

/** Only the blocks: where headings, lists and tables stand. What is within their lines is looked at by who shows it, and is half the work. */
const blocks = parser()
blocks.core.ruler.disable(['inline', 'text_join'])

/** The longest name of a footnote, and how many one text may hold; the rest stay words, and are found. Chosen by us: looking for the end of each of thousands takes their number squared. */
const MARK = /^\[\^[^\]\s]{1,80}\]/
const MOST_FOOTNOTES = 500

markdown.inline.ruler.before('footnote_ref', 'footnote_mark', (state, silent) => {
  if (!state.src.startsWith('[^', state.pos)) return false
  const { list = [] } = (state.env as { footnotes?: { list?: readonly unknown[] } }).footnotes ?? {}
  if (list.length < MOST_FOOTNOTES && MARK.test(state.src.slice(state.pos, state.pos + 84))) return false
  if (!silent) state.pending += '['
  state.pos += 1
  return true
})

export type MarkdownToken = ReturnType<typeof markdown.parse>[number]

/** "Hands on a bench {#bench-hands}" in its two parts. */
export function headingParts(content: string): { readonly title: string; readonly id: string | undefined } {
  const match = /\{#([a-z0-9-]{1,80})\}\s*$/.exec(content)
  return match ? { title: content.slice(0, match.index).trim(), id: match[1] } : { title: content.trim(), id: undefined }
}

/** "Stepping back" as an id: `stepping-back`. */
export const headingSlug = (title: string): string => title.normalize('NFKD').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 60)

/** A stretch of the body under one heading: its words, its heading's line and the tokens between. */
export type Section = {
  readonly title: string
  readonly id: string | undefined
  /** Lines of the file, counted from 1. */
  readonly line: number
  readonly text: string
  /** The line its words begin on. */
  readonly text_line: number
  /** Lines of the body, counted from 0, from below its heading to the next of its kind. */
  readonly from: number
  readonly to: number
  readonly tokens: readonly MarkdownToken[]
  readonly subsections: readonly Section[]
}

/**
 * Cuts a body at its `##` headings, and each of these at its `###` headings.
 *
 * Shape   a body and the line it begins on to the text before the first heading, and the sections.
 */
export function sectionsOf(body: string, first_line: number): { readonly intro: string; readonly sections: readonly Section[] } {
  const tokens = blocks.parse(body, {})
  const lines = body.split('\n')
  return { intro: lines.slice(0, headingLine(tokens, 'h2') ?? lines.length).join('\n').trim(), sections: cut(tokens, lines, first_line, 'h2', 0, lines.length) }
}

const headingLine = (tokens: readonly MarkdownToken[], tag: string): number | undefined => tokens.find((token) => opens(token, tag))?.map?.[0]

const opens = (token: MarkdownToken, tag: string): boolean => token.type === 'heading_open' && token.tag === tag && token.level === 0

function cut(tokens: readonly MarkdownToken[], lines: readonly string[], first_line: number, tag: 'h2' | 'h3', from: number, to: number): Section[] {
  const starts: number[] = []
  for (const [index, token] of tokens.entries()) if (opens(token, tag)) starts.push(index)
  return starts.map((start, nth) => {
    const end = starts[nth + 1] ?? tokens.length
    const [line, after] = tokens[start]?.map ?? [from, from + 1]
    const last = tokens[end]?.map?.[0] ?? to
    const inside = tokens.slice(start + 3, end)
    const { title, id } = headingParts(tokens[start + 1]?.content ?? '')
    const subsections = tag === 'h2' ? cut(inside, lines, first_line, 'h3', after, last) : []
    const until = tag === 'h2' ? (headingLine(inside, 'h3') ?? last) : last
    const begins = lines.slice(after, until).findIndex((each) => each.trim() !== '')
    return { title, id, line: line + first_line, text: lines.slice(after, until).join('\n').trim(), text_line: after + Math.max(0, begins) + first_line, from: after, to: last, tokens: inside, subsections }
  })
}

/** One item of a list: its words, on one line; below them, as Markdown, whatever else the item holds. */
export type ListItem = { readonly text: string; readonly line: number }

/** The items of the outermost lists of a section, and where each stands. `lines` are those of the body its tokens were read from. */
export function listItems({ tokens }: Section, lines: readonly string[], first_line: number): ListItem[] {
  return tokens.flatMap((token, index) => {
    if (token.type !== 'list_item_open' || token.level !== 1) return []
    const [from, to] = token.map ?? [0, 0]
    const [opened, inline] = tokens.slice(index + 1, index + 3)
    const plain = opened?.type === 'paragraph_open' && inline?.type === 'inline'
    const own = plain ? inline.content.replaceAll('\n', ' ') : ''
    const rest = lines.slice(plain ? (opened.map?.[1] ?? to) : from, to)
    return [{ text: [own, unindented(plain ? rest : withoutBullet(rest))].filter((part) => part !== '').join('\n\n'), line: from + first_line }]
  })
}

/** An item that begins with a list, a quote or code: its bullet becomes the room it took. */
const withoutBullet = ([first = '', ...rest]: readonly string[]): string[] => [first.replace(/^\s*(?:[-+*]|\d{1,9}[.)])/, (bullet) => ' '.repeat(bullet.length)), ...rest]

/** Lines moved left by what they are all moved right. */
function unindented(lines: readonly string[]): string {
  const room = lines.reduce((least, line) => (line.trim() === '' ? least : Math.min(least, line.search(/\S/))), Number.POSITIVE_INFINITY)
  return lines.map((line) => line.slice(room)).join('\n').trim()
}

/** The first line of a section that stands beside its lists, or beside its tables; undefined where nothing does. */
export function lineBeside({ tokens, text, text_line }: Section, kind: 'list' | 'table', first_line: number): number | undefined {
  const note = text.split('\n').findIndex((line) => /^ {0,3}\[\^[^\]\s]+\]:/.test(line)) // the parser has put footnotes elsewhere
  if (note >= 0) return note + text_line
  let inside = 0
  for (const { type, nesting, map } of tokens) {
    const holds = kind === 'list' ? /^(bullet|ordered)_list_/.test(type) : type.startsWith('table_')
    if (holds) inside += nesting
    else if (inside === 0 && map) return map[0] + first_line
  }
  return undefined
}

/** How many tables stand in a section. */
export const tablesIn = ({ tokens }: Section): number => tokens.filter(({ type }) => type === 'table_open').length

/** The rows of the first table, its head first, and where each stands. */
export function tableRows({ tokens }: Section, first_line: number): { readonly cells: readonly string[]; readonly line: number }[] {
  const rows: { cells: string[]; line: number }[] = []
  for (const [index, token] of tokens.entries()) {
    if (token.type === 'table_close') break
    if (token.type === 'tr_open') rows.push({ cells: [], line: (token.map?.[0] ?? 0) + first_line })
    if (token.type === 'th_open' || token.type === 'td_open') rows.at(-1)?.cells.push((tokens[index + 1]?.content ?? '').trim())
  }
  return rows
}
