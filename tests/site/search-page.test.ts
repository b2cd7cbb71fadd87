import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { parse, type DefaultTreeAdapterTypes } from 'parse5'
import type { Page } from 'playwright-core'
import { afterEach, beforeAll, test, vi } from 'vitest'
import { builtDemo } from './demo.ts'
import { servedDemo, type ServedDemo } from './served-demo.ts'

let site: string
let demo: ServedDemo
beforeAll(async () => {
  site = await builtDemo()
  demo = await servedDemo()
})
afterEach(() => void vi.unstubAllGlobals())

type Counts = Record<string, Record<string, number>>
type Index = { init(): Promise<void>; filters(): Promise<Counts>; search(words: string | null, options: object): Promise<{ results: unknown[] }> }

/** What the index itself counts, all filters loaded, and how many pages it finds by one of them. */
async function index(under: string, language: string): Promise<Index> {
  const place = path.join(site, under, 'pagefind/')
  vi.stubGlobal('fetch', async (address: string) => new Response(readFileSync(String(address).replace(/\?.*/, ''))))
  const { createInstance } = (await import(pathToFileURL(path.join(place, 'pagefind.js')).href)) as { createInstance(options: object): Index }
  const made = createInstance({ basePath: place, noWorker: true, language })
  await made.init()
  return made
}

type Element = DefaultTreeAdapterTypes.Element
const elements = (node: DefaultTreeAdapterTypes.ParentNode, name: string): Element[] => node.childNodes.flatMap((child) => ('tagName' in child ? [...(child.tagName === name ? [child] : []), ...elements(child, name)] : []))
const attribute = (of: Element, wanted: string): string => of.attrs.find(({ name }) => name === wanted)?.value ?? ''
const textOf = (node: DefaultTreeAdapterTypes.ParentNode): string => node.childNodes.map((child) => ('value' in child ? child.value : 'childNodes' in child ? textOf(child) : '')).join('')

/** The lists of a search page, as its options say them: the words of each without its number, and the number. */
const lists = (under: string): Counts =>
  Object.fromEntries(elements(parse(readFileSync(path.join(site, under, 'search/index.html'), 'utf8')), 'select').map((select) => [
    attribute(select, 'name'),
    Object.fromEntries(elements(select, 'option').slice(1).map((option) => {
      const [, words, pages] = /^(.*) \((\d+)\)$/.exec(textOf(option)) ?? []
      assert.equal(attribute(option, 'value'), words)
      return [words ?? '', Number(pages)]
    })),
  ]))

for (const { under, language } of [{ under: '', language: 'en' }, { under: 'es/', language: 'es' }]) {
  test(`the lists of the search page say what the index counts, in ${language}`, { timeout: 60_000 }, async () => {
    const found = await index(under, language)
    const counts = await found.filters()
    assert.ok(Object.values(counts).every((of) => Object.keys(of).length > 2))
    assert.deepEqual(lists(under), counts)
    assert.deepEqual(Object.keys(lists(under)), ['movement', 'equipment', 'demand'])
    for (const [kind, values] of Object.entries(counts)) {
      for (const [value, pages] of Object.entries(values)) assert.equal((await found.search(null, { filters: { [kind]: value } })).results.length, pages, value)
    }
  })
}

test('what is to be chosen is said in the language of the page, in its order', () => {
  const page = readFileSync(path.join(site, 'es/search/index.html'), 'utf8')
  assert.match(page, /<label>movimiento<select name="movement" autocomplete="off"><option value="">cualquiera<\/option>/)
  const movements = Object.keys(lists('es/')['movement'] ?? {})
  assert.deepEqual(movements, movements.toSorted(new Intl.Collator('es').compare))
  assert.notDeepEqual(movements, Object.keys(lists('')['movement'] ?? {}))
})

/** A page with every request it makes, by its address below the root and in the order they were sent, and all it says to the console. */
async function watched(address: string): Promise<{ page: Page; asked: string[]; console: string[] }> {
  const context = await demo.browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' })
  const page = await context.newPage()
  const [asked, console]: [string[], string[]] = [[], []]
  page.on('request', (request) => asked.push(request.url().slice(demo.root.length)))
  page.on('console', (message) => ['error', 'warning'].includes(message.type()) && !message.text().includes('Service Worker') && console.push(message.text()))
  page.on('pageerror', ({ message }) => console.push(message))
  await page.goto(demo.root + address)
  return { page, asked, console }
}

