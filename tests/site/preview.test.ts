import assert from 'node:assert/strict'
import { cpSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { spawn, type ChildProcess } from 'node:child_process'
import path from 'node:path'
import { chromium, type Browser, type Page } from 'playwright-core'
import { afterAll, beforeAll, test } from 'vitest'
import type { OfflineList } from '../../src/browser/offline-list.ts'
import { figureText } from '../../src/quantity/figure.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { modelNamed } from '../../src/load/index.ts'
import { ask } from '../../src/load/model.ts'
import { AVERAGE, measure } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { NO_CACHE } from '../../src/site/cache.ts'
import { readWorkspace } from '../../src/site/disk.ts'
import { liveHandbook } from '../../src/site/live-handbook.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { browserPath } from '../browser-path.ts'
import { REPOSITORY, run, scratch } from './demo.ts'

const folder = await scratch()
const place = path.join(folder, 'club')
const ladder = path.join(place, 'ladders/press-up.md')
const settings = path.join(place, 'handbook.yaml')
let text: string
let child: ChildProcess
let browser: Browser
let page: Page
let root: string

beforeAll(async () => {
  mkdirSync(path.join(place, 'ladders'), { recursive: true })
  mkdirSync(path.join(place, 'content'))
  writeFileSync(settings, 'title: A small handbook\norganisation: Tarnwick Gym Club\nedition: "1"\ncontact: nobody yet\n')
  for (const name of ['press-up', 'landing']) cpSync(path.join(REPOSITORY, `ladders/${name}.md`), path.join(place, `ladders/${name}.md`))
  text = readFileSync(ladder, 'utf8')
  child = spawn(process.execPath, [path.join(REPOSITORY, 'src/command/bin.mjs'), 'preview', '--workspace', place, '--port', '0'], { stdio: ['ignore', 'pipe', 'pipe'] })
  root = await new Promise<string>((resolve, reject) => {
    let said = ''
    child.stdout?.on('data', (bytes: Buffer) => {
      said += String(bytes)
      const at = /http:\/\/127\.0\.0\.1:\d+/.exec(said)
      if (at) resolve(at[0])
    })
    child.once('exit', () => reject(new Error(`the preview ended: ${said}`)))
  })
  browser = await chromium.launch({ executablePath: browserPath() ?? '', args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'] })
  page = await browser.newPage({ viewport: { width: 390, height: 844 } })
}, 120_000)

afterAll(async () => {
  child.kill('SIGTERM')
  await browser.close()
})

/** The search page without the names that change with the index: that of a preview is made without pictures. */
const unnamed = (page: Buffer): string => page.toString().replaceAll(/(?<=pagefind\.en_)[0-9a-f]{10}(?=\.pf_meta)|(?<=ts=|data-tag=")[0-9a-f]{8}(?=")/g, 'NAME')

test('what a preview shows is what a build writes, byte for byte', { timeout: 120_000 }, async () => {
  const out = path.join(folder, 'site')
  assert.equal((await run(place, 'build', '--output', out)).code, 0)
  const { layers, folders } = await readWorkspace(place)
  const { value } = readCurriculum(layers)
  assert.ok(value)
  const live = liveHandbook(measure(value), { folder: place, layers: folders }, NO_CACHE, new Map())
  const elsewhere = /\.(br|gz)$|^(build\.json|_headers|sitemap\.xml|service-worker\.js|data\/offline\.json|\.rungbook-output)$|^pagefind\//
  const files = (await filesBelow(out)).filter((name) => !elsewhere.test(name))
  assert.ok(files.length > 60, `${files.length}`)
  for (const name of files) {
    const bytes = await live.file(name)
    assert.ok(bytes !== undefined, name)
    const [shown, written] = [Buffer.from(bytes), readFileSync(path.join(out, name))]
    if (name === 'search/index.html') assert.equal(unnamed(shown), unnamed(written))
    else assert.ok(shown.equals(written), name)
  }
})

test('a page of the preview asks for nothing that is not there, a worker least of all', { timeout: 120_000 }, async () => {
  const missed: string[] = []
  const fresh = await browser.newPage()
  fresh.on('response', (response) => void (response.status() >= 400 && missed.push(response.url())))
  for (const address of ['/', '/press-up/', '/my-ladders/']) {
    const asked = fresh.waitForResponse(`${root}/data/offline.json`, { timeout: 30_000 })
    await fresh.goto(root + address)
    const list = await asked
    assert.equal(list.status(), 200)
    assert.equal(((await list.json()) as OfflineList).off, true)
    await fresh.waitForTimeout(500)
    assert.equal(await fresh.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length), 0)
  }
  await fresh.close()
  assert.deepEqual(missed, [])
})

const findings = () => page.locator('#preview-findings')

/** Opens a page and waits until the panel has learned what there is to put right. */
async function open(address: string): Promise<void> {
  await page.goto(root + address)
  await page.waitForSelector('#preview-author, #preview-findings', { timeout: 30_000 })
}

test('a save is shown where the reader was, with what is to put right over it, and goes when it is put right', { timeout: 120_000 }, async () => {
  await open('/press-up/')
  await page.evaluate(() => window.scrollTo(0, 600))
  writeFileSync(ladder, text.replace('movement: horizontal press', 'mowement: horizontal press'))
  await findings().waitFor({ timeout: 30_000 })
  assert.match(await findings().innerText(), /One thing to put right[^]*ladders\/press-up\.md:\d+:1[^]*Did you mean movement\?[^]*keys-are-known[^]*> +\d+ \| mowement: horizontal press/)
  assert.equal(await page.locator('h1').innerText(), 'Press-up') // the ladder as it was, for it cannot be read
  assert.ok(Math.abs((await page.evaluate(() => window.scrollY)) - 600) < 5)
  writeFileSync(ladder, text.replace('title: Press-up\n', 'title: Press-ups\n'))
  await findings().waitFor({ state: 'detached', timeout: 30_000 })
  await page.waitForFunction(() => document.querySelector('h1')?.textContent === 'Press-ups', undefined, { timeout: 30_000 })
})

test('a broken handbook.yaml, a half-written file, one renamed, one new and one deleted: each is shown, and none ends the preview', { timeout: 120_000 }, async () => {
  const whole = readFileSync(settings, 'utf8')
  await open('/landing/')
  writeFileSync(settings, 'title: [\n')
  await findings().waitFor({ timeout: 30_000 })
  assert.match(await findings().innerText(), /handbook\.yaml/)
  assert.equal(await page.locator('h1').innerText(), 'Landing from a drop')
  writeFileSync(settings, whole)
  await findings().waitFor({ state: 'detached', timeout: 30_000 })

  writeFileSync(path.join(place, 'ladders/half.md'), '---\nid: half\ntitle: Ha')
  await findings().waitFor({ timeout: 30_000 })
  assert.match(await findings().innerText(), /ladders\/half\.md:1:1/)
  renameSync(path.join(place, 'ladders/half.md'), path.join(place, 'ladders/other-half.md'))
  await page.waitForFunction(() => document.querySelector('#preview-findings')?.textContent?.includes('ladders/other-half.md'), undefined, { timeout: 30_000 })
  rmSync(path.join(place, 'ladders/other-half.md'))
  await findings().waitFor({ state: 'detached', timeout: 30_000 })

  writeFileSync(path.join(place, 'content/hours.md'), '---\ntitle: Opening hours\nsummary: When the hall is open.\n---\n\nEvery evening.\n')
  await page.waitForTimeout(500)
  await page.goto(`${root}/hours/`)
  assert.equal(await page.locator('h1').innerText(), 'Opening hours')
})

test('the author’s panel computes what a moved set-up would load, with the code of the handbook, and gives the line to paste', { timeout: 120_000 }, async () => {
  await open('/press-up/bench-hands/')
  await page.locator('#preview-author summary').first().click()
  const slider = page.locator('#preview-author input[type=range]')
  await slider.fill('60')
  const model = modelNamed('supported-body')
  assert.ok(model)
  const load = ask(model, { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 60 }, AVERAGE)
  assert.ok(!isMissing(load))
  assert.match(await page.locator('#preview-author .load').innerText(), new RegExp(`^force on one working hand: ${figureText(load.load.mid, '% of body weight')} `))
  assert.match(await page.locator('#preview-author .paste input').inputValue(), /^load: \{ model: supported-body, .*hand_height_cm: 60.* \}$/)
  assert.ok((await page.locator('#preview-author .step').count()) >= 1)
  assert.equal(await page.locator('#preview-author svg').count(), 2)
})

test('what the panel asks needs the token of the pages served, and nothing answers to another host or origin', async () => {
  const asked = async (address: string, headers: Record<string, string> = {}): Promise<number> => (await fetch(root + address, { headers })).status
  for (const address of ['/preview/saved', '/preview/findings.json', '/preview/findings.json?token=', '/preview/saved?token=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA']) assert.equal(await asked(address), 403, address)
  const token = /data-token="([^"]+)"/.exec(await (await fetch(`${root}/`)).text())?.[1]
  assert.ok(token)
  assert.equal(await asked(`/preview/findings.json?token=${token}`), 200)
  assert.equal(await asked(`/preview/findings.json?token=${token}`, { origin: 'http://elsewhere.example' }), 403)
  assert.equal(await asked('/', { origin: 'null' }), 403)
  assert.equal(await asked('/preview/panel.js'), 200)
  assert.equal(await asked('/preview/../handbook.yaml'), 404)
})
