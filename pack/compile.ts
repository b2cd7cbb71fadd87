import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { transformSync } from 'esbuild'
import { exportsOf, OFFERED, reference } from './reference.ts'

/**
 * Writes what is published: `dist`, the source compiled file by file, with its types; and `reference`, what the docstrings say.
 * `npm pack` runs it. Nothing of either is committed.
 */
const ROOT = path.resolve(import.meta.dirname, '..')
const DIST = path.join(ROOT, 'dist')
const below = (folder: string): string[] => readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' }).map((name) => name.replaceAll(path.sep, '/'))

for (const folder of ['dist', 'reference']) rmSync(path.join(ROOT, folder), { recursive: true, force: true })

const { status } = spawnSync(process.execPath, [path.join(ROOT, 'node_modules/typescript/bin/tsc'), '-p', path.join(ROOT, 'pack/tsconfig.json')], { stdio: ['ignore', 2, 2] })
if (status !== 0) process.exit(1)

/** What is read as it is: stylesheets, templates, and types written by hand. */
for (const name of below('src').filter((file) => !/(?<!\.d)\.m?ts$|\.mjs$/.test(file) && statSync(path.join(ROOT, 'src', file)).isFile())) cpSync(path.join(ROOT, 'src', name), path.join(DIST, name))

const compiledNames = (text: string): string => text.replace(/(\bfrom\s+|\bimport\s*\(?\s*)(['"])(\.[^'"]*?)(?:\.d)?\.ts\2/g, '$1$2$3.js$2')
for (const name of below('dist').filter((file) => file.endsWith('.d.ts'))) writeFileSync(path.join(DIST, name), compiledNames(readFileSync(path.join(DIST, name), 'utf8')))

/** The host's wiring stands beside src in the repository, and among the compiled files in the package. */
const { code } = transformSync(readFileSync(path.join(ROOT, 'eleventy.config.ts'), 'utf8'), { loader: 'ts' })
writeFileSync(path.join(DIST, 'eleventy.config.js'), compiledNames(code).replace('./src/', './'))

/** One module for each folder that is offered: what some of its files export, under one name. */
const modules = OFFERED.map(({ folder, files, says }) => {
  const all = `${files.map((file) => `export * from './${folder}/${file}.js'`).join('\n')}\n`
  writeFileSync(path.join(DIST, `${folder}.js`), all)
  writeFileSync(path.join(DIST, `${folder}.d.ts`), all)
  return { folder, says, exported: files.flatMap((file) => exportsOf(file, readFileSync(path.join(DIST, folder, `${file}.d.ts`), 'utf8'))) }
})

reference(path.join(ROOT, 'reference'), modules)

/** The schemas an editor is pointed at, as `rungbook schema` writes them. */
mkdirSync(path.join(DIST, 'schemas'))
for (const name of ['handbook', 'ladder', 'amendment', 'page']) {
  const { stdout, status: ended } = spawnSync(process.execPath, [path.join(DIST, 'command/bin.js'), 'schema', name], { encoding: 'utf8', stdio: ['ignore', 'pipe', 2] })
  if (ended !== 0) process.exit(1)
  writeFileSync(path.join(DIST, 'schemas', `${name}.json`), stdout)
}
