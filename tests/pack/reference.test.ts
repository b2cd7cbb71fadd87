import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { exportsOf, OFFERED } from '../../pack/reference.ts'
import { REPOSITORY } from '../site/demo.ts'

for (const { folder, files } of OFFERED) {
  const exported = files.flatMap((file) => exportsOf(file, readFileSync(path.join(REPOSITORY, 'src', folder, `${file}.ts`), 'utf8')))

  test(`everything rungbook/${folder} offers has a docstring`, () => {
    assert.ok(exported.length > 0)
    assert.deepEqual(exported.filter(({ says }) => says === '').map(({ file, name }) => `src/${folder}/${file}.ts ${name}`), [])
  })

  test(`rungbook/${folder} offers no name twice`, () => {
    const names = exported.map(({ name }) => name)
    assert.deepEqual(names.filter((name, index) => names.indexOf(name) < index), [])
  })
}

test('a declaration is taken whole, with its docstring, and one without is found', () => {
  const text = `/** One.\n *\n * Units  m. */\nexport declare const one: {\n    readonly a: () => void;\n};\nexport type Two<A> = A | string;\n`
  assert.deepEqual(exportsOf('x', text), [
    { file: 'x', name: 'one', declared: 'export declare const one: {\n    readonly a: () => void;\n};', says: 'One.\n\nUnits  m.' },
    { file: 'x', name: 'Two', declared: 'export type Two<A> = A | string;', says: '' },
  ])
})

test('no module names a source file by its ending, for the package has none: only imports do, which are compiled', () => {
  const named = readdirSync(path.join(REPOSITORY, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .flatMap((file) => [...readFileSync(path.join(REPOSITORY, 'src', file), 'utf8').matchAll(/(?<!from |import |import\()(['"`])(\.{1,2}\/[^'"`\n]*\.ts)\1/g)].map((match) => `${file.replaceAll(path.sep, '/')} ${match[2]}`))
  assert.deepEqual(named, ['site/page-files.ts ../../eleventy.config.ts']) // and its compiled twin beside it
})
