import { mkdtempSync, renameSync, rmSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { fileBytes, type KeptFiles } from '../../src/site/file-bytes.ts'

const folder = mkdtempSync(path.join(os.tmpdir(), 'rungbook-bytes-'))
const file = path.join(folder, 'row.md')
const kept: KeptFiles = new Map()
const textNow = async (): Promise<string> => {
  const bytes = await fileBytes(file, kept)
  return typeof bytes === 'string' ? bytes : new TextDecoder().decode(bytes)
}
/** A file is kept only when its last change is some seconds past. Units ms. */
const SETTLED_MS = 3200
/** A time that comes back exactly. Units s. */
const LONG_AGO = 1_000_000_000

beforeAll(async () => {
  writeFileSync(file, 'one')
  utimesSync(file, LONG_AGO, LONG_AGO)
  await wait(SETTLED_MS)
})
afterAll(() => rmSync(folder, { recursive: true }))

test('a file that nobody touched is the very same bytes again', async () => {
  const first = await fileBytes(file, kept)
  expect(await fileBytes(file, kept)).toBe(first)
})

test('a file written with as many letters, and given its old time back, is read again', async () => {
  expect(await textNow()).toBe('one')
  writeFileSync(file, 'two')
  utimesSync(file, LONG_AGO, LONG_AGO)
  expect(await textNow()).toBe('two')
})

test('a file that was just written is not kept, as it may be written again within the same tick', async () => {
  const first = await fileBytes(file, kept)
  expect(await fileBytes(file, kept)).not.toBe(first)
})

test('another file put in its place is read, a link is not followed, and one that is gone is absent', async () => {
  const other = path.join(folder, 'other.md')
  writeFileSync(other, 'six')
  renameSync(other, file)
  expect(await textNow()).toBe('six')
  writeFileSync(other, 'ten')
  rmSync(file)
  symlinkSync(other, file)
  expect(await textNow()).toBe('it is not a plain file')
  rmSync(file)
  expect(await textNow()).toBe('absent')
})
