import assert from 'node:assert/strict'
import { beforeAll, test } from 'vitest'
import { KINDS, servedDemo, SPANISH_KINDS, type ServedDemo } from './served-demo.ts'

/** The policy of the pages, by meta and by header, kept by every page in a real browser. */
let demo: ServedDemo
beforeAll(async () => {
  demo = await servedDemo()
})

/** What a page may say that was left while it fetched a script. A script that cannot be had for another reason is told by its request as well. */
const LEFT_IMPORT = 'Failed to fetch dynamically imported module'

test('every page of the original is read without an error, and nothing on it breaks the policy', { timeout: 240_000 }, async () => {
  assert.ok(demo.addresses.length > 450, String(demo.addresses.length))
  const context = await demo.browser.newContext({ viewport: { width: 390, height: 844 } })
  const left = demo.addresses.filter((address) => !address.startsWith('/es/'))
  const read = async (): Promise<string[]> => {
    const { page, trouble } = await demo.watched(context)
    let stopped = 0
    page.on('requestfailed', (request) => request.resourceType() === 'script' && (stopped += 1))
    for (let address = left.pop(); address !== undefined; address = left.pop()) await page.goto(demo.root + address)
    await page.waitForLoadState('networkidle')
    return trouble.filter((each) => stopped === 0 || !each.includes(LEFT_IMPORT))
  }
  assert.deepEqual((await Promise.all([read(), read(), read()])).flat(), [])
  await context.close()
})

test('every kind of page runs all its scripts, the service worker among them, within the policy', { timeout: 120_000 }, async () => {
  for (const address of [...KINDS, ...SPANISH_KINDS]) {
    const { page, trouble } = await demo.opened(address)
    await page.locator('#offline button').waitFor()
    if (address.includes('/search/')) await page.locator('#search-results li').first().waitFor()
    await page.waitForLoadState('networkidle')
    assert.deepEqual(trouble, [], address)
    await page.context().close()
  }
})

test('no string becomes markup or a script, and no policy is made but the one for the service worker', { timeout: 60_000 }, async () => {
  const { page } = await demo.opened('/press-up/floor/')
  await page.evaluate(() => navigator.serviceWorker.ready)
  const refused = await page.evaluate(() => {
    type Policies = { trustedTypes: { createPolicy(name: string, rules: object): unknown } }
    const tries: Record<string, () => unknown> = {
      markup: () => (document.body.innerHTML = '<p>words</p>'),
      parsed: () => new DOMParser().parseFromString('<p>words</p>', 'text/html'),
      'a script': () => (document.createElement('script').src = '/assets/handbook.js'),
      'a worker': () => new Worker('/assets/handbook.js'),
      'another policy': () => (globalThis as unknown as Policies).trustedTypes.createPolicy('default', {}),
      'the same again': () => (globalThis as unknown as Policies).trustedTypes.createPolicy('service-worker', {}),
    }
    return Object.entries(tries).flatMap(([name, act]) => {
      try {
        act()
        return []
      } catch (error) {
        return error instanceof TypeError ? [name] : []
      }
    })
  })
  assert.deepEqual(refused, ['markup', 'parsed', 'a script', 'a worker', 'another policy', 'the same again'])
  await page.context().close()
})

test('the policy of the pages and that of the header are one, but for frames', () => {
  const header = /Content-Security-Policy: (.*)/.exec(String(demo.files.get('_headers')))?.[1]
  for (const address of [...KINDS, ...SPANISH_KINDS]) {
    const [path = ''] = address.split('?')
    const meta = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(String(demo.files.get(path.endsWith('/') ? `${path.slice(1)}index.html` : path.slice(1))))?.[1]
    assert.equal(header, `${meta?.replaceAll('&#39;', "'")}; frame-ancestors 'none'`, address)
    assert.match(header ?? '', /; require-trusted-types-for 'script'; trusted-types service-worker;/)
  }
})
