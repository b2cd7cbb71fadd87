import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import { test } from 'vitest'
import { completions } from '../../src/editor/complete.ts'
import { definitions, references } from '../../src/editor/find.ts'
import { hover } from '../../src/editor/hover.ts'
import { editSpan, lineStarts, marked } from '../../src/editor/mark.ts'
import { outlineOf, type EditorFile } from '../../src/editor/outline.ts'
import { renamed } from '../../src/editor/rename.ts'
import { wordsIn } from '../../src/editor/word.ts'

const LADDER = readFileSync(path.resolve(import.meta.dirname, '../../ladders/press-up.md'), 'utf8')

const fileOf = (text: string, file = 'ladders/press-up.md'): EditorFile => ({ file, shown: file, layer: 0, own: true, text: () => text, outline: () => outlineOf(file, text) })

/** Asks everything there is of one place. */
function everything(text: string, offset: number, name?: string): void {
  const file = fileOf(text, name)
  const around = { files: [file], curriculum: undefined, measured: () => undefined }
  for (const { from, to } of completions(file, offset, around)) assert.ok(from >= 0 && from <= to && to <= text.length)
  hover(file, offset, around)
  definitions(file, offset, [file])
  references(file, offset, [file])
  renamed(file, offset, 'new-name', [file])
}

test('no ladder cut off anywhere, with anything typed at its end, stops an answer', () => {
  fc.assert(
    fc.property(fc.nat(LADDER.length), fc.string({ unit: 'binary', maxLength: 12 }), fc.constantFrom('\n', '\r\n', '\r'), (at, typed, end) => {
      const text = `${LADDER.slice(0, at)}${typed}`.replaceAll('\n', end)
      everything(text, text.length)
    }),
    { numRuns: 150 },
  )
})

test('no text at all stops an answer, whatever file it is in', () => {
  const pieces = fc.array(fc.constantFrom('---\n', 'rungs:\n', '  - ', '{', '}', '[', ']', '"', "'", ': ', 'load', 'model: skill', '#', '&a', '*a', '|', '\n', '\r', '\ud800', '{#x}', '## ', 'rung:a/b', '](', '\t'), { maxLength: 40 })
  fc.assert(
    fc.property(pieces, fc.constantFrom('ladders/a.md', 'content/a.md', 'handbook.yaml'), fc.nat(60), (parts, file, at) => {
      const text = parts.join('')
      everything(text, Math.min(at, text.length), file)
    }),
    { numRuns: 300 },
  )
})

test('every word stands in the text where it is said to stand', () => {
  fc.assert(
    fc.property(fc.nat(LADDER.length), (at) => {
      const text = LADDER.slice(4, at + 4)
      for (const { text: letters, from, to } of wordsIn(text)) assert.equal(text.slice(from, to), letters)
    }),
    { numRuns: 60 },
  )
})

test('brackets a thousand deep do not exhaust the stack', () => {
  assert.equal(wordsIn('['.repeat(30_000)).length, 0)
})

test('a finding marks the word at its place, in lines of every kind', () => {
  const text = 'a: 1\r\n  key: two words, x\rlast: [é🧍, b]\n'
  const mark = (line: number, column: number): string => {
    const { from, to } = marked(text, lineStarts(text), { file: '', line, column, rule: '', message: '' })
    return text.slice(from, to)
  }
  assert.equal(mark(2, 3), 'key')
  assert.equal(mark(2, 8), 'two words')
  assert.equal(mark(3, 8), 'é🧍')
  assert.equal(mark(99, 99), '')
})

test('an edit takes the quotes with it, and is not made where its words have gone', () => {
  const text = 'a: "flor"\n'
  assert.deepEqual(editSpan(text, lineStarts(text), { line: 1, column: 4, old: 'flor', text: 'floor' }), { from: 3, to: 9 })
  assert.equal(editSpan(text, lineStarts(text), { line: 1, column: 5, old: 'flour', text: 'floor' }), undefined)
})
