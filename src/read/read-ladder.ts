import { once } from '../quantity/once.ts'
import type { Ladder, Rung, RungWords } from '../ladder/curriculum.ts'
import type { Finding, Place, Places } from '../ladder/finding.ts'
import { amendmentSchema, ladderSchema, type AmendmentFields, type LadderFields, type RungFields } from '../ladder/schema.ts'
import { readFront } from './front.ts'
import type { Cut } from './front-matter.ts'
import { sectionsOf, type Section } from './markdown.ts'
import { fitted } from './plain-words.ts'
import { rungWords } from './rung-words.ts'
import { atTop, type Reading } from './text.ts'

/** A file under ladders/: a ladder, or what a layer changes in one. */
export type LadderFile =
  | { readonly kind: 'ladder'; readonly ladder: Ladder }
  | { readonly kind: 'amendment'; readonly file: string; readonly fields: AmendmentFields; readonly intro: string; readonly words: ReadonlyMap<string, RungWords>; readonly places: Places }

/**
 * Reads one file of a workspace's ladders. Where everything stands is noted by reading it a second time, when somebody asks: a ladder with nothing to put right is read once.
 *
 * Shape   bytes to a ladder or an amendment, and every finding that can be seen.
 */
export function readLadderFile(file: string, bytes: Uint8Array, layer: string): Reading<LadderFile> {
  return readNoting(file, bytes, layer, placesOnce(file, bytes, layer), undefined)
}

/** Where everything stands in a file of ladders, read when somebody asks. */
export const placesOnce = (file: string, bytes: Uint8Array, layer: string): Places =>
  once(() => {
    const noted = new Map<string, Place>()
    readNoting(file, bytes, layer, () => noted, noted)
    return noted
  })

/** Reads the file, and notes where everything stands, where there is something to note it in. */
function readNoting(file: string, bytes: Uint8Array, layer: string, places: Places, noted: Map<string, Place> | undefined): Reading<LadderFile> {
  const front = readFront(file, bytes)
  if (!front.value) return { findings: front.findings }
  const { value, cut } = front.value
  const { body, body_line } = cut
  const amends = typeof value === 'object' && value !== null && 'amends' in value
  const { intro, sections } = sectionsOf(body, body_line)
  if (noted) for (const [key, place] of front.value.places()) noted.set(key, place)
  if (intro !== '') noted?.set('intro', { file, line: body_line + body.slice(0, body.search(/\S/)).split('\n').length - 1, column: 1 })
  if (amends) {
    const fields = fitted(amendmentSchema, value, front.value.places)
    const findings = [...front.findings, ...fields.findings]
    if (!fields.value) return { findings }
    if (noted) byId(noted, fields.value.rungs ?? [])
    const prose = proseOf(file, sections, cut, undefined, noted)
    return { value: { kind: 'amendment', file, fields: fields.value, intro, words: prose.words, places }, findings: [...findings, ...prose.findings] }
  }
  const fields = fitted(ladderSchema, value, front.value.places)
  const findings = [...front.findings, ...fields.findings]
  if (!fields.value) return { findings }
  if (noted) byId(noted, fields.value.rungs)
  const prose = proseOf(file, sections, cut, fields.value.rungs, noted)
  return { value: { kind: 'ladder', ladder: ladderOf(fields.value, intro, prose.words, layer, places) }, findings: [...findings, ...prose.findings] }
}

/** Gives every place under `rungs/2` a second name, `rungs/bench-hands`; the first rung of an id has it. */
function byId(places: Map<string, Place>, rungs: readonly { id: string }[]): void {
  for (const [key, place] of places) {
    const match = /^rungs\/(\d+)(.*)$/s.exec(key)
    const name = match ? `rungs/${rungs[Number(match[1])]?.id}${match[2]}` : undefined
    if (name && !places.has(name)) places.set(name, place)
  }
}

/** The same words, however the keyboard put the accents on. */
const alike = (one: string, other: string): boolean => one.normalize() === other.normalize()

/** Matches `##` sections to rungs: by {#id}, else by title. Sections without a rung are findings; an amendment's need only an {#id}. */
function proseOf(file: string, sections: readonly Section[], { body, body_line }: Pick<Cut, 'body' | 'body_line'>, rungs: readonly RungFields[] | undefined, noted: Map<string, Place> | undefined) {
  const words = new Map<string, RungWords>()
  const lines = body.split('\n')
  const findings: Finding[] = []
  for (const section of sections) {
    const rung = rungs?.find(({ id, title }) => (section.id === undefined ? alike(title, section.title) : id === section.id))
    const id = rungs ? rung?.id : section.id
    if (id === undefined) {
      const remedy = rungs ? `Give it the title of a rung, or add the rung's id: {#${rungs[0]?.id ?? 'id'}}.` : 'Add the id of the rung it is for, such as {#floor}.'
      findings.push(atTop(file, 'sections-match-rungs', `"${section.title}" belongs to no rung. ${remedy}`, section.line))
    } else if (words.has(id)) {
      findings.push(atTop(file, 'sections-match-rungs', `The rung "${id}" is described twice. Join the two sections.`, section.line))
    } else {
      if (rung && !alike(rung.title, section.title)) findings.push(atTop(file, 'sections-match-rungs', `The heading says "${section.title}", the rung is called "${rung.title}". Make them the same.`, section.line))
      const read = rungWords(file, section, { lines, line: body_line }, id, noted)
      words.set(id, read.words)
      findings.push(...read.findings)
    }
  }
  return { words, findings }
}

function ladderOf({ rungs, ...fields }: LadderFields, intro: string, words: ReadonlyMap<string, RungWords>, layer: string, places: Places): Ladder {
  return { ...fields, intro, rungs: rungs.map((rung, index) => rungOf(rung, rungs[index - 1], words.get(rung.id))), amended: [], withdrawn_notes: [], layer, places }
}

/** A rung with its silences filled in: it follows the one above it in the file, unless it says otherwise. */
export function rungOf(rung: RungFields, above: { readonly id: string } | undefined, words: RungWords | undefined): Rung {
  return {
    id: rung.id,
    title: rung.title,
    after: rung.after ?? (above ? [above.id] : []),
    demand: rung.demand ?? [],
    entry: rung.entry ?? {},
    load: rung.load,
    supervision: rung.supervision,
    equipment: rung.equipment ?? [],
    form: rung.form ?? [],
    cautions: rung.cautions ?? [],
    first_side: rung.first_side,
    words,
  }
}
