import assert from 'node:assert/strict'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import type { Server } from 'node:http'
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core'
import { afterAll, beforeAll, test } from 'vitest'
import { decide, type Session } from '../../src/measure/decide.ts'
import type { LadderData } from '../../src/page/data.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { previewServer } from '../../src/site/preview-server.ts'
import { browserPath } from '../browser-path.ts'
import { builtDemo, scratch } from './demo.ts'

/** The log in a real browser, on the demo handbook as it was built. */
const folder = await scratch()
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
const KEY = 'rungbook:log'
let browser: Browser
let server: Server
let root: string
let files: ReadonlyMap<string, Buffer>

beforeAll(async () => {
  const site = await builtDemo()
  files = new Map((await filesBelow(site)).map((file) => [file, readFileSync(path.join(site, file))]))
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

/** A ladder as the handbook under test serves it. */
const served = (ladder: string): LadderData => JSON.parse(String(files.get(`data/ladders/${ladder}.json`))) as LadderData

/** Every request the page makes and everything that goes wrong on it. */
type Watched = { readonly page: Page; readonly trouble: string[]; readonly requests: string[] }

async function watched(context: BrowserContext, address: string): Promise<Watched> {
  const page = await context.newPage()
  const [trouble, requests]: [string[], string[]] = [[], []]
  page.on('console', (message) => message.type() === 'error' && trouble.push(message.text()))
  page.on('pageerror', (error) => trouble.push(error.message))
  page.on('request', (request) => requests.push(`${request.method()} ${request.url()} ${JSON.stringify(request.headers())} ${request.postData() ?? ''}`))
  await page.goto(root + address)
  await page.waitForSelector('#my-ladders:not([hidden])')
  return { page, trouble, requests }
}

/** The page with nothing kept, or with what `kept` says before any script runs. */
async function opened(address = '/my-ladders/?ladder=press-up&rung=bar-95', { kept, options = {} }: { readonly kept?: Readonly<Record<string, string>>; readonly options?: Parameters<Browser['newContext']>[0] } = {}): Promise<Watched & { readonly context: BrowserContext }> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, ...options })
  if (kept) await context.addInitScript((each) => Object.entries(each).forEach(([name, text]) => localStorage.getItem(name) === null && localStorage.getItem('seeded') === null && localStorage.setItem(name, text)), kept)
  if (kept) await context.addInitScript(() => localStorage.setItem('seeded', 'yes'))
  return { ...(await watched(context, address)), context }
}

async function addAthlete(page: Page, name: string): Promise<void> {
  if (!(await page.locator('#log-name').isVisible())) await page.click('#log-new summary')
  await page.fill('#log-name', name)
  await page.press('#log-name', 'Enter')
  await page.waitForFunction((wanted) => document.querySelector<HTMLSelectElement>('#log-athlete')?.value === wanted, name)
}

type Typed = { readonly on: string; readonly amounts: readonly number[]; readonly lost?: number; readonly pain?: number; readonly morning?: number; readonly note?: string }

/** Types a session and saves it; waits until its decision has the focus. */
async function log(page: Page, { on, amounts, lost = 0, pain = 0, morning, note }: Typed): Promise<string> {
  await page.waitForSelector('#log-amounts input', { state: 'visible' })
  if (!(await page.locator('#log-on').isVisible())) await page.click('#log-besides summary')
  for (const [index, amount] of amounts.entries()) await page.locator('#log-amounts input').nth(index).fill(String(amount))
  await page.locator('#log-out-of-form label').nth(lost).click()
  await page.locator('#log-pain label').nth(pain).click()
  await page.fill('#log-on', on)
  if (morning !== undefined) await page.selectOption('#log-morning', String(morning))
  if (note !== undefined) await page.fill('#log-note', note)
  await page.click('#log-save')
  await page.waitForFunction((day) => document.activeElement?.id === 'log-decision' && document.querySelector('#log-decided')?.textContent?.includes(day), on)
  return page.locator('#log-decided').innerText()
}

