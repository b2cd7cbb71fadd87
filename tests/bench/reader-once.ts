import { readFileSync, rmSync } from 'node:fs'
import { mkdtemp } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { chromium, type Browser, type CDPSession, type Page } from 'playwright-core'
import { filesBelow } from '../../src/site/manifest.ts'
import { browserPath } from '../browser-path.ts'
import { hosted } from '../site/hosted.ts'
import { builtShortAndLong, LONG_HEIGHTS_cm } from '../site/short-and-long.ts'

/**
 * What a reader waits for on a slow telephone: a ladder of forty rungs, a log of so many sessions, a processor four times as slow.
 *
 * Pages come over Lighthouse's slow 4G (150 ms to and fro, 1.6 Mbit/s down, 750 kbit/s up, GoogleChrome/lighthouse docs/throttling.md;
 * each request waits the 150 ms), but for what a service worker fetches, which begins after the answer of a search. LCP and shift are what the browser's own observers say. Blocking is what tasks of the page's thread
 * take beyond 50 ms after the first paint; of an answer the handler of the event and the longest task are given. All of these in time
 * of the processor, which other work on the machine does not lengthen. What waits for an answer asks over the debugger: the scripts
 * that playwright would put into the page for it are tasks as long as the page's own. Only the handbook's pages count: a browser
 * draws one of its own beside them.
 */
const sessions = Number(process.argv[2])
const SLOW_4G = { offline: false, latency: 150, downloadThroughput: (1.6 * 1024 * 1024) / 8, uploadThroughput: (750 * 1024) / 8 }
const SLOWER = 4
const TASK_ms = 50
const ARGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync']

const rungOf = (index: number): string => `at-${LONG_HEIGHTS_cm[Math.floor((index * LONG_HEIGHTS_cm.length) / sessions)]}`
const dayOf = (index: number): string => new Date(Date.UTC(2010, 0, 1) + index * 86_400_000).toISOString().slice(0, 10)
const log = JSON.stringify({
  log: 'my-ladders',
  version: 1,
  athletes: [{ name: 'Isolde Farrow', sessions: Array.from({ length: sessions }, (_, index) => ({ ladder: 'long', rung: rungOf(index), on: dayOf(index), unit: 'reps', amounts: [12, 12, 10 + (index % 4)], sets_out_of_form: Number(index % 7 === 0), pain_during: index % 3, note: 'Felt light on the second set', edition: '1' })) }],
})
const body = JSON.stringify({ version: 1, mass: { unit: 'kg', value: 70 }, height: { unit: 'cm', value: 175 } })

type Traced = { readonly name: string; readonly ph: string; readonly pid: number; readonly tid: number; readonly ts: number; readonly tdur?: number; readonly args: { readonly data?: Framed & { readonly type?: string; readonly frames?: readonly Framed[] }; readonly name?: string } }
type Framed = { readonly url?: string; readonly processId?: number }

/** What a page's own thread did while something went on. Units ms, of the processor. */
type Worked = { readonly handler_ms: number; readonly longest_ms: number; readonly beyond_ms: number }

async function worked(browser: Browser, page: Page, root: string, act: () => Promise<unknown>): Promise<Worked> {
  await browser.startTracing(page, { categories: ['disabled-by-default-devtools.timeline', 'devtools.timeline', 'loading', '__metadata'] })
  await act()
  const { traceEvents } = JSON.parse(String(await browser.stopTracing())) as { traceEvents: Traced[] }
  const frames = traceEvents.flatMap(({ name, args }) => [...(args.data?.frames ?? []), ...(name === 'FrameCommittedInBrowser' && args.data ? [args.data] : [])])
  const ours = new Set(frames.filter(({ url }) => url?.startsWith(root)).map(({ processId }) => processId))
  const mains = new Set(traceEvents.filter(({ name, pid, args }) => name === 'thread_name' && args.name === 'CrRendererMain' && ours.has(pid)).map(({ pid, tid }) => `${pid} ${tid}`))
  const lasting = (wanted: string): Traced[] => traceEvents.filter(({ name, ph, pid, tid }) => name === wanted && ph === 'X' && mains.has(`${pid} ${tid}`))
  const ms = ({ tdur = 0 }: Traced): number => tdur / 1000
  const painted = Math.max(0, ...traceEvents.filter(({ name, pid, tid }) => name === 'firstContentfulPaint' && mains.has(`${pid} ${tid}`)).map(({ ts }) => ts))
  const tasks = lasting('RunTask').filter(({ ts }) => ts >= painted).map(ms)
  return {
    handler_ms: Math.max(0, ...lasting('EventDispatch').filter(({ args }) => ['click', 'change', 'submit', 'input'].includes(args.data?.type ?? '')).map(ms)),
    longest_ms: Math.max(0, ...tasks),
    beyond_ms: tasks.reduce((sum, each) => sum + Math.max(0, each - TASK_ms), 0),
  }
}

