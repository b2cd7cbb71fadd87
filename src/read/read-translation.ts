import type { SourceFile } from '../ladder/curriculum.ts'
import { pathKey, type Finding, type Place } from '../ladder/finding.ts'
import { ladderTranslationSchema, pageTranslationSchema, wordListSchema, type LadderTranslationFields } from '../ladder/schema.ts'
import { rungPart, type Words } from '../ladder/translation.ts'
import { readFront } from './front.ts'
import type { Cut } from './front-matter.ts'
import { lineBeside, listItems, sectionsOf, tableRows, type Section } from './markdown.ts'
import { pageSections, sectionPart } from './parts.ts'
import { fitted } from './plain-words.ts'
import { atTop, textOf, type Reading } from './text.ts'
import { readYaml } from './yaml.ts'

/** One file of a ladder or page in another language: its parts by key, and the digests of what they were translated from. */
export type TranslationFile = {
  readonly file: string
  readonly translates: string
  readonly parts: ReadonlyMap<string, Words>
  readonly of: ReadonlyMap<string, string>
  /** Places of its parts, by key. */
  readonly places: ReadonlyMap<string, Place>
}

const RULE = 'translations-fit'

/** The language in a file's name: "es" of `ladders/press-up.es.md` and of `words.es.yaml`. A second .md is a slip, no language. */
export const languageIn = (file: string): string | undefined => /(?:^words|^(?:ladders|content)\/.*[^/])\.((?!md\.)[a-z]{2,3}(?:-[A-Za-z0-9]{2,8})*)\.(?:md|yaml)$/.exec(file)?.[1]

/** Reads a ladder in another language. */
export function readLadderTranslation(file: string, bytes: Uint8Array): Reading<TranslationFile> {
  const front = readFront(file, bytes)
  if (!front.value) return { findings: front.findings }
  const { value, cut } = front.value
  const fields = fitted(ladderTranslationSchema, value, front.value.places)
  const findings = [...front.findings, ...fields.findings]
  if (!fields.value) return { findings }
  const parts = new Map<string, Words>()
  const yaml = front.value.places()
  const places = new Map<string, Place>()
  const { translates, of, rungs = [], ...heads } = fields.value
  for (const [key, words] of Object.entries(heads)) if (words !== undefined) parts.set(key, words)
  for (const [key, place] of yaml) places.set(key, place)
  rungs.forEach((rung, index) => {
    const key = rungPart(rung.id)
    if (parts.has(key)) findings.push({ ...placeAt(yaml, ['rungs', index], file), rule: RULE, message: `The rung "${rung.id}" is translated twice. Join the two.` })
    parts.set(key, headOf(rung))
    for (const [from, place] of yaml) if (from === `rungs/${index}` || from.startsWith(`rungs/${index}/`)) places.set(key + from.slice(`rungs/${index}`.length), place)
  })
  addProse(file, cut, parts, places, findings)
  return { value: { file, translates, parts, of: new Map(Object.entries(of ?? {})), places }, findings }
}

const placeAt = (places: ReadonlyMap<string, Place>, path: readonly (string | number)[], file: string): Place => places.get(pathKey(path)) ?? { file, line: 1, column: 1 }

function headOf({ title, cautions = [], form = [], first_side }: NonNullable<LadderTranslationFields['rungs']>[number]): Words {
  return { ...(title === undefined ? {} : { title }), ...(cautions.length > 0 ? { cautions } : {}), ...(form.length > 0 ? { form } : {}), ...(first_side === undefined ? {} : { first_side }) }
}

