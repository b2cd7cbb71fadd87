import type { Places } from '../ladder/finding.ts'
import { cutFrontMatter, type Cut } from './front-matter.ts'
import { textOf, type Reading } from './text.ts'
import { readYaml } from './yaml.ts'

/** A Markdown file cut in two, and its front matter as plain values with their places; nothing of it judged yet. */
export type Front = { readonly value: unknown; readonly places: Places; readonly cut: Cut }

/**
 * From the bytes of a Markdown file to its front matter and its body.
 *
 * Shape   bytes to values and text, or the finding that stands in the way; with a value, what the YAML made worth saying.
 */
export function readFront(file: string, bytes: Uint8Array): Reading<Front> {
  const text = textOf(file, bytes)
  if (text.value === undefined) return { findings: text.findings }
  const cut = cutFrontMatter(file, text.value)
  if (!cut.value) return { findings: cut.findings }
  const front = readYaml(file, cut.value.yaml, cut.value.yaml_line)
  if (!front.value) return { findings: front.findings }
  return { value: { ...front.value, cut: cut.value }, findings: front.findings }
}
