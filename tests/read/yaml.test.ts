import assert from 'node:assert/strict'
import { test } from 'vitest'
import { VALUE } from '../../src/ladder/finding.ts'
import { MOST_DEPTH, MOST_ENTRIES, MOST_ERRORS, MOST_KEYS, MOST_YAML_BYTES } from '../../src/read/bounds.ts'
import { readYaml } from '../../src/read/yaml.ts'
import { said } from './said.ts'

const read = (yaml: string) => readYaml('a.md', yaml, 2)

test('a value comes with the place of every key and entry, and of every word that could be replaced', () => {
  const { value, findings } = read('id: a\nrungs:\n  - id: low\n    load: { model: skill }\nform: [one, two]')
  assert.deepEqual(findings, [])
  assert.deepEqual(value?.value, { id: 'a', rungs: [{ id: 'low', load: { model: 'skill' } }], form: ['one', 'two'] })
  const places = [...(value?.places() ?? [])].map(([key, { line, column }]) => `${key} ${line}:${column}`)
  assert.deepEqual(
    places.filter((place) => !place.includes(VALUE)),
    [' 2:1', 'id 2:1', 'rungs 3:1', 'rungs/0 4:5', 'rungs/0/id 4:5', 'rungs/0/load 5:5', 'rungs/0/load/model 5:13', 'form 6:1', 'form/0 6:8', 'form/1 6:13'],
  )
  assert.deepEqual(
    places.filter((place) => place.includes(VALUE)).map((place) => place.replace(`/${VALUE}`, '')),
    ['id 2:5', 'rungs/0/id 4:9', 'rungs/0/load/model 5:20', 'form/0 6:8', 'form/1 6:13'],
  )
})

test('what stands in quotes, on two lines or nowhere cannot be replaced letter for letter', () => {
  const { value } = read('a: "low"\nb: >-\n  low\nc: low\n  high\nd:\ne: { f }\ng: low')
  assert.deepEqual([...(value?.places() ?? [])].flatMap(([key]) => (key.includes(VALUE) ? [key] : [])), [`g/${VALUE}`])
})

const PLAIN = '(front-matter-is-plain)'
const HOLDS = (what: string) => `The front matter holds ${what}. Write the value out in full; put quotes around words that begin with & * or !. ${PLAIN}`
const SECOND = `The front matter holds a second document. Remove the line of --- or ... inside it. ${PLAIN}`
const DEEP = `The front matter is nested more than 12 levels deep. A ladder needs no more than five. ${PLAIN}`
const MANY = `The front matter holds too many entries: at most 500 keys together, 8000 in all. ${PLAIN}`
const MISPLACED = `Something here does not belong. Put quotes around text that holds a colon, a comma or a bracket. ${PLAIN}`
const UNCLOSED = `A closing bracket, brace or quotation mark is missing, or a space after a colon or before a #. ${PLAIN}`
const INDENT = `The indentation does not match the lines around it. Align it with its neighbours, with spaces. ${PLAIN}`
const OPEN = `A bracket or brace that was opened before this is not closed. Close it with ] or }. ${PLAIN}`
const START = `Text may not begin with this character. Put quotes around it. ${PLAIN}`
const KEY = `A key must be a plain word. Write the keys out in full. ${PLAIN}`
const UNREADABLE = `This cannot be read as YAML. Look for a missing quotation mark, bracket or space near here. ${PLAIN}`
const TWICE = `This key stands twice. Keep one of the two. ${PLAIN}`

