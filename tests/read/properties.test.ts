import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { test } from 'vitest'
import { check, type Checked } from '../../src/check/index.ts'
import type { Finding } from '../../src/ladder/finding.ts'
import type { Handbook } from '../../src/ladder/schema.ts'
import { models } from '../../src/load/index.ts'
import { isChoiceKey, isListKey, isNumberKey, type Key } from '../../src/load/model.ts'
import { measure } from '../../src/measure/measure.ts'
import { readLadderFile } from '../../src/read/read-ladder.ts'
import { bytes } from './said.ts'

const FOLDER = `${import.meta.dirname}/../../ladders`
const real = readdirSync(FOLDER, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.md'))
  .toSorted()
  .map((name) => readFileSync(`${FOLDER}/${name}`, 'utf8'))

const handbook: Handbook = { title: 'A', organisation: 'A', edition: '1', languages: ['en'], units: 'metric', contact: 'A' }

/** A finding that a coach can use: a place in the file, a rule's name, a sentence of ours. */
function usable({ file, line, column, rule, message }: Finding, lines: number): void {
  assert.equal(file, 'a.md')
  assert.ok(Number.isInteger(line) && line >= 1 && line <= lines, `line ${line} of ${lines}: ${message}`)
  assert.ok(Number.isInteger(column) && column >= 1, `column ${column}: ${message}`)
  assert.match(rule, /^[a-z]+(-[a-z]+)+$/)
  assert.match(message, /^[\p{L}"][^]*[.?]$/u)
  assert.doesNotMatch(message.replace(/"[^"]*"/g, '""'), /\b(Invalid|expected|received|undefined|NaN|Infinity|object Object|\{key\})\b/)
}

const everything = ({ findings, untold }: Checked): Finding[] => [...findings, ...untold]

/** Reads, measures and checks; fails where anything throws, or where a finding is of no use. */
function survives(given: Uint8Array): void {
  const { value, findings } = readLadderFile('a.md', given, 'A club')
  assert.ok(value !== undefined || findings.length > 0, 'nothing came back')
  const checked = value?.kind === 'ladder' ? everything(check(measure({ handbook, ladders: [value.ladder], pages: [] }), '2026-11-25')) : []
  const lines = new TextDecoder().decode(given).split(/\r\n|\r|\n/).length
  for (const finding of [...findings, ...checked]) usable(finding, lines)
}

test('whatever the bytes, reading ends in a value or in findings', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 600 }), (given) => survives(given)),
    { numRuns: 300 },
  )
})

test('whatever stands between the fences and below them, reading ends in a value or in findings', () => {
  const piece = fc.oneof(fc.constantFrom(...`- : ? , [ ] { } # & * ! | > ' " % @ \``.split(' '), '\n', '\n  ', '\t', '---\n', '...\n', 'id', 'rungs:\n', '<<: ', '.inf', '1e400', '\\', '"\\ud800"', '\u202e', '\ufeff', '\0'), fc.string({ unit: 'grapheme', maxLength: 6 }))
  const text = fc.array(piece, { maxLength: 40 }).map((pieces) => pieces.join(''))
  fc.assert(
    fc.property(text, text, (yaml, body) => survives(bytes(`---\n${yaml}\n---\n${body}`))),
    { numRuns: 400 },
  )
})

/** What a tired hand or a bad merge does to a text. */
const HOSTILE = ['{', ']', '"', '\n', ': ', '- ', '&a ', '*a', '!x ', '-0', '1e400', '0x1F', '.nan', 'null', '~', '[]', '{}', '<<: {}', '\t', '|', '\u202e', '\u0000', '## ', '{#floor}', '---\n', '<<<<<<< ours\n', '__proto__: 1\n', '99999999', '-1', '0.1']

const mutation = fc.record({ at: fc.nat(), length: fc.nat({ max: 60 }), how: fc.constantFrom('cut', 'twice', 'swap', 'insert', 'number'), with: fc.constantFrom(...HOSTILE) })

