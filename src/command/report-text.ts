import type { Finding } from '../ladder/finding.ts'
import type { Sources } from './report.ts'

const code = (character: string): string => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`

/**
 * Text on one line of a terminal: characters that would end the line, move the cursor, ring the bell or turn the line round are shown
 * as what they are, and so is what a workflow would take for a command (:: where a line begins, ##[ anywhere).
 */
export const forTerminal = (text: string): string =>
  text
    .replace(/[\u0000-\u0008\u000a-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g, code)
    .replace(/^(\s*):(?=:)|(?<=##)\[/g, (found, blanks: string | undefined) => (blanks === undefined ? code(found) : blanks + code(':')))

/** The most of a line a frame shows. */
const WIDE = 100

/** The line before, the line itself and a caret under the place. */
function frame({ file, line, column }: Finding, sources: Sources, bold: (text: string) => string): string[] {
  const lines = sources.get(file)
  const shown = lines?.[line - 1]
  if (lines === undefined || shown === undefined) return []
  const width = String(line).length
  const row = (at: number, mark: string): string[] => {
    const text = lines[at - 1]
    return text === undefined || at < 1 ? [] : [`  ${mark} ${String(at).padStart(width)} | ${forTerminal(text.replaceAll('\t', ' ')).slice(0, WIDE)}`]
  }
  const caret = column <= WIDE ? [`    ${' '.repeat(width)} | ${' '.repeat(column - 1)}${bold('^')}`] : []
  return [...row(line - 1, ' '), ...row(line, bold('>')), ...caret]
}

/** Findings a terminal shows: who has more does not read them to the end. Chosen by us. */
const MOST = 500

/** "2 to fix", then each finding with its place, what to do, its rule and the lines it stands in. */
export function textReport(findings: readonly Finding[], sources: Sources, colour: boolean): string {
  if (findings.length === 0) return 'nothing to put right\n'
  const bold = (text: string): string => (colour ? `\u001b[1m${text}\u001b[22m` : text)
  const blocks = findings.slice(0, MOST).map((finding) => {
    const { file, line, column, message, rule } = finding
    return [`  ${bold(forTerminal(`${file}:${line}:${column}`))}  ${forTerminal(message)}  (${rule})`, ...frame(finding, sources, bold)].join('\n')
  })
  const more = findings.length > MOST ? `  and ${findings.length - MOST} more; --format json tells them all\n` : ''
  return `${findings.length} to fix\n${blocks.join('\n')}\n${more}`
}