const kept = (page: Page): Promise<string | null> => page.evaluate((key) => localStorage.getItem(key), KEY)
const listed = (page: Page): Promise<string[]> => page.locator('#log-list .log-done').allInnerTexts()

/** What the page saves when a button is pressed. */
async function saved(page: Page, button: string): Promise<{ readonly name: string; readonly text: string }> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.click(button)])
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') }
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

const WEEKS: readonly Typed[] = [
  { on: '2026-09-01', amounts: [8, 8, 7] },
  { on: '2026-09-04', amounts: [9, 9, 8], lost: 1 },
  { on: '2026-09-08', amounts: [3, 2, 2] },
  { on: '2026-09-11', amounts: [10, 9, 9], pain: 4 },
  { on: '2026-09-15', amounts: [11, 11, 10], pain: 7 },
  { on: '2026-09-18', amounts: [11, 10, 10], lost: 2 },
  { on: '2026-09-22', amounts: [12, 12, 12] },
  { on: '2026-09-25', amounts: [13, 12, 12], note: 'Felt light' },
  { on: '2026-09-29', amounts: [13, 13, 12], morning: 3 },
]

test('session after session, the page decides what the build’s own rules decide, and says the rule', async () => {
  const { page, trouble, context } = await opened()
  await addAthlete(page, 'Isolde Farrow')
  const ladder = served('press-up')
  const entry = ladder.rungs.flatMap(({ steps }) => steps).find(({ from }) => from === 'bar-95')?.entry
  assert.ok(entry)
  const before: Session[] = []
  for (const typed of WEEKS) {
    const session: Session = { amounts: typed.amounts, sets_out_of_form: typed.lost ?? 0, pain_during: typed.pain ?? 0, ...(typed.morning === undefined ? {} : { pain_next_morning: typed.morning }) }
    const { decision, because, rule } = decide(session, before, { ...entry, amount: entry.amount }, ladder.first_reps)
    const text = await log(page, typed)
    assert.equal(text.split('\n')[0]?.toLowerCase(), decision, typed.on)
    for (const words of [`Because ${because}.`, rule]) assert.ok(text.includes(words), `${typed.on}: ${words}\n${text}`)
    before.unshift(session)
  }
  assert.equal((await listed(page)).length, 8)
  await page.click('#log-older button')
  assert.equal((await listed(page)).length, WEEKS.length)
  assert.deepEqual(trouble, [])
  await context.close()
})

test('a layer’s own entry decides: on the rung below the floor twelve do not move on, fifteen do', async () => {
  const ladder = served('press-up')
  const [step] = ladder.rungs.find(({ id }) => id === 'floor')?.steps ?? []
  assert.equal(step?.entry.amount?.value, 15)
  const { page, context } = await opened(`/my-ladders/?ladder=press-up&rung=${step.from}`)
  await addAthlete(page, 'Isolde Farrow')
  for (const on of ['2026-09-01', '2026-09-04']) assert.match(await log(page, { on, amounts: [12, 12, 12] }), /^Hold/)
  for (const [on, says] of [['2026-09-08', /^Hold/], ['2026-09-11', /^Move on\n+To Hands on the floor\./]] as const) assert.match(await log(page, { on, amounts: [15, 15, 15] }), says)
  await context.close()
})

test('from “Log this rung” the rung is chosen; after a reload everything is there, the last rung chosen again', async () => {
  const { page, context } = await opened('/my-ladders/')
  await addAthlete(page, 'Bram Okoye')
  await page.goto(`${root}/front-plank/toes-forearms/`)
  await page.click('text=Log this rung')
  await page.waitForSelector('#log-amounts input', { state: 'visible' })
  assert.equal(await page.inputValue('#log-rung'), 'toes-forearms')
  assert.match(await page.locator('#log-sets legend').innerText(), /seconds in each/)
  await log(page, { on: '2026-10-01', amounts: [20, 20, 18.5], note: 'Mat on the jetty' })
  await page.goto(`${root}/my-ladders/`)
  await page.waitForSelector('#log-list li')
  assert.equal(await page.inputValue('#log-ladder'), 'front-plank')
  assert.equal(await page.inputValue('#log-rung'), 'toes-forearms')
  assert.match((await listed(page)).join(), /2026-10-01 20, 20, 18\.5 s/)
  assert.match(await page.locator('.log-drawing').getAttribute('aria-label').then(String), /2026-10-01 20 s\. To move on: 40 s a set\./)
  await page.click('#log-same')
  assert.deepEqual(await page.locator('#log-amounts input').evaluateAll((inputs) => inputs.map((input) => (input as HTMLInputElement).value)), ['20', '20', '18.5'])
  await context.close()
})

