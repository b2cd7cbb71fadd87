import { z } from 'zod'
import { amendmentSchema, handbookSchema, ladderSchema, pageSchema } from '../ladder/schema.ts'
import { findingsSchema } from './report-json.ts'
import { reviewSchema } from './review-json.ts'
import { EXIT, Misuse, type Verb } from './verb.ts'

/** What is read and written, by name. */
const SCHEMAS: Readonly<Record<string, z.ZodType>> = {
  ladder: ladderSchema,
  amendment: amendmentSchema,
  page: pageSchema,
  handbook: handbookSchema,
  findings: findingsSchema,
  review: reviewSchema,
}

/** `rungbook schema`: the JSON Schemas of what is read and written. */
export const schemaVerb: Verb = {
  name: 'schema',
  says: 'writes the JSON Schema of a ladder, an amendment, a page, handbook.yaml, findings or a review',
  usage: `rungbook schema ${Object.keys(SCHEMAS).join('|')}`,
  options: {},

  async run(typed, console) {
    const [name, ...more] = typed.rest
    const schema = name === undefined || more.length > 0 ? undefined : SCHEMAS[name]
    if (!schema || !Object.hasOwn(SCHEMAS, name ?? '')) throw new Misuse(`Name one of: ${Object.keys(SCHEMAS).join(', ')}.`)
    console.out(`${JSON.stringify(z.toJSONSchema(schema, { io: 'input', target: 'draft-7' }), null, 2)}\n`)
    return EXIT.fine
  },
}
