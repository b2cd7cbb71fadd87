import assert from 'node:assert/strict'
import { chmodSync, lstatSync, mkdirSync, readFileSync, statSync, symlinkSync, unlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { brotliDecompressSync } from 'node:zlib'
import { cacheIn } from '../../src/site/cache.ts'
import { sha256Of } from '../../src/site/copies.ts'
import { fillFolder } from '../../src/site/filling.ts'
import { MARKER } from '../../src/site/publish.ts'
import { scratch } from './demo.ts'

const folder = await scratch()
const cache = cacheIn(path.join(folder, 'cache'))
const LONG = 'A rung a line. '.repeat(100)
const files = [{ name: 'row/index.html', bytes: LONG }, { name: 'row/far/index.html', bytes: `${LONG}Far.` }, { name: 'pictures/bench.webp', bytes: Buffer.from([1, 2, 3]) }]

const fresh = (name: string): string => {
  const place = path.join(folder, name)
  mkdirSync(place)
  writeFileSync(path.join(place, MARKER), 'ours')
  return place
}

/** A folder filled with the files, after another. */
async function filled(name: string, before?: string): Promise<string> {
  const place = fresh(name)
  await (await fillFolder(place, { before, cache })).write(files)
  return place
}
const shared = (one: string, other: string, name: string): boolean => statSync(path.join(one, name)).ino === statSync(path.join(other, name)).ino

test('what was written is known by size and digest, copies and our mark with it', async () => {
  const place = fresh('known')
  const filling = await fillFolder(place)
  await filling.write(files)
  assert.deepEqual(filling.originals().map(({ file }) => file), [MARKER, 'pictures/bench.webp', 'row/far/index.html', 'row/index.html'])
  assert.deepEqual(filling.all().map(({ file }) => file), [MARKER, 'pictures/bench.webp', 'row/far/index.html', 'row/far/index.html.br', 'row/far/index.html.gz', 'row/index.html', 'row/index.html.br', 'row/index.html.gz'])
  for (const { file, bytes, sha256 } of filling.all()) {
    const there = readFileSync(path.join(place, file))
    assert.deepEqual([bytes, sha256], [there.length, sha256Of(there)], file)
  }
  assert.equal(brotliDecompressSync(readFileSync(path.join(place, 'row/index.html.br'))).toString(), LONG)
})

test('a file that has not changed, and its copies, are taken over from the old handbook; without a cache nothing is', async () => {
  const old = await filled('old')
  const next = await filled('next', old)
  for (const name of ['row/index.html', 'row/index.html.br', 'row/index.html.gz', 'pictures/bench.webp']) assert.ok(shared(old, next, name), name)
  const anew = fresh('anew')
  await (await fillFolder(anew, { before: old })).write(files)
  for (const name of ['row/index.html', 'row/index.html.br']) {
    assert.equal(shared(old, anew, name), false)
    assert.deepEqual(readFileSync(path.join(old, name)), readFileSync(path.join(anew, name)))
  }
})

for (const { says, spoil, name } of [
  { says: 'whose bytes somebody changed', name: 'row/index.html', spoil: (file: string) => writeFileSync(file, LONG.replace('rung', 'wall')) },
  { says: 'that is a copy of something else', name: 'row/index.html.br', spoil: (file: string) => writeFileSync(file, 'spoilt') },
  { says: 'that is a link', name: 'row/index.html', spoil: (file: string) => (writeFileSync(`${file}.elsewhere`, LONG), unlinkSync(file), symlinkSync(`${file}.elsewhere`, file)) },
  { says: 'that others may not read', name: 'row/index.html', spoil: (file: string) => chmodSync(file, 0o600) },
  { says: 'that is gone', name: 'row/index.html.gz', spoil: unlinkSync },
]) {
  test(`a file ${says} is written again, as it should be`, async () => {
    const key = says.replaceAll(/\W/g, '-')
    const old = await filled(`old-${key}`)
    spoil(path.join(old, name))
    const next = await filled(`next-${key}`, old)
    const about = lstatSync(path.join(next, name))
    assert.ok(about.isFile() && about.nlink === 1 && (about.mode & 0o777) === (statSync(path.join(next, MARKER)).mode & 0o777))
    assert.deepEqual(readFileSync(path.join(next, name)), readFileSync(path.join(folder, 'old', name)))
  })
}

test('nothing is taken over from behind a folder that is a link', async () => {
  const old = await filled('old-linked')
  const next = fresh('through')
  const through = path.join(folder, 'through-link')
  mkdirSync(through)
  symlinkSync(path.join(old, 'row'), path.join(through, 'row'))
  await (await fillFolder(next, { before: through, cache })).write(files)
  assert.equal(shared(old, next, 'row/index.html'), false)
})

test('no name is written twice: the first may be the old handbook’s too', async () => {
  const old = await filled('old-twice')
  const filling = await fillFolder(fresh('twice'), { before: old, cache })
  await filling.write(files)
  await assert.rejects(filling.write([{ name: 'row/index.html', bytes: 'something else' }]), /EEXIST/)
  assert.equal(readFileSync(path.join(old, 'row/index.html'), 'utf8'), LONG)
})

test('when one file cannot be written no more are begun, and it is said when those begun have ended', async () => {
  const filling = await fillFolder(fresh('failing'))
  await assert.rejects(filling.write([{ name: 'row', bytes: 'a file' }, { name: 'row/index.html', bytes: LONG }]), /EEXIST|ENOTDIR/)
})
