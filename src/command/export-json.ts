import { z } from 'zod'
import type { Curriculum, Ladder, Page } from '../ladder/curriculum.ts'
import { handbookSchema, ladderSchema, pageSchema } from '../ladder/schema.ts'

const lines = z.array(z.string())
const fault = z.strictObject({ seen: z.string(), cause: z.string(), say: z.string(), remedy: z.string() })
const note = z.strictObject({ title: z.string(), body: z.string() })
const words = z.strictObject({ intro: z.string(), set_up: z.string().optional(), full_rep: lines.optional(), cues: lines.optional(), faults: z.array(fault).optional(), notes: z.array(note) })
const rung = ladderSchema.shape.rungs.element.required({ after: true, demand: true, entry: true, equipment: true, form: true, cautions: true }).extend({ words: words.optional() })

const ladder = ladderSchema.extend({
  layer: z.string(),
  intro: z.string(),
  rungs: z.array(rung),
  amended: z.array(z.strictObject({ by: z.string(), because: z.string(), what: lines })),
  withdrawn_notes: z.array(z.strictObject({ note: z.string(), because: z.string(), by: z.string(), layer: z.string() })),
})
const page = pageSchema.extend({ id: z.string(), layer: z.string(), body: z.string() })

/** What `export --format json` writes: a curriculum as it was read, its layers joined. The version rises when a reader would have to change. */
export const curriculumSchema = z.strictObject({ version: z.literal(1), handbook: handbookSchema, ladders: z.array(ladder), pages: z.array(page) })

/** A curriculum as one JSON: what coaches wrote, without what is computed from it. Other languages stay in their files. */
export const curriculumJson = ({ handbook, ladders, pages }: Curriculum): string => `${JSON.stringify({ version: 1, handbook, ladders: ladders.map(saidOfLadder), pages: pages.map(saidOfPage) }, null, 2)}\n`

const saidOfLadder = ({ places: _, translations: __, spoken: ___, ...said }: Ladder) => said
const saidOfPage = ({ places: _, translations: __, spoken: ___, stretches: ____, ...said }: Page) => said
