import MarkdownIt from 'markdown-it'
import definitionLists from 'markdown-it-deflist'

/**
 * The Markdown of ladders and pages: CommonMark, tables and definition lists. Raw HTML stays text.
 *
 * A parser holds no state between calls, so one serves for reading and for pages.
 */
export const markdown = new MarkdownIt({ html: false, linkify: false, typographer: false }).use(definitionLists)

export type MarkdownToken = ReturnType<typeof markdown.parse>[number]

/** "Hands on a bench {#bench-hands}" in its two parts. */
export function headingParts(content: string): { readonly title: string; readonly id: string | undefined } {
  const match = /\{#([a-z0-9-]{1,80})\}\s*$/.exec(content)
  return match ? { title: content.slice(0, match.index).trim(), id: match[1] } : { title: content.trim(), id: undefined }
}

/** A stretch of the body under one heading: its words, its heading's line and the tokens between. */
export type Section = {
  readonly title: string
  readonly id: string | undefined
  /** Lines of the file, counted from 1. */
  readonly line: number
  readonly text: string
  readonly tokens: readonly MarkdownToken[]
  readonly subsections: readonly Section[]
}

/**
 * Cuts a body at its `##` headings, and each of these at its `###` headings.
 *
 * Shape   a body and the line it begins on to the text before the first heading, and the sections.
 */
export function sectionsOf(body: string, first_line: number): { readonly intro: string; readonly sections: readonly Section[] } {
  const tokens = markdown.parse(body, {})
  const lines = body.split('\n')
  return { intro: lines.slice(0, headingLine(tokens, 'h2') ?? lines.length).join('\n').trim(), sections: cut(tokens, lines, first_line, 'h2', 0, lines.length) }
}

const headingLine = (tokens: readonly MarkdownToken[], tag: string): number | undefined => tokens.find((token) => opens(token, tag))?.map?.[0]

const opens = (token: MarkdownToken, tag: string): boolean => token.type === 'heading_open' && token.tag === tag && token.level === 0

function cut(tokens: readonly MarkdownToken[], lines: readonly string[], first_line: number, tag: 'h2' | 'h3', from: number, to: number): Section[] {
  const starts = tokens.flatMap((token, index) => (opens(token, tag) ? [index] : []))
  return starts.map((start, nth) => {
    const end = starts[nth + 1] ?? tokens.length
    const [line, after] = tokens[start]?.map ?? [from, from + 1]
    const last = tokens[end]?.map?.[0] ?? to
    const inside = tokens.slice(start + 3, end)
    const { title, id } = headingParts(tokens[start + 1]?.content ?? '')
    const subsections = tag === 'h2' ? cut(inside, lines, first_line, 'h3', after, last) : []
    const until = tag === 'h2' ? (headingLine(inside, 'h3') ?? last) : last
    return { title, id, line: line + first_line, text: lines.slice(after, until).join('\n').trim(), tokens: inside, subsections }
  })
}

/** The lines of a list, and where each stands. Only the outermost list's own words count. */
export function listLines({ tokens }: Section, first_line: number): { readonly text: string; readonly line: number }[] {
  return tokens.flatMap((token, index) => {
    const inline = tokens[index + 2]
    if (token.type !== 'list_item_open' || token.level !== 1 || inline?.type !== 'inline') return []
    return [{ text: inline.content.replaceAll('\n', ' '), line: (token.map?.[0] ?? 0) + first_line }]
  })
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
