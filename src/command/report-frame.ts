import type { Finding } from '../ladder/finding.ts'
import type { Sources } from './report.ts'

/** One line of a file around a finding. */
export type FrameLine = { readonly line: number; readonly text: string; readonly here: boolean }

/** Lines before and after. Chosen by us. */
const AROUND = 2

/** The line a finding stands in, with those around it; nothing where the file cannot be shown. */
export function framed({ file, line }: Finding, sources: Sources): FrameLine[] {
  const lines = sources.get(file)
  if (lines?.[line - 1] === undefined) return []
  const first = Math.max(1, line - AROUND)
  return lines.slice(first - 1, line + AROUND).map((text, index) => ({ line: first + index, text, here: first + index === line }))
}
