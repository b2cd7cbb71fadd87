import { onceUnder } from '../quantity/once.ts'
import type { Markdown } from '../ladder/curriculum.ts'
import { isDrawn, readFlowchart, titleIn } from '../read/flowchart.ts'
import { headingParts, headingSlug, markdown, type MarkdownToken } from '../read/markdown.ts'
import { targetOf } from '../read/links.ts'
import { pictureFile } from '../read/pictures.ts'
import { linkTo, pageAddress, rungAddress, type Address } from './address.ts'
import { drawnHere, pictureKey } from './drawn.ts'
import { flowchart } from './drawn-flowchart.ts'
import { escaped } from './escaped.ts'
import { footnotePart } from './footnotes.ts'
import { html, raw, type Html } from './html.ts'
import { ENGLISH, type Tongue } from './tongue.ts'
import { written } from './written.ts'

/** Ids in the prose are set apart from those of the page around it. */
const PREFIX = 'on-'

/** How prose stands in a page: where its links start from, what level its own headings begin at, its name where a page holds more than one piece, and the file it was written in, asked for where there is a picture. */
type Setting = { readonly from: Address; readonly first_heading: number; readonly part?: string; readonly file?: () => string }

/** Markdown as markup: raw HTML stays text, links lead where the checks have seen them lead, headings and footnotes get ids of their own, flowcharts are drawn. */
export const prose = (text: Markdown, setting: Setting): Html => html`${(tongue: Tongue) => raw(rendered(text, setting, tongue))}`

function rendered(text: Markdown, { from, first_heading, part, file }: Setting, tongue: Tongue): string {
  const tokens = markdown.parse(text, {})
  const used = new Map<string, number>()
  const called = new Set<string>()
  for (const [index, token] of tokens.entries()) {
    if (token.type === 'heading_open' || token.type === 'heading_close') token.tag = `h${Math.min(6, Number(token.tag.slice(1)) - 2 + first_heading)}`
    if (token.type === 'heading_open') nameHeading(token, tokens[index + 1], used, part)
    const made = tableFrame(token, tokens, index, called) ?? footnotePart(token, part) ?? drawing(token) ?? figurePart(token, tokens, index)
    if (made) become(token, 'html_block', made, tongue)
    for (const child of token.children ?? []) {
      if (child.type === 'link_open') child.attrSet('href', hrefOf(String(child.attrGet('href') ?? ''), from))
      const inline = footnotePart(child, part) ?? picture(child, file)
      if (inline) become(child, 'html_inline', inline, tongue)
    }
  }
  return markdown.renderer.render(tokens, markdown.options, {})
}

/** Turns a token into markup of ours. */
function become(token: MarkdownToken, type: 'html_block' | 'html_inline', made: Html, tongue: Tongue): void {
  Object.assign(token, { type, content: written(made, tongue) })
}

/** The same form points and safety notes stand on every rung of a ladder. */
const KEPT_LINES = 5000
const kept = onceUnder<Html | undefined>(KEPT_LINES)

/** Inline Markdown: a cell, a line of front matter. */
export const inlineProse = (text: Markdown, from: Address, file?: () => string): Html => kept(text, () => sameAnywhere(text)) ?? inlineAt(text, from, file)

/** Inline Markdown that is the same on whatever page it stands: without links and pictures. */
function sameAnywhere(text: Markdown): Html | undefined {
  const tokens = markdown.parseInline(text, {})
  return tokens.some(({ children }) => children?.some(({ type }) => type === 'link_open' || type === 'image')) ? undefined : raw(markdown.renderer.render(tokens, markdown.options, {}))
}

function inlineAt(text: Markdown, from: Address, file: (() => string) | undefined): Html {
  const tokens = markdown.parseInline(text, {})
  for (const { children } of tokens) {
    for (const child of children ?? []) {
      if (child.type === 'link_open') child.attrSet('href', hrefOf(String(child.attrGet('href') ?? ''), from))
      const made = picture(child, file)
      if (made) become(child, 'html_inline', made, ENGLISH)
    }
  }
  return raw(markdown.renderer.render(tokens, markdown.options, {}))
}

