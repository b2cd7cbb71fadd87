import { z } from 'zod'
import { OPPOSITE } from '../compare/change.ts'
import { editionKind } from '../compare/compare.ts'
import { asJson } from './report-json.ts'
import type { Reviewed } from './review.ts'

const named = z.strictObject({ id: z.string(), title: z.string() })
const held = z.union([
  z.strictObject({ rung: named }),
  z.strictObject({ rule: z.string(), on: named.optional(), until: z.string(), because: z.string() }),
  z.strictObject({ gone: named, heir: named }),
  z.strictObject({ note: z.string(), by: z.string(), because: z.string() }),
  z.strictObject({ reviewer: z.string(), on: z.string() }),
  z.strictObject({ words: z.string() }),
])
const side = z.strictObject({ text: z.string(), ours: z.literal(true).optional(), holds: z.array(held).optional(), number: z.number().optional(), unit: z.string().optional(), interval: z.strictObject({ low: z.number(), mid: z.number(), high: z.number() }).optional() })
const place = z.strictObject({ file: z.string(), line: z.int().min(1), column: z.int().min(1) })
const change = z.strictObject({
  kind: z.enum(Object.keys(OPPOSITE) as [string, ...string[]]),
  subject: z.strictObject({ ladder: z.string().optional(), rung: z.string().optional(), page: z.string().optional() }),
  name: z.string(),
  of: named.optional(),
  called: z.strictObject({ ladder: z.string().optional(), rung: z.string().optional(), page: z.string().optional() }).optional(),
  before: side.optional(),
  after: side.optional(),
  weight: z.enum(['wording', 'growth', 're-placing', 'to judge']),
  unsafe: z.boolean(),
  was: place.optional(),
  is: place.optional(),
  causes: z.array(z.string()),
  example: z.strictObject({ ladder: z.string(), on: z.string(), reps: z.number(), reserve_reps: z.number(), stood: z.string(), stands: z.string(), titles: z.strictObject({ on: z.string(), stood: z.string(), stands: z.string() }) }).optional(),
  fingerprint: z.string(),
})

/** What `review --format json` writes. The version rises when a reader would have to change. */
export const reviewSchema = z.strictObject({ version: z.literal(1), edition: z.string(), notes: z.array(z.string()), typed: z.array(change), followed: z.array(change) })

/** The comparison as JSON. */
export const reviewJson = ({ comparison, notes }: Reviewed): string => asJson({ version: 1, edition: editionKind(comparison), notes, ...comparison })