test('saved as a file, deleted and added again, the log is the log it was; added twice it stays so', async () => {
  const { page, context, trouble } = await opened()
  for (const name of ['Isolde Farrow', 'Bram Okoye']) {
    await addAthlete(page, name)
    for (const typed of WEEKS.slice(0, 2)) await log(page, typed)
  }
  const whole = await kept(page)
  const { name, text } = await saved(page, '#log-export')
  assert.match(name, /^my-ladders-\d{4}-\d\d-\d\d\.json$/)
  assert.deepEqual(JSON.parse(text), JSON.parse(String(whole)))
  const one = await saved(page, '#log-export-one')
  assert.match(one.name, /^my-ladders-bram-okoye-\d{4}-\d\d-\d\d\.json$/)
  assert.doesNotMatch(one.text, /Isolde/)
  await page.click('#log-manage summary')
  for (const left of ['1', '0']) {
    await page.click('#log-delete-one')
    assert.match(await page.locator('#log-delete').innerText(), /and 2 sessions from this device\? Only a saved file brings them back\./)
    await page.click('#log-delete >> text=Keep')
    assert.equal(await page.locator('#log-delete').innerText(), '')
    await page.click('#log-delete-one')
    await page.click('#log-delete button >> nth=0')
    await page.waitForFunction((count) => String(document.querySelectorAll('#log-athlete option').length) === count, left)
  }
  const file = path.join(folder, 'saved.json')
  writeFileSync(file, text)
  await page.setInputFiles('#log-import', file)
  await page.waitForFunction(() => document.querySelector('#log-file-says')?.textContent !== '')
  assert.equal(await page.locator('#log-file-says').innerText(), 'Added from the file: 4 sessions and 2 athletes. 0 sessions of it were here already.')
  assert.equal(await kept(page), whole)
  await page.setInputFiles('#log-import', file)
  await page.waitForFunction(() => document.querySelector('#log-file-says')?.textContent?.includes('Added from the file: 0'))
  assert.equal(await kept(page), whole)
  assert.deepEqual(trouble, [])
  await context.close()
})

test('a hostile file is refused with its reasons, and nothing of it is added', async () => {
  const { page, context } = await opened()
  mkdirSync(path.join(folder, 'files'), { recursive: true })
  const tried: readonly (readonly [name: string, bytes: string | Buffer, says: RegExp])[] = [
    ['large.json', Buffer.alloc(100_000_000, 32), /The file has 100 MB; a log has at most 20 MB\. It was not opened\./],
    ['half.json', '{"log": "my-ladders", "vers', /The file is no JSON/],
    ['deep.json', '['.repeat(200_000), /Nothing was added\./],
    ['newer.json', '{"log": "my-ladders", "version": 7, "athletes": []}', /The log is of version 7; this page reads version 1\./],
    ['marked.json', '{"log": "my-ladders", "version": 1, "athletes": [{"name": "<img src=x>", "sessions": [{"<b>": 1}]}]}', /Athlete 1, session 1: "<b>" is no key of this record\./],
  ]
  for (const [name, bytes, says] of tried) {
    const file = path.join(folder, 'files', name)
    writeFileSync(file, bytes)
    await page.evaluate(() => document.querySelector('#log-file-says')?.replaceChildren())
    await page.setInputFiles('#log-import', file)
    await page.waitForFunction(() => document.querySelector('#log-file-says')?.textContent !== '')
    assert.match(await page.locator('#log-file-says').innerText(), says, name)
    assert.equal(await kept(page), null, name)
  }
  assert.equal(await page.locator('#log-file-says img, #log-file-says b').count(), 0)
  await context.close()
})

