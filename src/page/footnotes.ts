import type { MarkdownToken } from '../read/markdown.ts'
import { html, raw, type Html } from './html.ts'

/** Which footnote of a text, and which of the marks that lead to it, counted from 0. */
type Note = { readonly id: number; readonly subId?: number }

/** Footnotes get ids by the piece of prose they stand in, and links there and back that say where they lead. */
export function footnotePart({ type, meta }: MarkdownToken, part = 'page'): Html | undefined {
  if (type === 'footnote_block_open') return raw('<div class="footnotes"><ol>\n')
  if (type === 'footnote_block_close') return raw('</ol></div>\n')
  if (type === 'footnote_close') return raw('</li>\n')
  if (!['footnote_open', 'footnote_ref', 'footnote_anchor'].includes(type)) return undefined
  const { id, subId: time = 0 } = meta as Note
  const note = `note-${part}-${id + 1}`
  const mark = `mark-${part}-${id + 1}${time === 0 ? '' : `-${time + 1}`}`
  if (type === 'footnote_open') return raw(`<li id="${note}">`)
  if (type === 'footnote_ref') return html`<sup><a class="mark" id="${mark}" href="#${note}" aria-label="Footnote ${id + 1}">${id + 1}</a></sup>`
  return time === 0
    ? html` <a class="back" href="#${mark}" aria-label="Back to where footnote ${id + 1} stands">↩\u{fe0e}</a>`
    : html` <a class="back" href="#${mark}" aria-label="Back to where footnote ${id + 1} stands, place ${time + 1}">↩\u{fe0e}</a>`
}
