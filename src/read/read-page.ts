import type { Page } from '../ladder/curriculum.ts'
import { id as idSchema } from '../ladder/words.ts'
import { pageSchema } from '../ladder/schema.ts'
import { readFront } from './front.ts'
import { fitted } from './plain-words.ts'
import { atTop, type Reading } from './text.ts'

/** The id of a page, from its file: `content/safety.md` is `safety`. */
const idOf = (file: string): string => file.replace(/^content\//, '').replace(/\.md$/, '').replaceAll('/', '-')

/** Reads one page of a workspace's content. `name` is its file in its own workspace, `file` how findings name it. */
export function readPage(name: string, file: string, bytes: Uint8Array, layer: string): Reading<Page> {
  const front = readFront(file, bytes)
  if (!front.value) return { findings: front.findings }
  const { value, places, cut } = front.value
  const fields = fitted(pageSchema, value, places)
  const id = idOf(name)
  const address = idSchema.safeParse(id)
  const findings = [
    ...front.findings,
    ...fields.findings,
    ...(address.success ? [] : [atTop(file, 'file-names-are-addresses', `The file is named "${id.slice(0, 80)}", which cannot be an address. Use small letters, digits and single hyphens, such as safety.md.`)]),
  ]
  if (!fields.value || !address.success) return { findings }
  const all = new Map(places()).set('body', { file, line: cut.body_line, column: 1 })
  return { value: { ...fields.value, id, body: cut.body, layer, places: () => all }, findings }
}
