import { z } from 'zod'
import { fileSchemas, jsonSchemaOf, type FileKind } from '../ladder/json-schema.ts'
import { curriculumSchema } from '../read/read-exported.ts'
import { findingsSchema } from './report-json.ts'
import { reviewSchema } from './review-json.ts'
import { EXIT, Misuse, type Verb } from './verb.ts'

/** What is written, by name; what a coach writes has its own list. */
const WRITTEN: Readonly<Record<string, z.ZodType>> = { findings: findingsSchema, review: reviewSchema, curriculum: curriculumSchema }

const NAMES = [...Object.keys(fileSchemas), ...Object.keys(WRITTEN)]

const isFileKind = (name: string): name is FileKind => Object.hasOwn(fileSchemas, name)

/** `rungbook schema`: the JSON Schemas of what is read and written. */
export const schemaVerb: Verb = {
  name: 'schema',
  says: 'writes the JSON Schema of what is read and written: ladders, amendments, pages, translations, handbook.yaml, findings, reviews',
  usage: `rungbook schema ${NAMES.join('|')}`,
  examples: ['rungbook schema ladder > ladder.schema.json', 'rungbook schema handbook > handbook.schema.json'],
  choices: { '': NAMES },
  options: {},

  async run(typed, console) {
    const [name, ...more] = typed.rest
    if (name === undefined || more.length > 0 || !NAMES.includes(name)) throw new Misuse(`Name one of: ${NAMES.join(', ')}.`)
    const schema = isFileKind(name) ? jsonSchemaOf(name) : z.toJSONSchema(WRITTEN[name] ?? findingsSchema, { io: 'input', target: 'draft-7' })
    console.out(`${JSON.stringify(schema, null, 2)}\n`)
    return EXIT.fine
  },
}