for (const address of ['/search/?q=neck', '/es/search/?q=cuello', '/search/']) {
  test(`${address} asks ahead for what the search begins with, once, and uses all of it`, { timeout: 60_000 }, async () => {
    const { page, asked, console } = await watched(address)
    if (address.includes('q=')) await page.locator('#search-results li').first().waitFor()
    await page.waitForLoadState('networkidle')
    await page.waitForTimeout(4500) // a browser warns three seconds after the page has loaded
    const ahead = await page.evaluate(() => [...document.querySelectorAll<HTMLLinkElement>('main link')].map(({ rel, href }) => `${rel} ${href}`))
    assert.deepEqual(ahead.map((each) => each.replace(demo.root, '').replace(/(?<==|-|_)(?:[0-9a-f]{8,10}|[0-9A-Z]{8})\b/, 'NAME')), [
      `modulepreload ${address.split('search')[0]}assets/search-NAME.js`,
      `modulepreload ${address.split('search')[0]}assets/chunk-NAME.js`,
      `modulepreload ${address.split('search')[0]}pagefind/pagefind.js`,
      `preload ${address.split('search')[0]}pagefind/wasm.${address.startsWith('/es') ? 'es' : 'en'}.pagefind`,
      `preload ${address.split('search')[0]}pagefind/pagefind-entry.json?ts=NAME`,
      `preload ${address.split('search')[0]}pagefind/pagefind.${address.startsWith('/es') ? 'es' : 'en'}_NAME.pf_meta`,
    ])
    for (const each of ahead) assert.equal(asked.filter((one) => each.endsWith(demo.root + one)).length, 1, each)
    const opening = ahead.map((each) => each.slice(each.indexOf(demo.root) + demo.root.length))
    assert.deepEqual(asked.filter((one) => /pagefind\/[^/]*$/.test(one) && !opening.includes(one)), [])
    assert.deepEqual(console, [])
    await page.context().close()
  })
}

test('the files that choices are found by are asked for when somebody chooses, not before', { timeout: 60_000 }, async () => {
  const { page, asked, console } = await watched('/search/?q=neck')
  await page.locator('#search-results li').first().waitFor()
  await page.waitForLoadState('networkidle')
  assert.deepEqual(asked.filter((one) => one.includes('/filter/')), [])
  const all = Number(/\d+ found|of (\d+)/.exec(await page.locator('#search-says').innerText())?.[1] ?? 0)
  await page.selectOption('select[name="demand"]', 'balance')
  await page.waitForFunction(() => document.querySelector('#search-says')?.textContent?.includes('balance'))
  assert.equal(asked.filter((one) => one.includes('/filter/')).length, 1)
  assert.match(await page.locator('#search-says').innerText(), /^\d+ found for “neck”, balance\.$|^The first 20 of \d+ found for “neck”, balance\.$/)
  assert.equal(new URL(page.url()).search, '?q=neck&demand=balance')
  await page.selectOption('select[name="demand"]', '')
  await page.waitForFunction((wanted) => document.querySelector('#search-says')?.textContent?.includes(` ${wanted} `), String(all))
  assert.equal(new URL(page.url()).search, '?q=neck')
  assert.deepEqual(console, [])
  await page.context().close()
})

test('a choice in the address is made in its list, holds without words, and each result begins as its page does', { timeout: 60_000 }, async () => {
  const { page, console } = await watched('/search/?equipment=mat')
  await page.locator('#search-results li').first().waitFor()
  assert.equal(await page.inputValue('select[name="equipment"]'), 'mat')
  assert.match(await page.locator('#search-says').innerText(), new RegExp(`of ${lists('')['equipment']?.['mat']} found for mat\\.$`))
  const begins = await page.evaluate(() => [...document.querySelectorAll('#search-results li')].map((line) => [line.querySelector('a')?.textContent ?? '', line.querySelector('p:last-child')?.textContent ?? ''] as const))
  for (const [title, words] of begins) assert.ok(!words.startsWith(title) && / · rung \d+ of \d+|^[a-z ]+\. [A-Z]/.test(words), words)
  assert.deepEqual(console, [])
  await page.context().close()
})

test('what is written over the line while the index is still coming is answered when it is there', { timeout: 60_000 }, async () => {
  const context = await demo.browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' })
  const page = await context.newPage()
  let free: (() => void) | undefined
  const held = new Promise<void>((resolve) => (free = resolve))
  await page.route('**/wasm.en.pagefind', async (route) => {
    await held
    await route.continue()
  })
  await page.goto(`${demo.root}/search/?q=neck`)
  await page.waitForFunction(() => document.querySelector('#search-says')?.textContent === 'Searching …')
  await page.fill('#q', 'hips')
  await page.press('#q', 'Enter')
  await page.selectOption('select[name="equipment"]', 'mat')
  assert.equal(new URL(page.url()).search, '?q=hips&equipment=mat')
  free?.()
  await page.locator('#search-results li').first().waitFor()
  assert.match(await page.locator('#search-says').innerText(), /found for “hips”, mat\.$/)
  await context.close()
})

test('without an index the page says so, whatever was looked for', { timeout: 60_000 }, async () => {
  const context = await demo.browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' })
  const page = await context.newPage()
  await page.route('**/pagefind/**', (route) => route.abort())
  await page.goto(`${demo.root}/search/?q=neck`)
  await page.waitForFunction(() => document.querySelector('#search-says')?.textContent === 'The search index could not be loaded. Look on the first page.')
  await context.close()
})
