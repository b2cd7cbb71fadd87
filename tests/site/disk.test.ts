import assert from 'node:assert/strict'
import { test } from 'vitest'
import type { Finding } from '../../src/ladder/finding.ts'
import { fewEnough } from '../../src/site/disk.ts'

test('a workspace of more files than are read is found, and as many as may be are read', () => {
  const findings: Finding[] = []
  assert.deepEqual(fewEnough(['handbook.yaml', 'ladders/a.md'], '', findings, 2), ['handbook.yaml', 'ladders/a.md'])
  assert.deepEqual(findings, [])
  assert.deepEqual(fewEnough(['handbook.yaml', 'ladders/a.md', 'ladders/b.md'], '../below', findings, 2), ['handbook.yaml', 'ladders/a.md'])
  assert.deepEqual(findings.map(({ file, rule, message }) => [file, rule, message]), [['../below/handbook.yaml', 'files-are-few-enough', 'This workspace has 3 files; at most 2 are read. Move some into a handbook that this one extends.']])
})
