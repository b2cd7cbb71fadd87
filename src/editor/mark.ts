import type { Edit, Finding } from '../ladder/finding.ts'

/** Offsets at which the lines of a text begin, as findings count lines. */
export function lineStarts(text: string): number[] {
  return [0, ...[...text.matchAll(/\r\n|\n|\r/g)].map((match) => match.index + match[0].length)]
}

const lineAt = (text: string, starts: readonly number[], line: number): { readonly from: number; readonly words: string } => {
  const from = starts[Math.min(line, starts.length) - 1] ?? 0
  return { from, words: /^[^\r\n]*/.exec(text.slice(from))?.[0] ?? '' }
}

/** From where to where a finding is marked: the word that stands at its place, or what is left of the line. */
export function marked(text: string, starts: readonly number[], { line, column }: Finding): { readonly from: number; readonly to: number } {
  const { from, words } = lineAt(text, starts, line)
  const at = Math.min(column - 1, words.length)
  const rest = /^(?:[\p{Letter}\p{Number}_-]+(?=:)|"[^"]*"|'[^']*'|[^\s,[\]{}][^\r\n]*?(?=\s*(?:[,\]}]|$)))/u.exec(words.slice(at))?.[0] ?? words.slice(at).trimEnd()
  return { from: from + at, to: from + at + rest.length }
}

/** Where a finding's edit goes: the letters it takes the place of, with the quotes around them. Undefined where they are no longer there. */
export function editSpan(text: string, starts: readonly number[], { line, column, old }: Edit): { readonly from: number; readonly to: number } | undefined {
  const { from, words } = lineAt(text, starts, line)
  const quoted = quotedAt(words, column - 1, old)
  return quoted === undefined || line > starts.length ? undefined : { from: from + column - 1, to: from + column - 1 + old.length + 2 * quoted.length }
}

/** The quotes around `old` where it stands in a line; undefined where it does not stand there. */
export const quotedAt = (line: string, at: number, old: string): string | undefined => ['', '"', "'"].find((quote) => line.startsWith(`${quote}${old}${quote}`, at))
