import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import type { Server } from 'node:http'
import { chromium, type Browser, type Page } from 'playwright-core'
import { afterAll, beforeAll, test } from 'vitest'
import { STANDARD_GRAVITY } from '../../src/quantity/unit.ts'
import { figureText } from '../../src/quantity/figure.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { floorMarks, markRows } from '../../src/load/floor-marks.ts'
import type { Athlete } from '../../src/load/model.ts'
import { AVERAGE, measure, type MeasuredLadder } from '../../src/measure/measure.ts'
import { placement } from '../../src/measure/place.ts'
import { repsText } from '../../src/measure/predict.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readWorkspace } from '../../src/site/disk.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { previewServer } from '../../src/site/preview-server.ts'
import { browserPath } from '../browser-path.ts'
import { REPOSITORY, builtDemo } from './demo.ts'

/** The demo handbook in a real browser, beside the same code as it was built with. */
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
let browser: Browser
let server: Server
let root: string

beforeAll(async () => {
  const site = await builtDemo()
  const files = new Map((await filesBelow(site)).map((file) => [file, readFileSync(path.join(site, file))]))
  const served = await previewServer(() => files, 0)
  server = served.server
  root = `http://127.0.0.1:${served.port}`
  const executablePath = browserPath()
  assert.ok(executablePath, 'a Chromium is needed: install one or set CHROMIUM_PATH')
  const args = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync']
  browser = await chromium.launch({ executablePath, args })
})

afterAll(async () => {
  await browser?.close()
  server?.close()
})

/** A page, the requests it makes and whatever goes wrong on it. `before` runs in every document ahead of its scripts. */
async function opened(address: string, { before, ...options }: Parameters<Browser['newContext']>[0] & { before?: string } = {}) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block', ...options })
  if (before !== undefined) await context.addInitScript(before)
  const page = await context.newPage()
  const trouble: string[] = []
  const requests: { readonly url: string; readonly method: string; readonly sent: string | null }[] = []
  page.on('console', (message) => message.type() === 'error' && trouble.push(message.text()))
  page.on('pageerror', (error) => trouble.push(error.message))
  page.on('request', (request) => requests.push({ url: request.url(), method: request.method(), sent: request.postData() }))
  await page.goto(root + address)
  await page.waitForFunction(() => document.querySelector('#own-numbers:not([hidden])') !== null)
  return { page, trouble, requests }
}

const { value: curriculum } = readCurriculum((await readWorkspace(path.join(REPOSITORY, 'site-demo'))).layers)
assert.ok(curriculum)
const { handbook, ladders } = curriculum

/** A ladder of the demo as the build measures it for one body. */
function ladderFor(id: string, athlete: Athlete = AVERAGE): MeasuredLadder {
  const [ladder] = measure({ handbook, ladders: ladders.filter((each) => each.id === id), pages: [] }, athlete).ladders
  assert.ok(ladder)
  return ladder
}

const rungOf = ({ rungs }: MeasuredLadder, id: string) => {
  const rung = rungs.find((each) => each.id === id)
  assert.ok(rung && !isMissing(rung.outcome))
  return { ...rung, load: rung.outcome.load.mid, figures: rung.outcome.figures }
}

const give = async (page: Page, mass: string, cm: string): Promise<void> => {
  await page.click('#own-numbers summary')
  await page.fill('#own-mass', mass)
  await page.fill('#own-cm', cm)
  await page.press('#own-cm', 'Enter')
}

const ownText = (page: Page): Promise<string> => page.locator('#own-figures').innerText()
const MASS_KG = 83.7
const TALL: Athlete = { stature_m: 1.87, mass_kg: MASS_KG }
const kg = (percent: number): string => figureText((percent * MASS_KG) / 100, 'kg')
const newtons = (percent: number): string => figureText(((percent * MASS_KG) / 100) * STANDARD_GRAVITY, 'N')

