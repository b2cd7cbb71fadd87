import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core'
import { afterAll } from 'vitest'
import { filesBelow } from '../../src/site/manifest.ts'
import { browserPath } from '../browser-path.ts'
import { builtDemo } from './demo.ts'
import { hosted } from './hosted.ts'

/** A page, and every console error, page error, failed request and broken policy since it was opened. */
export type Opened = { readonly page: Page; readonly trouble: string[] }

/** The demo handbook as a host would serve it, and a browser to read it with. */
export type ServedDemo = {
  readonly root: string
  readonly browser: Browser
  /** The files by name, as they were built. */
  readonly files: ReadonlyMap<string, Buffer>
  /** The address of every page, in a fixed order. */
  readonly addresses: readonly string[]
  opened(address: string, options?: Parameters<Browser['newContext']>[0]): Promise<Opened>
  /** A page of a context that is there, with what goes wrong on it. */
  watched(context: BrowserContext): Promise<Opened>
}

/** One address of every kind of page there is. */
export const KINDS = ['/', '/wet-exit/', '/press-up/', '/press-up/floor/', '/safety/', '/glossary/', '/sources/', '/changes/', '/checks/', '/equipment/', '/movement-map/', '/search/?q=neck', '/find-your-rung/', '/my-ladders/', '/cards/press-up/', '/404.html'] as const

/** The same in the other language of the demo. */
export const SPANISH_KINDS = KINDS.map((address) => `/es${address}`)

export const ARGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync']

/** Builds the demo, serves it with the headers that the build wrote for its hosts, and opens a browser; all of it gone when the test file ends. */
export const servedDemo = async (): Promise<ServedDemo> => servedFrom(await builtDemo(), await openedBrowser())

/** A browser to read handbooks with, closed when the test file ends. */
export async function openedBrowser(): Promise<Browser> {
  const executablePath = browserPath()
  assert.ok(executablePath, 'a Chromium is needed: install one or set CHROMIUM_PATH')
  const browser = await chromium.launch({ executablePath, args: ARGS })
  afterAll(() => browser.close())
  return browser
}

/** The files of a built handbook by name. */
export const filesOf = async (site: string): Promise<ReadonlyMap<string, Buffer>> => new Map((await filesBelow(site)).map((file) => [file, readFileSync(path.join(site, file))]))

/** Serves a handbook that was built, below a folder of its host where one is given. */
export async function servedFrom(site: string, browser: Browser, below = ''): Promise<ServedDemo> {
  const files = await filesOf(site)
  const { root, close } = await hosted(files, below)
  afterAll(close)
  return {
    root,
    browser,
    files,
    addresses: [...files.keys()].filter((name) => name.endsWith('.html')).map((name) => `/${name.replace(/(^|\/)index\.html$/, '$1')}`).toSorted(),
    watched,
    async opened(address, options = {}) {
      const opened = await watched(await browser.newContext({ viewport: { width: 390, height: 844 }, ...options }))
      await opened.page.goto(root + address)
      return opened
    },
  }
}

/** What a request fails with whose page was left before its answer came. */
const LEFT = 'net::ERR_ABORTED'

async function watched(context: BrowserContext): Promise<Opened> {
  const page = await context.newPage()
  const trouble: string[] = []
  await page.addInitScript(() => document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI, sample }) => console.error(`violated: ${effectiveDirective} by ${blockedURI} ${sample}`)))
  page.on('console', (message) => message.type() === 'error' && trouble.push(`${page.url()}: ${message.text()}`))
  page.on('pageerror', (error) => trouble.push(`${page.url()}: ${error.message}`))
  page.on('requestfailed', (request) => request.failure()?.errorText !== LEFT && trouble.push(`failed: ${request.url()}`))
  return { page, trouble }
}

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

/** What axe finds on a page at WCAG 2.2 AA, but for the rules that do not apply. It is lent to the page through the debugger, which the page's policy does not reach. */
export async function violations(page: Page, without: readonly string[] = []): Promise<string[]> {
  await page.evaluate(AXE)
  return page.evaluate(async ([tags, rules]) => {
    const axe = (globalThis as unknown as { axe: { run(options: unknown): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }).axe
    const { violations: found } = await axe.run({ runOnly: { type: 'tag', values: tags }, rules: Object.fromEntries(rules.map((rule) => [rule, { enabled: false }])) })
    return found.map(({ id, nodes }) => `${id}: ${nodes.slice(0, 3).map(({ html }) => html.slice(0, 160)).join(' | ')}`)
  }, [WCAG, without] as const)
}
