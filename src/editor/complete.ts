import type { JsonSchema } from '../ladder/json-schema.ts'
import { bodyCompletions } from './complete-body.ts'
import { choicesFor, type Around, type Choice } from './choices.ts'
import { outlineOf, type EditorFile, type Outline } from './outline.ts'
import { schemaAt } from './schema-at.ts'
import { samePath, wordAt, type Word } from './word.ts'

/** Something that may be written where the cursor is, and the letters it takes the place of. */
export type Completion = Choice & { readonly kind: 'key' | 'value' | 'word'; readonly insert: string; readonly from: number; readonly to: number }

/** Stands in for a word that is not there yet, so that its place is known. */
const HERE = 'zzhere'

/** What may be written at an offset: keys, names and choices in the front matter; links, headings and words of the glossary in the body. */
export function completions(file: EditorFile, offset: number, around: Around): Completion[] {
  const outline = file.outline()
  if (offset >= outline.body_from && !file.file.endsWith('.yaml')) return bodyCompletions(outline, offset, around)
  const typed = wordAt(outline.words, offset)
  if (typed) return ofWord(typed, outline, around, typed)
  const text = `${outline.text.slice(0, offset)}${HERE}${outline.text.slice(offset)}`
  const there = outlineOf(file.file, text)
  const word = wordAt(there.words, offset)
  return word?.text === HERE ? ofWord(word, there, around, { from: offset, to: offset }) : []
}

function ofWord(word: Word, outline: Outline, around: Around, { from, to }: { readonly from: number; readonly to: number }): Completion[] {
  if (word.role === 'key') return keys(word, outline, from, to)
  const schema = schemaAt(outline.kind, word.path, outline.words)
  return [...choicesFor(word, outline, around), ...listed(schema)]
    .filter(({ label }, index, all) => all.findIndex((other) => other.label === label) === index)
    .map((choice) => ({ ...choice, kind: 'value', insert: choice.label, from, to }))
}

/** The keys that may stand beside those that are there. */
function keys(word: Word, { kind, words, text }: Outline, from: number, to: number): Completion[] {
  const parent = word.path.slice(0, -1)
  const here = new Set(words.filter((other) => other.role === 'key' && other !== word && samePath(other.path.slice(0, -1), parent)).map((other) => other.text))
  const schema = schemaAt(kind, parent, words)
  const required = schema?.required ?? []
  const colon = /^["']?[ \t]*:/.test(text.slice(to)) ? '' : ': '
  return Object.entries(schema?.properties ?? {})
    .filter(([name]) => !here.has(name))
    .map(([name, key]) => ({ label: name, kind: 'key', detail: required.includes(name) ? 'has to be given' : 'may be left out', ...(key.description === undefined ? {} : { says: key.description }), insert: `${name}${colon}`, from, to }))
}

/** The values a schema lists. */
const listed = (schema: JsonSchema | undefined): Choice[] =>
  (schema?.enum ?? (schema?.type === 'boolean' ? [true, false] : [])).map((value) => ({ label: String(value), ...(value === schema?.default ? { detail: 'holds unless given' } : {}) }))
