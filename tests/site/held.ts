import type { Browser, BrowserContext, Page } from 'playwright-core'
import type { ServedDemo } from './served-demo.ts'

/** What pages are held to in a real browser, each as what was found against it. */

/** The last thing a page does is to offer itself for reading without a signal, and to show what was searched for. */
export async function ready(page: Page): Promise<void> {
  await page.locator('#offline button').first().waitFor({ state: 'attached' })
  if (page.url().includes('/search/?q=')) await page.locator('#search-results li').first().waitFor({ state: 'attached' })
}

/** Opens everything that folds. */
export const unfold = (page: Page): Promise<void> => page.evaluate(() => document.querySelectorAll('details').forEach((fold) => (fold.open = true)))

/** A log of two athletes with sessions on one rung, as it is kept on a device. */
export const keptLog = (ladder: string, rung: string, sessions = 12): string =>
  JSON.stringify({
    log: 'my-ladders',
    version: 1,
    athletes: ['Isolde Farrow', 'Bram Okoye'].map((name) => ({
      name,
      sessions: Array.from({ length: sessions }, (_, day) => ({ ladder, rung, on: `2026-${String(1 + Math.floor(day / 28)).padStart(2, '0')}-${String((day % 28) + 1).padStart(2, '0')}`, unit: 'reps', amounts: [12, 12, 10 + (day % 3)], sets_out_of_form: Number(day % 5 === 0), pain_during: day % 4, note: 'Mat on the jetty', edition: '1' })),
    })),
  })

/** A body as it is kept on a device. */
export const KEPT_BODY = JSON.stringify({ version: 1, mass: { unit: 'kg', value: 70 }, height: { unit: 'cm', value: 175 } })

/** Lays things on the device before any page is read. */
export const keep = (context: BrowserContext, kept: Readonly<Record<string, string>>): Promise<unknown> => context.addInitScript((each) => Object.entries(each).forEach(([name, text]) => localStorage.setItem(name, text)), kept)

/** What is wider than the screen, or whose words are cut off, where it does not scroll by itself. */
export const lost = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const wide = document.documentElement.scrollWidth > document.documentElement.clientWidth ? [`${document.documentElement.scrollWidth} px wide`] : []
    const cut = [...document.querySelectorAll<HTMLElement>('body *')].filter((element) => {
      const { overflowX, overflowY, clipPath } = getComputedStyle(element)
      const hides = overflowX === 'hidden' || overflowY === 'hidden' || overflowX === 'clip' || overflowY === 'clip'
      return hides && clipPath === 'none' && !element.closest('svg') && element.checkVisibility() && (element.scrollWidth > element.clientWidth + 1 || element.scrollHeight > element.clientHeight + 1)
    })
    return [...wide, ...cut.map((element) => `cut off: ${element.outerHTML.slice(0, 120)}`)]
  })

/** Text as widely spaced as readers may set it (WCAG 2.2, 1.4.12). */
const SPACED = '* { line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important } p { margin-bottom: 2em !important }'

/** What scrolls sideways or is cut off on a page, as it is and with its text spaced. */
export async function lostOn(page: Page, url: string): Promise<string[]> {
  await page.goto(url)
  await ready(page)
  const plain = await lost(page)
  await page.addStyleTag({ content: SPACED })
  return [...plain, ...(await lost(page)).map((what) => `with text spaced: ${what}`)]
}

/** Controls that a thumb on the floor would miss: of those that are to be seen, which are narrower or lower than 44 px. */
export const tooSmall = (page: Page, selector: string): Promise<{ readonly seen: number; readonly small: string[] }> =>
  page.locator(selector).evaluateAll((elements) => {
    const shown = elements.filter((element) => element.checkVisibility({ visibilityProperty: true }) && !element.closest('.log-chip input'))
    return {
      seen: shown.length,
      small: shown.flatMap((element) => {
        const { width, height } = element.getBoundingClientRect()
        return width >= 44 && height >= 44 ? [] : [`${element.outerHTML.slice(0, 90)} ${width} × ${height}`]
      }),
    }
  })

