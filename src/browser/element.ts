import { said } from './said.ts'

/** An element with its class and what stands in it; text stays text, in the language of the page. */
export function element<Tag extends keyof HTMLElementTagNameMap>(tag: Tag, className: string, ...within: readonly (Node | string)[]): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag)
  if (className !== '') made.className = className
  made.append(...within.map((part) => (typeof part === 'string' ? said(part) : part)))
  return made
}

/** A link. */
export function linkElement(className: string, href: string, text: string): HTMLAnchorElement {
  const link = element('a', className, text)
  link.href = href
  return link
}
