import assert from 'node:assert/strict'
import type { Page } from 'playwright-core'
import { beforeAll, test } from 'vitest'
import { keep, KEPT_BODY, keptLog, lostOn, moved, ready, tooSmall, unfold, walked } from './held.ts'
import { KINDS, servedDemo, SPANISH_KINDS, type ServedDemo } from './served-demo.ts'

/** What a hand on the floor, a large letter and a keyboard need, on the demo in a real browser. */
let demo: ServedDemo
beforeAll(async () => {
  demo = await servedDemo()
})

const LOG = { 'rungbook:log': keptLog('press-up', 'bar-95') }

/** A page with things on the device, once all its scripts have run. */
async function opened(address: string, kept: Readonly<Record<string, string>> = {}): Promise<Page> {
  const context = await demo.browser.newContext({ viewport: { width: 390, height: 844 }, reducedMotion: 'reduce' })
  await keep(context, kept)
  const { page } = await demo.watched(context)
  await page.goto(demo.root + address)
  await ready(page)
  await page.waitForLoadState('networkidle')
  return page
}

const EVERYWHERE = '.search input, .search button, #offline button, summary'
/** What is used on the floor, page by page, and the fewest of it there must be to see. */
const FLOOR: readonly (readonly [address: string, selector: string, least: number])[] = [
  ['/press-up/floor/', '.timer button, .timer label, .ways a, .neighbours a, .own button, .own input, .own select', 15],
  ['/my-ladders/', '#my-ladders :is(button, select, input:not([type=radio]), .log-chip)', 40],
  ['/find-your-rung/?ladder=press-up&rung=floor&reps=10', '.find :is(button, select, input), .own :is(button, select, input)', 9],
  ['/search/?q=neck', '#search-filters select', 6],
  ['/es/my-ladders/', '#my-ladders :is(button, select, input:not([type=radio]), .log-chip)', 40],
]

for (const [address, selector, least] of FLOOR) {
  test(`what is used on the floor is at least 44 px high and wide on ${address}`, async () => {
    const page = await opened(address, LOG)
    await unfold(page)
    if (address.endsWith('/my-ladders/')) await page.locator('#log-list button:last-child').first().click() // asks before it deletes
    const { seen, small } = await tooSmall(page, `${EVERYWHERE}, ${selector}`)
    assert.ok(seen >= least, `only ${seen} are to be seen`)
    assert.deepEqual(small, [])
    await page.context().close()
  })
}

test('the offers to keep the handbook and to take a newer edition are as large', async () => {
  const page = await opened('/press-up/floor/')
  const list = JSON.parse(String(demo.files.get('data/offline.json'))) as object
  await page.route('**/data/offline.json', (route) => route.fulfill({ json: { ...list, build: 'another', edition: '2027.1' } }))
  await page.reload()
  await page.locator('#offline button').nth(1).waitFor()
  assert.deepEqual(await tooSmall(page, '#offline button'), { seen: 2, small: [] })
  await page.context().close()
})

test('at 320 px, which is 1280 px at 400 %, nothing scrolls sideways or is cut off, with the spacing of text as wide as readers may set it', { timeout: 180_000 }, async () => {
  const { page } = await demo.opened('/', { viewport: { width: 320, height: 256 }, bypassCSP: true })
  await keep(page.context(), LOG)
  for (const address of [...KINDS, ...SPANISH_KINDS]) assert.deepEqual(await lostOn(page, demo.root + address), [], address)
  await page.context().close()
})

/** Where longer words may push a control out of sight, one way through a page is enough: backwards. */
const WALKS = [...KINDS.map((address) => [address, ['Tab', 'Shift+Tab']] as const), ...SPANISH_KINDS.map((address) => [address, ['Shift+Tab']] as const)]

for (const [address, keys] of WALKS) {
  test(`the keyboard walks through every control of ${address} by ${keys.join(' and ')}, folds open and sessions logged, each in sight and marked`, { timeout: 120_000 }, async () => {
    const page = await opened(address, LOG)
    await unfold(page)
    for (const key of keys) {
      const { reached, wrong, missed } = await walked(page, key)
      assert.deepEqual({ wrong, missed }, { wrong: [], missed: [] }, key)
      assert.ok(reached >= (address.endsWith('/my-ladders/') ? 60 : 15), `${reached} by ${key}`)
    }
    await page.context().close()
  })
}

