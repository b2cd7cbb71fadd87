import { z } from 'zod'
import { once } from '../quantity/once.ts'
import type { RungWords } from '../ladder/curriculum.ts'
import { pathKey, type Finding, type Path, type Place } from '../ladder/finding.ts'
import { handbookSchema, ladderSchema, pageSchema } from '../ladder/schema.ts'
import { fitted } from './plain-words.ts'
import type { SaidLadder } from './read-table.ts'
import { atTop, type Reading } from './text.ts'

const SAID = '{key} must be as rungbook export --format json writes it.'
const text = z.string(SAID)
const lines = z.array(text, SAID)
const fault = z.strictObject({ seen: text, cause: text, say: text, remedy: text }, SAID)
const note = z.strictObject({ title: z.literal('Notes', SAID), body: text }, SAID)
const words = z.strictObject({ intro: text, set_up: text.optional(), full_rep: lines.optional(), cues: lines.optional(), faults: z.array(fault, SAID).optional(), notes: z.array(note, SAID).max(1, SAID) }, SAID)
const rung = ladderSchema.shape.rungs.element.extend({ words: words.optional() })

const did = z.union(
  [
    z.strictObject({ key: text }, SAID),
    z.strictObject({ changed: text, title: text }, SAID),
    z.strictObject({ added: text, title: text }, SAID),
    z.strictObject({ withdrawn: text, title: text, heir: text }, SAID),
    z.strictObject({ note: text }, SAID),
  ],
  SAID,
)

const ladder = ladderSchema.extend({
  layer: text,
  intro: text,
  rungs: z.array(rung, SAID),
  amended: z.array(z.strictObject({ by: text, because: text, what: z.array(did, SAID) }, SAID), SAID),
  withdrawn_notes: z.array(z.strictObject({ note: text, because: text, by: text, layer: text }, SAID), SAID),
})
const page = pageSchema.extend({ id: text.regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, SAID), layer: text, body: text })

/** What `export --format json` writes: a curriculum as it was read, its layers joined. The version rises when a reader would have to change. */
export const curriculumSchema = z.strictObject({ version: z.literal(1, SAID), handbook: handbookSchema, ladders: z.array(ladder, SAID), pages: z.array(page, SAID) }, SAID)

/** A page of an exported curriculum. */
export type SaidPage = Omit<z.infer<typeof page>, 'layer'>

/** Ladders and pages out of one JSON, each ladder with the way to it. */
export type Exported = { readonly ladders: readonly SaidLadder[]; readonly pages: readonly SaidPage[] }

/**
 * Reads an exported curriculum.
 *
 * Shape   a value out of JSON to ladders and pages, or every finding, each with the way to what it is about.
 */
export function readExported(file: string, value: unknown): Reading<Exported> {
  const paths: Path[] = []
  const fit = fitted(curriculumSchema, value, once(() => placesIn(value, file, paths)))
  if (!fit.value) return { findings: fit.findings.map(({ line, message }): Finding => atTop(file, 'tables-are-sound', `${wayTo(paths[line - 1] ?? [])}: ${message}`)) }
  const ladders = fit.value.ladders.map(({ layer: _, amended: __, withdrawn_notes: ___, intro, rungs, ...fields }): SaidLadder => {
    const said = new Map(rungs.flatMap((one) => (one.words ? [[one.id, { set_up: undefined, full_rep: undefined, cues: undefined, faults: undefined, ...one.words } as RungWords] as const] : [])))
    return { fields: { ...fields, rungs: rungs.map(({ words: _words, ...one }) => one) }, intro, words: said }
  })
  return { value: { ladders, pages: fit.value.pages.map(({ layer: _, ...one }) => one) }, findings: [] }
}

/** A way into JSON, as people write it: ladders[2].rungs[0].title */
export const wayTo = (path: Path): string => (path.length === 0 ? 'The file' : path.map((step, index) => (typeof step === 'number' ? `[${step}]` : `${index === 0 ? '' : '.'}${step}`)).join(''))

/** A place for everything in a value: its line is its number among `paths`. */
function placesIn(value: unknown, file: string, paths: Path[]): ReadonlyMap<string, Place> {
  const places = new Map<string, Place>()
  const waiting: { readonly held: unknown; readonly path: Path }[] = [{ held: value, path: [] }]
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const { held, path } = next
    paths.push(path)
    places.set(pathKey(path), { file, line: paths.length, column: 1 })
    if (typeof held === 'object' && held !== null) for (const [key, inside] of Object.entries(held)) waiting.push({ held: inside, path: [...path, Array.isArray(held) ? Number(key) : key] })
  }
  return places
}
