import assert from 'node:assert/strict'
import { spawn } from 'node:child_process'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { DOMParser } from '@xmldom/xmldom'
import { test } from 'vitest'
import { rules } from '../../src/check/index.ts'
import { forWorkflow, forWorkflowProperty } from '../../src/command/report-github.ts'
import { findingsSchema } from '../../src/command/report-json.ts'
import { FORMATS, type Outcome } from '../../src/command/report.ts'
import { uriOf } from '../../src/command/report-sarif.ts'
import { forTerminal } from '../../src/command/report-text.ts'
import type { Finding } from '../../src/ladder/finding.ts'
import { run } from '../site/demo.ts'
import { folderNamed, program, write } from './repository.ts'
import { sarifResults } from './sarif.ts'
import { HANDBOOK, ladder } from './small.ts'

const finding = (message: string, more: Partial<Finding> = {}): Finding => ({ file: 'ladders/a.md', line: 2, column: 5, rule: 'values-fit', message, ...more })
const outcome = (findings: readonly Finding[], untold: readonly Finding[] = []): Outcome => ({ findings, untold, sources: new Map([['ladders/a.md', ['---', 'id: \t7', 'title: x']]]) })

const HOSTILE = ['<script>&amp;"\'</script>', ']]>', '<!-- x', 'a\nb\r\n::error::c', '100 % of a: b, c', '\u001b[31mred\u0007', '\u202eturned', 'half \ud800 a pair', 'NUL \u0000 and \ufffe', '@everyone |`|', '=1+1']
const hostile = HOSTILE.map((words, index) => finding(words, { file: `ladders/${words.replaceAll('/', '')}.md`, line: index + 1 }))

/** A workspace with three things wrong in it: an unknown key, an aim that is not there, a title that is no words. */
const wrong = folderNamed('wrong')
write(wrong, { 'handbook.yaml': HANDBOOK, 'ladders/bench-press.md': ladder().replace('movement:', 'movment:').replace('aim: kg-2', 'aim: kg-3'), 'ladders/squat.md': ladder({ id: 'squat', title: 'Squat' }).replace('title: "Squat"', 'title: 7') })

// — text —

test('in words each finding stands with its line, the line before and a caret under the place', () => {
  assert.equal(FORMATS.text(outcome([finding('id must be a word.')]), false), '1 to fix\n  ladders/a.md:2:5  id must be a word.  (values-fit)\n    1 | ---\n  > 2 | id:  7\n      |     ^\n')
  assert.equal(FORMATS.text(outcome([]), false), 'nothing to put right\n')
})

test('a line that is not there, or a place far to the right, has no frame or no caret', () => {
  assert.equal(FORMATS.text(outcome([finding('x', { line: 9 })]), false), '1 to fix\n  ladders/a.md:9:5  x  (values-fit)\n')
  assert.equal(FORMATS.text(outcome([finding('x', { file: 'b.md' })]), false), '1 to fix\n  b.md:2:5  x  (values-fit)\n')
  assert.doesNotMatch(FORMATS.text(outcome([finding('x', { column: 101 })]), false), /\^/)
})

