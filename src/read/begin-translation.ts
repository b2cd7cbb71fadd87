import { stringify } from 'yaml'
import { isSafety, rungPart, stands, type Part, type Translated, type TranslatedPart } from '../ladder/translation.ts'

/** What in a translation is still to be done, and is not for want of a file alone. */
export const openParts = ({ parts }: Translated): readonly TranslatedPart[] => parts.filter((part) => !stands(part))

const yaml = (value: unknown): string => stringify(value, { lineWidth: 0 })

const HEADINGS: Readonly<Record<string, string>> = { 'set-up': 'Set up', 'full-rep': 'Full rep', cues: 'Cues', faults: 'Faults', notes: 'Notes' }

const bullets = (lines: readonly string[]): string => lines.map((line) => `- ${line}\n`).join('')

function sectionText(section: string, words: Part['words']): string {
  if (typeof words === 'string') return `${words}\n`
  if (section !== 'faults') return bullets(words as readonly string[])
  const row = (cells: readonly string[]): string => `| ${cells.map((cell) => cell.replaceAll(/(?<!\\)\|/g, '\\|')).join(' | ')} |\n`
  return `${row(['seen', 'likely cause', 'say', 'if it stays'])}|---|---|---|---|\n${(words as readonly (readonly string[])[]).map(row).join('')}`
}

/**
 * A file to begin a translation of a ladder from: what is still open, in the original's words, to be written over. It carries no digests, so it is found until it is sealed.
 *
 * Shape   the ladder's id and titles of its rungs, and what is open, to the text of `ID.LANG.md`.
 */
export function ladderToTranslate({ id, rungs }: { readonly id: string; readonly rungs: readonly { readonly id: string; readonly title: string }[] }, open: readonly TranslatedPart[], organisation: string): string {
  const ours = open.filter(({ by }) => by === undefined || by === organisation)
  const words = new Map(ours.map(({ key, words: original }) => [key, original]))
  const top = Object.fromEntries(['title', 'because', 'form', 'stop', 'ask_first'].flatMap((key) => (words.has(key) ? [[key, words.get(key)]] : [])))
  const heads = rungs.flatMap((rung) => (words.has(rungPart(rung.id)) ? [{ id: rung.id, ...(words.get(rungPart(rung.id)) as object) }] : []))
  const intro = words.get('intro')
  const body = rungs.map((rung) => rungText(rung, words)).filter((text) => text !== '')
  return `---\n${yaml({ translates: id, ...top, ...(heads.length > 0 ? { rungs: heads } : {}) })}---\n${typeof intro === 'string' ? `\n${intro}\n` : ''}${body.map((text) => `\n${text}`).join('')}`
}

function rungText({ id, title }: { readonly id: string; readonly title: string }, words: ReadonlyMap<string, Part['words']>): string {
  const intro = words.get(rungPart(id, 'intro'))
  const sections = Object.entries(HEADINGS).flatMap(([section, heading]) => {
    const said = words.get(rungPart(id, section))
    return said === undefined ? [] : [`### ${heading} {#${section}}\n${sectionText(section, said)}`]
  })
  if (intro === undefined && sections.length === 0) return ''
  return [`## ${title} {#${id}}\n`, ...(typeof intro === 'string' ? [`${intro}\n`] : []), ...sections].join('\n')
}

/** A file to begin a translation of a page from. */
export function pageToTranslate({ id }: { readonly id: string }, open: readonly TranslatedPart[]): string {
  const words = new Map(open.map(({ key, words: original }) => [key, original]))
  const top = Object.fromEntries(['title', 'summary'].flatMap((key) => (words.has(key) ? [[key, words.get(key)]] : [])))
  const intro = words.get('intro')
  const sections = open.flatMap(({ key, words: said }) => (typeof said === 'object' && 'body' in said ? [`\n## ${String(said.title)} {#${key.replace(/^section:/, '')}}\n\n${String(said.body)}\n`] : []))
  return `---\n${yaml({ translates: id, ...top })}---\n${typeof intro === 'string' ? `\n${intro}\n` : ''}${sections.join('')}`
}

/** The word for a state of a part, in a list of what is to be done. */
export const STATE = (part: TranslatedPart): string => (part.differs === undefined ? part.standing : 'of another shape') + (isSafety(part) ? ', safety' : '')