test('the keyboard opens folds, runs the timer, and searches to a result and back', async () => {
  const page = await opened('/press-up/floor/')
  const focused = (): Promise<string> => page.evaluate(() => document.activeElement?.textContent ?? '')
  for (const [key, open] of [['Enter', true], ['Space', false]] as const) {
    await page.locator('.faults summary').first().press(key)
    assert.equal(await page.locator('.faults details').first().evaluate((fold: HTMLDetailsElement) => fold.open), open, key)
  }
  await page.locator('.timer button').first().press('Enter')
  assert.match(await page.locator('.timer [role=status]').innerText(), /has begun/)
  await page.locator('.timer button').last().press('Space')
  assert.match(await page.locator('.timer [role=status]').innerText(), /Stopped/)
  await page.keyboard.press('/')
  await page.keyboard.type('neck')
  await page.keyboard.press('Enter')
  const first = page.locator('#search-results a').first()
  await first.waitFor()
  await page.keyboard.press('/')
  await page.keyboard.press('ArrowDown')
  assert.equal(await focused(), await first.innerText())
  await page.keyboard.press('ArrowDown')
  assert.equal(await focused(), await page.locator('#search-results a').nth(1).innerText())
  for (let press = 0; press < 2; press += 1) await page.keyboard.press('ArrowUp')
  assert.equal(await page.evaluate(() => document.activeElement?.id), 'q')
  await page.fill('#q', 'hips')
  await page.keyboard.press('Enter')
  await page.waitForFunction(() => document.querySelector('#search-says')?.textContent?.includes('“hips”'))
  assert.equal(new URL(page.url()).search, '?q=hips')
  await page.keyboard.press('Escape')
  assert.equal(await page.evaluate(() => document.activeElement), await page.evaluate(() => document.body))
  await page.context().close()
})

test('the heads of a table of numbers stand where they stood when its rows come', { timeout: 60_000 }, async () => {
  for (const [width, address] of [[390, '/press-up/floor/'], [1280, '/press-up/floor/'], [390, '/es/press-up/floor/'], [1280, '/es/press-up/floor/']] as const) {
    const { page } = await demo.opened(address, { viewport: { width, height: 800 } })
    await ready(page)
    const heads = await page.evaluate(() =>
      [...document.querySelectorAll('.kilograms, .floor-marks')].map((table) => {
        const widths = () => [...table.querySelectorAll('thead th')].map((head) => head.getBoundingClientRect().width)
        const whole = widths()
        table.querySelector('tbody')?.remove()
        return { whole, before: widths() }
      }),
    )
    assert.equal(heads.length, 2)
    for (const { whole, before } of heads) assert.deepEqual(whole, before, `${address} at ${width}`)
    await page.context().close()
  }
})

test('who asks for less motion sees none', { timeout: 60_000 }, async () => {
  for (const reducedMotion of ['reduce', 'no-preference'] as const) {
    const { page } = await demo.opened('/press-up/floor/', { reducedMotion })
    await ready(page)
    const moving = await page.evaluate(() => [...document.querySelectorAll('*')].filter((element) => (({ animationName, transitionDuration, scrollBehavior }) => animationName !== 'none' || /[1-9]/.test(transitionDuration) || scrollBehavior === 'smooth')(getComputedStyle(element))).map(({ tagName }) => tagName))
    assert.deepEqual(moving, reducedMotion === 'reduce' ? [] : ['HTML'])
    await page.context().close()
  }
})

/** What scripts change, and what of it the device holds. */
const CHANGED = ['/press-up/floor/', '/search/?q=neck', '/find-your-rung/', '/my-ladders/', '/es/my-ladders/', '/es/find-your-rung/', '/es/search/?q=cuello']
/** Rungs of every kind of load, where a tall screen shows what scripts put into their pages. */
const TALL = ['/press-up/floor/', '/es/press-up/one-side/', '/overhead-press/kg-10/', '/front-plank/one-foot/', '/calf-raise/toes-behind/', '/boat-carry/empty-hands/', '/boat-carry/two-grass-9/']
const KEPT: readonly (readonly [what: string, addresses: readonly string[], kept: Readonly<Record<string, string>>])[] = [
  ['with nothing on the device', KINDS, {}],
  ['with sessions of two athletes and a body on the device', ['/my-ladders/', '/press-up/', '/press-up/floor/', '/find-your-rung/?ladder=press-up&rung=floor&reps=10'], { ...LOG, 'rungbook:body': KEPT_BODY }],
]

for (const [what, addresses, kept] of KEPT) {
  test(`nothing moves while a page comes in over a slow line to a slow telephone, ${what}`, { timeout: 240_000 }, async () => {
    const narrow = moved(demo.browser, demo, { width: 390, height: 844, addresses, kept })
    const wide = moved(demo.browser, demo, { width: 1280, height: 800, addresses: addresses === KINDS ? CHANGED : addresses, kept })
    const tall = moved(demo.browser, demo, { width: 820, height: 1180, addresses: TALL, kept })
    assert.deepEqual((await Promise.all([narrow, wide, tall])).flat(), [])
  })
}
