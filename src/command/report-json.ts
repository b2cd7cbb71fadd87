import { z } from 'zod'
import type { Outcome } from './report.ts'

const finding = z.strictObject({
  rule: z.string(),
  file: z.string(),
  line: z.int().min(1),
  column: z.int().min(1),
  message: z.string(),
  subject: z.string().optional(),
  edit: z.strictObject({ line: z.int().min(1), column: z.int().min(1), old: z.string(), text: z.string() }).optional(),
})

/** What `check --format json` writes. The version rises when a reader would have to change. */
export const findingsSchema = z.strictObject({ version: z.literal(1), findings: z.array(finding), cannot_tell: z.array(finding) })

/** A value as JSON of two spaces, in which a workflow that prints it sees no command of its own (##[ anywhere in a line). */
export const asJson = (value: unknown): string => `${JSON.stringify(value, null, 2).replaceAll('##[', '##\\u005b')}\n`

/** Findings as JSON, in file order. */
export const jsonReport = ({ findings, untold }: Outcome): string => asJson({ version: 1, findings, cannot_tell: untold })
