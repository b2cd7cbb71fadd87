import { markdown } from './markdown.ts'

/** A link or picture in Markdown, with the line it stands on, counted from 0. A picture has a text, empty where none was written. */
export type Link = { readonly href: string; readonly line: number; readonly alt?: string }

/** What every link and picture is written with: most of what coaches write has none, and need not be parsed to know. */
const MAY_LINK = /[[<]/

/** Every link and picture in a piece of Markdown, in order. */
export function linksIn(text: string): Link[] {
  if (!MAY_LINK.test(text)) return []
  const links: Link[] = []
  let line = 0
  for (const { map, children } of markdown.parse(text, {})) {
    if (map) line = map[0] // the cells of a table have no line of their own, their row has
    let breaks = 0
    for (const child of children ?? []) {
      if (child.type === 'softbreak' || child.type === 'hardbreak') breaks += 1
      if (child.type === 'link_open') links.push({ href: String(child.attrGet('href') ?? ''), line: line + breaks })
      if (child.type === 'image') links.push({ href: String(child.attrGet('src') ?? ''), line: line + breaks, alt: child.content.trim() })
    }
  }
  return links
}

/** What a link points at, in this handbook's own terms. */
export type Target =
  | { readonly kind: 'rung'; readonly name: string }
  | { readonly kind: 'page'; readonly id: string; readonly fragment: string | undefined }
  | { readonly kind: 'outside' }
  | { readonly kind: 'refused'; readonly why: string }

/** Schemes that lead out of the handbook and can do no harm in it. */
const OUTSIDE = /^(https:\/\/|mailto:|tel:)/i

/**
 * Sorts a link: `rung:press-up/bench-hands` and `rung:press-up` to a ladder, `/safety/` and `safety.md` to a page, https, mailto and tel outside.
 */
export function targetOf(href: string): Target {
  if (OUTSIDE.test(href)) return { kind: 'outside' }
  const rung = /^rung:([a-z0-9-]+(?:\/[a-z0-9-]+)?)$/.exec(href)
  if (rung?.[1]) return { kind: 'rung', name: rung[1] }
  const page = /^(?:\/|\.\/)?([a-z0-9-]+)(?:\/|\.md)(?:#([A-Za-z0-9-]+))?$/.exec(href)
  if (page?.[1]) return { kind: 'page', id: page[1], fragment: page[2] }
  return { kind: 'refused', why: 'links lead to rung:ladder/rung, to a page such as /safety/, or out by https, mailto or tel' }
}