test('colour is there where it is asked for, and nowhere else', () => {
  assert.match(FORMATS.text(outcome([finding('x')]), true), /\u001b\[1mladders\/a\.md:2:5\u001b\[22m/)
  assert.doesNotMatch(FORMATS.text(outcome([finding('x'), ...hostile]), false), /\u001b/)
  assert.doesNotMatch(program(wrong, ['check'], { FORCE_COLOR: '1' }).out, /\u001b/) // not a terminal
})

test('what moves the cursor or turns the line is shown as what it is', () => {
  assert.equal(forTerminal('a\u001b[31m\u202eb\u0007\u009b'), 'a\\u001b[31m\\u202eb\\u0007\\u009b')
  assert.equal(forTerminal('täglich 5 ½ →'), 'täglich 5 ½ →')
})

test('check in words ends with 1 where something is to be put right and with 0 where nothing is', async () => {
  const { code, out, note } = await run(wrong, 'check')
  assert.deepEqual([code, note], [1, ''])
  assert.match(out, /^\d+ to fix\n {2}ladders\/bench-press\.md:\d+:1 {2}There is no key "movment" here\. Did you mean movement\?|^\d+ to fix\n/)
  const fine = folderNamed('fine')
  write(fine, { 'handbook.yaml': HANDBOOK })
  assert.deepEqual(await run(fine, 'check'), { code: 0, out: 'nothing to put right\n', note: '' })
})

test('a format there is none of is misuse', async () => {
  assert.deepEqual([(await run(wrong, 'check', '--format', 'xml')).code, (await run(wrong, 'check', '--format', 'toString')).code], [2, 2])
})

// — json, sarif —

test('JSON holds to its schema, hostile words and all, and to the findings in their order', async () => {
  assert.deepEqual(findingsSchema.parse(JSON.parse(FORMATS.json(outcome(hostile, [finding('?')])))), { version: 1, findings: hostile, cannot_tell: [finding('?')] })
  const { code, out } = await run(wrong, 'check', '--format', 'json')
  assert.equal(code, 1)
  const { findings } = findingsSchema.parse(JSON.parse(out))
  assert.ok(findings.some(({ rule, edit }) => rule === 'keys-are-known' && edit?.text === 'movement'))
})

test('SARIF holds to the schema of SARIF 2.1.0, hostile words and all', async () => {
  const results = sarifResults(FORMATS.sarif(outcome(hostile.map((one) => ({ ...one, file: one.file.replace('\ud800', '') })), [finding('?', { rule: 'rungs-rise' })])))
  assert.equal(results.length, hostile.length + 1)
  assert.deepEqual([results[0]?.level, results[0]?.kind, results.at(-1)?.level, results.at(-1)?.kind], ['error', 'fail', 'none', 'open'])
  const found = sarifResults((await run(wrong, 'check', '--format', 'sarif')).out)
  assert.ok(found.length > 0)
  assert.deepEqual(sarifResults(FORMATS.sarif(outcome([]))), [])
})

test('a file’s name in SARIF is an address', () => {
  assert.equal(uriOf('../ladders/two words#1?.md'), '../ladders/two%20words%231%3F.md')
})

test('a fingerprint is the same after a reword and a move to another line, and another for another subject', () => {
  const print = (one: Finding): string | undefined => sarifResults(FORMATS.sarif(outcome([one])))[0]?.partialFingerprints['rungbookSubject/v1']
  const one = finding('x', { subject: 'press-up:rungs/floor' })
  assert.equal(print({ ...one, message: 'y', line: 9, column: 1 }), print(one))
  assert.notEqual(print({ ...one, subject: 'press-up:rungs/box' }), print(one))
  assert.notEqual(print({ ...one, rule: 'rungs-rise' }), print(one))
})

// — junit —

/** A document that is well formed, or a failure. */
const xml = (text: string) =>
  new DOMParser({
    onError: (level, message) => {
      throw new Error(`${level}: ${message}`)
    },
  }).parseFromString(text, 'text/xml')

test('JUnit is well formed with hostile names and words, and counts its cases', () => {
  const document = xml(FORMATS.junit(outcome(hostile, [finding('cannot be told')])))
  const all = (name: string) => [...document.getElementsByTagName(name)]
  assert.equal(document.documentElement?.getAttribute('tests'), String(hostile.length + 1))
  assert.equal(document.documentElement?.getAttribute('failures'), String(hostile.length))
  assert.equal(all('testcase').length, hostile.length + 1)
  assert.equal(all('skipped').length, 1)
  assert.deepEqual(
    all('failure').map((failure) => failure.getAttribute('message')),
    HOSTILE.map((words) => words.replace(/[\u0000-\u0008\u000b-\u001f\ud800-\udfff\ufffe\uffff]/g, '')),
  )
})

test('with nothing to put right JUnit has one case, which passed', () => {
  const [only, ...more] = [...xml(FORMATS.junit(outcome([]))).getElementsByTagName('testcase')]
  assert.deepEqual([only?.getAttribute('name'), only?.childNodes.length, more.length], ['nothing to put right', 0, 0])
})

test('check writes JUnit that can be read', async () => {
  const { code, out } = await run(wrong, 'check', '--format', 'junit')
  assert.equal(code, 1)
  assert.ok([...xml(out).getElementsByTagName('failure')].length > 0)
})

// — github —

test('annotations name the worst first: what cannot be read, then the rules in their own order', () => {
  const [first, second, ...others] = rules.map(({ name }) => name)
  const lines = FORMATS.github(outcome([finding('c', { rule: others.at(-1) ?? '' }), finding('b', { rule: second ?? '' }), finding('a', { rule: first ?? '' }), finding('read', { rule: 'values-fit' })])).split('\n')
  assert.deepEqual(lines.map((line) => line.split('::').at(-1)), ['read', 'a', 'b', 'c', ''])
})

test('ten annotations at most, and how many more there are', () => {
  const twelve = Array.from({ length: 12 }, (_, index) => finding(`${index}`))
  const lines = FORMATS.github(outcome(twelve)).trimEnd().split('\n')
  assert.equal(lines.length, 11)
  assert.equal(lines.at(-1), '::notice::2 more to fix; run rungbook check to see them all')
  assert.equal(FORMATS.github(outcome(twelve.slice(0, 10))).match(/::notice/g), null)
  assert.equal(FORMATS.github(outcome([])), '')
})

test('an annotation is one command on one line, whatever its words', () => {
  assert.equal(forWorkflow('50 %: a, b\r\n::error::c'), '50 %25: a, b%0D%0A::error::c')
  assert.equal(forWorkflowProperty('50 %: a, b\r\n'), '50 %25%3A a%2C b%0D%0A')
  assert.equal(FORMATS.github(outcome([finding('a: b, c\n::d', { file: 'x,y:z.md' })])), '::error file=x%2Cy%3Az.md,line=2,col=5,title=values-fit::a: b, c%0A::d\n')
  for (const line of FORMATS.github(outcome(hostile.slice(0, 10))).trimEnd().split('\n')) assert.match(line, /^::error file=[^:,]*,line=\d+,col=5,title=values-fit::/)
})

// — what one edit puts right —

test('--fix makes the edits, says what it did, and has nothing to do the second time', async () => {
  const folder = folderNamed('fix')
  const place = path.join(folder, 'ladders/bench-press.md')
  write(folder, { 'handbook.yaml': HANDBOOK, 'ladders/bench-press.md': ladder().replace('movement:', 'movment:') })
  const { note } = await run(folder, 'check', '--fix')
  assert.equal(note, 'ladders/bench-press.md:4\n  - movment: horizontal press\n  + movement: horizontal press\n1 put right\n')
  assert.equal(readFileSync(place, 'utf8'), ladder())
  assert.equal((await run(folder, 'check', '--fix')).note, '0 put right\n')
  assert.equal(readFileSync(place, 'utf8'), ladder())
})

test('--fix puts right what only the first edit lets be seen', async () => {
  const folder = folderNamed('fix-rounds')
  const place = path.join(folder, 'ladders/bench-press.md')
  write(folder, { 'handbook.yaml': HANDBOOK, 'ladders/bench-press.md': ladder().replace('movement:', 'movment:').replace('aim: kg-2', 'aim: kg-22') })
  assert.match((await run(folder, 'check', '--fix')).note, /\n2 put right\n$/)
  assert.equal(readFileSync(place, 'utf8').replace(/^aim: kg-[12]$/m, 'aim: kg-2'), ladder())
})

test('--fix keeps to the workspace’s own files', async () => {
  const root = folderNamed('fix-layers')
  const below = ladder().replace('movement:', 'movment:')
  write(root, { 'below/handbook.yaml': HANDBOOK, 'below/ladders/bench-press.md': below, 'club/handbook.yaml': `${HANDBOOK}extends: ../below\n`, 'club/ladders/squat.md': ladder({ id: 'squat', title: 'Squat' }).replace('movement:', 'movment:') })
  const { code, note } = await run(path.join(root, 'club'), 'check', '--fix')
  assert.equal(code, 1)
  assert.match(note, /^ladders\/squat\.md:4\n[^]*\n1 put right\n$/)
  assert.equal(readFileSync(path.join(root, 'below/ladders/bench-press.md'), 'utf8'), below)
})

// — watching —

test('--watch reports again after a save, and ends with 0 when it is interrupted', async () => {
  const folder = folderNamed('watch')
  mkdirSync(path.join(folder, 'content'))
  write(folder, { 'handbook.yaml': HANDBOOK, 'ladders/bench-press.md': ladder().replace('movement:', 'movment:') })
  const child = spawn(process.execPath, [path.resolve(import.meta.dirname, '../../src/command/bin.mjs'), 'check', '--watch'], { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] })
  try {
    let out = ''
    let waiting = (): void => undefined
    child.stdout.on('data', (bytes: Buffer) => {
      out += bytes.toString()
      waiting()
    })
    const reports = (count: number): Promise<void> =>
      new Promise((resolve) => {
        waiting = () => void (out.split('check ends\n').length > count && resolve())
        waiting()
      })
    await reports(1)
    assert.match(out, /^check begins\n\d+ to fix\n[^]*movment[^]*check ends\n$/)
    const save = setInterval(() => writeFileSync(path.join(folder, 'ladders/bench-press.md'), ladder()), 300) // the watch begins a moment after the first report
    save.unref()
    await reports(2)
    clearInterval(save)
    const [, second = ''] = out.split('check ends\n')
    assert.match(second, /^check begins\n/)
    assert.doesNotMatch(second, /movment/)
    const ended = new Promise<number | null>((resolve) => child.once('exit', resolve))
    child.kill('SIGINT')
    assert.equal(await ended, 0)
  } finally {
    child.kill('SIGKILL')
  }
})
