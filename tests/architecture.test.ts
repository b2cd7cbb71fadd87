import assert from 'node:assert/strict'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'

/** Each folder may import from itself and from those to its left. That is the whole architecture. */
const ORDER = ['quantity', 'load', 'ladder', 'read', 'measure', 'check', 'compare', 'page', 'browser', 'editor', 'site', 'command']
/** Disk, clock, chance, terminal, host. */
const OUTSIDE = /from 'node:|process\.|console\.|Date\.now|new Date\(\)|Math\.random|fetch\(|11ty/
/** A script lives in a page: it has that page's clock, storage and files of the same host, and no more. */
const OUTSIDE_A_PAGE = /from 'node:|process\.|console\.|Math\.random|11ty|fetch\(['"`]https?:/

const SRC = path.resolve(import.meta.dirname, '../src')
const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll(path.sep, '/'))
  .filter((file) => /\.m?[jt]s$/.test(file) && !file.endsWith('.d.ts'))
  .toSorted()

const homeOf = (file: string): string => file.split('/')[0] ?? ''
const textOf = (file: string): string => readFileSync(`${SRC}/${file}`, 'utf8')

/** What a file imports, in whichever way it is written. */
const importsIn = (text: string): string[] => [...text.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*['"]([^'"]+)['"]/g)].map((match) => match[1] ?? '')

test('every folder of src has its place in the order', () => {
  assert.deepEqual([...new Set(files.map(homeOf))].filter((home) => !ORDER.includes(home)), [])
})

for (const file of files) {
  const home = homeOf(file)
  const text = textOf(file)

  test(`${file} imports only leftward`, () => {
    for (const specifier of importsIn(text).filter((name) => name.startsWith('.'))) {
      const target = path.posix.join(path.posix.dirname(file), specifier)
      const folder = homeOf(target)
      assert.ok(ORDER.includes(folder), `${specifier} leads out of src, or ${folder} has no place in ORDER`)
      assert.ok(ORDER.indexOf(folder) <= ORDER.indexOf(home), `${home} must not import ${folder}`)
    }
  })

  test(`${file} keeps off the world unless it is site or command`, () => {
    if (home !== 'site' && home !== 'command') assert.doesNotMatch(text, home === 'browser' ? OUTSIDE_A_PAGE : OUTSIDE)
  })

  test(`${file} knows Eleventy only if it is site`, () => {
    if (home !== 'site') assert.ok(!importsIn(text).some((name) => name.startsWith('@11ty/')))
  })

  test(`${file} throws only what is our bug, and catches nothing, unless it is site or command`, () => {
    if (home === 'site' || home === 'command') return
    for (const [, thrown] of text.matchAll(/\bthrow\s+(.*)/g)) assert.match(thrown ?? '', /^new Error\(['`]bug: /)
    if (home !== 'browser') assert.doesNotMatch(text, /\btry\s*\{|\bcatch\s*[({]|\.catch\(/) // a browser throws where storage is full or a signal is lost
  })

  test(`${file} hands on nothing from another file`, () => assert.doesNotMatch(text, /^export\s+(\*|\{[^}]*\}|type\s+\{[^}]*\})\s*from\b/m))
}

/** The models by their files, so that one whose imports go round in a circle is named above before it is loaded below. */
const modelFiles = files.filter((file) => homeOf(file) === 'load' && /= loadModel\(\{/.test(textOf(file)))

test('every model is a file of its own name', async () => {
  const { models } = await import('../src/load/index.ts')
  assert.deepEqual(modelFiles, models.map(({ name }) => `load/${name}.ts`).toSorted())
})

for (const file of modelFiles) {
  const name = path.basename(file, '.ts')

  test(`${name} cites a source, states its units and has worked values`, async () => {
    const { modelNamed } = await import('../src/load/index.ts')
    const { sources } = await import('../src/load/sources.ts')
    const cites = modelNamed(name)?.cites ?? []
    assert.ok(cites.length > 0, 'nothing is cited')
    for (const { source, at } of cites) {
      assert.ok(source in sources, `${source} is not among the sources`)
      assert.ok(at.length > 0, `${source} is cited without a place`)
    }
    assert.match(textOf(file), / \* Units .*\n[^]* \* Source /)
    const worked = path.resolve(import.meta.dirname, `load/${name}.test.ts`)
    assert.ok(existsSync(worked), `tests/load/${name}.test.ts is not there`)
    assert.match(readFileSync(worked, 'utf8'), /from: ['"`]/)
  })
}
