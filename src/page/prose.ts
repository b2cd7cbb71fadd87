import type { Markdown } from '../ladder/curriculum.ts'
import { headingParts, markdown, type MarkdownToken } from '../read/markdown.ts'
import { targetOf } from '../read/links.ts'
import { linkTo, pageAddress, rungAddress, type Address } from './address.ts'
import { raw, type Html } from './html.ts'

/** Ids in the prose are set apart from those of the page around it. */
const PREFIX = 'on-'

/** "Stepping back" as an id: `on-stepping-back`. */
const slug = (title: string): string => title.normalize('NFKD').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 60)

/** How prose stands in a page: where its links start from, and what level its own headings begin at. */
type Setting = { readonly from: Address; readonly first_heading: number }

/** Markdown as markup: raw HTML stays text, links lead where the checks have seen them lead, headings get ids of their own. */
export function prose(text: Markdown, { from, first_heading }: Setting): Html {
  const tokens = markdown.parse(text, {})
  const used = new Map<string, number>()
  for (const [index, token] of tokens.entries()) {
    if (token.type === 'heading_open' || token.type === 'heading_close') token.tag = `h${Math.min(6, Number(token.tag.slice(1)) - 2 + first_heading)}`
    if (token.type === 'heading_open') nameHeading(token, tokens[index + 1], used)
    if (token.type === 'table_open') token.attrSet('class', 'words')
    for (const child of token.children ?? []) if (child.type === 'link_open') child.attrSet('href', hrefOf(String(child.attrGet('href') ?? ''), from))
  }
  return raw(markdown.renderer.render(tokens, markdown.options, {}))
}

/** Inline Markdown: a cue, a cell, a list line. */
export function inlineProse(text: Markdown, from: Address): Html {
  const tokens = markdown.parseInline(text, {})
  for (const token of tokens) for (const child of token.children ?? []) if (child.type === 'link_open') child.attrSet('href', hrefOf(String(child.attrGet('href') ?? ''), from))
  return raw(markdown.renderer.render(tokens, markdown.options, {}))
}

/** Gives a heading its id, and takes a written {#id} out of its words. */
function nameHeading(heading: MarkdownToken, inline: MarkdownToken | undefined, used: Map<string, number>): void {
  const { title, id } = headingParts(inline?.content ?? '')
  if (id !== undefined && inline) {
    inline.content = title
    for (const child of inline.children ?? []) if (child.type === 'text') child.content = headingParts(child.content).title
  }
  const name = id ?? (slug(title) || 'part')
  const nth = (used.get(name) ?? 0) + 1
  used.set(name, nth)
  heading.attrSet('id', PREFIX + (nth === 1 ? name : `${name}-${nth}`))
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