/** A list line: inline Markdown, and below it whatever else the coach put into the item. */
export const itemProse = (text: Markdown, from: Address, part: string, file: () => string): Html => (text.includes('\n') ? prose(text, { from, first_heading: 4, part, file }) : inlineProse(text, from, file))

/** The place of a picture. One in a line of front matter, or that the checks refuse, leaves its text. */
function picture(token: MarkdownToken, file: (() => string) | undefined): Html | undefined {
  if (token.type !== 'image') return undefined
  const shown = file === undefined ? undefined : pictureFile(file(), String(token.attrGet('src') ?? ''))
  return shown === undefined ? raw(escaped(token.content)) : drawnHere(pictureKey(shown), token.content)
}

/** A picture alone in a paragraph, with a title, is a figure; the title is its caption. */
function figurePart({ type }: MarkdownToken, tokens: readonly MarkdownToken[], index: number): Html | undefined {
  const inline = type === 'paragraph_open' ? tokens[index + 1] : type === 'paragraph_close' ? tokens[index - 1] : undefined
  const [alone, more] = inline?.children ?? []
  const caption = alone && !more && (alone.type === 'image' || alone.meta?.['figure']) ? String(alone.attrGet('title') ?? '').trim() : ''
  if (!alone || caption === '') return undefined
  alone.meta = { figure: true } // by the end of the paragraph it is markup already
  return type === 'paragraph_open' ? raw('<figure class="picture">') : html`<figcaption>${raw(escaped(caption))}</figcaption></figure>\n`
}

/** A table stands in a frame that scrolls, and that a keyboard can reach; it is called by the heading it stands under and by its head, and no two alike. */
function tableFrame({ type }: MarkdownToken, tokens: readonly MarkdownToken[], index: number, called: Set<string>): Html | undefined {
  if (type === 'table_close') return raw('</table></div>\n')
  if (type !== 'table_open') return undefined
  const rest = tokens.slice(index)
  const head = rest.slice(0, rest.findIndex((token) => token.type === 'thead_close')).filter((token) => token.type === 'inline')
  const columns = head.map(({ content }) => plain(content)).filter((cell) => cell !== '').join(', ')
  const heading = tokens.slice(0, index).findLastIndex(({ type: kind }) => kind === 'heading_open')
  const under = heading < 0 ? '' : plain(tokens[heading + 1]?.content ?? '')
  const name = unlike([under, columns].filter((part) => part !== '').join(': '), called)
  const kind = head.length > 3 ? 'scroll wide' : 'scroll'
  return name === '' ? html`<div class="${raw(kind)}" tabindex="0" role="region" aria-label="Table"><table class="words">\n` : html`<div class="${raw(kind)}" tabindex="0" role="region" aria-label="${raw(escaped(name))}"><table class="words">\n`
}

/** A name that was not given before: one that was gets a number. */
function unlike(name: string, called: Set<string>): string {
  let own = name
  for (let nth = 2; own !== '' && called.has(own); nth += 1) own = `${name} (${nth})`
  called.add(own)
  return own
}

/** The words of a cell, without its marks. */
const plain = (content: string): string => (markdown.parseInline(content, {})[0]?.children ?? []).map(({ content: words }) => words).join('').trim()

/** A fence that is a flowchart; one that cannot be drawn stays text, and has been found. */
function drawing({ type, info, content }: MarkdownToken): Html | undefined {
  const chart = type === 'fence' && isDrawn(info) ? readFlowchart({ title: titleIn(info), source: content }).value : undefined
  return chart && flowchart(chart)
}

/** Gives a heading its id, and takes a written {#id} out of its words. */
function nameHeading(heading: MarkdownToken, inline: MarkdownToken | undefined, used: Map<string, number>, part: string | undefined): void {
  const { title, id } = headingParts(inline?.content ?? '')
  if (id !== undefined && inline) {
    inline.content = title
    for (const child of inline.children ?? []) if (child.type === 'text') child.content = headingParts(child.content).title
  }
  const name = id ?? (headingSlug(title) || 'part')
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
