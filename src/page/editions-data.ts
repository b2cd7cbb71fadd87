import { z } from 'zod'
import { compareText } from '../ladder/finding.ts'
import type { MeasuredCurriculum } from '../measure/measure.ts'
import { isTold, isTranslation, type EditionChanges } from './changes-page.ts'
import type { DataFile } from './data.ts'

const changed = z.strictObject({
  edition: z.string(),
  on: z.string().optional(),
  since: z.string(),
  /** Ladders, and rungs as "ladder/rung", that are not what they were, whatever the language; or why that cannot be said. */
  changed: z.union([z.array(z.string()), z.strictObject({ missing: z.string() })]),
})

/** What `data/editions.json` holds: the newest edition first. The version rises when a reader would have to change. */
export const editionsDataSchema = z.strictObject({ version: z.literal(1), edition: z.string(), editions: z.array(changed) })

export type EditionsData = z.infer<typeof editionsDataSchema>

/** "press-up", "press-up/floor": what a change is about, where it is about a ladder. */
const subjectOf = ({ subject: { ladder, rung } }: { readonly subject: { readonly ladder?: string; readonly rung?: string } }): string[] => (ladder === undefined ? [] : [rung === undefined ? ladder : `${ladder}/${rung}`])

/** Which ladders and rungs each edition changed, so that a page can tell a card of an older edition. */
export function editionsData({ handbook }: MeasuredCurriculum, editions: readonly EditionChanges[]): EditionsData {
  return {
    version: 1,
    edition: handbook.edition,
    editions: editions.map((each) => ({
      edition: each.edition,
      ...(each.on === undefined ? {} : { on: each.on }),
      since: each.since.replace(/^edition /, ''),
      changed: isTold(each) ? [...new Set([...each.comparison.typed, ...each.comparison.followed].filter((change) => !isTranslation(change)).flatMap(subjectOf))].toSorted(compareText) : { missing: 'missing' in each.comparison ? each.comparison.missing : '' },
    })),
  }
}

/** The same as a file, with its schema. */
export const editionsFiles = (curriculum: MeasuredCurriculum, editions: readonly EditionChanges[]): DataFile[] => [
  { name: 'data/editions.json', bytes: `${JSON.stringify(editionsData(curriculum, editions), null, 1)}\n` },
  { name: 'data/editions.schema.json', bytes: `${JSON.stringify(z.toJSONSchema(editionsDataSchema, { target: 'draft-7' }), null, 1)}\n` },
]
