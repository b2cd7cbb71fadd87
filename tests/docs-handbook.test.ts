import assert from 'node:assert/strict'
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { CONTENT, docsNow } from '../pack/docs-files.ts'
import { verbs } from '../src/command/main.ts'
import { fileSchemas } from '../src/ladder/json-schema.ts'
import { ladderSchema } from '../src/ladder/schema.ts'
import { models } from '../src/load/index.ts'
import { REPOSITORY, run, scratch } from './site/demo.ts'

const folder = await scratch()
const DOCS = path.join(REPOSITORY, 'docs')
const pages = readdirSync(CONTENT).filter((name) => name.endsWith('.md')).map((name) => ({ name, text: readFileSync(path.join(CONTENT, name), 'utf8') }))
const ladders = readdirSync(path.join(DOCS, 'ladders')).map((name) => readFileSync(path.join(DOCS, 'ladders', name), 'utf8'))

/** Every fence of a language, with the page it stands on. */
const fences = (language: string): { readonly name: string; readonly text: string }[] =>
  pages.flatMap(({ name, text }) => [...text.matchAll(new RegExp(`^\`\`\`${language}\\n([^]*?)^\`\`\`$`, 'gm'))].map((match) => ({ name, text: match[1] ?? '' })))

/** A workspace of these files alone. */
function workspace(name: string, files: Readonly<Record<string, string>>): string {
  const at = path.join(folder, name)
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(at, file)), { recursive: true })
    writeFileSync(path.join(at, file), text)
  }
  return at
}

const HANDBOOK = 'title: Example\norganisation: Example\nedition: "1"\ncontact: Nobody\n'

test('the pages made from schemas and load models are those that would be made now (npm run docs:keys)', () => {
  for (const [name, text] of docsNow()) assert.equal(pages.find((page) => page.name === name)?.text, text, name)
})

test('every kind of file and every load model has its page, every page of a model has an equation and a rung worked out', () => {
  for (const kind of Object.keys(fileSchemas)) assert.ok(pages.some(({ name }) => name === `file-${kind}.md`), kind)
  for (const { name: model } of models) {
    const page = pages.find(({ name }) => name === `model-${model}.md`)?.text ?? ''
    assert.match(page, /## Equation\n\n\S/, model)
    assert.match(page, /## Worked out\n\n\[[^\]]+\]\(rung:/, model)
  }
})

test('the documentation is a workspace with nothing to put right, and nothing kept quiet', async () => {
  assert.deepEqual(await run(DOCS, 'check'), { code: 0, out: 'nothing to put right\n', note: '' })
  for (const text of ladders) assert.doesNotMatch(text, /^silence:/m)
})

test('the documentation builds, with a picture on the rung of every model that has poses', async () => {
  const out = path.join(folder, 'site')
  const { code, note } = await run(DOCS, 'build', '--output', out)
  assert.equal(code, 0, note)
  for (const { name } of pages) assert.ok(readFileSync(path.join(out, path.basename(name, '.md'), 'index.html'), 'utf8').includes('<h1>'), name)
  const drawn = pages.flatMap(({ text }) => [...text.matchAll(/\(rung:([a-z-]+\/[a-z-]+)\), drawn/g)].map((match) => match[1] ?? ''))
  assert.ok(drawn.length >= 6, 'supported-body, lever-hold, leg-press-of-body, assisted, one-rep-max and landing draw')
  for (const rung of drawn) assert.match(readFileSync(path.join(out, rung, 'index.html'), 'utf8'), /<figure[^]*<svg/, rung)
})

/** The words of a command, as a shell would part them, up to where its output goes. */
const wordsOf = (line: string): string[] => [...line.replace(/ (>|>>|<|\|) .*/, '').matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2] ?? '')

test('every command on a page is a verb with options it has, or one of npm and the shell', async () => {
  const lines = fences('sh').flatMap(({ name, text }) => text.trim().split('\n').map((line) => ({ name, line })))
  assert.ok(lines.length > 30)
  for (const { name, line } of lines) {
    const [program, first, ...rest] = wordsOf(line)
    if (program === 'npm' || program === 'cd') {
      assert.ok(program === 'cd' || first === 'install', `${name}: ${line}`)
      continue
    }
    assert.deepEqual([program, first], ['npx', 'rungbook'], `${name}: ${line}`)
    assert.ok(verbs.some((verb) => verb.name === rest[0]), `${name}: ${line}`)
    assert.deepEqual([(await run(folder, ...rest, '--help')).note, (await run(folder, ...rest, '--help')).code], ['', 0], `${name}: ${line}`)
  }
})

test('every verb is typed on some page, and every option named in prose is one that some verb has', () => {
  const all = pages.map(({ text }) => text).join('\n')
  for (const { name } of verbs) if (name !== 'completion') assert.match(all, new RegExp(`rungbook ${name}|\`${name}\``), name)
  const known = new Set(['--help', ...verbs.flatMap(({ options }) => Object.keys(options).map((option) => `--${option}`))])
  const named = [...all.matchAll(/(?<=[`\s])--[a-z][a-z-]*/g)].map(([option]) => option)
  assert.deepEqual(named.filter((option) => !known.has(option) && option !== '--ignore-scripts'), [])
})

test('every ladder and amendment on a page reads, and has nothing to put right', async () => {
  const examples = fences('markdown')
  assert.ok(examples.length >= 2)
  for (const [index, { name, text }] of examples.entries()) {
    const below = workspace(`below-${index}`, { 'handbook.yaml': HANDBOOK, 'ladders/press-up.md': readFileSync(path.join(DOCS, 'ladders/press-up.md'), 'utf8') })
    const own = workspace(`own-${index}`, { 'handbook.yaml': `${HANDBOOK}extends: ${below}\n`, 'ladders/example.md': text })
    assert.deepEqual(await run(own, 'check'), { code: 0, out: 'nothing to put right\n', note: '' }, name)
  }
})

test('every piece of YAML on a page is what its file may hold', async () => {
  for (const [index, { name, text }] of fences('yaml').entries()) {
    if (text.startsWith('load:')) continue // made from a rung that was read
    if (text.startsWith('silence:')) {
      const { parse } = await import('yaml')
      assert.ok(ladderSchema.shape.silence.safeParse((parse(text) as { silence: unknown }).silence).success, name)
      continue
    }
    const own = workspace(`handbook-${index}`, { 'handbook.yaml': text.replace(/^extends:.*\n/m, `extends: ${DOCS}\n`) })
    assert.deepEqual((await run(own, 'check')).out, 'nothing to put right\n', name)
  }
})

test('every message that troubleshooting explains is one the program says', () => {
  const sources = readdirSync(path.join(REPOSITORY, 'src'), { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts')).map((name) => readFileSync(path.join(REPOSITORY, 'src', name), 'utf8')).join('\n')
  const messages = [...(pages.find(({ name }) => name === 'troubleshooting.md')?.text ?? '').matchAll(/^\*\*(.+)\*\*$/gm)].map((match) => match[1] ?? '')
  assert.ok(messages.length >= 10)
  for (const message of messages) for (const part of message.split('…').map((piece) => piece.replace(/^["\s]+|["\s]+$/g, '')).filter((piece) => piece.length > 3)) assert.ok(sources.includes(part), part)
})

test('every file of the program that a page names is there', () => {
  for (const { name, text } of pages) for (const [, file] of text.matchAll(/`((?:hosting|tests|src)\/[^`\s]+)`/g)) assert.doesNotThrow(() => readFileSync(path.join(REPOSITORY, file ?? '')), `${name}: ${file}`)
})