/** The body: an introduction, one `##` section a rung by its {#id}, in it one `###` section by that of the original's heading. */
function addProse(file: string, { body, body_line }: Cut, parts: Map<string, Words>, places: Map<string, Place>, findings: Finding[]): void {
  const add = (key: string, words: Words, line: number): void => {
    if (places.has(key) && parts.has(key)) findings.push(atTop(file, RULE, `"${key}" is translated twice. Join the two.`, line))
    if (words.length === 0) return
    parts.set(key, words)
    places.set(key, { file, line, column: 1 })
  }
  const { intro, sections } = sectionsOf(body, body_line)
  const lines = body.split('\n')
  if (intro !== '') add('intro', intro, body_line + body.slice(0, body.search(/\S/)).split('\n').length - 1)
  for (const section of sections) {
    if (section.id === undefined) {
      findings.push(atTop(file, RULE, `"${section.title}" does not say which rung it is. Add the rung's id, such as {#floor}.`, section.line))
      continue
    }
    add(rungPart(section.id, 'intro'), section.text, section.line)
    for (const part of section.subsections) {
      if (part.id === undefined) findings.push(atTop(file, RULE, `"${part.title}" does not say which heading it translates. Add one of {#set-up}, {#full-rep}, {#cues}, {#faults} or {#notes}.`, part.line))
      else {
        const beside = isCounted(part) ? lineBeside(part, part.id === 'faults' ? 'table' : 'list', body_line) : undefined
        if (beside !== undefined) findings.push(atTop(file, RULE, `This line is no ${part.id === 'faults' ? 'row of the table' : 'item of the list'} under "${part.title}", and would be lost. Make it one, or take it out.`, beside))
        add(rungPart(section.id, part.id), sectionWords(part, lines, body_line), part.line)
      }
    }
  }
}

/** Sections that are lists or a table, and nothing beside. */
const isCounted = ({ id }: Section): boolean => id === 'full-rep' || id === 'cues' || id === 'faults'

function sectionWords(part: Section, lines: readonly string[], body_line: number): Words {
  if (part.id === 'full-rep' || part.id === 'cues') return listItems(part, lines, body_line).map(({ text }) => text)
  if (part.id !== 'faults') return part.text
  return tableRows(part, body_line)
    .slice(1)
    .map(({ cells }) => [0, 1, 2, 3].map((column) => cells[column] ?? ''))
}

/** Reads a page in another language. */
export function readPageTranslation(file: string, bytes: Uint8Array): Reading<TranslationFile> {
  const front = readFront(file, bytes)
  if (!front.value) return { findings: front.findings }
  const { value, cut } = front.value
  const fields = fitted(pageTranslationSchema, value, front.value.places)
  const findings = [...front.findings, ...fields.findings]
  if (!fields.value) return { findings }
  const { translates, of, title, summary } = fields.value
  const places = new Map(front.value.places())
  const { intro, sections } = pageSections(cut.body)
  const parts = new Map<string, Words>([...(title === undefined ? [] : [['title', title] as const]), ...(summary === undefined ? [] : [['summary', summary] as const]), ...(intro === '' ? [] : [['intro', intro] as const])])
  if (intro !== '') places.set('intro', { file, line: cut.body_line + cut.body.slice(0, cut.body.search(/\S/)).split('\n').length - 1, column: 1 })
  for (const { id, named, title: heading, body, line } of sections) {
    if (!named) findings.push(atTop(file, RULE, `"${heading}" does not say which heading it translates. Add the original's words in small letters with hyphens, such as {#stepping-back}.`, cut.body_line + line))
    else {
      parts.set(sectionPart(id), { title: heading, body })
      places.set(sectionPart(id), { file, line: cut.body_line + line, column: 1 })
    }
  }
  return { value: { file, translates, parts, of: new Map(Object.entries(of ?? {})), places }, findings }
}

/** Reads words.LANG.yaml: phrases, and what to show for them. */
export function readWordList({ file: own, shown, bytes }: SourceFile): Reading<ReadonlyMap<string, string>> {
  const file = shown ?? own
  const text = textOf(file, bytes)
  if (text.value === undefined) return { findings: text.findings }
  const yaml = readYaml(file, text.value, 1)
  if (!yaml.value) return { findings: yaml.findings }
  const fields = fitted(wordListSchema, yaml.value.value ?? {}, yaml.value.places)
  return { ...(fields.value ? { value: new Map(Object.entries(fields.value)) } : {}), findings: [...yaml.findings, ...fields.findings] }
}