for (const [what, text] of [['that is no JSON', '{"log": "my-ladd'], ['that holds nonsense', '{"log":"my-ladders","version":1,"athletes":[{"name":7}]}']] as const) {
  test(`a record ${what} is kept aside, and never written over`, async () => {
    const { page, context } = await opened(undefined, { kept: { [KEY]: text, [`${KEY}-aside-1`]: JSON.stringify('an older one') } })
    assert.match(await page.locator('#log-trouble').innerText(), /kept aside on this device\. Nothing was written over it\./)
    await addAthlete(page, 'Isolde Farrow')
    await log(page, WEEKS[0] ?? { on: '', amounts: [] })
    const aside = (nth: number) => page.evaluate((key) => localStorage.getItem(key), `${KEY}-aside-${nth}`)
    assert.equal(await aside(1), JSON.stringify('an older one'))
    assert.equal(await aside(2), JSON.stringify(text))
    assert.match(String(await kept(page)), /Isolde Farrow/)
    const file = await saved(page, '#log-trouble >> text=Save it as a file >> nth=1')
    assert.equal(file.text, text)
    await page.locator('#log-trouble >> text=Delete it').nth(1).click()
    await page.locator('#log-trouble .log-question button').first().click()
    await page.waitForFunction((key) => localStorage.getItem(key) === null, `${KEY}-aside-2`)
    assert.equal(await aside(1), JSON.stringify('an older one'))
    await context.close()
  })
}

test('what a newer edition wrote is left as it is', async () => {
  const newer = '{"log":"my-ladders","version":2,"athletes":{}}'
  const { page, context } = await opened(undefined, { kept: { [KEY]: newer } })
  assert.match(await page.locator('#log-trouble').innerText(), /written by a newer edition/)
  await addAthlete(page, 'Isolde Farrow')
  await log(page, WEEKS[0] ?? { on: '', amounts: [] })
  assert.equal(await kept(page), newer)
  assert.match(await page.locator('#log-trouble').innerText(), /on this screen only/)
  await context.close()
})

test('a full storage is said; the session stays on screen, is saved as a file, and kept once there is room', async () => {
  const { page, context, trouble } = await opened()
  await addAthlete(page, 'Isolde Farrow')
  await page.evaluate(() => {
    const real = Storage.prototype.setItem
    Object.assign(window, { room: () => (Storage.prototype.setItem = real) })
    Storage.prototype.setItem = () => {
      throw new DOMException('no room', 'QuotaExceededError')
    }
  })
  for (const typed of WEEKS.slice(0, 2)) await log(page, typed)
  assert.match(await page.locator('#log-trouble').innerText(), /Not kept on this device: .*full\.\s+What was logged since is on this screen only/)
  assert.equal((await listed(page)).length, 2)
  assert.doesNotMatch(String(await kept(page)), /press-up/)
  const { text } = await saved(page, '#log-trouble >> text=Save the whole log')
  assert.equal((text.match(/"on"/g) ?? []).length, 2)
  await page.evaluate(() => (window as unknown as { room: () => void }).room())
  await page.click('text=Try to keep it again')
  await page.waitForFunction(() => document.querySelector('#log-trouble')?.textContent === '')
  assert.equal((String(await kept(page)).match(/"on"/g) ?? []).length, 2)
  assert.deepEqual(trouble, [])
  await context.close()
})

