import assert from 'node:assert/strict'
import { spawnSync } from 'node:child_process'
import { createServer } from 'node:net'
import { chmodSync, mkdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { main, verbs } from '../../src/command/main.ts'
import { refusedBy } from '../../src/command/refused.ts'
import { statusLine } from '../../src/command/status-line.ts'
import { REPOSITORY, run, scratch } from '../site/demo.ts'
import { HANDBOOK, ladder } from './small.ts'

const folder = await scratch()

/** The words of an example, as a shell would part them, up to where its output goes. */
const wordsOf = (line: string): string[] => [...line.replace(/ (>|>>|<|\|) .*/, '').matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2] ?? '')

test('help lists every verb with what it does, and says how a run ends', async () => {
  const { code, out } = await run(folder, '--help')
  assert.equal(code, 0)
  for (const { name, says } of verbs) assert.match(out, new RegExp(`^  ${name} +${says.replace(/[.*+?()]/g, '\\$&')}$`, 'm'))
  assert.match(out, /0 when there is nothing to put right, 1 with findings, 2 when it was asked wrongly, 3 by a mistake of ours/)
  assert.deepEqual(await run(folder, 'help'), await run(folder, '-h'))
  assert.deepEqual(await run(folder), { code: 2, out, note: '' })
})

for (const verb of verbs) {
  test(`rungbook ${verb.name} --help gives its usage and examples, each of which names only options it has`, async () => {
    const { code, out } = await run(folder, verb.name, '--help')
    assert.equal(code, 0)
    assert.ok(out.startsWith(`${verb.usage}\n\n${verb.says}\n\nExamples\n`))
    assert.deepEqual(await run(folder, 'help', verb.name), { code, out, note: '' })
    assert.ok(verb.examples.length > 0)
    for (const example of verb.examples) {
      const [program, name, ...rest] = wordsOf(example)
      assert.deepEqual([program, name], ['rungbook', verb.name], example)
      assert.equal((await run(folder, verb.name, ...rest, '--help')).note, '', example) // every word is read before help is given
    }
  })
}

test('the version is that of the package', async () => {
  assert.match((await run(folder, '--version')).out, /^\d+\.\d+\.\d+\n$/)
})

const slips: [words: string[], says: string][] = [
  [['chekc'], 'There is no verb "chekc". Did you mean check?'],
  [['help', 'fti'], 'There is no verb "fti". Did you mean fit?'],
  [['check', '--formt', 'json'], 'There is no option "--formt" here. Did you mean --format?'],
  [['check', '--colour'], 'There is no option "--colour" here. The options are: --workspace, --format, --fix, --watch, --part, --workers, --help.'],
  [['check', '--format'], '--format needs a value after it.'],
  [['check', '--format', '--fix'], '--format needs a value after it.'],
  [['check', '--fix=yes'], '--fix takes no value; write it alone.'],
  [['check', 'site-demo'], 'check takes options only, not "site-demo". A folder is named with --workspace site-demo.'],
  [['completion', 'tcsh'], 'Name a shell: bash, zsh, fish.'],
]
for (const [words, says] of slips) {
  test(`rungbook ${words.join(' ')} is wrong usage: ${says}`, async () => {
    const { code, out, note } = await run(folder, ...words)
    assert.deepEqual([code, out, note.split('\n')[0]], [2, '', says])
  })
}

test('a verb that is like none is answered with all of them', async () => {
  assert.equal((await run(folder, 'frobnicate')).note, `There is no verb "frobnicate". The verbs are: ${verbs.map(({ name }) => name).join(', ')}.\n`)
})

test('a port in use is wrong usage with a remedy, and no mistake of ours', async () => {
  const place = path.join(folder, 'previewed')
  mkdirSync(path.join(place, 'ladders'), { recursive: true })
  writeFileSync(path.join(place, 'handbook.yaml'), HANDBOOK)
  const server = createServer()
  const port = await new Promise<number>((resolve) => server.listen(0, '127.0.0.1', () => resolve((server.address() as { port: number }).port)))
  const { code, note } = await run(place, 'preview', '--port', String(port))
  server.close()
  assert.deepEqual([code, note], [2, `Port ${port} is in use, perhaps by another preview. Stop that one, or name another: --port ${port + 1}.\n`])
})

test('what the machine refuses is said with a remedy; anything else is ours', () => {
  const error = (more: object): Error => Object.assign(new Error('no'), more)
  assert.equal(refusedBy(error({ code: 'EACCES', path: '/site' })), 'You may not read or write "/site". Choose another place, or ask for the right to.')
  assert.equal(refusedBy(error({ code: 'EACCES', port: 80 })), 'Port 80 is not yours to use. Name one above 1023: --port 8080.')
  assert.equal(refusedBy(error({ code: 'ENOSPC' })), 'this file cannot be written: the disk is full. Free some of it, and try again.')
  assert.equal(refusedBy(error({ code: 'ERR_INVALID_ARG_TYPE' })), undefined)
  assert.equal(refusedBy(new Error('bug: no')), undefined)
})

test('an output folder that may not be written is wrong usage', async (context) => {
  if (process.getuid?.() === 0) return context.skip('the superuser may write anywhere') // 2026-11-26
  const place = path.join(folder, 'locked')
  mkdirSync(path.join(place, 'ladders'), { recursive: true })
  writeFileSync(path.join(place, 'handbook.yaml'), HANDBOOK)
  writeFileSync(path.join(place, 'ladders/bench-press.md'), ladder())
  chmodSync(place, 0o555)
  const { code, note } = await run(place, 'build')
  assert.equal(code, 2)
  assert.match(note, /^You may not read or write /)
})

