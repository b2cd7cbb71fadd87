import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { createRequire } from 'node:module'
import type { AddressInfo } from 'node:net'
import path from 'node:path'
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core'
import { afterAll } from 'vitest'
import { TYPES } from '../../src/page/served.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { browserPath } from '../browser-path.ts'
import { builtDemo } from './demo.ts'

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

export const ARGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync']

/** Builds the demo, serves it with the headers that the build wrote for its hosts, and opens a browser; all of it gone when the test file ends. */
export async function servedDemo(): Promise<ServedDemo> {
  const site = await builtDemo()
  const files = new Map((await filesBelow(site)).map((file) => [file, readFileSync(path.join(site, file))]))
  const root = await hosted(files)
  const executablePath = browserPath()
  assert.ok(executablePath, 'a Chromium is needed: install one or set CHROMIUM_PATH')
  const browser = await chromium.launch({ executablePath, args: ARGS })
  afterAll(() => browser.close())
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

/** What the header file says of every file. */
const headersOf = (text: string): Record<string, string> => Object.fromEntries((text.split('\n\n')[0] ?? '').split('\n').slice(1).map((line) => [line.slice(0, line.indexOf(':')).trim(), line.slice(line.indexOf(':') + 1).trim()]))

/** Serves files by name until the test file ends. */
async function hosted(files: ReadonlyMap<string, Buffer>): Promise<string> {
  const always = headersOf(String(files.get('_headers')))
  assert.ok(always['Content-Security-Policy'], 'the header file holds the policy')
  const server = createServer(({ url = '/' }, response) => {
    const [address = '/'] = url.split('?')
    const name = address.endsWith('/') ? `${address.slice(1)}index.html` : address.slice(1)
    const bytes = files.get(name)
    response.writeHead(bytes ? 200 : 404, { ...always, 'content-type': TYPES[bytes ? (name.split('.').at(-1) ?? '') : 'html'] ?? 'application/octet-stream' })
    response.end(bytes ?? files.get('404.html'))
  })
  await new Promise<void>((resolve) => void server.listen(0, '127.0.0.1', resolve))
  afterAll(() => {
    server.close()
    server.closeAllConnections()
  })
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`
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