test('a storage that is really full is said the same way', async () => {
  const { page, context } = await opened()
  await addAthlete(page, 'Isolde Farrow')
  await page.evaluate(() => {
    for (let size = 2 ** 22; size >= 1; size = Math.floor(size / 2)) {
      for (let nth = 0; nth < 3; nth += 1) {
        try {
          localStorage.setItem(`filler-${size}-${nth}`, 'x'.repeat(size))
        } catch {
          break
        }
      }
    }
  })
  await log(page, WEEKS[0] ?? { on: '', amounts: [] })
  assert.match(await page.locator('#log-trouble').innerText(), /Not kept on this device: .*full/)
  await context.close()
})

test('where storage is turned off it is said, and a session can still be logged and saved', async () => {
  const { page, context } = await opened('/my-ladders/', {})
  await context.addInitScript(() => Object.defineProperty(window, 'localStorage', { get: () => { throw new DOMException('no', 'SecurityError') } }))
  await page.goto(`${root}/my-ladders/?ladder=press-up`)
  await page.waitForSelector('#my-ladders:not([hidden])')
  assert.match(await page.locator('#log-trouble').innerText(), /Nothing can be kept on this device/)
  await addAthlete(page, 'Isolde Farrow')
  assert.match(await log(page, WEEKS[0] ?? { on: '', amounts: [] }), /^Hold/)
  assert.match((await saved(page, '#log-export')).text, /Isolde Farrow/)
  await context.close()
})

test('two tabs write to one log: each sees the other’s session, none is lost, what is deleted stays deleted', async () => {
  const { page: one, context } = await opened()
  await addAthlete(one, 'Isolde Farrow')
  const { page: other } = await watched(context, '/my-ladders/?ladder=press-up&rung=bar-95')
  await log(one, WEEKS[0] ?? { on: '', amounts: [] })
  await other.waitForFunction(() => document.querySelectorAll('#log-list li').length === 1)
  await other.bringToFront()
  await log(other, WEEKS[1] ?? { on: '', amounts: [] })
  await one.waitForFunction(() => document.querySelectorAll('#log-list li').length === 2)
  await one.bringToFront()
  await one.locator('#log-list button', { hasText: 'Delete' }).last().click()
  await one.locator('#log-list .log-question button').first().click()
  await other.waitForFunction(() => document.querySelectorAll('#log-list li').length === 1)
  await other.bringToFront()
  await log(other, WEEKS[2] ?? { on: '', amounts: [] })
  await one.waitForFunction(() => document.querySelectorAll('#log-list li').length === 2)
  assert.deepEqual((await listed(one)).map((line) => line.slice(0, 10)), ['2026-09-08', '2026-09-04'])
  await context.close()
})

test('a rung that was withdrawn carries its sessions to its heir, and counts there', async () => {
  const { page, context } = await opened('/my-ladders/?ladder=press-up&rung=bar-95')
  await addAthlete(page, 'Isolde Farrow')
  await log(page, { on: '2026-09-22', amounts: [12, 12, 12] })
  const ladder = served('press-up')
  const heir = ladder.rungs.find(({ steps }) => steps.some(({ from }) => from === 'bar-95'))
  assert.ok(heir)
  const changed = { ...ladder, retired: [{ id: 'bar-95', heir: heir.id }], rungs: ladder.rungs.filter(({ id }) => id !== 'bar-95').map((rung) => (rung.id === heir.id ? { ...rung, steps: [] } : rung)) }
  await context.route('**/data/ladders/press-up.json', (route) => route.fulfill({ json: changed }))
  await page.goto(`${root}/my-ladders/`)
  await page.waitForSelector('#log-list li')
  assert.equal(await page.inputValue('#log-rung'), heir.id)
  assert.match((await listed(page)).join(), new RegExp(`${heir.title} \\(logged as bar-95\\)`))
  assert.match(await log(page, { on: '2026-09-25', amounts: [12, 12, 12] }), /^Move on[^]*met in 2 sessions running/)
  assert.match(String(await kept(page)), /"rung":"bar-95"/)
  await context.close()
})

