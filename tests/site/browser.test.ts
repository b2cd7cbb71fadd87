import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import type { Server } from 'node:http'
import { chromium, type Browser, type Page } from 'playwright-core'
import { afterAll, beforeAll, test } from 'vitest'
import { filesBelow } from '../../src/site/manifest.ts'
import { previewServer } from '../../src/site/preview-server.ts'
import { browserPath } from '../browser-path.ts'
import { builtDemo } from './demo.ts'

/** The demo handbook in a real browser, served as it was built. */
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

/** A page on which every console error, failed request and policy violation is kept. */
async function opened(address: string, options: Parameters<Browser['newContext']>[0] = {}): Promise<{ page: Page; trouble: string[] }> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, ...options })
  const page = await context.newPage()
  const trouble: string[] = []
  page.on('console', (message) => message.type() === 'error' && trouble.push(message.text()))
  page.on('pageerror', (error) => trouble.push(error.message))
  page.on('requestfailed', (request) => trouble.push(`failed: ${request.url()}`))
  await page.goto(root + address)
  return { page, trouble }
}

/** axe is lent to the page through the debugger, which its policy does not reach. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(AXE)
  return page.evaluate(async (tags) => {
    const axe = (globalThis as unknown as { axe: { run(options: unknown): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }).axe
    const { violations: found } = await axe.run({ runOnly: { type: 'tag', values: tags } })
    return found.map(({ id, nodes }) => `${id}: ${nodes.slice(0, 3).map(({ html }) => html.slice(0, 160)).join(' | ')}`)
  }, WCAG)
}

test('a coach searches a word of a cue, opens the rung, and nothing goes wrong on the way', async () => {
  const { page, trouble } = await opened('/')
  await page.fill('#q', 'screw your hands')
  await page.press('#q', 'Enter')
  await page.waitForSelector('#search-results li')
  assert.match(await page.locator('#search-says').innerText(), /found for “screw your hands”/)
  const link = page.locator('#search-results a', { hasText: '(Press-up)' }).first()
  await link.click()
  await page.waitForSelector('.big-load')
  assert.match(await page.locator('h1').innerText(), /Hands on/)
  assert.match(await page.locator('.cues').innerText(), /Screw your hands/i)
  assert.deepEqual(trouble, [])
  await page.context().close()
})

const KINDS = ['/', '/press-up/', '/press-up/floor/', '/row-straps/one-side/', '/landing/', '/wet-exit/', '/safety/', '/glossary/', '/how-to-read-a-ladder/', '/first-assessment-day/', '/sources/', '/checks/', '/search/?q=neck', '/404.html']

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing at WCAG 2.2 AA, ${colorScheme}`, async () => {
    for (const address of KINDS) {
      const { page } = await opened(address, { colorScheme })
      if (address.startsWith('/search')) await page.waitForSelector('#search-results li')
      assert.deepEqual(await violations(page), [], address)
      await page.context().close()
    }
  })
}

test('at 320 px nothing is wider than the screen but what scrolls by itself', async () => {
  for (const address of KINDS) {
    const { page } = await opened(address, { viewport: { width: 320, height: 700 } })
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 320, address)
    await page.context().close()
  }
})

test('without scripts every page still says what it says', async () => {
  const { page } = await opened('/press-up/floor/', { javaScriptEnabled: false })
  assert.match(await page.locator('.big-load').innerText(), /% of body weight/)
  const { page: search } = await opened('/search/', { javaScriptEnabled: false })
  assert.match(await search.locator('#search-says').innerText(), /Searching needs scripts/)
})
