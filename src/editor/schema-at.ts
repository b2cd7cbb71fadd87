import { fileSchemas, jsonSchemaOf, type FileKind, type JsonSchema } from '../ladder/json-schema.ts'
import type { Path } from '../ladder/finding.ts'
import { valueOf, type Word } from './word.ts'

/** The schema of each kind of file that has one. */
const schemas = new Map<string, JsonSchema>((Object.keys(fileSchemas) as FileKind[]).map((kind) => [kind, jsonSchemaOf(kind)]))

/** The schema of what stands at a path of a file; under `load`, that of the model that is named there. */
export function schemaAt(kind: string, path: Path, words: readonly Word[]): JsonSchema | undefined {
  let at = schemas.get(kind)
  for (const [index, step] of path.entries()) {
    const inside = at && resolved(at, path.slice(0, index), words)
    at = typeof step === 'number' ? entry(inside?.items, step) : inside?.properties && Object.hasOwn(inside.properties, step) ? inside.properties[step] : undefined
  }
  return at && resolved(at, path, words)
}

const entry = (items: JsonSchema['items'], index: number): JsonSchema | undefined => (Array.isArray(items) ? (items as readonly JsonSchema[])[index] : (items as JsonSchema | undefined))

/** Of several shapes, the one whose model is named; where none is named, what all have: the model. */
function resolved(schema: JsonSchema, path: Path, words: readonly Word[]): JsonSchema {
  const branches = schema.oneOf ?? schema.anyOf
  if (!branches) return schema
  const model = valueOf(words, [...path, 'model'])
  const chosen = branches.find(({ properties }) => properties?.model?.const === model)
  const names = branches.flatMap(({ properties }) => (properties?.model?.const === undefined ? [] : [properties.model.const]))
  const properties = chosen?.properties ?? {}
  return { ...schema, properties: { ...properties, model: { ...branches[0]?.properties?.model, description: chosen?.properties?.model?.description ?? 'Name of the load model.', enum: names } } }
}
