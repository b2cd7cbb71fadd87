import assert from 'node:assert/strict'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import type { Server } from 'node:http'
import path from 'node:path'
import { chromium, type Browser, type Page } from 'playwright-core'
import { afterAll, beforeAll, test } from 'vitest'
import { filesBelow } from '../../src/site/manifest.ts'
import { previewServer } from '../../src/site/preview-server.ts'
import { browserPath } from '../browser-path.ts'
import { REPOSITORY, run, scratch } from './demo.ts'

/** A small handbook published twice, and once more with the wish not to be kept, read on a device that loses its signal. */
const folder = await scratch()
const builds = new Map<string, ReadonlyMap<string, Buffer>>()
let published = 'first'
let browser: Browser
let server: Server
let root: string

async function built(name: string, edition: string, title: string, more = ''): Promise<void> {
  const place = path.join(folder, name)
  mkdirSync(path.join(place, 'ladders'), { recursive: true })
  writeFileSync(path.join(place, 'handbook.yaml'), `title: ${title}\norganisation: Tarnwick Gym Club\nedition: "${edition}"\ncontact: nobody yet\n${more}`)
  writeFileSync(path.join(place, 'ladders/landing.md'), readFileSync(path.join(REPOSITORY, 'ladders/landing.md'), 'utf8').replaceAll(/\[([^\]]*)\]\([^)]*\)/g, '$1'))
  const { code, out, note } = await run(place, 'build')
  assert.equal(code, 0, out + note)
  builds.set(name, new Map((await filesBelow(path.join(place, '_site'))).map((file) => [file, readFileSync(path.join(place, '_site', file))])))
}

beforeAll(async () => {
  await built('first', '1', 'First handbook')
  await built('second', '2', 'Second handbook')
  await built('off', '3', 'Third handbook', 'offline: false\n')
  const served = await previewServer(() => builds.get(published) ?? new Map(), 0)
  server = served.server
  root = `http://127.0.0.1:${served.port}`
  const executablePath = browserPath()
  assert.ok(executablePath)
  browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'] })
})

afterAll(async () => {
  await browser?.close()
  server?.close()
})

const device = async (): Promise<{ page: Page; offline: (is: boolean) => Promise<void> }> => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } })
  return { page: await context.newPage(), offline: (is) => context.setOffline(is) }
}

const kept = (page: Page, file: string): Promise<boolean> => page.evaluate(async (name) => (await caches.match(new URL(name, document.baseURI))) !== undefined, `${root}/${file}`)

async function until(page: Page, file: string): Promise<void> {
  for (let tries = 0; tries < 100; tries += 1) {
    if (await kept(page, file)) return
    await page.waitForTimeout(100)
  }
  assert.fail(`${file} was not kept`)
}

/** Waits until neither a worker nor anything it kept is there. Asked each time anew: a wait for a function takes its promise for an answer. */
async function gone(page: Page): Promise<void> {
  for (let tries = 0; tries < 100; tries += 1) {
    if (await page.evaluate(async () => (await caches.keys()).length + (await navigator.serviceWorker.getRegistrations()).length === 0)) return
    await page.waitForTimeout(100)
  }
  assert.fail('the worker, or what it kept, was not taken away')
}

test('a ladder that was opened is read without a signal, the rest says that it is not there', async () => {
  published = 'first'
  const { page, offline } = await device()
  await page.goto(`${root}/landing/`)
  await page.waitForSelector('#offline button')
  await until(page, 'landing/drop-20/index.html')
  await offline(true)
  await page.goto(`${root}/landing/drop-20/`)
  assert.match(await page.locator('h1').innerText(), /20 cm/)
  await page.goto(`${root}/checks/`)
  assert.match(await page.locator('body').innerText(), /This page is not here/)
  await page.context().close()
})

test('the whole handbook is kept when the reader asks for it', async () => {
  published = 'first'
  const { page, offline } = await device()
  await page.goto(`${root}/`)
  await page.getByRole('button', { name: 'Keep the whole handbook' }).click()
  await page.getByText('The whole handbook is kept on this device.').waitFor()
  await offline(true)
  await page.goto(`${root}/checks/`)
  assert.match(await page.locator('h1').innerText(), /What is checked/)
  await page.context().close()
})

test('a new edition is offered and not forced; taken, it replaces the old one whole', async () => {
  published = 'first'
  const { page, offline } = await device()
  await page.goto(`${root}/landing/`)
  await until(page, 'landing/drop-20/index.html')
  published = 'second'
  await page.goto(`${root}/landing/`)
  await page.getByText('a newer state of the handbook is published, edition 2').waitFor()
  assert.match(await page.locator('.whose').innerText(), /First handbook/)
  await page.getByRole('button', { name: 'Show the newer one' }).click()
  await page.locator('.whose', { hasText: 'Second handbook' }).waitFor()
  await until(page, 'landing/drop-20/index.html')
  await offline(true)
  await page.goto(`${root}/landing/drop-20/`)
  assert.match(await page.locator('.whose').innerText(), /Second handbook/)
  assert.equal((await page.evaluate(() => caches.keys())).length, 1)
  await page.context().close()
})

test('a handbook that is published with offline: false takes the worker and what it kept away', async () => {
  published = 'first'
  const { page } = await device()
  await page.goto(`${root}/landing/`)
  await until(page, 'landing/drop-20/index.html')
  published = 'off'
  await page.goto(`${root}/landing/`)
  await gone(page)
  await page.goto(`${root}/landing/`)
  assert.match(await page.locator('.whose').innerText(), /Third handbook/)
  await page.context().close()
})