const refused = [
  { yaml: 'a: &a 1', finds: [`2:4 ${HOLDS('an anchor (&)')}`] },
  { yaml: '&__proto__ a: 1', finds: [`2:1 ${HOLDS('an anchor (&)')}`] },
  { yaml: 'a: 1\nb: *constructor', finds: [`3:4 ${HOLDS('an alias (*)')}`] },
  { yaml: 'a: &a [x]\nb: &b [*a, *a]\nc: [*b, *b]', finds: [`2:4 ${HOLDS('an anchor (&)')}`] },
  { yaml: '&a [*a]', finds: [`2:1 ${HOLDS('an anchor (&)')}`] },
  { yaml: '? *a\n: 1', finds: [`2:3 ${HOLDS('an alias (*)')}`] },
  { yaml: 'a: !!js/function "x"', finds: [`2:4 ${HOLDS('a tag (!)')}`] },
  { yaml: 'a:\n  - b: !!binary aGk=', finds: [`3:8 ${HOLDS('a tag (!)')}`] },
  { yaml: '! a: 1', finds: [`2:1 ${HOLDS('a tag (!)')}`] },
  { yaml: 'a: !x |\n  b', finds: [`2:4 ${HOLDS('a tag (!)')}`] },
  { yaml: 'a: &x >\n  b', finds: [`2:4 ${HOLDS('an anchor (&)')}`] },
  { yaml: 'a: 1\n---\nb: 2', finds: [`3:1 ${SECOND}`] },
  { yaml: 'a: 1\n...\nb: 2', finds: [`4:1 ${SECOND}`] },
  { yaml: '...\na: 1', finds: [`3:1 ${SECOND}`] },
  { yaml: 'reps: 10\nreps: 12', finds: [`3:1 ${TWICE}`] },
  { yaml: 'a: { reps: 10, "reps": 12 }', finds: [`2:16 ${TWICE}`] },
  { yaml: 'a:\n\tb: 1', finds: [`3:1 A tab is used to indent. Use spaces. ${PLAIN}`] },
  { yaml: 'a:\n  b: 1\n c: 2', finds: [`4:1 ${INDENT}`] },
  { yaml: 'a: [b\nc: 1', finds: [`3:1 ${OPEN}`] },
  { yaml: 'a: { b: 1', finds: [`2:10 ${OPEN}`] },
  { yaml: '[b', finds: [`2:3 ${OPEN}`] },
  { yaml: 'a: "b', finds: [`2:6 ${UNCLOSED}`] },
  { yaml: 'a: "b"#c', finds: [`2:7 ${UNCLOSED}`] },
  { yaml: 'a b\n c: 1', finds: [`2:1 A key runs over more than one line. Put quotes around text that holds a colon. ${PLAIN}`] },
  { yaml: 'say: Hips: up', finds: [`2:6 There are two colons on this line. Put quotes around text that holds a colon. ${PLAIN}`] },
  { yaml: 'a: "b" c', finds: [`2:8 ${MISPLACED}`] },
  { yaml: 'a: ]', finds: [`2:4 ${MISPLACED}`] },
  { yaml: 'a: @b', finds: [`2:4 ${START}`] },
  { yaml: 'a: `b`', finds: [`2:4 ${START}`] },
  { yaml: 'a: %2e%2e%2f', finds: [`2:4 ${START}`] },
  { yaml: 'a: "C:\\data"', finds: [`2:7 A back-slash in double quotes has a meaning of its own. Use single quotes. ${PLAIN}`] },
  { yaml: `${'a'.repeat(1100)}: 1`, finds: [`2:1 ${UNREADABLE}`] },
  { yaml: '%YOML 1.2', finds: [`2:10 ${UNCLOSED}`, `2:1 ${UNREADABLE}`] },
]

for (const { yaml, finds } of refused) {
  test(`${JSON.stringify(yaml.slice(0, 40))} is refused`, () => {
    const { value, findings } = read(yaml)
    assert.equal(value, undefined)
    assert.deepEqual(said(findings), finds)
  })
}

test('merge keys and keys that are no words are findings, and merge nothing', () => {
  const { value, findings } = read('a: { <<: { reps: 3 } }\n? [b]\n: 1')
  assert.deepEqual(said(findings), [`2:6 ${KEY}`, `3:3 ${KEY}`])
  assert.deepEqual(value?.value, { a: { '<<': { reps: 3 } }, '[ b ]': 1 })
})

for (const number of ['010', '0x1F', '0o17', '1e400', '1e3', '.inf', '-.inf', '.nan', '.5', '5.', '00', '-007']) {
  test(`${number} is not taken for a number`, () => {
    assert.deepEqual(said(read(`a: [${number}]`).findings), [`2:5 "${number}" is not a plain number. Write it as 12 or 12.5. ${PLAIN}`])
  })
}

test('a long number is named by its beginning', () => {
  assert.deepEqual(said(read(`a: 0${'1'.repeat(60)}`).findings), [`2:4 "0${'1'.repeat(29)}" is not a plain number. Write it as 12 or 12.5. ${PLAIN}`])
})

test('numbers are read as people write them, and nothing else is a number', () => {
  const { value, findings } = read('a: [12, -3, +5, 0.5, 12.0, -0, 1_000, "1:30", 1:30, 3x10, ½, 55%, -0x1, "010", 2026-10-03]')
  assert.deepEqual(findings, [])
  assert.deepEqual(value?.value, { a: [12, -3, 5, 0.5, 12, -0, '1_000', '1:30', '1:30', '3x10', '½', '55%', '-0x1', '010', '2026-10-03'] })
})

