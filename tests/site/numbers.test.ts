import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { test } from 'vitest'
import { GOLDEN, publishedNumbers } from './numbers.ts'

test('no published number moves unseen: a change needs npm run golden, and a line in CHANGELOG.md', async () => {
  assert.equal(await publishedNumbers(), readFileSync(GOLDEN, 'utf8'))
})