type Seen = { lcp_ms: number; shift: number }

/** A page of its own, with a log and a body on the device, over the slow line, on the slow processor. */
async function opened(browser: Browser): Promise<{ page: Page; debug: CDPSession }> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } })
  await context.addInitScript(([kept, whose]) => {
    localStorage.setItem('rungbook:log', kept ?? '')
    localStorage.setItem('rungbook:body', whose ?? '')
    const seen: Seen = { lcp_ms: 0, shift: 0 }
    Object.assign(globalThis, { seen })
    new PerformanceObserver((list) => list.getEntries().forEach(({ startTime }) => (seen.lcp_ms = startTime))).observe({ type: 'largest-contentful-paint', buffered: true })
    new PerformanceObserver((list) => (list.getEntries() as unknown as { value: number }[]).forEach(({ value }) => (seen.shift += value))).observe({ type: 'layout-shift', buffered: true })
  }, [log, body])
  const page = await context.newPage()
  const debug = await context.newCDPSession(page)
  await debug.send('Network.emulateNetworkConditions', SLOW_4G)
  await debug.send('Emulation.setCPUThrottlingRate', { rate: SLOWER })
  return { page, debug }
}

/** Waits until something is on a page, without a script of ours in it. */
async function there(debug: CDPSession, selector: string): Promise<void> {
  const asked = { expression: `document.querySelector(${JSON.stringify(selector)}) !== null` }
  while ((await debug.send('Runtime.evaluate', asked)).result.value !== true) await new Promise((resolve) => setTimeout(resolve, 50))
}

type PageFigures = Seen & Worked & { readonly address: string }

async function visit(browser: Browser, root: string, address: string): Promise<PageFigures> {
  const { page, debug } = await opened(browser)
  const work = await worked(browser, page, root, async () => {
    await page.goto(root + address)
    if (address.includes('?q=')) await there(debug, '#search-results li')
    await page.waitForLoadState('networkidle')
    await page.waitForTimeout(500)
  })
  const seen = await page.evaluate(() => (globalThis as unknown as { seen: Seen }).seen)
  await page.context().close()
  return { address, ...seen, ...work }
}

/** Something a reader does on a page that is there, and where the answer shows. */
type Doing = { readonly says: string; readonly act: (page: Page) => Promise<unknown> }

const press = (selector: string) => (page: Page): Promise<void> => page.evaluate((wanted) => document.querySelector<HTMLElement>(wanted)?.click(), selector)
const choose = (selector: string, value: string) => (page: Page): Promise<void> =>
  page.evaluate(([wanted, chosen]) => {
    const select = document.querySelector<HTMLSelectElement>(wanted ?? '')
    if (select) select.value = chosen ?? ''
    select?.dispatchEvent(new Event('change', { bubbles: true }))
  }, [selector, value])

async function saveSession(page: Page): Promise<void> {
  await page.evaluate(() => {
    document.querySelectorAll<HTMLInputElement>('#log-amounts input').forEach((input) => (input.value = '12'))
    for (const name of ['log-out-of-form', 'log-pain']) document.querySelector<HTMLInputElement>(`#${name} input`)?.click()
    document.querySelector<HTMLElement>('#log-save')?.click()
  })
  await page.waitForFunction(() => document.activeElement?.id === 'log-decision')
}

