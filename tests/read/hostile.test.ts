import assert from 'node:assert/strict'
import { spawn } from 'node:child_process'
import { test } from 'vitest'
import { check } from '../../src/check/index.ts'
import { measureLadder } from '../../src/measure/measure.ts'
import { readLadderFile } from '../../src/read/read-ladder.ts'
import { bytes, LADDER, said } from './said.ts'

/** What a process of its own said: some of these texts have ended the process that read them, past any catching. */
type Read = { readonly findings: string[]; readonly spent_s: number; readonly most_mb: number }

const inFreshProcess = (as: string, text: string): Promise<Read> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', `${import.meta.dirname}/hostile-child.ts`, as], { stdio: ['pipe', 'pipe', 'inherit'] })
    let out = ''
    child.stdout.on('data', (part) => (out += part))
    child.on('close', (code, signal) => (code === 0 ? resolve(JSON.parse(out) as Read) : reject(new Error(`the process ended with ${code ?? signal}`))))
    child.stdin.end(text)
  })

const DEEP = 'The front matter is nested more than 12 levels deep. A ladder needs no more than five. (front-matter-is-plain)'
const STRAY = 'From here on more than 100 things do not belong. Take out what was pasted in by mistake. (front-matter-is-plain)'
const MANY = 'The front matter holds too many entries: at most 500 keys together, 8000 in all. (front-matter-is-plain)'
const HEAVY = 'The file is larger than 256 KiB. Split it, or take out what was pasted in by mistake. (files-are-text)'
const LARGE = 'The front matter is larger than 64 KiB. Move prose below it. (front-matter-is-plain)'

const lines = (count: number, line: (index: number) => string): string => Array.from({ length: count }, (_, index) => line(index)).join('\n')

/** Texts that are deep or many, each read by a fresh process before anything else, and the one finding each is. */
const deepOrMany = [
  { says: '900 open brackets', as: 'handbook.yaml', text: '['.repeat(900), finds: `1:13 ${DEEP}` },
  { says: '900 open brackets', as: 'a ladder', text: `---\n${'['.repeat(900)}\n---\n`, finds: `2:13 ${DEEP}` },
  { says: '1,200 dashes', as: 'handbook.yaml', text: '- '.repeat(1200), finds: `1:25 ${DEEP}` },
  { says: '1,200 dashes', as: 'a ladder', text: `---\n${'- '.repeat(1200)}\n---\n`, finds: `2:25 ${DEEP}` },
  { says: '20,000 open braces with keys', as: 'handbook.yaml', text: '{a:'.repeat(20_000), finds: `1:37 ${DEEP}` },
  { says: '32,000 dashes', as: 'a ladder', text: `---\n${'- '.repeat(32_000)}\n---\n`, finds: `2:25 ${DEEP}` },
  { says: '350 levels of block maps', as: 'handbook.yaml', text: lines(350, (level) => `${' '.repeat(level)}a:`), finds: `13:13 ${DEEP}` },
  { says: '65,000 closing brackets', as: 'handbook.yaml', text: ']'.repeat(65_000), finds: `1:1 ${STRAY}` },
]

for (const { says, as, text, finds } of deepOrMany) {
  test.concurrent(`${says} as ${as} are one finding, within a second and 200 MB`, async () => {
    const read = await inFreshProcess(as, text)
    assert.deepEqual(read.findings, [finds])
    assert.ok(read.spent_s < 1, `${read.spent_s} s`)
    assert.ok(read.most_mb < 200, `${read.most_mb} MB`)
  })
}

/** Seconds of work, whatever else the machine is doing. */
function spent_s(work: () => void): number {
  const began = process.cpuUsage()
  work()
  const { user, system } = process.cpuUsage(began)
  return (user + system) / 1e6
}

test('many flat keys are refused before anything is compared with anything', () => {
  for (const [count, finds] of [
    [600, `2:1 ${MANY}`],
    [6000, `2:1 ${MANY}`],
    [8000, `2:1 ${LARGE}`],
    [50_000, `1:1 ${HEAVY}`],
  ] as const) {
    const text = `---\n${lines(count, (index) => `k${index}: 1`)}\n---\n`
    assert.ok(spent_s(() => assert.deepEqual(said(readLadderFile('a.md', bytes(text), 'A club').findings), [finds])) < 1)
  }
})

/** Bodies that have made one parser or another slow. */
const slow = {
  'quotes in quotes': '>'.repeat(50_000),
  'lists in lists': '- '.repeat(100_000),
  'runs of emphasis': '*a '.repeat(60_000),
  'one run of stars': '*'.repeat(100_000),
  'open brackets': '['.repeat(100_000),
  'open links': '[a]('.repeat(50_000),
  'open pictures': '![['.repeat(50_000),
  'less-than signs': '<'.repeat(200_000),
  'quotation marks': '"'.repeat(160_000),
  'back-ticks of every length': lines(600, (index) => '`'.repeat(index)),
  'a table of 5,000 columns': `|${'a|'.repeat(5000)}\n|${'-|'.repeat(5000)}\n${`|${'b|'.repeat(5000)}\n`.repeat(8)}`,
  references: lines(9000, (index) => `[r${index}]: /x${index}`),
  definitions: lines(20_000, () => 'a\n: b'),
  'a heading of spaces': `## a${' '.repeat(200_000)}b`,
  'a heading of tabs and spaces': `## a${' \t'.repeat(100_000)}b`,
  'a heading of half ids': `## ${'{#a'.repeat(60_000)}`,
  'a heading of ids and spaces': `## ${'{#a}   '.repeat(30_000)}b`,
  'cues without number': `## Free {#free}\n\n### Cues\n${'- a\n'.repeat(50_000)}`,
  'a cue without end': `## Free {#free}\n\n### Cues\n- ${'a '.repeat(100_000)}`,
}

for (const [says, body] of Object.entries(slow)) {
  test(`${says} in a body are read within a second`, () => {
    const text = LADDER.slice(0, LADDER.indexOf('## Free')) + body
    const known = { rungs: new Set<string>(), pages: new Set<string>() }
    const time_s = spent_s(() => {
      const { value } = readLadderFile('a.md', bytes(text), 'A club')
      assert.ok(value?.kind === 'ladder')
      check({ ladders: [measureLadder(value.ladder, known)], pages: [] }, '2026-11-25')
    })
    assert.ok(time_s < 1.5, `${time_s} s`) // a second of one core, and the collector on another
  })
}
