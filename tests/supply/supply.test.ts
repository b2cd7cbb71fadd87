import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { billOfMaterials } from './bill.ts'
import { strangeLicences } from './licences.ts'
import { locked, manifest, nameAt, ROOT } from './lockfile.ts'

const read = (file: string): string => readFileSync(path.join(ROOT, file), 'utf8')

/** What is named in each package manifest is what the lockfile holds. */
test('every version is exact, and the lockfile was made from this manifest', () => {
  const { dependencies, devDependencies } = manifest()
  for (const [name, version] of Object.entries({ ...dependencies, ...devDependencies })) assert.match(version, /^\d+\.\d+\.\d+(-[a-z0-9.]+)?$/, name)
  const { root, packages } = locked()
  assert.deepEqual([root.dependencies, root.devDependencies], [dependencies, devDependencies])
  for (const [name, version] of Object.entries({ ...dependencies, ...devDependencies })) assert.equal(packages.find(([place]) => place === `node_modules/${name}`)?.[1].version, version, name)
})

test('every package is locked by a digest, from no address of its own, and only esbuild would run a script, which is not run', () => {
  const { packages } = locked()
  assert.ok(packages.length > 200)
  assert.deepEqual(packages.filter(([, { integrity, link }]) => link === true || !/^sha512-[A-Za-z0-9+/]{86}==$/.test(integrity ?? '')).map(([place]) => place), [])
  assert.deepEqual(packages.filter(([, { resolved }]) => resolved !== undefined && !resolved.startsWith('https://registry.npmjs.org/')).map(([place]) => place), [])
  assert.deepEqual([...new Set(packages.filter(([, { hasInstallScript }]) => hasInstallScript).map(([place]) => nameAt(place)))].filter((name) => name !== 'fsevents'), ['esbuild'])
  assert.match(read('.ci/run'), /^npm ci --ignore-scripts$/m)
  for (const command of read('README.md').match(/npm ci[^&\n]*/g) ?? []) assert.match(command, /^npm ci --ignore-scripts/)
})

test('every licence is one we can keep to', () => assert.deepEqual(strangeLicences(), []))

test('every package that is named is named in DEVELOPERS.md too: what runs in the table, with its licence and why', () => {
  const { dependencies, devDependencies } = manifest()
  const text = read('DEVELOPERS.md')
  const rows = [...text.matchAll(/^\| ([^|]+) \| ([^|]+) \| ([^|]+) \|$/gm)].map(([, names = '', licence = '', why = '']) => ({ names: names.split(', '), licence: licence.trim(), why: why.trim() }))
  assert.deepEqual(Object.keys(dependencies).filter((name) => !rows.some(({ names, licence, why }) => names.includes(name) && licence !== '' && why.length > 5)), [])
  const after = text.slice(text.indexOf('For tests only'))
  assert.deepEqual(Object.keys(devDependencies).filter((name) => !name.startsWith('@types/') && !text.includes(name)), [], after)
})

test('the bill of materials lists every package that runs, with its version and licence, and is the same each time', { timeout: 120_000 }, () => {
  const text = billOfMaterials()
  assert.equal(text, billOfMaterials())
  const bill = JSON.parse(text) as { bomFormat: string; specVersion: string; components: { name: string; version: string; hashes: unknown[]; licenses: unknown[] }[] }
  assert.equal(bill.bomFormat, 'CycloneDX')
  const listed = new Set(bill.components.map(({ name, version }) => `${name}@${version}`))
  const needed = locked().packages.filter(([, { dev, optional }]) => dev !== true && optional !== true).map(([place, { version }]) => `${nameAt(place)}@${version}`)
  assert.ok(needed.length > 100)
  assert.deepEqual(needed.filter((each) => !listed.has(each)), [])
  assert.deepEqual([...listed].filter((each) => each.startsWith('vitest@') || each.startsWith('oxlint@')), [], 'what only tests need is not in it')
  assert.deepEqual(bill.components.filter(({ hashes }) => !hashes || hashes.length === 0).map(({ name }) => name), [])
  assert.doesNotMatch(text, /timestamp|urn:uuid/)
})
