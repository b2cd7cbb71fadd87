import { z } from 'zod'
import { models } from '../load/index.ts'
import { isListKey, isNumberKey, type Key } from '../load/model.ts'
import { keyNotes } from './key-notes.ts'
import { amendmentSchema, handbookSchema, ladderSchema, ladderTranslationSchema, pageSchema, pageTranslationSchema } from './schema.ts'

/** The part of JSON Schema our files need. */
export type JsonSchema = {
  readonly title?: string
  readonly description?: string
  readonly examples?: readonly unknown[]
  readonly default?: unknown
  readonly type?: string
  readonly const?: unknown
  readonly enum?: readonly unknown[]
  readonly minimum?: number
  readonly maximum?: number
  readonly required?: readonly string[]
  readonly properties?: Readonly<Record<string, JsonSchema>>
  readonly items?: JsonSchema | readonly JsonSchema[]
  readonly anyOf?: readonly JsonSchema[]
  readonly oneOf?: readonly JsonSchema[]
}

/** The files a coach writes, by the name of their schema. */
export const fileSchemas = { ladder: ladderSchema, amendment: amendmentSchema, page: pageSchema, handbook: handbookSchema, translation: ladderTranslationSchema, 'page-translation': pageTranslationSchema } as const

export type FileKind = keyof typeof fileSchemas

const TITLES: Readonly<Record<FileKind, string>> = {
  ladder: 'The front matter of a ladder',
  amendment: 'The front matter of an amendment',
  page: 'The front matter of a page',
  handbook: 'handbook.yaml',
  translation: 'The front matter of a ladder in another language',
  'page-translation': 'The front matter of a page in another language',
}

/** The JSON Schema of a file, every key with what it is for, an example and, where there is one, its default. */
export function jsonSchemaOf(kind: FileKind): JsonSchema {
  const plain = z.toJSONSchema(fileSchemas[kind], { io: 'input', target: 'draft-7' }) as JsonSchema
  return { ...noted(plain, kind, []), title: TITLES[kind] }
}

/** Lays notes over the schema of what stands at `path`. */
function noted(schema: JsonSchema, kind: FileKind, path: readonly string[]): JsonSchema {
  const { properties, items, anyOf, oneOf } = schema
  const each = (branches: readonly JsonSchema[]): JsonSchema[] => branches.map((branch) => noted(branch, kind, path))
  return {
    ...schema,
    ...(properties ? { properties: notedKeys(properties, kind, path) } : {}),
    ...(items ? { items: Array.isArray(items) ? each(items) : noted(items as JsonSchema, kind, path) } : {}),
    ...(anyOf ? { anyOf: each(anyOf) } : {}),
    ...(oneOf ? { oneOf: each(oneOf) } : {}),
  }
}

function notedKeys(properties: Readonly<Record<string, JsonSchema>>, kind: FileKind, path: readonly string[]): Record<string, JsonSchema> {
  const model = models.find(({ name }) => name === properties.model?.const)
  return Object.fromEntries(
    Object.entries(properties).map(([name, schema]) => {
      const inside = noted(schema, kind, [...path, name])
      const key = (model?.keys as Readonly<Record<string, Key>> | undefined)?.[name]
      if (key) return [name, { ...inside, ...ofModel(key) }]
      if (model) return [name, { ...inside, description: sentence(model.says), examples: [model.name] }]
      const note = noteOf(kind, [...path, name])
      return [name, { ...inside, ...(note ? { description: note.says, examples: [note.example] } : {}) }]
    }),
  )
}

/** What is known of the key at a path: as said of this file alone, or of any. */
export const noteOf = (kind: FileKind, path: readonly string[]) => keyNotes[`${kind}:${path.join('.')}`] ?? keyNotes[path.join('.')]

const sentence = (says: string): string => `${says.slice(0, 1).toUpperCase()}${says.slice(1)}.`

/** A key of a load model: what it asks, in which span, what holds unless it is given, and a value within the span. */
function ofModel(key: Key): JsonSchema {
  const given = 'default' in key ? { default: key.default } : {}
  if (isNumberKey(key)) return { description: sentence(`${key.says}, from ${key.min} to ${key.max} ${key.unit}`), examples: [key.default ?? middle(key.min, key.max)], ...given }
  if (isListKey(key)) return { description: sentence(`${key.says}, at most ${key.most} ${key.list} from ${key.min} to ${key.max}`), examples: [key.list === 'pairs' ? [[10, 40], [20, 70]] : [key.min]] }
  if ('choices' in key) return { description: sentence(`${key.says}: ${key.choices.join(', ')}`), examples: [key.default ?? key.choices[0]], ...given }
  return { description: sentence(key.says), examples: ['club-trial'] }
}

/** A plain number well within a span. */
const middle = (min: number, max: number): number => Math.round((min + max) / 2)
