import assert from 'node:assert/strict'
import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { verbs } from '../src/command/main.ts'

/** Prose drifts; a path in backticks, a command in a fence and an order of folders can be checked. */
const ROOT = path.resolve(import.meta.dirname, '..')
const read = (file: string): string => readFileSync(`${ROOT}/${file}`, 'utf8')

type Package = { readonly scripts: Readonly<Record<string, string>>; readonly bin: Readonly<Record<string, string>> }
const { scripts, bin } = JSON.parse(read('package.json')) as Package

/** A placeholder such as NAME stands for many paths, and a pattern for none. */
const pathsIn = (text: string): string[] =>
  [...text.matchAll(/`((?:src|tests|ladders|content|site-demo|docs|hosting)(?:\/[^`\s]*)?)`/g)].map((match) => match[1] ?? '').filter((name) => !/[*<>{}]|\b[A-Z]{2,}\b/.test(name))

for (const page of ['README.md', 'DEVELOPERS.md', 'docs/content/trust.md']) {
  test(`${page} names only what exists`, () => {
    const paths = pathsIn(read(page))
    assert.deepEqual(paths.filter((name) => !name.includes('_site') && !existsSync(`${ROOT}/${name}`)), [])
  })
}

test('DEVELOPERS.md names every folder of src, and the order in which they may import', () => {
  const text = read('DEVELOPERS.md')
  const order = /const ORDER = \[(.*)\]/.exec(read('tests/architecture.test.ts'))?.[1]?.replaceAll("'", '').split(', ') ?? []
  assert.ok(order.length > 5)
  assert.ok(text.includes(order.join(' → ')), 'the order in the prose is not the order of the test')
})

test('DEVELOPERS.md is no longer than anybody reads', () => assert.ok(read('DEVELOPERS.md').split('\n').length <= 250))

/** Commands in fenced sh blocks, one for each part of a line that && or ; joins. */
const commandsIn = (text: string): string[] =>
  [...text.matchAll(/^```sh\n([^]*?)^```/gm)].flatMap((match) =>
    (match[1] ?? '')
      .split(/\n|&&|;/)
      .map((line) => line.replace(/^\s*\$\s+/, '').replace(/(^|\s)#.*/, '').trim())
      .filter((line) => line !== ''),
  )

/** Commands that come with npm, git or a shell. */
const OWN = { npm: ['ci', 'install', 'exec', 'pack', 'link'], shell: ['cd', 'git', 'mkdir', 'cp'] }

/** Why a command cannot be what somebody types here, if it cannot. */
function wrong(command: string): string | undefined {
  const words = command.split(/\s+/)
  const [program = '', first = ''] = words
  const ours = program === 'npx' ? words.slice(words.findIndex((word, index) => index > 0 && !word.startsWith('-'))) : words
  if (program === 'npm' && (first === 'run' || first === 'test' || first === 'start')) {
    const [script = '', ...rest] = first === 'run' ? words.slice(2) : words.slice(1)
    if (!Object.hasOwn(scripts, script)) return `there is no script ${script}`
    return script === 'rungbook' ? verbWrong(rest.filter((word) => word !== '--')) : undefined
  }
  if (program === 'npm') return OWN.npm.includes(first) ? undefined : `npm knows no ${first}`
  if (Object.hasOwn(bin, ours[0] ?? '')) return verbWrong(ours.slice(1))
  return OWN.shell.includes(program) ? undefined : `${program} is not ours`
}

const verbWrong = ([verb = '']: readonly string[]): string | undefined => (verb === '--help' || verbs.some(({ name }) => name === verb) ? undefined : `there is no verb ${verb}`)

for (const page of ['README.md', 'DEVELOPERS.md']) {
  test(`${page} tells nobody to type what is not there`, () => {
    const commands = commandsIn(read(page))
    assert.deepEqual(commands.flatMap((command) => [wrong(command)].flatMap((why) => (why ? [`${command}: ${why}`] : []))), [])
  })
}

test('README.md tells a newcomer at least how to build and how to test', () => {
  const commands = commandsIn(read('README.md'))
  assert.ok(commands.includes('npm test'))
  assert.ok(commands.some((command) => command.startsWith('npm run ')))
})
