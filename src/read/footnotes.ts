import { markdown } from './markdown.ts'

/** A footnote that would be lost: a mark without one, one without a mark, or two by one name. Lines count from 0. */
export type LostFootnote = { readonly label: string; readonly line: number; readonly kind: 'unwritten' | 'unused' | 'twice' }

const MARK = /\[\^([^\]\s]{1,80})\]/g
const WRITTEN = /^ {0,3}\[\^([^\]\s]+)\]:/

/** Every footnote of a piece of Markdown that does not reach its reader, in order. */
export function lostFootnotes(text: string): LostFootnote[] {
  if (!text.includes('[^')) return []
  const env: { footnotes?: { refs?: Readonly<Record<string, number>> } } = {}
  const tokens = markdown.parse(text, env)
  const code = tokens.flatMap(({ type, map }) => ((type === 'fence' || type === 'code_block') && map ? [map] : []))
  const written = text.split('\n').flatMap((content, line) => {
    const label = WRITTEN.exec(content)?.[1]
    return label === undefined || code.some(([from, to]) => line >= from && line < to) ? [] : [{ label, line }]
  })
  const first = new Map(written.toReversed().map(({ label, line }) => [label, line]))
  const lost = written.flatMap(({ label, line }): LostFootnote[] => {
    if (first.get(label) !== line) return [{ label, line, kind: 'twice' }]
    return env.footnotes?.refs?.[`:${label}`] === -1 ? [{ label, line, kind: 'unused' }] : []
  })
  return [...lost, ...unwritten(tokens)].toSorted((a, b) => a.line - b.line)
}

/** Marks that stayed words, because nothing is written for them. */
function unwritten(tokens: ReturnType<typeof markdown.parse>): LostFootnote[] {
  let line = 0
  return tokens.flatMap(({ map, children }) => {
    if (map) line = map[0] // the cells of a table have no line of their own, their row has
    let breaks = 0
    return (children ?? []).flatMap(({ type, content }): LostFootnote[] => {
      if (type === 'softbreak' || type === 'hardbreak') breaks += 1
      return type === 'text' ? [...content.matchAll(MARK)].map(([, label = '']) => ({ label, line: line + breaks, kind: 'unwritten' })) : []
    })
  })
}
