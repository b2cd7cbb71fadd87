import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'

const FOLDER = path.resolve(import.meta.dirname, '../../ladders')

/** The starter ladders as they are written, shortest first. */
export const REAL: readonly string[] = readdirSync(FOLDER).filter((name) => name.endsWith('.md')).toSorted().map((name) => readFileSync(path.join(FOLDER, name), 'utf8')).toSorted((a, b) => a.length - b.length)

const KEYS = 'id title movement aim equipment standard sets reps seconds metres sessions rest_s reserve_reps first_reps form supervision review by on seal rungs load model facing feet hands hand_height_cm demand entry after cautions stop ask_first retired heir because silence rule until sources cite doi amends base withdraw withdraw_notes note before translates __proto__ constructor toString length << ""'.split(' ')
const SCALARS = ['""', '~', 'null', 'true', 'no', '-1', '0', '1', '12', '0.1', '1e400', '.nan', '0x1F', 'floor', 'press-up', 'supported-body', 'skill', 'toes', '2026-02-30', '2026-10-03', '"\\ud800"', '"\\u202e"', '"\\0"', "'<script>'", '"## x"', '[', '{', '&a x', '*a', '!!js x', '|\n  a\n  b', '>-\n  a']

/** A tree of YAML, in flow style: known and unknown keys, values of every kind, a few levels deep. */
export const yamlTree: fc.Arbitrary<string> = fc.letrec<{ node: string; map: string; list: string; scalar: string }>((tie) => ({
  node: fc.oneof({ depthSize: 'small', withCrossShrink: true }, tie('scalar'), tie('list'), tie('map')),
  scalar: fc.oneof(fc.constantFrom(...SCALARS), fc.string({ unit: 'grapheme', maxLength: 8 }), fc.integer().map(String), fc.double().map(String)),
  list: fc.array(tie('node'), { maxLength: 4 }).map((entries) => `[${entries.join(', ')}]`),
  map: fc.array(fc.tuple(fc.constantFrom(...KEYS), tie('node')), { maxLength: 6 }).map((pairs) => `{ ${pairs.map(([key, value]) => `${key}: ${value}`).join(', ')} }`),
})).node

/** Front matter: top-level keys, each with a tree. */
export const frontMatter: fc.Arbitrary<string> = fc.array(fc.tuple(fc.constantFrom(...KEYS), yamlTree), { maxLength: 14 }).map((pairs) => pairs.map(([key, value]) => `${key}: ${value}\n`).join(''))

const SNIPPETS = ['{', ']', '"', '\n', ': ', '- ', '&a ', '*a', '!x ', '-0', '1e400', '.nan', 'null', '[]', '{}', '\t', '|', '\u202e', '\0', '## ', '### Cues\n', '{#floor}', '---\n', '<<<<<<< ours\n', '__proto__: 1\n', '99999999', '-1', '<script>', '](javascript:x)', '```mermaid\n', '[^1]', '![', '|---|\n']
const mutation = fc.record({ at: fc.nat(), length: fc.nat({ max: 80 }), how: fc.constantFrom('cut', 'twice', 'swap', 'insert', 'number'), piece: fc.constantFrom(...SNIPPETS) })

function mutated(text: string, { at, length, how, piece }: { at: number; length: number; how: string; piece: string }): string {
  const from = at % (text.length + 1)
  const [before, hit, after] = [text.slice(0, from), text.slice(from, from + length), text.slice(from + length)]
  if (how === 'cut') return before + after
  if (how === 'twice') return before + hit + hit + after
  if (how === 'swap') return before + after.slice(0, length) + hit + after.slice(length)
  if (how === 'number') return before + (hit + after).replace(/\d+(\.\d+)?/, () => piece)
  return before + piece + hit + after
}

/** A starter ladder after a few slips of a hand or a merge. */
export const mutatedLadder: fc.Arbitrary<string> = fc.tuple(fc.constantFrom(...REAL), fc.array(mutation, { minLength: 1, maxLength: 6 })).map(([text, mutations]) => mutations.reduce(mutated, text))

const MARKS = ['# ', '## ', '### ', '- ', '1. ', '> ', '    ', '\n', '\n\n', '```', '~~~', '*', '**', '_', '`', '[', ']', '(', ')', '![', '](', '<', '>', '&', '&#106;', '|', '|---|---|\n', '\\', '---\n', '===\n', '[^1]', '[^1]: ', ': ', '{#x}', 'javascript:', 'https://a.example', 'mailto:', 'data:text/html,', 'rung:', '/safety/', '<script>', '<!--', '-->', ']]>', '<?', '"', "'", ' onload=', 'mermaid\nflowchart TB\n', 'a["x"] --> b', '\u00a0', '\u2028', '\u{1f938}']

/** Markdown out of the signs that mean something in it, and words. */
export const markdownText: fc.Arbitrary<string> = fc.array(fc.oneof({ weight: 3, arbitrary: fc.constantFrom(...MARKS) }, { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 6 }) }), { maxLength: 60 }).map((parts) => parts.join(''))
