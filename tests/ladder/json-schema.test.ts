import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import Ajv from 'ajv'
import { test } from 'vitest'
import { parse } from 'yaml'
import { fileSchemas, jsonSchemaOf, type FileKind, type JsonSchema } from '../../src/ladder/json-schema.ts'
import { keyNotes } from '../../src/ladder/key-notes.ts'

const REPOSITORY = path.resolve(import.meta.dirname, '../..')
const kinds = Object.keys(fileSchemas) as FileKind[]

/** Every key of a schema at any depth, by its path. */
function keysOf(schema: JsonSchema, at: readonly string[] = []): { readonly at: string; readonly schema: JsonSchema }[] {
  const items = schema.items === undefined ? [] : [schema.items].flat()
  const branches = [...(schema.anyOf ?? []), ...(schema.oneOf ?? []), ...(items as JsonSchema[])].flatMap((branch) => keysOf(branch, at))
  const own = Object.entries(schema.properties ?? {}).flatMap(([name, inside]) => [{ at: [...at, name].join('.'), schema: inside }, ...keysOf(inside, [...at, name])])
  return [...own, ...branches]
}

/** What is wrong with a value, by the schema. */
function wrong(schema: JsonSchema, value: unknown): string {
  const ajv = new Ajv({ allErrors: true })
  return ajv.validate(schema, value) ? '' : ajv.errorsText()
}

for (const kind of kinds) {
  test(`every key of ${kind} says what it is for, and shows a value its own schema accepts`, () => {
    const keys = keysOf(jsonSchemaOf(kind))
    assert.ok(keys.length > 2)
    for (const { at, schema } of keys) {
      assert.match(schema.description ?? '', /^[A-Z].+\.$/s, `${at} is not described`)
      assert.ok((schema.examples ?? []).length > 0, `${at} has no example`)
      for (const example of schema.examples ?? []) assert.equal(wrong(schema, example), '', `the example of ${at}`)
    }
  })
}

const headOf = (file: string): unknown => parse(/^---\n(.*?)\n---\n/s.exec(readFileSync(file, 'utf8'))?.[1] ?? '')
const filesIn = (folder: string): string[] => readdirSync(path.join(REPOSITORY, folder)).filter((file) => file.endsWith('.md')).map((file) => path.join(REPOSITORY, folder, file))

test('the handbooks, ladders and pages of this repository fit their schemas, and a slip does not', () => {
  for (const file of filesIn('ladders').filter((name) => !/\.[a-z]{2}\.md$/.test(name))) assert.equal(wrong(jsonSchemaOf('ladder'), headOf(file)), '', file)
  for (const file of filesIn('content').filter((name) => !/\.[a-z]{2}\.md$/.test(name))) assert.equal(wrong(jsonSchemaOf('page'), headOf(file)), '', file)
  for (const file of ['handbook.yaml', 'site-demo/handbook.yaml']) assert.equal(wrong(jsonSchemaOf('handbook'), parse(readFileSync(path.join(REPOSITORY, file), 'utf8'))), '', file)
  assert.match(wrong(jsonSchemaOf('handbook'), { title: 'Club', organisation: 'Club', edition: '2026.1', contact: 'us', extend: '../starter' }), /additional properties/)
})

test('a key that may be left out shows what holds then', () => {
  const defaults = (kind: FileKind) => Object.fromEntries(keysOf(jsonSchemaOf(kind)).flatMap(({ at, schema }) => (schema.default === undefined ? [] : [[at, schema.default]])))
  const ladder = defaults('ladder')
  assert.equal(ladder['standard.rest_s'], 90)
  assert.equal(ladder['supervision'], 'none')
  assert.equal(ladder['rungs.load.working_side_percent'], 50)
  assert.deepEqual(defaults('handbook')['languages'], ['en'])
})

test('no note is left over from a key that is gone', () => {
  const known = new Set(kinds.flatMap((kind) => keysOf(jsonSchemaOf(kind)).flatMap(({ at }) => [at, `${kind}:${at}`])))
  assert.deepEqual(Object.keys(keyNotes).filter((key) => !known.has(key)), [])
})
