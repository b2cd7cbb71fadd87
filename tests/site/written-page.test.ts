import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import type { Server } from 'node:http'
import path from 'node:path'
import { chromium, type Browser, type Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, test } from 'vitest'
import { filesBelow } from '../../src/site/manifest.ts'
import { previewServer } from '../../src/site/preview-server.ts'
import { browserPath } from '../browser-path.ts'
import { REPOSITORY, run, scratch } from './demo.ts'

/** A page and a rung that hold everything a coach may write, in a real browser. */
const folder = await scratch()
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
let browser: Browser
let server: Server
let root: string

const EVERYTHING = `---
title: Safety
order: 1
summary: Everything at once.
---
Far down there is a note.[^far] ${'Words to fill the screen. '.repeat(200)}

![Two stripes side by side](pictures/stripes.jpg "A photograph with a caption")

In a line ![a small mark](pictures/mark.svg) stands a drawing.

![A mark on a line](pictures/mark.svg "A drawing with a caption")

| order | ladder | begin at | look for first | and then |
|---|---|---|---|---|
| 1 | one | two | three words here | four |

| a | b |
|---|---|
| Handstandüberschlagsvorbereitungsübung | Donaudampfschifffahrtsgesellschaft |

Anchor
: What a strap hangs on.

\`\`\`mermaid When to go on
flowchart LR
a("Five reps") --> b{"Every form point held?"} -->|"yes"| c["The next rung of the ladder"] --> d["And the one after that"]
b -. no .-> e["The same rung again"]
\`\`\`

[^far]: The note, with a [link](rung:paddle-hold/land).
`

beforeAll(async () => {
  const put = async (name: string, bytes: Uint8Array | string): Promise<void> => {
    await mkdir(path.join(folder, 'club', path.dirname(name)), { recursive: true })
    await writeFile(path.join(folder, 'club', name), bytes)
  }
  const ladder = readFileSync(path.join(REPOSITORY, 'tests/check/pictures-have-text.good.md'), 'utf8').replaceAll(/!\[[^\]]*\]\([^)]*\)/g, '')
  await put('handbook.yaml', 'title: A club\norganisation: A club\nedition: "1"\ncontact: The club\n')
  await put('content/safety.md', EVERYTHING)
  await put('ladders/paddle-hold.md', ladder.replace('- Thumbs under.\n', '- Thumbs under.\n  - Nails to the water.\n').replace('### Set up\n', '### Set up\nOn dry land.[^a] Always.[^a]\n\n[^a]: Grass is best.\n\n').replace('## Hold the paddle on land {#land}\n', '## Hold the paddle on land {#land}\n\nFirst.[^1]\n\n[^1]: Before all else.\n'))
  await put('content/pictures/stripes.jpg', await sharp({ create: { width: 1600, height: 900, channels: 3, background: '#7a3b12' } }).jpeg().toBuffer())
  await put('content/pictures/mark.svg', '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 20"><path d="M0 10h100" fill="none" stroke="currentColor"/></svg>')
  const site = path.join(folder, 'site')
  const { code, out, note } = await run(path.join(folder, 'club'), 'build', '--no-cache', '--output', site)
  assert.equal(code, 0, out + note)
  const files = new Map(await Promise.all((await filesBelow(site)).map(async (file) => [file, await readFile(path.join(site, file))] as const)))
  const served = await previewServer(() => files, 0)
  server = served.server
  root = `http://127.0.0.1:${served.port}`
  const args = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync']
  browser = await chromium.launch({ executablePath: browserPath() ?? '', args })
})

afterAll(async () => {
  await browser?.close()
  server?.close()
})

async function opened(address: string, options: Parameters<Browser['newContext']>[0] = {}): Promise<{ page: Page; trouble: string[] }> {
  const page = await (await browser.newContext({ viewport: { width: 390, height: 844 }, ...options })).newPage()
  const trouble: string[] = []
  page.on('console', (message) => message.type() === 'error' && trouble.push(message.text()))
  page.on('requestfailed', (request) => trouble.push(`failed: ${request.url()}`))
  await page.goto(root + address)
  return { page, trouble }
}

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing in all a coach may write, ${colorScheme}`, async () => {
    for (const address of ['/safety/', '/paddle-hold/land/']) {
      const { page } = await opened(address, { colorScheme })
      await page.evaluate(AXE)
      const found = await page.evaluate(async (tags) => {
        const axe = (globalThis as unknown as { axe: { run(options: unknown): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }).axe
        return (await axe.run({ runOnly: { type: 'tag', values: tags } })).violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)
      }, WCAG)
      assert.deepEqual(found, [], address)
      await page.context().close()
    }
  })
}

test('on the narrowest phone only frames scroll, and the keyboard reaches and moves them', async () => {
  const { page } = await opened('/safety/', { viewport: { width: 320, height: 700 } })
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 320)
  const frames = page.locator('main .scroll')
  assert.equal(await frames.count(), 3)
  for (const frame of await frames.all()) {
    assert.ok(await frame.evaluate((element) => element.scrollWidth > element.clientWidth), await frame.evaluate((element) => element.outerHTML.slice(0, 100)))
    await frame.focus()
    await page.keyboard.press('ArrowRight')
    await page.waitForFunction((element) => (element?.scrollLeft ?? 0) > 0, await frame.elementHandle())
  }
  await page.context().close()
})

test('a picture keeps its room before it is there, comes as WebP in a width that suits, and nothing fails', async () => {
  const { page, trouble } = await opened('/safety/')
  const img = page.locator('figure.picture img')
  const before = await img.boundingBox()
  assert.ok(!(await img.evaluate((element: HTMLImageElement) => element.complete)), 'it lies below the screen and is not fetched yet')
  const arrived = page.waitForResponse((response) => response.url().includes('/pictures/'))
  await img.scrollIntoViewIfNeeded()
  const response = await arrived
  assert.match(response.url(), /\/pictures\/stripes-480-[0-9a-f]{10}\.webp$/)
  assert.equal(response.headers()['content-type'], 'image/webp')
  await page.waitForFunction(() => (document.querySelector('figure.picture img') as HTMLImageElement).naturalWidth > 0)
  const after = await img.boundingBox()
  assert.deepEqual([after?.width, after?.height], [before?.width, before?.height])
  assert.ok(Math.abs((after?.width ?? 0) / (after?.height ?? 1) - 16 / 9) < 0.02)
  assert.deepEqual(trouble, [])
  await page.context().close()
})

test('a mark leads to its note and the note back, on a page and twice on a rung', async () => {
  for (const [address, marks] of [['/safety/', 1], ['/paddle-hold/land/', 3]] as const) {
    const { page } = await opened(address, { javaScriptEnabled: false })
    assert.equal(await page.locator('main a.mark').count(), marks)
    for (const mark of await page.locator('main a.mark').all()) {
      const id = await mark.getAttribute('id')
      await mark.click()
      await page.locator(`li:target a.back[href="#${id}"]`).click()
      assert.equal(await page.locator('a.mark:target').getAttribute('id'), id)
    }
    await page.context().close()
  }
})