const MIDDLE = `at-${LONG_HEIGHTS_cm[20]}`
const PAGES: readonly { readonly address: string; readonly ready: string; readonly doings: readonly Doing[] }[] = [
  { address: '/my-ladders/', ready: '#log-list li', doings: [
    { says: 'another rung of the log', act: choose('#log-rung', MIDDLE) },
    { says: 'a session saved', act: saveSession },
    { says: 'a session to be changed', act: press('#log-list button') },
    { says: 'left as it was', act: press('#log-leave') },
    { says: 'older sessions', act: press('#log-older button') },
  ] },
  { address: `/find-your-rung/?ladder=long&rung=${MIDDLE}&reps=12`, ready: '.placed', doings: [
    { says: 'find your rung', act: press('.find button') },
    { says: 'from another rung', act: choose('#find-rung', `at-${LONG_HEIGHTS_cm[5]}`) },
  ] },
  { address: '/long/', ready: '#own-figures table', doings: [{ says: 'own numbers of a ladder', act: press('#own-numbers form button') }] },
  { address: `/long/${MIDDLE}/`, ready: '.own-load', doings: [{ says: 'own numbers of a rung', act: press('#own-numbers form button') }] },
]

type Answer = Worked & { readonly says: string }

async function answers(browser: Browser, root: string): Promise<Answer[]> {
  const all: Answer[] = []
  for (const { address, ready, doings } of PAGES) {
    const { page, debug } = await opened(browser)
    const first = await worked(browser, page, root, async () => {
      await page.goto(root + address, { waitUntil: 'commit' })
      await there(debug, ready)
      await page.waitForTimeout(300)
    })
    await page.evaluate(() => document.querySelectorAll('details').forEach((fold) => (fold.open = true))) // as whoever presses a button in it has done
    await page.waitForTimeout(300)
    all.push({ says: `first use of ${address.split('?')[0]}`, ...first })
    for (const { says, act } of doings) {
      all.push({ says, ...(await worked(browser, page, root, async () => {
        await act(page)
        await page.waitForTimeout(400)
      })) })
    }
    await page.context().close()
  }
  return all
}

/** From the words sent off to the first result, where the handbook was searched before. Units ms. */
async function searched(browser: Browser, root: string, slower: number): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } })
  const page = await context.newPage()
  await page.goto(`${root}/search/?q=bench`)
  await page.waitForSelector('#search-results li')
  await (await context.newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate: slower })
  const times: number[] = []
  for (const words of ['neck', 'hips', 'surface', 'belt', 'arms']) {
    const took = await page.evaluate((typed) => new Promise<number>((resolve) => {
      const [input, form, list] = ['#q', '.search', '#search-results'].map((selector) => document.querySelector(selector))
      if (!(input instanceof HTMLInputElement && form instanceof HTMLFormElement && list)) return
      const began = performance.now()
      new MutationObserver((_, observer) => {
        if (!list.querySelector('li')) return
        observer.disconnect()
        resolve(performance.now() - began)
      }).observe(list, { childList: true })
      input.value = typed
      form.requestSubmit()
    }), words)
    times.push(took)
    await page.waitForTimeout(300)
  }
  await context.close()
  return times.toSorted((a, b) => a - b)[2] ?? NaN
}

const folder = await mkdtemp(path.join(os.tmpdir(), 'rungbook-bench-'))
const site = await builtShortAndLong(folder, 'https://handbook.example')
const { root, close } = await hosted(new Map((await filesBelow(site)).map((name) => [name, readFileSync(path.join(site, name))])))
rmSync(folder, { recursive: true, force: true })
const executablePath = browserPath()
if (executablePath === undefined) throw new Error('bug: a Chromium is needed: install one or set CHROMIUM_PATH')
const browser = await chromium.launch({ executablePath, args: ARGS })
const pages: PageFigures[] = []
for (const address of ['/', '/long/', `/long/${MIDDLE}/`, '/my-ladders/', '/search/?q=neck']) pages.push(await visit(browser, root, address))
const answered = await answers(browser, root)
const search_ms = [await searched(browser, root, 1), await searched(browser, root, SLOWER)]
await browser.close()
close()
process.stdout.write(JSON.stringify({ sessions, pages, answered, search_ms }))
