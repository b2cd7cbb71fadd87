import assert from 'node:assert/strict'
import path from 'node:path'
import { test } from 'vitest'
import { REPOSITORY, run } from '../site/demo.ts'

test('every schema is written as JSON Schema, and knows the keys a coach writes', async () => {
  for (const [name, key] of Object.entries({ ladder: 'rungs', amendment: 'amends', page: 'summary', handbook: 'organisation', findings: 'cannot_tell', review: 'followed' })) {
    const { code, out } = await run(REPOSITORY, 'schema', name)
    assert.equal(code, 0)
    const schema = JSON.parse(out) as { $schema: string; properties: Record<string, unknown> }
    assert.match(schema.$schema, /draft-07/)
    assert.ok(Object.hasOwn(schema.properties, key), `${name} has no ${key}`)
  }
})

test('a schema that is not there is told apart from those that are', async () => {
  const { code, note } = await run(REPOSITORY, 'schema', 'constructor')
  assert.equal(code, 2)
  assert.match(note, /^Name one of: ladder, amendment, page, handbook, translation, page-translation, findings, review, curriculum\.\n/)
})

test('one strict set is explained as a placement on every rung of its ladder', async () => {
  const { code, out } = await run(path.join(REPOSITORY, 'site-demo'), 'explain', 'press-up/floor', '--reps', '12', '--reserve', '2')
  assert.equal(code, 0)
  assert.match(out, /^12 strict reps on floor, 2 in reserve\n/)
  assert.match(out, /\n {2}floor +12 reps\n/)
  assert.match(out, /\n {2}ready for [a-z-]+\n$/)
  assert.equal((await run(REPOSITORY, 'explain', 'press-up', '--reps', '12')).code, 2)
  assert.equal((await run(REPOSITORY, 'explain', 'press-up/floor', '--reps', 'many')).code, 2)
})
