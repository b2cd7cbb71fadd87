import assert from 'node:assert/strict'
import { createRequire } from 'node:module'
import Ajv from 'ajv'

const load = createRequire(import.meta.url)
const schema = load('@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json') as object
const ajv = new Ajv({ schemaId: 'id', meta: false, allErrors: true })
ajv.addMetaSchema(load('ajv/lib/refs/json-schema-draft-04.json') as object)
const validate = ajv.compile(schema)

/** One result of a run, as far as the tests read it. */
export type Result = {
  readonly ruleId: string
  readonly level: string
  readonly kind?: string
  readonly message: { readonly text: string }
  readonly locations: readonly { readonly physicalLocation: { readonly artifactLocation: { readonly uri: string }; readonly region: { readonly startLine: number; readonly startColumn: number } } }[]
  readonly partialFingerprints: Readonly<Record<string, string>>
}

/** The results of a SARIF 2.1.0 log that holds to its schema. */
export function sarifResults(text: string): readonly Result[] {
  const log = JSON.parse(text) as { runs: { tool: { driver: { rules: { id: string }[] } }; results: Result[] }[] }
  validate(log)
  assert.deepEqual(validate.errors ?? [], [])
  const [run] = log.runs
  assert.ok(run)
  const ids = run.tool.driver.rules.map(({ id }) => id)
  assert.equal(new Set(ids).size, ids.length)
  for (const { ruleId } of run.results) assert.ok(ids.includes(ruleId), `${ruleId} is not described`)
  return run.results
}
