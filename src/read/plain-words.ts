import { z } from 'zod'
import { pathKey, placeOf, VALUE, type Edit, type Finding, type Path, type Places } from '../ladder/finding.ts'
import { nearest } from './nearest.ts'

type Issue = z.core.$ZodIssue

/** Unknown keys of one map that are named each; the rest are counted. Chosen by us. */
const MOST_UNKNOWN = 20

/**
 * What the schema found, as findings a coach can act on.
 *
 * Shape   issues of one file, its schema, its value and its places to findings, one an issue and one an unknown key.
 */
function inPlainWords(issues: readonly Issue[], schema: z.ZodType, value: unknown, places: Places): Finding[] {
  const misspelt = new Set(issues.flatMap((issue) => meant(issue, schema, value)))
  const findings = issues.filter((issue) => !(isAbsent(value, plainPath(issue)) && misspelt.has(pathKey(plainPath(issue))))).flatMap((issue) => findingsOf(issue, schema, value, places))
  const said = new Set<string>()
  return findings.filter(({ line, column, message }) => said.size < said.add(`${line}:${column} ${message}`).size) // words too long and on two lines are one thing to put right
}

const plainPath = (issue: Issue): Path => issue.path.filter((step) => typeof step !== 'symbol')

/** The keys that unknown ones were likely meant to be: one that is also missing needs no finding of its own. */
function meant(issue: Issue, schema: z.ZodType, value: unknown): string[] {
  if (issue.code !== 'unrecognized_keys') return []
  const path = plainPath(issue)
  const known = knownKeys(schema, value, path)
  return issue.keys.slice(0, MOST_UNKNOWN).flatMap((key) => nearest(key, known) ?? []).map((key) => pathKey([...path, key]))
}

function findingsOf(issue: Issue, schema: z.ZodType, value: unknown, places: Places): Finding[] {
  const path = plainPath(issue)
  if (issue.code === 'unrecognized_keys') {
    const known = knownKeys(schema, value, path)
    const more = issue.keys.slice(MOST_UNKNOWN)
    const rest = more[0] === undefined ? [] : [{ ...placeOf(places, [...path, more[0]]), rule: 'keys-are-known', message: `From here on ${more.length} more keys are not known. Take out what was pasted in by mistake.` }]
    const each = issue.keys.slice(0, MOST_UNKNOWN).map((key): Finding => {
      const place = placeOf(places, [...path, key])
      const like = nearest(key, known)
      return { ...place, rule: 'keys-are-known', message: unknownKey(key, known, like), ...(like ? { edit: { line: place.line, column: place.column, old: key, text: like } } : {}) }
    })
    return [...each, ...rest]
  }
  const key = String(path.findLast((step) => typeof step === 'string') ?? 'The file')
  if (isAbsent(value, path)) {
    return [{ ...placeOf(places, path.slice(0, -1)), rule: 'keys-are-given', message: `${key} is not given here. Add it.` }]
  }
  return [{ ...placeOf(places, path), rule: 'values-fit', message: issue.message.replaceAll('{key}', key), ...choice(issue, value, places, path) }]
}

function unknownKey(key: string, known: readonly string[], like: string | undefined): string {
  const typed = key.slice(0, 60)
  if (like) return `There is no key "${typed}" here. Did you mean ${like}?`
  return known.length > 0 ? `There is no key "${typed}" here. Known keys: ${known.join(', ')}.` : `There is no key "${typed}" here. Remove it.`
}

/** For a value that is almost one of a few names: the edit that makes it so. */
function choice(issue: Issue, value: unknown, places: Places, path: Path): { edit?: Edit } {
  const at = places().get(pathKey([...path, VALUE]))
  const given = valueAt(value, path)
  if (issue.code !== 'invalid_value' || typeof given !== 'string' || !at) return {}
  const like = nearest(given, issue.values.map(String))
  return like ? { edit: { line: at.line, column: at.column, old: given, text: like } } : {}
}

const valueAt = (value: unknown, path: Path): unknown => path.reduce<unknown>((at, step) => (typeof at === 'object' && at !== null ? (at as Record<string | number, unknown>)[step] : undefined), value)

/** True where the last step of the path leads to nothing. */
function isAbsent(value: unknown, path: Path): boolean {
  let at: unknown = value
  for (const [index, step] of path.entries()) {
    if (typeof at !== 'object' || at === null) return false
    if (index === path.length - 1) return !Object.hasOwn(at, step)
    at = (at as Record<string | number, unknown>)[step]
  }
  return false
}

/** The keys a schema knows at `path`, choosing among its branches by the value's own `model`. */
function knownKeys(schema: z.ZodType, value: unknown, path: Path): string[] {
  let at: z.ZodType | undefined = bare(schema, value)
  let held: unknown = value
  for (const step of path) {
    held = typeof held === 'object' && held !== null ? (held as Record<string | number, unknown>)[step] : undefined
    const next: unknown = at instanceof z.ZodObject ? at.shape[step] : at instanceof z.ZodArray ? at.element : undefined
    at = next instanceof z.ZodType ? bare(next, held) : undefined
  }
  return at instanceof z.ZodObject ? Object.keys(at.shape) : []
}

/** Takes off optional and default, and chooses a branch. */
function bare(schema: z.ZodType, value: unknown): z.ZodType {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodDefault) return bare(schema.unwrap() as z.ZodType, value)
  if (schema instanceof z.ZodDiscriminatedUnion) {
    const model = typeof value === 'object' && value !== null && 'model' in value ? value.model : undefined
    const branch = (schema.options as z.ZodType[]).find((option) => option instanceof z.ZodObject && (option.shape.model as z.ZodLiteral).value === model)
    return branch ?? schema
  }
  return schema
}

/** What is said where a schema has no sentence of its own: of a whole file that holds no keys. */
const NO_SENTENCE = '{key} must hold keys such as title.'

/** Validates a value; every sentence that comes back is ours. */
export function fitted<Schema extends z.ZodType>(schema: Schema, value: unknown, places: Places): { value?: z.infer<Schema>; findings: Finding[] } {
  const result = schema.safeParse(value, { error: () => NO_SENTENCE })
  return result.success ? { value: result.data, findings: [] } : { findings: inPlainWords(result.error.issues, schema, value, places) }
}
