import { Composer, isMap, isPair, isScalar, isSeq, LineCounter, Schema, type Document, type Node } from 'yaml'
import { pathKey, VALUE, type Finding, type Path, type Place, type Places } from '../ladder/finding.ts'
import { once } from '../quantity/once.ts'
import { boundedTokens } from './bounds.ts'
import { atTop, type Reading } from './text.ts'

/** A value out of YAML, and where each of its keys and entries stands. Who keeps `places` keeps all that was parsed, until it was called once. */
export type Yaml = { readonly value: unknown; readonly places: Places }

const RULE = 'front-matter-is-plain'

/** What the parser's complaints mean to a coach. */
const PLAINLY: Record<string, string> = {
  DUPLICATE_KEY: 'This key stands twice. Keep one of the two.',
  TAB_AS_INDENT: 'A tab is used to indent. Use spaces.',
  BAD_INDENT: 'The indentation does not match the lines around it. Align it with its neighbours, with spaces.',
  MISSING_CHAR: 'A closing bracket, brace or quotation mark is missing, or a space after a colon or before a #.',
  MULTILINE_IMPLICIT_KEY: 'A key runs over more than one line. Put quotes around text that holds a colon.',
  BLOCK_AS_IMPLICIT_KEY: 'There are two colons on this line. Put quotes around text that holds a colon.',
  UNEXPECTED_TOKEN: 'Something here does not belong. Put quotes around text that holds a colon, a comma or a bracket.',
  BAD_SCALAR_START: 'Text may not begin with this character. Put quotes around it.',
  BAD_DQ_ESCAPE: 'A back-slash in double quotes has a meaning of its own. Use single quotes.',
}

/** A bracket without its twin is reported by the parser as a matter of indentation. */
const plainly = ({ code, message }: { readonly code: string; readonly message: string }): string =>
  /end with a [\]}]/.test(message)
    ? 'A bracket or brace that was opened before this is not closed. Close it with ] or }.'
    : (PLAINLY[code] ?? 'This cannot be read as YAML. Look for a missing quotation mark, bracket or space near here.')

/** The plain types of YAML 1.2, and no merge keys; made once for all files. */
const CORE = new Schema({ schema: 'core', merge: false })

/** Numbers as people write them: no leading zero, no other base, no infinity. */
const PLAIN_NUMBER = /^[-+]?(0|[1-9]\d*)(\.\d+)?$/

/**
 * Reads YAML in the small part of it that front matter may use.
 *
 * Shape   text and the line it begins on, to a value with places, or findings.
 */
export function readYaml(file: string, yaml: string, first_line: number): Reading<Yaml> {
  const lines = new LineCounter()
  const place = (offset: number): Place => {
    const { line, col } = lines.linePos(offset)
    return { file, line: Math.max(1, line) + first_line - 1, column: Math.max(1, col) }
  }
  const bounded = boundedTokens(yaml, lines.addNewLine)
  if ('refused' in bounded) {
    const { refused } = bounded
    const before = yaml.slice(0, refused.offset).split('\n')
    return { findings: [atTop(file, RULE, refused.message, before.length + first_line - 1, (before.at(-1) ?? '').length + 1)] }
  }
  const [document] = new Composer({ schema: CORE, logLevel: 'silent', prettyErrors: false }).compose(bounded.tokens, true, yaml.length)
  if (!document) throw new Error('bug: no document was composed, though one was asked for')
  const findings: Finding[] = [...document.errors, ...document.warnings].map((error) => ({ ...place(error.pos[0]), rule: RULE, message: plainly(error) }))
  if (findings.length > 0) return { findings: findings.slice(0, 20) }
  judge(document.contents, place, findings)
  return { value: { value: document.toJS(), places: once(() => placesIn(document, place)) }, findings }
}

/** Walks the document, whose depth is bounded, and finds keys and scalars that are not plain. */
function judge(node: unknown, place: (offset: number) => Place, findings: Finding[]): void {
  if (isScalar(node)) checkScalar(node, place, findings)
  if (isSeq(node)) for (const entry of node.items) judge(entry, place, findings)
  if (!isMap(node)) return
  for (const pair of node.items) {
    if (!isPair(pair)) continue
    const key = isScalar(pair.key) ? pair.key.value : '<<'
    if (String(key) === '<<') findings.push({ ...place(startOf(pair.key)), rule: RULE, message: 'A key must be a plain word. Write the keys out in full.' })
    else if (typeof key === 'number') findings.push({ ...place(startOf(pair.key)), rule: RULE, message: 'A number stands here where a key should. Write decimals with a point, such as 5.5.' })
    judge(pair.value, place, findings)
  }
}

/** Walks the document again, and notes where each key and entry stands. */
function placesIn(document: Document, place: (offset: number) => Place): ReadonlyMap<string, Place> {
  const places = new Map<string, Place>([['', place(0)]])
  const walk = (node: unknown, path: Path): void => {
    if (isSeq(node)) {
      node.items.forEach((entry, index) => {
        note(entry, [...path, index])
        noteValue(entry, [...path, index, VALUE])
        walk(entry, [...path, index])
      })
    }
    if (isMap(node)) {
      for (const pair of node.items) {
        if (!isPair(pair)) continue
        const key = isScalar(pair.key) ? String(pair.key.value) : ''
        note(pair.key, [...path, key])
        noteValue(pair.value, [...path, key, VALUE])
        walk(pair.value, [...path, key])
      }
    }
  }
  const note = (node: unknown, path: Path): void => void places.set(pathKey(path), place(startOf(node)))
  const noteValue = (node: unknown, path: Path): void => void (standsBare(node) && note(node, path))
  walk(document.contents, [])
  return places
}

const startOf = (node: unknown): number => (node as Node | null)?.range?.[0] ?? 0

/** True for a value that stands there letter for letter, without quotes or folds: only such a one can be replaced there. */
const standsBare = (node: unknown): boolean => isScalar(node) && node.range !== null && node.range !== undefined && node.range[1] - node.range[0] === String(node.value).length

/** A number in a notation that people and programs read differently, or half a character. */
function checkScalar(node: { value: unknown; source?: string; range?: readonly number[] | null }, place: (offset: number) => Place, findings: Finding[]): void {
  if (typeof node.value === 'string' && /\p{Surrogate}/u.test(node.value)) {
    findings.push({ ...place(node.range?.[0] ?? 0), rule: RULE, message: 'This holds half a character, written as \\u and a number. Type the character itself.' })
  }
  if (typeof node.value !== 'number' || node.source === undefined || PLAIN_NUMBER.test(node.source)) return
  findings.push({ ...place(node.range?.[0] ?? 0), rule: RULE, message: `"${node.source.slice(0, 30)}" is not a plain number. Write it as 12 or 12.5.` })
}
