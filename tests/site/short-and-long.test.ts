import assert from 'node:assert/strict'
import { beforeAll, test } from 'vitest'
import { scratch } from './demo.ts'
import { keep, KEPT_BODY, keptLog, lostOn, moved, ready } from './held.ts'
import { openedBrowser, servedFrom, violations, type ServedDemo } from './served-demo.ts'
import { builtShortAndLong } from './short-and-long.ts'

/** The shortest ladder there may be and one of forty rungs, in a real browser, below a folder of their host. */
const folder = await scratch()
const BELOW = '/club'
let site: ServedDemo
beforeAll(async () => {
  const [built, browser] = await Promise.all([builtShortAndLong(folder, `https://handbook.example${BELOW}/`), openedBrowser()])
  site = await servedFrom(built, browser, BELOW)
})

const PAGES = ['/', '/short/', '/short/at-0/', '/long/', '/long/at-57/', '/find-your-rung/?ladder=long&rung=at-57&reps=12', '/my-ladders/', '/movement-map/', '/equipment/', '/cards/long/', '/cards/short/', '/long/gone/further/']
const KEPT = { 'rungbook:log': keptLog('long', 'at-57', 60), 'rungbook:body': KEPT_BODY }

/** Pages that are as long as their ladder, held to every look; the others to one each. */
const LADDERS = ['/short/', '/long/', '/find-your-rung/?ladder=long&rung=at-57&reps=12', '/my-ladders/', '/cards/long/']

const LOOKS = [
  { width: 390, media: { colorScheme: 'light' } },
  { width: 1280, media: { colorScheme: 'dark' } },
  { width: 320, media: { forcedColors: 'active' } },
  { width: 768, media: { media: 'print' } },
] as const

/** On paper a link is words like any other: nobody can follow or touch it. */
const ON_PAPER = ['link-in-text-block', 'target-size']

test('axe finds nothing at WCAG 2.2 AA on ladders of two and of forty rungs, in light, dark, forced colours and print', { timeout: 240_000 }, async () => {
  const { page } = await site.opened('/')
  await keep(page.context(), KEPT)
  for (const [at, { width, media }] of LOOKS.entries()) {
    await page.emulateMedia({ colorScheme: null, forcedColors: null, media: null, ...media })
    await page.setViewportSize({ width, height: 844 })
    for (const address of PAGES.filter((each, index) => LADDERS.includes(each) || index % LOOKS.length === at)) {
      await page.goto(site.root + address)
      await ready(page)
      assert.deepEqual(await violations(page, 'media' in media ? ON_PAPER : []), [], `${address} at ${width} px, ${JSON.stringify(media)}`)
    }
  }
  await page.context().close()
})

test('at 320 px nothing of them scrolls sideways or is cut off, with text spaced as well', { timeout: 120_000 }, async () => {
  const { page } = await site.opened('/', { viewport: { width: 320, height: 256 }, bypassCSP: true })
  await keep(page.context(), KEPT)
  for (const address of PAGES) assert.deepEqual(await lostOn(page, site.root + address), [], address)
  await page.context().close()
})

test('nothing of them moves while it comes in over a slow line to a slow telephone', { timeout: 240_000 }, async () => {
  const on = (width: number, height: number): Promise<string[]> => moved(site.browser, site, { width, height, addresses: width === 390 ? PAGES : LADDERS, kept: KEPT })
  const tall = moved(site.browser, site, { width: 820, height: 1180, addresses: ['/short/', '/short/at-0/', '/long/at-57/'], kept: KEPT })
  assert.deepEqual((await Promise.all([on(390, 844), on(1280, 800), tall])).flat(), [])
})

test('a page that is not there is whole at any depth, below a folder of its host as well, and leads home', async () => {
  for (const address of ['/gone', '/gone/', '/long/gone/further/']) {
    const { page, trouble } = await site.opened(address)
    await ready(page)
    assert.equal(await page.locator('h1').innerText(), 'This page is not here')
    assert.equal(await page.locator('.banner').evaluate((banner) => getComputedStyle(banner).display), 'grid', address)
    await page.fill('#q', 'neck')
    await page.press('#q', 'Enter')
    await page.locator('#search-results li').first().waitFor()
    await page.goto(site.root + address)
    await page.click('main a')
    assert.equal(page.url(), `${site.root}/`)
    assert.deepEqual(trouble.filter((each) => !each.includes('status of 404')), [], address)
    await page.context().close()
  }
})
