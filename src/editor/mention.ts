import type { Kind } from './outline.ts'
import { patternOf, samePath, type Word } from './word.ts'

/** A place where a file names a ladder or a rung, or says that it exists. */
export type Mention = { readonly ladder: string; readonly rung?: string; readonly role: 'definition' | 'reference'; readonly from: number; readonly to: number }

/** Keys whose value is the id of a rung of the same ladder. `retired.id` is not among them: no rung has it any more. */
const RUNG_KEYS = new Set(['aim', 'rungs.after', 'rungs.before', 'silence.rung', 'retired.heir', 'withdraw.id', 'withdraw.heir'])
/** Keys under `of` in a translation that are parts of the ladder itself. */
const LADDER_PARTS = new Set(['title', 'because', 'intro', 'form', 'stop', 'ask_first'])

/** Every mention in one file, in the order they stand. */
export function mentionsIn(text: string, kind: Kind, words: readonly Word[], body_from: number, ladder: string | undefined): Mention[] {
  const own = ladder === undefined ? [] : [...words.flatMap((word) => ofWord(word, kind, words, ladder)), ...headings(text, body_from, ladder)]
  return [...own, ...links(text)].toSorted((a, b) => a.from - b.from)
}

function ofWord({ path, role, text, from, to }: Word, kind: Kind, words: readonly Word[], ladder: string): Mention[] {
  const pattern = patternOf(path)
  if (role === 'key') {
    const [, named = '', rung = ''] = /^(rung:)?([^/]*)/.exec(text) ?? [] // a rung that is called like a part of the ladder
    const begins = from + named.length
    return kind === 'translation' && path.length === 2 && path[0] === 'of' && (named !== '' || !LADDER_PARTS.has(rung)) ? [{ ladder, rung, role: 'reference', from: begins, to: begins + rung.length }] : []
  }
  if (pattern === 'id' && kind === 'ladder') return [{ ladder, role: 'definition', from, to }]
  if ((pattern === 'amends' && kind === 'amendment') || (pattern === 'translates' && kind === 'translation')) return [{ ladder, role: 'reference', from, to }]
  if (pattern === 'rungs.id') return [{ ladder, rung: text, role: kind === 'ladder' || (kind === 'amendment' && isNew(path.slice(0, -1), words)) ? 'definition' : 'reference', from, to }]
  return RUNG_KEYS.has(pattern) ? [{ ladder, rung: text, role: 'reference', from, to }] : []
}

/** A rung that brings a title and a load, and says where it goes, is a new one. */
function isNew(at: Word['path'], words: readonly Word[]): boolean {
  const keys = new Set(words.filter(({ role, path }) => role === 'key' && samePath(path.slice(0, -1), at)).map(({ text }) => text))
  return keys.has('title') && keys.has('load') && (keys.has('after') || keys.has('before'))
}

/** "## Hands on a bench {#bench-hands}" */
const headings = (text: string, body_from: number, ladder: string): Mention[] =>
  [...text.slice(body_from).matchAll(/^##[ \t]+[^\r\n]*\{#([a-z0-9-]{1,80})\}[ \t]*$/gm)].map((match) => {
    const from = body_from + match.index + match[0].lastIndexOf('{#') + 2
    return { ladder, rung: match[1] ?? '', role: 'reference', from, to: from + (match[1] ?? '').length }
  })

/** Links such as rung:press-up and rung:press-up/floor, wherever they stand. */
const links = (text: string): Mention[] =>
  [...text.matchAll(/(?<![\w-])rung:([a-z0-9-]+)(?:\/([a-z0-9-]+))?/g)].flatMap((match): Mention[] => {
    const [whole, ladder = '', rung] = match
    const from = match.index + 'rung:'.length
    const to = match.index + whole.length
    return [{ ladder, role: 'reference', from, to: from + ladder.length }, ...(rung === undefined ? [] : [{ ladder, rung, role: 'reference' as const, from: to - rung.length, to }])]
  })

/** True for two mentions of one ladder, or of one rung. */
export const sameTarget = (one: Mention, other: Mention): boolean => one.ladder === other.ladder && one.rung === other.rung

/** The mention that touches an offset. */
export const mentionAt = (mentions: readonly Mention[], offset: number): Mention | undefined => mentions.find(({ from, to }) => offset >= from && offset <= to)
