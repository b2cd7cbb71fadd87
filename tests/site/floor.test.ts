import assert from 'node:assert/strict'
import type { Page } from 'playwright-core'
import { beforeAll, test } from 'vitest'
import { KINDS, servedDemo, type ServedDemo } from './served-demo.ts'

/** What a hand on the floor, a large letter and a keyboard need, on the demo in a real browser. */
let demo: ServedDemo
beforeAll(async () => {
  demo = await servedDemo()
})

const ready = (page: Page): Promise<void> => page.locator('#offline button').waitFor({ state: 'attached' })

/** Opens everything that folds, and the log's decision. */
const unfold = (page: Page): Promise<void> => page.evaluate(() => document.querySelectorAll('details').forEach((fold) => (fold.open = true)))

test('what is used on the floor is at least 44 px high and wide', { timeout: 60_000 }, async () => {
  for (const [address, selector, least] of [
    ['/press-up/floor/', '.search input, .search button, .timer button, .timer label, .ways a, .neighbours a, #offline button, .own button, summary', 12],
  ] as const) {
    const { page } = await demo.opened(address)
    await ready(page)
    await unfold(page)
    const sizes = await page.locator(selector).evaluateAll((elements) => elements.filter((element) => element.checkVisibility()).map((element) => ({ says: element.outerHTML.slice(0, 80), ...(({ width, height }) => ({ width, height }))(element.getBoundingClientRect()) })))
    assert.ok(sizes.length >= least, `${address}: ${sizes.length}`)
    assert.deepEqual(sizes.filter(({ width, height }) => width < 44 || height < 44), [], address)
    await page.context().close()
  }
})

/** What is wider than the screen, or whose words are cut off, where it does not scroll by itself. */
const lost = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const wide = document.documentElement.scrollWidth > document.documentElement.clientWidth ? [`${document.documentElement.scrollWidth} px wide`] : []
    const cut = [...document.querySelectorAll<HTMLElement>('body *')].filter((element) => {
      const { overflowX, overflowY, clipPath } = getComputedStyle(element)
      const hides = overflowX === 'hidden' || overflowY === 'hidden' || overflowX === 'clip' || overflowY === 'clip'
      return hides && clipPath === 'none' && !element.closest('svg') && element.checkVisibility() && (element.scrollWidth > element.clientWidth + 1 || element.scrollHeight > element.clientHeight + 1)
    })
    return [...wide, ...cut.map((element) => `cut off: ${element.outerHTML.slice(0, 120)}`)]
  })

test('at 320 px, which is 1280 px at 400 %, nothing scrolls sideways or is cut off, with the spacing of text as wide as readers may set it', { timeout: 120_000 }, async () => {
  const { page } = await demo.opened('/', { viewport: { width: 320, height: 256 }, bypassCSP: true })
  for (const address of KINDS) {
    await page.goto(demo.root + address)
    await ready(page)
    assert.deepEqual(await lost(page), [], address)
    await page.addStyleTag({ content: '* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important } p { margin-bottom: 2em !important }' })
    assert.deepEqual(await lost(page), [], `${address} with text spaced`)
  }
  await page.context().close()
})

/** Presses Tab through a whole page, and says what was reached, and what of it lay hidden, out of sight or without a mark of focus. */
async function walked(page: Page): Promise<{ reached: number; wrong: string[]; missed: string[] }> {
  await page.evaluate(() => document.querySelectorAll('[data-reached]').forEach((element) => element.removeAttribute('data-reached')))
  const wrong: string[] = []
  let reached = 0
  for (; reached < 600; reached += 1) {
    await page.keyboard.press('Tab')
    const at = await page.evaluate(() => {
      const element = document.activeElement
      if (!(element instanceof Element) || element === document.body || element.hasAttribute('data-reached')) return undefined
      element.setAttribute('data-reached', '')
      const box = [...element.getClientRects()].find(({ width, height }) => width > 0 && height > 0) ?? element.getBoundingClientRect()
      const [x, y] = [Math.min(Math.max(box.left + Math.min(box.width / 2, 20), 0), innerWidth - 1), Math.min(Math.max(box.top + Math.min(box.height / 2, 12), 0), innerHeight - 1)]
      const top = document.elementFromPoint(x, y)
      const seen = top !== null && (element.contains(top) || top.contains(element) || (element instanceof HTMLInputElement && [...(element.labels ?? [])].some((label) => label.contains(top))))
      const { outlineStyle, outlineWidth } = getComputedStyle(element)
      const marked = (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2) || [...element.parentElement?.children ?? []].some((beside) => getComputedStyle(beside).outlineStyle !== 'none')
      return { says: element.outerHTML.slice(0, 100), seen, marked }
    })
    if (!at) break
    if (!at.seen) wrong.push(`hidden: ${at.says}`)
    if (!at.marked) wrong.push(`no mark of focus: ${at.says}`)
  }
  const missed = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('a[href], button, input:not([type=radio]), select, textarea, summary, [tabindex="0"]')].filter((element) => element.checkVisibility({ visibilityProperty: true }) && !element.hasAttribute('data-reached') && !element.matches(':disabled')).map((element) => element.outerHTML.slice(0, 100)),
  )
  return { reached, wrong, missed }
}

test('the Tab key reaches every control of a rung and of the log, each in sight and marked', { timeout: 120_000 }, async () => {
  for (const [address, least] of [['/press-up/floor/', 40], ['/my-ladders/', 15]] as const) {
    const { page } = await demo.opened(address, { reducedMotion: 'reduce' })
    await ready(page)
    await page.waitForLoadState('networkidle')
    const { reached, wrong, missed } = await walked(page)
    assert.deepEqual({ wrong, missed }, { wrong: [], missed: [] }, address)
    assert.ok(reached >= least, `${address}: ${reached}`)
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

test('nothing moves while a page comes in over a slow line', { timeout: 120_000 }, async () => {
  for (const viewport of [{ width: 390, height: 844 }, { width: 1280, height: 800 }]) {
    for (const address of ['/', '/press-up/', '/press-up/floor/', '/safety/']) {
      const { page } = await demo.watched(await demo.browser.newContext({ viewport, serviceWorkers: 'block' }))
      const debug = await page.context().newCDPSession(page)
      await debug.send('Network.emulateNetworkConditions', { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 90_000 })
      await page.addInitScript(() => {
        const seen: { moved: number; what: string[] } = { moved: 0, what: [] }
        Object.assign(globalThis, { seen })
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries() as unknown as { value: number; sources: { node?: Element }[] }[]) {
            seen.moved += entry.value
            seen.what.push(...entry.sources.map(({ node }) => `${node?.nodeName}.${node?.className}#${node?.id}`))
          }
        }).observe({ type: 'layout-shift', buffered: true })
      })
      await page.goto(demo.root + address)
      await page.waitForLoadState('networkidle')
      const { moved, what } = await page.evaluate(() => (globalThis as unknown as { seen: { moved: number; what: string[] } }).seen)
      assert.equal(moved, 0, `${address} at ${viewport.width} px: ${what.join(', ')}`)
      await page.context().close()
    }
  }
})
