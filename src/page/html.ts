/** Markup that is safe to put into a page as it stands. Made only by `html` and `raw`. */
export type Html = { readonly html: string }

const NAMED: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

/** Text for an element or a quoted attribute. Characters no HTML may hold, and those that turn the reading direction, are dropped. */
export const escaped = (text: string): string =>
  text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069\ufdd0-\ufdef\ufffe\uffff]/g, '').replace(/[&<>"']/g, (character) => NAMED[character] ?? character)

/** Markup made elsewhere by code that escapes: the Markdown renderer, the drawings. */
export const raw = (html: string): Html => ({ html })

type Part = Html | string | number | undefined | false | readonly Part[]

const text = (part: Part): string => {
  if (part === undefined || part === false) return ''
  if (typeof part === 'string') return escaped(part)
  if (typeof part === 'number') return String(part)
  return 'html' in part ? part.html : part.map(text).join('')
}

/** A template whose every hole is escaped, unless it holds markup already. Lists are joined; undefined and false are nothing. */
export const html = (strings: TemplateStringsArray, ...parts: readonly Part[]): Html =>
  raw(strings.map((string, index) => (index === 0 ? string : text(parts[index - 1]) + string)).join(''))
