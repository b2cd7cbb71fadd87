import assert from 'node:assert/strict'
import { spawn, spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { chromium } from 'playwright-core'
import { beforeAll, test } from 'vitest'
import { filesBelow } from '../../src/site/manifest.ts'
import { previewServer } from '../../src/site/preview-server.ts'
import { browserPath } from '../browser-path.ts'
import { REPOSITORY, scratch } from '../site/demo.ts'

/** The package as somebody gets it who has read only README.md, in folders of its own. */
const folder = await scratch()
const copy = path.join(folder, 'a copy')
const club = path.join(folder, 'club')
const handbook = path.join(club, 'handbook')
const LEFT_OUT = /^(node_modules|dist|reference|\.git|_site.*|.*\.tgz)$/
const ENV = { ...process.env, npm_config_prefer_offline: 'true', RUNGBOOK_CACHE: path.join(folder, 'cache'), NODE_OPTIONS: '', INIT_CWD: undefined }

const README = readFileSync(path.join(REPOSITORY, 'README.md'), 'utf8')
const section = README.slice(README.indexOf('## From an empty folder'), README.indexOf('## A ladder is a note'))
const blocks = (kind: string): string[] => [...section.matchAll(new RegExp(`^\`\`\`${kind}\\n([^]*?)^\`\`\``, 'gm'))].map((match) => match[1] ?? '')
const [making = '', walking = ''] = blocks('sh')
const walk = walking.trim().split('\n')

/** Runs a command as it is typed. */
function typed(command: string, where: string, input = ''): { code: number | null; out: string; note: string } {
  const { status, stdout, stderr } = spawnSync(command, { cwd: where, shell: true, encoding: 'utf8', env: ENV, input })
  return { code: status, out: stdout, note: stderr }
}

const ran = new Map<string, string>()

beforeAll(() => {
  mkdirSync(club)
  mkdirSync(copy)
  for (const name of readdirSync(REPOSITORY).filter((found) => !LEFT_OUT.test(found))) cpSync(path.join(REPOSITORY, name), path.join(copy, name), { recursive: true, filter: (from) => !LEFT_OUT.test(path.basename(from)) })
  symlinkSync(path.join(REPOSITORY, 'node_modules'), path.join(copy, 'node_modules')) // in place of the npm ci that comes first
  const [ci, ...rest] = making.trim().split('\n')
  assert.equal(ci, 'npm ci --ignore-scripts')
  for (const command of rest) {
    const { code, note } = typed(command, copy)
    assert.equal(code, 0, `${command}: ${note}`)
  }
  let where = club
  for (const command of walk.slice(0, -1)) {
    if (command.startsWith('cd ')) where = path.join(where, command.slice(3))
    else {
      const { code, out, note } = typed(command, where)
      assert.equal(code, 0, `${command}: ${out}${note}`)
      ran.set(command, out)
    }
  }
  assert.equal(where, handbook)
}, 300_000)

test('the walk in README.md is as long as it says, and begins in an empty folder', () => {
  assert.equal(walk.length, 5)
  assert.match(section, /five commands lead to a handbook/)
  assert.match(ran.get('npx rungbook build') ?? '', /^\d+ pages in \d+ files: _site\n$/)
})

test('what is published is what is needed, and nothing runs when it is installed', () => {
  const place = path.join(club, 'node_modules/rungbook')
  const { files: listed } = JSON.parse(readFileSync(path.join(REPOSITORY, 'package.json'), 'utf8')) as { files: string[] }
  assert.deepEqual(readdirSync(place).toSorted(), [...new Set(['LICENSE', 'README.md', 'package.json', ...listed.map((name) => name.split('/')[0])])].toSorted())
  const files = readdirSync(place, { recursive: true, encoding: 'utf8' })
  assert.deepEqual(files.filter((file) => /(?<!\.d)\.ts$|\.test\.|\.map$/.test(file)), [])
  assert.deepEqual(readdirSync(path.join(place, 'src'), { recursive: true }).toSorted(), ['command', 'command/bin.mjs'])
  const { scripts, dependencies } = JSON.parse(readFileSync(path.join(place, 'package.json'), 'utf8')) as { scripts: Record<string, string>; dependencies: Record<string, string> }
  assert.deepEqual(Object.keys(scripts).filter((name) => /install|prepare/.test(name)), [])
  assert.equal(dependencies.tsx, undefined)
})

test('the program runs compiled: check finds nothing in what start wrote, and a finding ends with 1', () => {
  assert.deepEqual(typed('npm run --silent check', handbook), { code: 0, out: 'nothing to put right\n', note: '' })
  writeFileSync(path.join(handbook, 'content/bad.md'), '---\ntitle: Bad\n---\n')
  const { code, out } = typed('npx rungbook check', handbook)
  assert.equal(code, 1)
  assert.match(out, /content\/bad\.md:2:1 {2}summary is not given here\. Add it\./)
  writeFileSync(path.join(handbook, 'content/bad.md'), '---\ntitle: No longer bad\nsummary: A page more.\n---\nWords.\n')
})

test('package.json of the new workspace asks for the very package it was begun with', () => {
  const { dependencies } = JSON.parse(readFileSync(path.join(handbook, 'package.json'), 'utf8')) as { dependencies: Record<string, string> }
  assert.deepEqual(dependencies, { rungbook: 'file:../../rungbook-0.1.0.tgz' })
})

test('the answers in README.md make a ladder, in which only prose is still to be written', () => {
  const [answers = ''] = blocks('text')
  const { code, out, note } = typed('npx rungbook start ladder wall-press', handbook, answers)
  assert.equal(code, 0, note)
  assert.match(out, /^ladders\/wall-press\.md: 2 rungs\n/)
  assert.match(note, /Hands on a table: \d+ % of body weight/)
  const found = JSON.parse(typed('npx rungbook check --format json', handbook).out) as { findings: { file: string; rule: string }[] }
  assert.deepEqual([...new Set(found.findings.filter(({ file }) => file === 'ladders/wall-press.md').map(({ rule }) => rule))], ['every-rung-is-described'])
})

test('a handbook built by the package is read in a browser: a ladder of its own, one that was amended, the page, nothing in the console', async () => {
  const files = new Map((await filesBelow(path.join(handbook, '_site'))).map((file) => [file, readFileSync(path.join(handbook, '_site', file))]))
  const { server, port } = await previewServer(() => files, 0)
  const executablePath = browserPath()
  assert.ok(executablePath, 'a Chromium is needed: install one or set CHROMIUM_PATH')
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'] })
  try {
    const page = await browser.newPage()
    const trouble: string[] = []
    page.on('console', (message) => message.type() === 'error' && trouble.push(message.text()))
    page.on('pageerror', (error) => trouble.push(error.message))
    page.on('requestfailed', (request) => trouble.push(`failed: ${request.url()}`))
    const root = `http://127.0.0.1:${port}`
    /** Waits until all that a page fetches is there: what is left half fetched counts as failed. */
    const visited = (address: string) => page.goto(root + address, { waitUntil: 'networkidle' })
    await visited('/')
    assert.match(await page.title(), /Coaching handbook/)
    await page.getByRole('link', { name: 'Goblet squat' }).first().click()
    await page.waitForLoadState('networkidle')
    assert.equal(await page.locator('h1').first().innerText(), 'Goblet squat')
    assert.match(await page.locator('main').innerText(), /A fifth of body weight held[^]*% of body mass/)
    await visited('/press-up/floor/')
    assert.match(await page.locator('main').innerText(), /\b15\b/)
    await visited('/welcome/')
    assert.match(await page.locator('main').innerText(), /This page is yours/)
    await visited('/checks/steps-are-climbable/')
    assert.match(await page.locator('main').innerText(), /model: /) // both examples of the rule came with the package
    assert.deepEqual(trouble, [])
  } finally {
    await browser.close()
    server.close()
  }
})

test('the last command of the walk shows it until it is ended', async () => {
  const command = walk.at(-1) ?? ''
  assert.equal(command, 'npx rungbook preview')
  rmSync(path.join(handbook, 'ladders/wall-press.md')) // its prose is not written yet
  const child = spawn(`${command} --port 0`, { cwd: handbook, shell: true, env: ENV, detached: true, stdio: ['ignore', 'pipe', 'pipe'] })
  try {
    let said = ''
    const address = await new Promise<string>((resolve, reject) => {
      child.on('exit', () => reject(new Error(said)))
      for (const stream of [child.stdout, child.stderr]) {
        stream.on('data', (bytes: Buffer) => {
          said += bytes.toString()
          const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(said)?.[0]
          if (found) resolve(found)
        })
      }
    })
    assert.match(await (await fetch(`${address}goblet-squat/`)).text(), /<h1[^>]*>Goblet squat/)
    assert.equal((await fetch(`${address}preview/panel.js`)).status, 200)
  } finally {
    child.removeAllListeners('exit')
    if (child.pid && child.exitCode === null) process.kill(-child.pid, 'SIGTERM')
  }
})

/** A program that imports every module, with types as strict as ours. */
const PROGRAM = `
import { figureText, isMissing } from 'rungbook/quantity'
import { ask, modelNamed, models, type LoadModel } from 'rungbook/load'
import { criteriaDigest, ladderSchema, type Curriculum, type Finding } from 'rungbook/ladder'
import { readCurriculum } from 'rungbook/read'
import { AVERAGE, measure, type MeasuredCurriculum } from 'rungbook/measure'
import { check, rules } from 'rungbook/check'
import { compare } from 'rungbook/compare'

const model: LoadModel | undefined = modelNamed('supported-body')
const load = model && ask(model, { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 0 }, AVERAGE)
if (load && !isMissing(load)) console.log(figureText(load.load.mid, load.quantity.unit))
const bytes = new TextEncoder().encode('title: T\\norganisation: C\\nedition: "1"\\ncontact: x\\n')
const value: Curriculum | undefined = readCurriculum([{ files: [{ file: 'handbook.yaml', bytes }] }]).value
const measured: MeasuredCurriculum | undefined = value && measure(value)
const found: readonly Finding[] = measured ? check(measured, '2026-01-01').findings : []
console.log(found.length, measured && compare(measured, measured).typed.length, rules.length > 30, models.length > 5, typeof criteriaDigest, ladderSchema.safeParse({}).success)
// @ts-expect-error what is not offered is not there
import { nothing } from 'rungbook/load'
`

test('each folder that is offered is imported as a module, with its types', () => {
  const place = path.join(club, 'program')
  mkdirSync(place)
  writeFileSync(path.join(place, 'package.json'), '{ "type": "module" }')
  writeFileSync(path.join(place, 'program.ts'), PROGRAM)
  const tsc = typed(`"${process.execPath}" "${path.join(REPOSITORY, 'node_modules/typescript/bin/tsc')}" --ignoreConfig --strict --exactOptionalPropertyTypes --module nodenext --target es2023 --types "" program.ts`, place)
  assert.deepEqual([tsc.out, tsc.code], ['', 0])
  writeFileSync(path.join(place, 'program.js'), readFileSync(path.join(place, 'program.js'), 'utf8').replace(/^import \{ nothing \}.*$/m, ''))
  assert.deepEqual(typed(`"${process.execPath}" program.js`, place), { code: 0, out: '36 % of body weight\n0 0 true true function false\n', note: '' })
})

test('what the docstrings say comes with the package, a page a module', () => {
  const place = path.join(club, 'node_modules/rungbook/reference')
  assert.deepEqual(readdirSync(place).toSorted(), ['README.md', 'check.md', 'compare.md', 'ladder.md', 'load.md', 'measure.md', 'quantity.md', 'read.md'])
  assert.match(readFileSync(path.join(place, 'quantity.md'), 'utf8'), /## isMissing\n\nTrue where there is no answer\.\n\n```ts\nexport declare function isMissing\(outcome: unknown\): outcome is Missing;\n```\n/)
})

