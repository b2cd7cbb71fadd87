import type { Markdown } from '../ladder/curriculum.ts'
import { headingParts, markdown, type MarkdownToken } from '../read/markdown.ts'
import { targetOf } from '../read/links.ts'
import { linkTo, pageAddress, rungAddress, type Address } from './address.ts'
import { html, raw, type Html } from './html.ts'

/** Ids in the prose are set apart from those of the page around it. */
const PREFIX = 'on-'

/** "Stepping back" as an id: `on-stepping-back`. */
const slug = (title: string): string => title.normalize('NFKD').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 60)

/** How prose stands in a page: where its links start from, what level its own headings begin at, and its name where a page holds more than one piece. */
type Setting = { readonly from: Address; readonly first_heading: number; readonly part?: string }

/** Markdown as markup: raw HTML stays text, links lead where the checks have seen them lead, headings and footnotes get ids of their own. */
export function prose(text: Markdown, { from, first_heading, part }: Setting): Html {
  const tokens = markdown.parse(text, {})
  const used = new Map<string, number>()
  for (const [index, token] of tokens.entries()) {
    if (token.type === 'heading_open' || token.type === 'heading_close') token.tag = `h${Math.min(6, Number(token.tag.slice(1)) - 2 + first_heading)}`
    if (token.type === 'heading_open') nameHeading(token, tokens[index + 1], used, part)
    if (token.type.startsWith('table_')) frameTable(token, tokens, index)
    markFootnote(token, part)
    for (const child of token.children ?? []) {
      if (child.type === 'link_open') child.attrSet('href', hrefOf(String(child.attrGet('href') ?? ''), from))
      markFootnote(child, part)
    }
  }
  return raw(markdown.renderer.render(tokens, markdown.options, {}))
}

/** Inline Markdown: a cell, a line of front matter. */
export function inlineProse(text: Markdown, from: Address): Html {
  const tokens = markdown.parseInline(text, {})
  for (const token of tokens) for (const child of token.children ?? []) if (child.type === 'link_open') child.attrSet('href', hrefOf(String(child.attrGet('href') ?? ''), from))
  return raw(markdown.renderer.render(tokens, markdown.options, {}))
}

/** A list line: inline Markdown, and below it whatever else the coach put into the item. */
export const itemProse = (text: Markdown, from: Address, part: string): Html => (text.includes('\n') ? prose(text, { from, first_heading: 4, part }) : inlineProse(text, from))

/** Puts a table into a frame that scrolls, and that a keyboard can reach; it is called by its head. */
function frameTable(token: MarkdownToken, tokens: readonly MarkdownToken[], index: number): void {
  if (token.type === 'table_close') become(token, 'html_block', html`</table></div>\n`)
  if (token.type !== 'table_open') return
  const head = tokens.slice(index, index + tokens.slice(index).findIndex(({ type }) => type === 'thead_close')).filter(({ type }) => type === 'inline')
  const name = head.map(({ content }) => plain(content)).filter((cell) => cell !== '').join(', ')
  become(token, 'html_block', html`<div class="scroll${head.length > 3 && ' wide'}" tabindex="0" role="region" aria-label="${name || WORDS.table}"><table class="words">\n`)
}

/** The words of a cell, without its marks. */
const plain = (content: string): string => (markdown.parseInline(content, {})[0]?.children ?? []).map(({ content: words }) => words).join('').trim()

/** What this file says itself. */
const WORDS = {
  table: 'Table',
  note: (nth: number): string => `Footnote ${nth}`,
  back: (nth: number, time: number): string => (time === 0 ? `Back to where footnote ${nth} stands` : `Back to where footnote ${nth} stands, place ${time + 1}`),
}

type Note = { readonly id: number; readonly subId?: number }

/** Footnotes get ids by the piece of prose they stand in, and links there and back that say where they lead. */
function markFootnote(token: MarkdownToken, part = 'page'): void {
  if (token.type === 'footnote_block_open') return become(token, 'html_block', html`<div class="footnotes"><ol>\n`)
  if (token.type === 'footnote_block_close') return become(token, 'html_block', html`</ol></div>\n`)
  if (token.type === 'footnote_close') return become(token, 'html_block', html`</li>\n`)
  if (!['footnote_open', 'footnote_ref', 'footnote_anchor'].includes(token.type)) return
  const { id, subId: time = 0 } = token.meta as Note
  const note = `note-${part}-${id + 1}`
  const mark = `mark-${part}-${id + 1}${time === 0 ? '' : `-${time + 1}`}`
  if (token.type === 'footnote_open') return become(token, 'html_block', html`<li id="${note}">`)
  if (token.type === 'footnote_ref') return become(token, 'html_inline', html`<sup><a class="mark" id="${mark}" href="#${note}" aria-label="${WORDS.note(id + 1)}">${id + 1}</a></sup>`)
  become(token, 'html_inline', html` <a class="back" href="#${mark}" aria-label="${WORDS.back(id + 1, time)}">↩\u{fe0e}</a>`)
}

/** Turns a token into markup of ours. */
function become(token: MarkdownToken, type: 'html_block' | 'html_inline', { html: content }: Html): void {
  Object.assign(token, { type, content })
}

/** Gives a heading its id, and takes a written {#id} out of its words. */
function nameHeading(heading: MarkdownToken, inline: MarkdownToken | undefined, used: Map<string, number>, part: string | undefined): void {
  const { title, id } = headingParts(inline?.content ?? '')
  if (id !== undefined && inline) {
    inline.content = title
    for (const child of inline.children ?? []) if (child.type === 'text') child.content = headingParts(child.content).title
  }
  const name = id ?? (slug(title) || 'part')
  const nth = (used.get(name) ?? 0) + 1
  used.set(name, nth)
  heading.attrSet('id', PREFIX + (part === undefined ? '' : `${part}-`) + (nth === 1 ? name : `${name}-${nth}`))
}

/** A link as this page needs it. What the checks refuse leads nowhere. */
function hrefOf(href: string, from: Address): string {
  const target = targetOf(href)
  if (target.kind === 'outside') return href
  if (target.kind === 'refused') return '#'
  if (target.kind === 'page') return linkTo(from, pageAddress(target.id)) + (target.fragment ? `#${PREFIX}${target.fragment}` : '')
  const [ladder = '', rung] = target.name.split('/')
  return linkTo(from, rung ? rungAddress(ladder, rung) : pageAddress(ladder))
}
