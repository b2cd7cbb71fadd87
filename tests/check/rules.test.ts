import assert from 'node:assert/strict'
import { test } from 'vitest'
import { rules } from '../../src/check/index.ts'
import type { Finding } from '../../src/ladder/finding.ts'
import { fixture, fixtures, found, marked } from './fixture.ts'

const KINDS = ['good', 'bad'] as const

for (const { name } of rules) {
  for (const kind of KINDS) {
    test(`${name}: the ${kind} ladder is found as it is marked`, () => {
      const text = fixture(`${name}.${kind}.md`)
      const expected = marked(text)
      assert.equal(expected.length > 0, kind === 'bad', 'a bad fixture marks a line, a good one marks none')
      assert.deepEqual(
        found(`${name}.${kind}.md`, text).map(({ line, rule }) => `${line} ${rule}`),
        expected,
      )
    })
  }
}

/** A text after the edits that findings offer, the last one first, so that each still stands where it says. */
function mended(text: string, findings: readonly Finding[]): string {
  const lines = text.split('\n')
  for (const { edit } of findings.toReversed()) {
    if (!edit) continue
    const line = lines[edit.line - 1] ?? ''
    assert.equal(line.slice(edit.column - 1, edit.column - 1 + edit.old.length), edit.old, 'what is to be replaced stands there')
    lines[edit.line - 1] = line.slice(0, edit.column - 1) + edit.text + line.slice(edit.column - 1 + edit.old.length)
  }
  return lines.join('\n')
}

test('an edit that a finding offers can be made, and puts it right', () => {
  const offering = rules.flatMap(({ name }) => {
    const text = fixture(`${name}.bad.md`)
    const findings = found(name, text).filter(({ edit }) => edit !== undefined)
    return findings.length > 0 ? [{ name, findings, after: found(name, mended(text, findings)) }] : []
  })
  assert.ok(offering.length > 0)
  for (const { name, findings, after } of offering) {
    for (const { message } of findings) assert.ok(!after.some((finding) => finding.message === message), `${name}: ${message}`)
  }
})

test('every fixture belongs to a rule', () => {
  const wanted = rules.flatMap(({ name }) => KINDS.map((kind) => `${name}.${kind}.md`))
  assert.deepEqual(fixtures.toSorted(), wanted.toSorted())
})

test('every rule is a sentence with a reason, under a name in kebab-case that no other has', () => {
  for (const { name, says, why } of rules) {
    assert.match(name, /^[a-z]+(-[a-z]+)+$/)
    for (const sentence of [says, why]) assert.match(sentence, /^[A-Z].*\.$/, name)
  }
  assert.equal(new Set(rules.map(({ name }) => name)).size, rules.length)
})