test('sessions of a ladder this handbook does not have are kept, shown and saved', async () => {
  const session = { ladder: 'handstand', rung: 'wall', on: '2026-09-01', unit: 'seconds', amounts: [20], sets_out_of_form: 0, pain_during: 0, edition: '2025.1' }
  const record = JSON.stringify({ log: 'my-ladders', version: 1, athletes: [{ name: 'Bram Okoye', sessions: [session] }] })
  const { page, context, trouble } = await opened('/my-ladders/', { kept: { [KEY]: record } })
  await page.waitForSelector('#log-list li')
  assert.match(await page.locator('#log-form-says').innerText(), /This ladder is not in this handbook\. Its sessions are kept/)
  assert.match((await listed(page)).join(), /2026-09-01 20 s wall/)
  await page.selectOption('#log-ladder', 'press-up')
  await page.waitForSelector('#log-amounts input', { state: 'visible' })
  await page.selectOption('#log-ladder', 'handstand')
  await page.waitForSelector('#log-list li')
  assert.equal(await kept(page), record)
  assert.deepEqual(trouble, [])
  await context.close()
})

test('next morning’s pain is added to a session, and the decision follows', async () => {
  const { page, context } = await opened()
  await addAthlete(page, 'Isolde Farrow')
  assert.match(await log(page, { on: '2026-09-22', amounts: [12, 12, 11] }), /^Hold/)
  await page.click('#log-list >> text=Change')
  assert.equal(await page.locator('#log-a-session').innerText(), 'Change the session of 2026-09-22')
  await page.selectOption('#log-morning', '3')
  await page.click('#log-save')
  await page.waitForFunction(() => document.querySelector('#log-decision')?.textContent === 'Step back')
  assert.equal((await listed(page)).length, 1)
  await page.click('#log-list >> text=Change')
  await page.click('#log-leave')
  assert.equal(await page.locator('#log-a-session').innerText(), 'Log a session')
  await context.close()
})

test('no request holds anything of the log', async () => {
  const { page, context, requests } = await opened('/my-ladders/')
  await addAthlete(page, 'Isolde Farrow')
  await page.selectOption('#log-ladder', 'press-up')
  await log(page, { on: '2026-09-22', amounts: [37, 38, 39], pain: 1, note: 'zephyr' })
  await page.selectOption('#log-ladder', 'dip')
  await page.waitForFunction(() => document.querySelector('#log-asks')?.textContent?.includes('“'))
  await saved(page, '#log-export')
  await page.reload()
  await page.waitForSelector('#log-form', { state: 'visible' })
  assert.ok(requests.length > 4)
  for (const request of requests) {
    assert.match(request, new RegExp(`^GET (${root}/|blob:${root}/)`), request)
    assert.doesNotMatch(request, /isolde|farrow|zephyr|2026-09-22|\b37\b|my-ladders\/\?./i, request)
  }
  const asked = requests.map((request) => request.split(' ')[1] ?? '')
  assert.deepEqual(asked.filter((url) => url.startsWith(root) && !files.has(new URL(url).pathname.slice(1).replace(/(^|\/)$/, '$1index.html'))), [])
  await context.close()
})

test('the keyboard alone logs a session', async () => {
  const { page, context } = await opened()
  const to = async (selector: string): Promise<void> => {
    for (let press = 0; press < 60; press += 1) {
      if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return
      await page.keyboard.press('Tab')
    }
    assert.fail(`no number of Tabs leads to ${selector}`)
  }
  await to('#log-name')
  await page.keyboard.type('Isolde Farrow')
  await page.keyboard.press('Enter')
  await page.waitForFunction(() => document.activeElement?.id === 'log-ladder')
  await page.waitForSelector('#log-amounts input', { state: 'visible' })
  for (const nth of [1, 2, 3]) {
    await to(`#log-amounts label:nth-child(${nth}) input`)
    await page.keyboard.type('12')
  }
  await to('#log-out-of-form input')
  await page.keyboard.press('Space')
  await to('#log-pain input')
  await page.keyboard.press('ArrowRight')
  await to('#log-save')
  await page.keyboard.press('Enter')
  await page.waitForFunction(() => document.activeElement?.id === 'log-decision')
  assert.match(String(await kept(page)), /"amounts":\[12,12,12\],"sets_out_of_form":0,"pain_during":1/)
  await to('#log-list button:last-child')
  await page.keyboard.press('Enter')
  await page.waitForFunction(() => document.activeElement?.textContent === 'Keep')
  await page.keyboard.press('Escape')
  assert.equal(await page.evaluate(() => document.activeElement?.textContent), 'Delete')
  assert.equal((await listed(page)).length, 1)
  await context.close()
})