/** A telephone on one bar of signal: Lighthouse's slow 4G (150 ms, 1.6 Mbit/s, 750 kbit/s) and a processor four times as slow. */
const SLOW = { offline: false, latency: 150, downloadThroughput: (1.6 * 1024 * 1024) / 8, uploadThroughput: (750 * 1024) / 8 }
const SLOWER = 4

type Shifts = { moved: number; what: string[] }

/** What moves by itself while each address comes in on a slow telephone, once the device keeps what it is given. */
export async function moved(browser: Browser, { watched, root }: ServedDemo, { width, height, addresses, kept = {} }: { readonly width: number; readonly height: number; readonly addresses: readonly string[]; readonly kept?: Readonly<Record<string, string>> }): Promise<string[]> {
  const context = await browser.newContext({ viewport: { width, height }, serviceWorkers: 'block' })
  await keep(context, kept)
  const { page } = await watched(context)
  const debug = await context.newCDPSession(page)
  await debug.send('Network.emulateNetworkConditions', SLOW)
  await debug.send('Emulation.setCPUThrottlingRate', { rate: SLOWER })
  await page.addInitScript(() => {
    const seen: Shifts = { moved: 0, what: [] }
    Object.assign(globalThis, { seen })
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as unknown as { value: number; sources: { node?: Element }[] }[]) {
        seen.moved += entry.value
        seen.what.push(...entry.sources.map(({ node }) => `${node?.nodeName}.${node?.getAttribute?.('class')}#${node?.id}`))
      }
    }).observe({ type: 'layout-shift', buffered: true })
  })
  const found: string[] = []
  for (const address of addresses) {
    await page.goto(root + address)
    await page.waitForLoadState('networkidle')
    const shifts = await page.evaluate(() => (globalThis as unknown as { seen: Shifts }).seen)
    if (shifts.moved > 0) found.push(`${address} at ${width} px by ${shifts.moved.toFixed(3)}: ${shifts.what.join(', ')}`)
  }
  await context.close()
  return found
}

type Walk = { readonly reached: number; readonly wrong: string[]; readonly missed: string[] }

/** Presses a key through a whole page, and says what was reached, and what of it lay hidden, out of sight or without a mark of focus. */
export async function walked(page: Page, key: 'Tab' | 'Shift+Tab'): Promise<Walk> {
  await page.evaluate(() => document.querySelectorAll('[data-reached]').forEach((element) => element.removeAttribute('data-reached')))
  const wrong: string[] = []
  let reached = 0
  for (; reached < 600; reached += 1) {
    await page.keyboard.press(key)
    const at = await page.evaluate(() => {
      const element = document.activeElement
      if (!(element instanceof Element) || element === document.body) return undefined
      if (element.getAttribute('data-reached') === 'now') return { says: '', seen: true, marked: true } // a day has a stop for each of its parts
      if (element.hasAttribute('data-reached')) return undefined
      document.querySelector('[data-reached=now]')?.setAttribute('data-reached', 'before')
      element.setAttribute('data-reached', 'now')
      const box = [...element.getClientRects()].find(({ width, height }) => width > 0 && height > 0) ?? element.getBoundingClientRect()
      const [x, y] = [Math.min(Math.max(box.left + Math.min(box.width / 2, 20), 0), innerWidth - 1), Math.min(Math.max(box.top + Math.min(box.height / 2, 12), 0), innerHeight - 1)]
      const top = document.elementFromPoint(x, y)
      const seen = top !== null && (element.contains(top) || top.contains(element) || (element instanceof HTMLInputElement && [...(element.labels ?? [])].some((label) => label.contains(top))))
      const { outlineStyle, outlineWidth } = getComputedStyle(element)
      const marked = (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2) || [...(element.parentElement?.children ?? [])].some((beside) => getComputedStyle(beside).outlineStyle !== 'none')
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