async function violations(page: Page): Promise<string[]> {
  await page.evaluate(AXE)
  return page.evaluate(async (tags) => {
    const axe = (globalThis as unknown as { axe: { run(options: unknown): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }).axe
    const { violations: found } = await axe.run({ runOnly: { type: 'tag', values: tags } })
    return found.map(({ id, nodes }) => `${id}: ${nodes.slice(0, 3).map(({ html }) => html.slice(0, 160)).join(' | ')}`)
  }, WCAG)
}

test('a body that was typed once is shown on every page in the build’s own numbers, and leaves the device nowhere', async () => {
  const { page, trouble, requests } = await opened('/press-up/one-side/')
  await give(page, '83,7', '187')
  await page.waitForSelector('.own-load')
  const rung = rungOf(ladderFor('press-up', TALL), 'one-side')
  const both = rung.figures.find(({ name }) => name === 'force on both hands at the end of the rep')?.value
  assert.ok(both && !isMissing(both))
  const figures = await page.locator('#own-figures .figure').allInnerTexts()
  assert.deepEqual(figures.slice(0, 6), [kg(rung.load), newtons(rung.load), kg(both.mid), newtons(both.mid), kg(both.mid - rung.load), newtons(both.mid - rung.load)])
  const marks = floorMarks(rung.inputs, AVERAGE, [187])
  const mark = isMissing(marks) ? marks : marks[0]?.[1]
  assert.ok(mark && !isMissing(mark))
  assert.deepEqual(figures.slice(-2), markRows(rung.inputs).map(({ of }) => of(mark)))
  assert.match(await page.locator('#own-says').innerText(), /Kept on this device/)

  await page.reload()
  await page.waitForSelector('.own-load')
  assert.equal((await page.locator('.own-load .figure').first().innerText()), kg(rung.load))
  await page.goto(`${root}/squat-one-leg/`)
  await page.waitForSelector('#own-figures table')
  const squat = ladderFor('squat-one-leg', TALL)
  for (const { id, title, outcome } of squat.rungs) {
    const row = await page.locator('#own-figures tbody tr', { has: page.locator(`a[href="${id}/"]`) }).innerText()
    if (isMissing(outcome)) assert.ok(row.includes(`not computed: ${outcome.missing}`), title)
    else assert.ok(row.includes(kg(outcome.load.mid)) && row.includes(newtons(outcome.load.mid)), `${title}: ${row}`)
  }

  await page.click('#own-numbers summary')
  await page.click('#own-forget')
  assert.match(await page.locator('#own-says').innerText(), /Forgotten/)
  assert.equal(await ownText(page), '')
  assert.equal(await page.evaluate(() => window.localStorage.getItem('rungbook:body')), null)
  assert.deepEqual(trouble, [])
  for (const { url, method, sent } of requests) {
    assert.equal(new URL(url).origin, root)
    assert.equal(method, 'GET')
    assert.equal(sent, null)
    assert.doesNotMatch(url, /83|187/)
  }
  await page.context().close()
})

test('pounds, feet and inches give the same kilograms', async () => {
  const { page } = await opened('/press-up/floor/')
  await page.click('#own-numbers summary')
  await page.selectOption('#own-mass-unit', 'lb')
  await page.selectOption('#own-height-unit', 'ft-in')
  await page.fill('#own-mass', '180')
  await page.fill('#own-feet', '6')
  await page.fill('#own-inches', '1')
  await page.press('#own-inches', 'Enter')
  await page.waitForSelector('.own-load')
  const rung = rungOf(ladderFor('press-up', { stature_m: 1.8542, mass_kg: 81.6466266 }), 'floor')
  assert.equal(await page.locator('.own-load .figure').first().innerText(), `${figureText((rung.load / 100) * 81.6466266, 'kg')} (${((rung.load / 100) * 180).toFixed(1)} lb)`)
  await page.click('#own-numbers summary')
  await page.selectOption('#own-mass-unit', 'kg')
  await page.selectOption('#own-height-unit', 'cm')
  assert.deepEqual([await page.inputValue('#own-mass'), await page.inputValue('#own-cm')], ['81.6', '185.4'])
  await page.context().close()
})

test('what is wrong is said, and nothing is kept of it', async () => {
  const { page } = await opened('/press-up/floor/')
  await give(page, '12', '180')
  assert.equal(await page.locator('#own-says').innerText(), 'Not taken: body mass must be a number from 30 to 250 kg (67 to 551 lb).')
  assert.equal(await page.evaluate(() => window.localStorage.length), 0)
  await page.context().close()
})

const OFF = "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('off', 'SecurityError') } })"
const FULL = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError') }"

for (const [state, before, says] of [
  ['turned off', OFF, 'Shown here, but not kept for the next page: this browser keeps nothing for this handbook.'],
  ['full', FULL, 'Shown here, but not kept for the next page: the room this browser gives a handbook is full.'],
] as const) {
  test(`where storage is ${state} the numbers are shown all the same, and the page says so`, async () => {
    const { page, trouble } = await opened('/press-up/floor/', { before })
    await give(page, '83.7', '187')
    await page.waitForSelector('.own-load')
    assert.equal(await page.locator('#own-says').innerText(), says)
    assert.equal(await page.locator('.own-load .figure').first().innerText(), kg(rungOf(ladderFor('press-up', TALL), 'floor').load))
    assert.deepEqual(trouble, [])
    await page.context().close()
  })
}

test('a corrupt record is not used, and the page says why and takes another', async () => {
  for (const [text, why] of [['{"version":1,', 'what was kept on this device cannot be read any more'], ['{"version":9}', 'it was kept by another edition of this handbook'], ['{"version":1,"mass":{"unit":"kg","value":"<b>"}}', 'body mass must be a number from 30 to 250 kg (67 to 551 lb)']] as const) {
    const { page, trouble } = await opened('/press-up/floor/', { before: `if (!sessionStorage.seen) { localStorage.setItem('rungbook:body', ${JSON.stringify(text)}); sessionStorage.seen = 1 }` })
    assert.equal(await page.locator('#own-says').innerText(), `Nothing is used of what was kept here: ${why}.`)
    await give(page, '83.7', '187')
    await page.waitForSelector('.own-load')
    assert.deepEqual(trouble, [])
    await page.context().close()
  }
})

test('a rung in kilograms says what to put on the bar, for a stated rack and for the reader’s own', async () => {
  const { page } = await opened('/overhead-press/kg-12-5/')
  await page.waitForSelector('#own-figures dl')
  assert.match(await ownText(page), /1\.25 \+ 1 \+ 1 kg on each end of the bar of 6 kg[^]*a rack chosen by us/)
  await page.click('#own-numbers summary')
  await page.fill('#own-bar', '7,5')
  await page.fill('#own-plates', '2,5; 1,25')
  await page.press('#own-plates', 'Enter')
  await page.waitForFunction(() => document.querySelector('#own-figures')?.textContent?.includes('7.5 kg'))
  assert.match(await ownText(page), /2\.5 kg on each end of the bar of 7\.5 kg[^]*From a bar of 7\.5 kg, and 2 pairs each of 2\.5 and 1\.25 kg\./)
  await page.context().close()
})

/** What the page says of each rung, by its title. */
const foundOn = async (page: Page): Promise<Map<string, string>> =>
  new Map(await page.locator('.placed tbody tr').evaluateAll((rows) => rows.map((row): [string, string] => [row.querySelector('a')?.textContent ?? '', row.querySelector('td')?.textContent ?? ''])))

const SETS = [
  ['press-up', 'floor', 9, 2],
  ['press-up', 'bench-hands', 20, 0],
  ['press-up', 'bar-95', 30, 0],
  ['row-straps', 'one-side', 4, 1],
  ['overhead-press', 'kg-10', 8, 0],
  ['wet-exit', undefined, 3, 0],
] as const

for (const [id, wanted, reps, reserve] of SETS) {
  test(`find your rung places ${reps} reps on ${wanted ?? 'the first rung'} of ${id} where the build places them`, async () => {
    const ladder = ladderFor(id)
    const on = wanted ?? ladder.rungs[0]?.id ?? ''
    const placed = placement(ladder, on, reps, reserve)
    assert.ok(!isMissing(placed))
    const { page, trouble } = await opened(`/find-your-rung/?ladder=${id}&rung=${on}&reps=${reps}&reserve=${reserve}`)
    await page.waitForSelector('.placed')
    const found = await foundOn(page)
    assert.equal(found.size, ladder.rungs.length)
    for (const [index, { predicted }] of placed.rungs.entries()) {
      const says: string = isMissing(predicted) ? `not computed: ${predicted.missing}` : `${repsText(predicted)} ${repsText(predicted) === '1' ? 'rep' : 'reps'}${placed.rungs[index]?.id === on ? ', as done' : ''}`
      assert.equal(found.get(ladder.rungs[index]?.title ?? ''), says)
    }
    const verdict = await page.locator('#find-says').innerText()
    const best = ladder.rungs.find((rung) => rung.id === placed.highest)
    assert.ok(verdict.startsWith(best ? `Work on ${best.title}, the heaviest rung` : `No rung to work on is named: not computed: ${isMissing(placed.highest) ? placed.highest.missing : ''}`), verdict)
    assert.equal(await page.locator('.badge').count(), best ? 1 : 0)
    assert.match(await page.locator('#find-found').innerText(), /People differ[^]*a coach who sees you move decides/)
    assert.deepEqual(trouble, [])
    await page.context().close()
  })
}

test('find your rung takes the reader’s own height, follows what is chosen, and puts no body into its link', async () => {
  const { page } = await opened('/find-your-rung/')
  await page.waitForFunction(() => (document.querySelector<HTMLSelectElement>('#find-rung')?.options.length ?? 0) > 0)
  await give(page, '83.7', '199')
  await page.selectOption('#find-ladder', 'press-up')
  await page.waitForFunction(() => [...(document.querySelector<HTMLSelectElement>('#find-rung')?.options ?? [])].some(({ value }) => value === 'floor'))
  await page.selectOption('#find-rung', 'floor')
  await page.fill('#find-reps', '9')
  await page.selectOption('#find-reserve', '2')
  await page.click('#find button')
  await page.waitForSelector('.placed')
  const own = placement(ladderFor('press-up', { stature_m: 1.99, mass_kg: MASS_KG }), 'floor', 9, 2)
  const average = placement(ladderFor('press-up'), 'floor', 9, 2)
  assert.ok(!isMissing(own) && !isMissing(average))
  assert.notDeepEqual(own.rungs, average.rungs)
  const says = own.rungs.map(({ predicted }) => (isMissing(predicted) ? predicted.missing : repsText(predicted)))
  assert.deepEqual([...(await foundOn(page)).values()].map((text) => text.replace(/ reps?(, as done)?$/, '')), says)
  assert.equal(new URL(page.url()).search, '?ladder=press-up&rung=floor&reps=9&reserve=2')
  await page.goto(`${root}/find-your-rung/?ladder=press-up&rung=no-such-rung&reps=9&reserve=2`)
  await page.waitForFunction(() => document.querySelector('#find-says')?.textContent !== '')
  assert.equal(await page.locator('#find-says').innerText(), 'The rung of this link is not on the ladder any more; choose another.')
  assert.equal(await page.locator('.placed').count(), 0)
  await page.fill('#find-reps', 'nine')
  await page.press('#find-reps', 'Enter')
  assert.equal(await page.locator('#find-says').innerText(), 'Reps must be a whole number from 1 to 200.')
  await page.context().close()
})

test('axe finds nothing on the forms and on what they show, in light and dark, and nothing is wider than a small phone', async () => {
  const kept = JSON.stringify({ version: 1, mass: { unit: 'lb', value: 180 }, height: { unit: 'ft-in', feet: 6, inches: 1 } })
  for (const colorScheme of ['light', 'dark'] as const) {
    for (const address of ['/press-up/', '/press-up/one-side/', '/overhead-press/kg-12-5/', '/front-plank/', '/find-your-rung/?ladder=press-up&rung=floor&reps=9&reserve=2']) {
      const { page } = await opened(address, { colorScheme, viewport: { width: 320, height: 700 }, before: `localStorage.setItem('rungbook:body', ${JSON.stringify(kept)})` })
      await page.waitForFunction(() => (document.querySelector('#find-found, #own-figures')?.childElementCount ?? 0) > 0)
      await page.click('#own-numbers summary')
      assert.deepEqual(await violations(page), [], address)
      assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 320, address)
      const low = await page.locator('.own input, .own select, .own button, .find input, .find select, .find button').evaluateAll((controls) => controls.map((control) => control.getBoundingClientRect().height).filter((height) => height > 0 && height < 44))
      assert.deepEqual(low, [], address)
      await page.context().close()
    }
  }
})

test('without scripts no form is shown, the tables stand, and the page says how to find a rung by hand', async () => {
  const context = await browser.newContext({ javaScriptEnabled: false })
  const page = await context.newPage()
  await page.goto(`${root}/press-up/floor/`)
  assert.equal(await page.locator('#own-numbers').isVisible(), false)
  assert.equal(await page.locator('table.kilograms').isVisible(), true)
  await page.goto(`${root}/find-your-rung/`)
  assert.equal(await page.locator('#find').isVisible(), false)
  assert.match(await page.locator('.by-hand').innerText(), /least entry[^]*Steps of Press-up/)
  await context.close()
})