test('what is not filled in is not logged', async () => {
  const { page, context } = await opened()
  await addAthlete(page, 'Isolde Farrow')
  await page.waitForSelector('#log-amounts input', { state: 'visible' })
  await page.click('#log-save')
  await page.locator('#log-amounts input').first().fill('12')
  await page.click('#log-save')
  await page.locator('#log-out-of-form label').first().click()
  await page.click('#log-save')
  assert.doesNotMatch(String(await kept(page)), /press-up/)
  await page.locator('#log-pain label').first().click()
  await page.click('#log-save')
  await page.waitForFunction(() => document.activeElement?.id === 'log-decision')
  assert.match(String(await kept(page)), /"amounts":\[12\]/)
  await context.close()
})

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing at WCAG 2.2 AA with a log on the page, ${colorScheme}; and at 320 px nothing is wider than the screen`, async () => {
    const { page, context } = await opened(undefined, { options: { colorScheme, viewport: { width: 320, height: 700 } } })
    assert.deepEqual(await violations(page), [], 'empty')
    await addAthlete(page, 'Isolde Farrow')
    for (const typed of WEEKS.slice(0, 3)) await log(page, typed)
    for (const summary of ['#log-manage summary', '.log-format summary', '#log-new summary']) await page.click(summary)
    await page.click('#log-delete-one')
    await page.evaluate(() => document.querySelectorAll('#my-ladders details').forEach((each) => each.setAttribute('open', '')))
    assert.deepEqual(await violations(page), [], 'full')
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 320)
    const small = await page.locator('#my-ladders :is(button, select, input:not([type="radio"]), .log-chip, summary)').evaluateAll((all) =>
      all.flatMap((each) => {
        const { width, height } = each.getBoundingClientRect()
        return height === 0 || (height >= 44 && width >= 44) ? [] : [`${each.outerHTML.slice(0, 80)} ${width} × ${height}`]
      }),
    )
    assert.deepEqual(small, [])
    await context.close()
  })
}

test('on paper the history is a table of all sessions, and the form is not there', async () => {
  const { page, context } = await opened()
  await addAthlete(page, 'Isolde Farrow')
  for (const typed of WEEKS) await log(page, typed)
  await page.emulateMedia({ media: 'print' })
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')))
  assert.equal(await page.locator('#log-table tbody tr').count(), WEEKS.length)
  assert.match(await page.locator('#log-table tbody tr').last().innerText(), /^2026-09-29\s+Hands on a bar at 95 cm\s+13, 13, 12 reps\s+0 of 3 sets\s+0 of 10\s+3 of 10\s+step back/)
  for (const hidden of ['#log-session', '#log-list', '#log-files', '.log-kept']) assert.equal(await page.locator(hidden).isVisible(), false, hidden)
  assert.ok((await page.locator('#log-table').isVisible()) && (await page.locator('.log-drawing').isVisible()))
  await context.close()
})

test('without scripts the page says what it would do and where the log would be', async () => {
  const context = await browser.newContext({ javaScriptEnabled: false })
  const page = await context.newPage()
  await page.goto(`${root}/my-ladders/`)
  assert.match(await page.locator('#log-says').innerText(), /The log needs scripts/)
  for (const words of ['The log stays on this device', 'It leaves only as a file its owner saves', 'A shared phone shows it to everybody who uses it', 'Clearing the browser’s data deletes it']) assert.match(await page.locator('.log-kept').innerText(), new RegExp(words))
  assert.equal(await page.locator('#my-ladders').isVisible(), false)
  await context.close()
})