function mutated(text: string, { at, length, how, with: inserted }: { at: number; length: number; how: string; with: string }): string {
  const from = at % (text.length + 1)
  const [before, piece, after] = [text.slice(0, from), text.slice(from, from + length), text.slice(from + length)]
  if (how === 'cut') return before + after
  if (how === 'twice') return before + piece + piece + after
  if (how === 'swap') return before + after.slice(0, length) + piece + after.slice(length)
  if (how === 'number') return before + (piece + after).replace(/\d+(\.\d+)?/, () => inserted)
  return before + inserted + piece + after
}

/** The front matter with the prose of a few rungs: what a mutation hits is then mostly what is read. */
const short = (text: string): string => text.split('\n## ').slice(0, 4).join('\n## ')

test('whatever is cut, doubled, swapped or put into a real ladder, reading and checking it throw nothing', () => {
  assert.ok(real.length >= 5)
  fc.assert(
    fc.property(fc.constantFrom(...real.map(short)), fc.array(mutation, { minLength: 1, maxLength: 4 }), (text, mutations) => survives(bytes(mutations.reduce(mutated, text)))),
    { numRuns: 300 },
  )
})

const numberOf = ({ min, max }: { readonly min: number; readonly max: number }) =>
  fc.oneof(fc.constantFrom(min, max, (min + max) / 2), fc.double({ min, max, noNaN: true, noDefaultInfinity: true }).map((value) => Math.min(max, Math.max(min, Number(value.toFixed(3))))))

function valueOf(key: Key): fc.Arbitrary<string> {
  if (isNumberKey(key)) return numberOf(key).map(String)
  if (isChoiceKey(key)) return fc.constantFrom(...key.choices)
  if (!isListKey(key)) return fc.constant('words')
  const each = key.list === 'pairs' ? fc.tuple(numberOf(key), numberOf(key)).map((pair) => `[${pair.join(', ')}]`) : numberOf(key).map(String)
  return fc.array(each, { minLength: 1, maxLength: Math.min(6, key.most) }).map((entries) => `[${entries.join(', ')}]`)
}

/** A load that any coach could write: each key within its span, those that may be left out sometimes left out. */
const load = fc.oneof(
  ...models.map(({ name, keys }) =>
    fc
      .record(Object.fromEntries(Object.entries<Key>(keys).map(([key, spec]) => [key, 'default' in spec || 'optional' in spec ? fc.option(valueOf(spec)) : valueOf(spec)])))
      .map((given) => `{ model: ${name}${Object.entries(given).map(([key, value]) => (value === null ? '' : `, ${key}: ${value}`)).join('')} }`),
  ),
)

const rung = fc.record({ load, demand: fc.constantFrom('[]', '[grip]'), reps: fc.integer({ min: 1, max: 200 }), after: fc.nat({ max: 5 }) })

test('whatever loads a ladder has, measuring and checking it throw nothing and give no number that is none', () => {
  fc.assert(
    fc.property(fc.array(rung, { minLength: 2, maxLength: 5 }), fc.integer({ min: 1, max: 50 }), fc.integer({ min: 0, max: 5 }), (rungs, first_reps, reserve_reps) => {
      const written = rungs.map(
        ({ load: of, demand, reps, after }, index) => `  - id: r${index}\n    title: Rung ${index}\n    demand: ${demand}\n    load: ${of}\n${index === 0 ? '' : `    entry: { reps: ${reps} }\n    after: [r${after % (index + 1)}]\n`}`,
      )
      const text = `---\nid: any\ntitle: Any\nmovement: any\naim: r0\nequipment: []\nstandard: { sets: 3, reps: 12, reserve_reps: ${reserve_reps} }\nfirst_reps: ${first_reps}\nform: []\nrungs:\n${written.join('')}stop: [sharp pain]\nask_first: [a heart condition]\n---\n`
      const { value, findings } = readLadderFile('a.md', bytes(text), 'A club')
      assert.deepEqual(findings, [])
      assert.ok(value?.kind === 'ladder')
      const measured = measure({ handbook, ladders: [value.ladder], pages: [] })
      JSON.stringify(measured.ladders, (key, part: unknown) => {
        assert.ok(typeof part !== 'number' || Number.isFinite(part), `${key} is ${part}`)
        return part
      })
      for (const finding of everything(check(measured, '2026-11-25'))) usable(finding, text.split('\n').length)
    }),
    { numRuns: 300 },
  )
})
