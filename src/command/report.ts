import type { Finding } from '../ladder/finding.ts'

/** Characters that would move the cursor or ring the bell of a terminal, shown as what they are. */
const forTerminal = (text: string): string => text.replace(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`)

/** "2 to fix", then a line a finding: place, what to do, the rule. */
export function report(findings: readonly Finding[]): string {
  if (findings.length === 0) return 'nothing to put right\n'
  const lines = findings.map(({ file, line, column, message, rule }) => `  ${forTerminal(`${file}:${line}:${column}  ${message}`)}  (${rule})`)
  return `${findings.length} to fix\n${lines.join('\n')}\n`
}
