import { rules } from '../check/index.ts'
import type { Finding } from '../ladder/finding.ts'
import type { Outcome } from './report.ts'

/** A code host shows ten annotations of a step; the rest would vanish unsaid. */
const MOST = 10

/** Text in the message of a workflow command. */
export const forWorkflow = (text: string): string => text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A')
/** Text in a property of a workflow command, where colon and comma mean something. */
export const forWorkflowProperty = (text: string): string => forWorkflow(text).replaceAll(':', '%3A').replaceAll(',', '%2C')

/** What is worst first: a file that cannot be read, then the rules in their own order. */
const weight = ({ rule }: Finding): number => rules.findIndex(({ name }) => name === rule)

/** Workflow annotations, the worst first, ten at most, and how many were left off. */
export function githubReport({ findings }: Outcome): string {
  const worst = findings.toSorted((a, b) => weight(a) - weight(b))
  const lines = worst.slice(0, MOST).map(({ file, line, column, rule, message }) => `::error file=${forWorkflowProperty(file)},line=${line},col=${column},title=${forWorkflowProperty(rule)}::${forWorkflow(message)}`)
  const rest = findings.length - lines.length
  if (rest > 0) lines.push(`::notice::${rest} more to fix; run rungbook check to see them all`)
  return lines.length === 0 ? '' : `${lines.join('\n')}\n`
}