test('a decimal comma is a finding where the digits after it stand', () => {
  const COMMA = `A number stands here where a key should. Write decimals with a point, such as 5.5. ${PLAIN}`
  assert.deepEqual(said(read('{ percent: 5,5 }').findings), [`2:14 ${COMMA}`])
  assert.deepEqual(said(read('1e400: a').findings), [`2:1 ${COMMA}`])
})

test('no, on, y and off stay words; only true, false and null are more', () => {
  assert.deepEqual(read('[no, on, y, off, Yes, true, null, ~]').value?.value, ['no', 'on', 'y', 'off', 'Yes', true, null, null])
})

test('half a character is a finding', () => {
  const HALF = `This holds half a character, written as \\u and a number. Type the character itself. ${PLAIN}`
  assert.deepEqual(said(read('a: "\\ud83d"\nb: ["\\ud83d\\ude00", "x\\udc00"]').findings), [`2:4 ${HALF}`, `3:21 ${HALF}`])
})

test('a key named like a part of every object is only a key', () => {
  for (const key of ['__proto__', 'constructor', 'prototype']) {
    const { value, findings } = read(`a:\n  - ${key}: { ${key}: { polluted: 1 } }`)
    assert.deepEqual(findings, [])
    assert.equal(JSON.stringify(value?.value), `{"a":[{"${key}":{"${key}":{"polluted":1}}}]}`)
    assert.equal('polluted' in {}, false)
    assert.equal(value?.places().get(`a/0/${key}/${key}/polluted`)?.column, '  - : { : { '.length + 2 * key.length + 1)
  }
})

test('nesting is allowed to the limit and no deeper', () => {
  const nested = (levels: number) => '['.repeat(levels) + ']'.repeat(levels)
  assert.deepEqual(read(nested(MOST_DEPTH)).findings, [])
  assert.deepEqual(said(read(nested(MOST_DEPTH + 1)).findings), [`2:13 ${DEEP}`])
  const block = (levels: number) => Array.from({ length: levels }, (_, level) => `${'  '.repeat(level)}a:`).join('\n')
  assert.deepEqual(read(block(MOST_DEPTH)).findings, [])
  assert.deepEqual(said(read(block(MOST_DEPTH + 1)).findings), [`14:25 ${DEEP}`])
})

test('keys and entries are counted', () => {
  const keys = (count: number) => Array.from({ length: count }, (_, key) => `k${key}: 1`).join('\n')
  assert.deepEqual(read(keys(MOST_KEYS)).findings, [])
  assert.deepEqual(said(read(keys(MOST_KEYS + 1)).findings), [`2:1 ${MANY}`])
  assert.deepEqual(read('- a\n'.repeat(MOST_ENTRIES)).findings, [])
  assert.deepEqual(said(read('- a\n'.repeat(MOST_ENTRIES + 1)).findings), [`2:1 ${MANY}`])
  assert.deepEqual(said(read(`a: {${keys(501).replaceAll('\n', ', ')}}`).findings), [`2:4 ${MANY}`])
})

test('bytes are counted, not characters', () => {
  const LARGE = `2:1 The front matter is larger than 64 KiB. Move prose below it. ${PLAIN}`
  assert.deepEqual(read(`a: ${'x'.repeat(MOST_YAML_BYTES - 3)}`).findings, [])
  assert.deepEqual(said(read(`a: ${'x'.repeat(MOST_YAML_BYTES - 2)}`).findings), [LARGE])
  assert.deepEqual(said(read(`a: ${'é'.repeat(MOST_YAML_BYTES / 2)}`).findings), [LARGE])
})

test('of many mistakes the first twenty are told, and of very many only where they begin', () => {
  assert.deepEqual(said(read(']'.repeat(MOST_ERRORS)).findings), Array.from({ length: 20 }, (_, column) => `2:${column + 1} ${MISPLACED}`))
  assert.deepEqual(said(read(`a: 1\n${']'.repeat(MOST_ERRORS + 1)}`).findings), [
    `3:1 From here on more than 100 things do not belong. Take out what was pasted in by mistake. ${PLAIN}`,
  ])
})

test('nothing at all is no value, and stands on the first line', () => {
  const { value } = read('')
  assert.equal(value?.value, null)
  assert.deepEqual(value?.places(), new Map([['', { file: 'a.md', line: 2, column: 1 }]]))
})