test('a mistake of ours is called one, with what to report', async () => {
  let note = ''
  const broken = { out: () => { throw new Error('bug: nothing can be written') }, note: (text: string) => void (note += text), progress: () => undefined, ended: () => Promise.resolve(), colour: false, folder }
  assert.equal(await main(['completion', 'bash'], broken), 3)
  assert.match(note, /^This is a mistake of ours, not yours\. Please report it with what follows\.\nError: bug: nothing can be written\n/)
})

test('long work says on a terminal what it is doing, in one line that goes again, and in a pipe nothing', () => {
  const written = (isTTY: boolean, simple: boolean): string => {
    let text = ''
    const status = statusLine({ isTTY, write: (more) => (text += more) }, simple)
    status.goes()
    status.says('reading')
    status.says('drawing')
    status.goes()
    status.goes()
    return text
  }
  assert.equal(written(true, false), 'reading …\r\u001b[Kdrawing …\r\u001b[K')
  assert.equal(written(true, true), 'reading …\ndrawing …\n')
  assert.equal(written(false, false), '')
})

test('a Node too old to run it is told so in one sentence', () => {
  const older = "data:text/javascript,Object.defineProperty(process,'versions',{value:{...process.versions,node:'18.20.8'}})"
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', older, 'src/command/bin.mjs', '--help'], { cwd: REPOSITORY, encoding: 'utf8' })
  assert.deepEqual([status, stdout, stderr], [2, '', 'Rungbook needs Node 20.19 or later, and this is 18.20.8. Install a newer one from https://nodejs.org, and try again.\n'])
})

test('whoever reads only the first line ends the program without a word', () => {
  const { stdout, stderr } = spawnSync('bash', ['-c', `"${process.execPath}" src/command/bin.mjs schema ladder | head -1`], { cwd: REPOSITORY, encoding: 'utf8' })
  assert.deepEqual([stdout, stderr], ['{\n', ''])
})

const has = (shell: string): boolean => spawnSync(shell, ['--version']).status === 0

test.skipIf(!has('bash'))('bash completes verbs, options, what an option may be, and folders', async () => {
  const { out: script } = await run(folder, 'completion', 'bash')
  mkdirSync(path.join(folder, 'club/ladders'), { recursive: true })
  const completed = (...words: string[]): string[] => {
    const asked = `${script}\nCOMP_WORDS=(rungbook ${words.map((word) => `'${word}'`).join(' ')}); COMP_CWORD=${words.length}; _rungbook; printf '%s\\n' "\${COMPREPLY[@]}"`
    const { stdout, stderr } = spawnSync('bash', ['--norc', '-c', asked], { cwd: folder, encoding: 'utf8' })
    assert.equal(stderr, '')
    return stdout.trim().split('\n')
  }
  assert.deepEqual(completed('che'), ['check'])
  assert.deepEqual(completed(''), [...verbs.map(({ name }) => name), '--help', '--version'])
  assert.deepEqual(completed('check', '--f'), ['--format', '--fix'])
  assert.deepEqual(completed('check', '--format', ''), ['text', 'json', 'sarif', 'junit', 'github'])
  assert.deepEqual(completed('check', '--workspace', 'cl'), ['club'])
  assert.deepEqual(completed('completion', 'b'), ['bash'])
  assert.deepEqual(completed('nothing', ''), [''])
})

// Where the shell is installed; both were tried by hand on 2026-11-26.
test.skipIf(!has('fish'))('fish completes verbs, options and what an option may be', async () => {
  writeFileSync(path.join(folder, 'rungbook.fish'), (await run(folder, 'completion', 'fish')).out)
  const completed = (line: string): string[] => {
    const { stdout, stderr } = spawnSync('fish', ['--no-config', '-c', `source rungbook.fish; complete -C '${line}'`], { cwd: folder, encoding: 'utf8', env: { ...process.env, HOME: folder } })
    assert.equal(stderr, '')
    return stdout.trim().split('\n').map((found) => found.split('\t')[0] ?? '')
  }
  assert.deepEqual(completed('rungbook che'), ['check'])
  assert.deepEqual(completed('rungbook check --fo'), ['--format'])
  assert.deepEqual(completed('rungbook check --format s'), ['sarif'])
})

test.skipIf(!has('zsh'))('zsh reads its script and completes with it', async () => {
  writeFileSync(path.join(folder, '_rungbook'), (await run(folder, 'completion', 'zsh')).out)
  // Stand-ins for what zsh offers only while somebody types: they print what they are given.
  const completed = (...words: string[]): string => {
    const asked = `compdef() { : }; compadd() { print -r -- "$@" }; _describe() { print -rl -- "\${(@P)2}" }; _files() { print -r -- files "$@" }; source ./_rungbook; words=(rungbook ${words.map((word) => `'${word}'`).join(' ')}); CURRENT=${words.length + 1}; _rungbook`
    const { stdout, stderr } = spawnSync('zsh', ['-f', '-c', asked], { cwd: folder, encoding: 'utf8' })
    assert.equal(stderr, '')
    return stdout
  }
  assert.match(completed('che'), /^check:finds what is wrong/m)
  assert.match(completed('check', '--format', ''), /^-- text json sarif junit github\n/)
  assert.match(completed('check', '--f'), /^-- --workspace --format --fix --watch --part --workers --help\n/)
  assert.equal(completed('check', '--workspace', ''), 'files -/\n')
})
