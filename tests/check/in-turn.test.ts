import assert from 'node:assert/strict'
import { test } from 'vitest'
import { check } from '../../src/check/index.ts'
import { knownIn, measure, measureInTurn } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { generatedLayer } from '../bench/generated.ts'

const TODAY = '2026-01-01'

/** Sixteen ladders on eight models; in one of them a link is dead. */
function read() {
  const { files } = generatedLayer(16)
  const said = files.map(({ file, bytes }) => (file === 'ladders/movement-4.md' ? { file, bytes: new TextEncoder().encode(new TextDecoder().decode(bytes).replace('](/safety/)', '](/saftey/)')) } : { file, bytes }))
  const { value } = readCurriculum([{ files: said }])
  return { files: said, curriculum: value ?? assert.fail('nothing was read') }
}

test('ladders that are measured in their turn are found what they are found together', () => {
  const { curriculum } = read()
  const together = check(measure(curriculum), TODAY)
  assert.deepEqual(together.findings.map(({ file, rule }) => `${file} ${rule}`), ['ladders/movement-4.md links-resolve'])
  assert.ok(together.untold.length > 0)
  assert.deepEqual(check(measureInTurn(curriculum, knownIn(curriculum)), TODAY), together)
  assert.deepEqual(check(measureInTurn(curriculum, knownIn(curriculum)), TODAY, undefined, 'findings'), { ...together, untold: [] })
})

test('where things stand in a ladder is noted when a finding says so, and of no other ladder', () => {
  const { files, curriculum } = read()
  check(measureInTurn(curriculum, knownIn(curriculum)), TODAY, undefined, 'findings')
  for (const { bytes } of files) bytes.fill(0) // what is noted from now on finds nothing to note
  assert.deepEqual(curriculum.ladders.filter(({ places }) => places().size > 0).map(({ id }) => id), ['movement-4'])
})
