import type { Page } from '../ladder/curriculum.ts'
import { id as idSchema } from '../ladder/words.ts'
import { pageSchema } from '../ladder/schema.ts'
import { cutFrontMatter } from './front-matter.ts'
import { fitted } from './plain-words.ts'
import { atTop, textOf, type Reading } from './text.ts'
import { readYaml } from './yaml.ts'

/** The id of a page, from its file: `content/safety.md` is `safety`. */
const idOf = (file: string): string => file.replace(/^content\//, '').replace(/\.md$/, '').replaceAll('/', '-')

/** Reads one page of a workspace's content. `name` is its file in its own workspace, `file` how findings name it. */
export function readPage(name: string, file: string, bytes: Uint8Array, layer: string): Reading<Page> {
  const text = textOf(file, bytes)
  if (text.value === undefined) return { findings: text.findings }
  const cut = cutFrontMatter(file, text.value)
  if (!cut.value) return { findings: cut.findings }
  const front = readYaml(file, cut.value.yaml, cut.value.yaml_line)
  if (!front.value) return { findings: front.findings }
  const { value, places } = front.value
  const fields = fitted(pageSchema, value, places)
  const id = idOf(name)
  const address = idSchema.safeParse(id)
  const findings = [
    ...front.findings,
    ...fields.findings,
    ...(address.success ? [] : [atTop(file, 'file-names-are-addresses', `The file is named "${id.slice(0, 80)}", which cannot be an address. Use small letters, digits and single hyphens, such as safety.md.`)]),
  ]
  if (!fields.value || !address.success) return { findings }
  places.set('body', { file, line: cut.value.body_line, column: 1 })
  return { value: { ...fields.value, id, body: cut.value.body, layer, places }, findings }
}
