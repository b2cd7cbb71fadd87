import assert from 'node:assert/strict'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import type { Server } from 'node:http'
import { createRequire } from 'node:module'
import path from 'node:path'
import { chromium, type Browser, type Page } from 'playwright-core'
import { afterAll, beforeAll, test } from 'vitest'
import { NO_CHROMIUM, quietly } from '../../src/site/chromium.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { previewServer } from '../../src/site/preview-server.ts'
import { browserPath } from '../browser-path.ts'
import { REPOSITORY, builtDemo, run, scratch } from './demo.ts'

/** The cards of the demo handbook and of a small workspace, in a real browser, laid out as for print. */
const folder = await scratch()
const source = (file: string): string => readFileSync(createRequire(import.meta.url).resolve(file), 'utf8')
const [AXE, DECODER] = [source('axe-core/axe.min.js'), source('jsqr/dist/jsQR.js')]
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
const PUBLISHED = 'https://handbook.morrowfleet.example'

/** Papers a wall card is offered on, inside their margins. Units mm. */
const PAPERS = [
  { paper: 'a4', way: 'portrait', wide_mm: 190, high_mm: 274 },
  { paper: 'a4', way: 'landscape', wide_mm: 277, high_mm: 187 },
  { paper: 'letter', way: 'portrait', wide_mm: 195.9, high_mm: 256.4 },
  { paper: 'letter', way: 'landscape', wide_mm: 259.4, high_mm: 192.9 },
  { paper: 'a3', way: 'portrait', wide_mm: 269, high_mm: 388 },
  { paper: 'a3', way: 'landscape', wide_mm: 392, high_mm: 265 },
] as const
const PX_PER_MM = 96 / 25.4

let browser: Browser
let server: Server
let root: string
let ladders: { readonly id: string; readonly rungs: readonly string[] }[]

beforeAll(async () => {
  const site = await builtDemo()
  const files = new Map((await filesBelow(site)).map((file) => [file, readFileSync(path.join(site, file))]))
  const data = (name: string): unknown => JSON.parse(readFileSync(path.join(site, 'data', name), 'utf8'))
  ladders = (data('index.json') as { ladders: { id: string }[] }).ladders.map(({ id }) => ({ id, rungs: (data(`ladders/${id}.json`) as { rungs: { id: string }[] }).rungs.map((rung) => rung.id) }))
  const served = await previewServer(() => files, 0)
  server = served.server
  root = `http://127.0.0.1:${served.port}`
  const executablePath = browserPath()
  assert.ok(executablePath, 'a Chromium is needed: install one or set CHROMIUM_PATH')
  browser = await chromium.launch({ executablePath, args: quietly() })
})

afterAll(async () => {
  await browser?.close()
  server?.close()
})

/** Runs a test on a page of its own. */
async function on<Result>(work: (page: Page) => Promise<Result>, options: Parameters<Browser['newContext']>[0] = {}): Promise<Result> {
  const context = await browser.newContext(options)
  const result = await work(await context.newPage())
  await context.close()
  return result
}

const pagesOf = (pdf: Uint8Array): number => [...Buffer.from(pdf).toString('latin1').matchAll(/\/Type \/Page\b/g)].length

/** What another decoder reads from a picture of a card. */
const codeIn = (picture: Buffer): Promise<string | undefined> =>
  on(async (page) => {
    await page.evaluate(DECODER)
    return page.evaluate(async (base64) => {
      const bitmap = await createImageBitmap(await (await fetch(`data:image/png;base64,${base64}`)).blob())
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height)
      const drawing = canvas.getContext('2d')
      drawing?.drawImage(bitmap, 0, 0)
      const pixels = drawing?.getImageData(0, 0, bitmap.width, bitmap.height)
      const { jsQR } = globalThis as unknown as { jsQR(data: Uint8ClampedArray | undefined, wide: number, high: number): { data: string } | null }
      return jsQR(pixels?.data, bitmap.width, bitmap.height)?.data
    }, picture.toString('base64'))
  })

test('a picture of a wall card and of a pocket card carries a code that leads to the page and the edition', async () => {
  await on(
    async (page) => {
      await page.emulateMedia({ media: 'print' })
      await page.goto(`${root}/cards/press-up/`)
      assert.equal(await codeIn(await page.locator('.wall-sheet').first().screenshot()), `${PUBLISHED}/press-up/?edition=2026.2`)
      for (const rung of ['floor', 'one-side']) {
        await page.goto(`${root}/cards/press-up/pocket/`)
        assert.equal(await codeIn(await page.locator(`#card-${rung}`).screenshot()), `${PUBLISHED}/press-up/${rung}/?edition=2026.2`)
      }
    },
    { viewport: { width: 800, height: 1100 }, deviceScaleFactor: 2 },
  )
})

test('the code is read in a dark theme and in forced colours as well', async () => {
  for (const theme of [{ colorScheme: 'dark' }, { forcedColors: 'active' }] as const) {
    await on(
      async (page) => {
        await page.goto(`${root}/cards/landing/`)
        assert.equal(await codeIn(await page.locator('.card-code').first().screenshot()), `${PUBLISHED}/landing/?edition=2026.2`, JSON.stringify(theme))
      },
      { ...theme, deviceScaleFactor: 2 },
    )
  }
})

for (const { paper, way, wide_mm, high_mm } of PAPERS) {
  test(`on ${paper} ${way} each sheet of each wall card fits one page, with all that is to be read beside its rungs`, async () => {
    await on(
      async (page) => {
        await page.emulateMedia({ media: 'print' })
        for (const { id, rungs } of ladders) {
          await page.goto(`${root}/cards/${id}/`)
          await page.evaluate((ids) => ids.forEach((each) => document.getElementById(each)?.setAttribute('checked', '')), [`paper-${paper}`, `way-${way}`])
          const sheets = await page.locator('.wall-sheet').evaluateAll((all) =>
            all.map((sheet) => ({ high: sheet.scrollHeight, wide: sheet.scrollWidth - sheet.clientWidth, lists: sheet.querySelectorAll('.wall-notes ul').length, stops: sheet.querySelectorAll('.wall-stop li').length, rungs: sheet.querySelectorAll('.wall-rung').length })),
          )
          for (const sheet of sheets) {
            assert.ok(sheet.high <= high_mm * PX_PER_MM, `${id}: ${sheet.high / PX_PER_MM} mm on ${high_mm} mm`)
            assert.equal(sheet.wide, 0, id)
            assert.ok(sheet.lists === 3 && sheet.stops > 0 && sheet.rungs > 0, id)
          }
          assert.equal(sheets.reduce((sum, sheet) => sum + sheet.rungs, 0), rungs.length, id)
        }
      },
      { viewport: { width: Math.floor(wide_mm * PX_PER_MM), height: 1000 } },
    )
  })

  test(`printed on ${paper} ${way}, a wall card has as many pages as sheets, of that paper`, async () => {
    await on(async (page) => {
      for (const id of ['press-up', 'pull-up', 'wet-exit']) {
        await page.goto(`${root}/cards/${id}/`)
        await page.check(`#paper-${paper}`)
        await page.check(`#way-${way}`)
        const pdf = await page.pdf({ preferCSSPageSize: true })
        assert.equal(pagesOf(pdf), await page.locator('.wall-sheet').count(), id)
        const [, wide = 0, high = 0] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(Buffer.from(pdf).toString('latin1'))?.map(Number) ?? []
        assert.equal(wide > high, way === 'landscape', id)
        assert.ok(Math.abs(Math.max(wide, high) - { a4: 842, letter: 792, a3: 1191 }[paper]) < 1.5, `${id}: ${wide} × ${high} pt`)
      }
    })
  })
}

test('every rung of every ladder has a pocket card that holds its safety and overflows nowhere, four to a page at most', async () => {
  await on(
    async (page) => {
      await page.emulateMedia({ media: 'print' })
      for (const { id, rungs } of ladders) {
        await page.goto(`${root}/cards/${id}/pocket/`)
        const cards = await page.locator('.pocket-card').evaluateAll((all) =>
          all.map((card) => {
            const box = (selector: string): DOMRect | undefined => card.querySelector(selector)?.getBoundingClientRect()
            const { width, height } = card.getBoundingClientRect()
            return { id: card.id, wide: width, high: height, over: card.scrollHeight - card.clientHeight, free: (box('footer')?.top ?? 0) - (box('.pocket-text')?.bottom ?? 0), stop: card.querySelectorAll('.pocket-stop li').length }
          }),
        )
        assert.deepEqual(cards.map((card) => card.id), rungs.map((rung) => `card-${rung}`), id)
        for (const card of cards) {
          assert.ok(card.over <= 0 && card.free >= 0, `${id} ${JSON.stringify(card)}`)
          assert.ok(card.wide >= 104 * PX_PER_MM && card.high >= 147 * PX_PER_MM && card.high <= 297 * PX_PER_MM, `${id} ${JSON.stringify(card)}`)
          assert.ok(card.stop > 0, `${id} ${card.id}`)
        }
      }
      await page.goto(`${root}/cards/row-straps/pocket/`)
      assert.equal(pagesOf(await page.pdf({ preferCSSPageSize: true })), await page.locator('.pocket-sheet').count())
    },
    { viewport: { width: 794, height: 1123 } },
  )
})

test('on paper nothing is told by colour, no letter is smaller than it may be, no line thinner than 0.25 mm', async () => {
  await on(async (page) => {
    await page.emulateMedia({ media: 'print' })
    for (const [address, least_pt] of [['/cards/row-straps/', 9], ['/cards/press-up/pocket/', 7.5]] as const) {
      await page.goto(root + address)
      const seen = await page.locator(':is(.wall-sheet, .pocket-sheet) *').evaluateAll((all) =>
        all.map((element) => {
          const style = getComputedStyle(element)
          const words = [...element.childNodes].some((node) => node.nodeType === 3 && (node.textContent ?? '').trim() !== '')
          const lines = ['Top', 'Left', 'Bottom', 'Right'].map((side) => parseFloat(style.getPropertyValue(`border-${side.toLowerCase()}-width`))).filter((wide) => wide > 0)
          const stroke = style.stroke !== 'none' && element.tagName !== 'svg' && style.vectorEffect === 'non-scaling-stroke' ? [parseFloat(style.strokeWidth)] : []
          return { name: `${element.tagName} ${element.getAttribute('class')}`, colours: [style.color, style.backgroundColor, style.fill, style.stroke, style.borderTopColor], size: words ? parseFloat(style.fontSize) : Infinity, lines: [...lines, ...stroke] }
        }),
      )
      assert.ok(seen.length > 100)
      for (const { name, colours, size, lines } of seen) {
        assert.ok(size >= (least_pt * 96) / 72 - 0.01, `${name}: ${size} px`)
        for (const line of lines) assert.ok(line >= 0.25 * PX_PER_MM - 0.06, `${name}: a line of ${line} px`)
        for (const colour of colours) {
          const [red, green, blue] = /rgba?\((\d+), (\d+), (\d+)/.exec(colour)?.slice(1) ?? []
          assert.ok(red === green && green === blue, `${name}: ${colour}`)
        }
      }
    }
  })
})

const KINDS = ['/cards/', '/cards/press-up/', '/cards/row-straps/pocket/']

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing on cards, ${colorScheme}, and at 320 px nothing is wider than the screen`, async () => {
    for (const address of KINDS) {
      await on(
        async (page) => {
          await page.goto(root + address)
          assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 320, address)
          await page.evaluate(AXE)
          const found = await page.evaluate(async (tags) => {
            const { axe } = globalThis as unknown as { axe: { run(options: unknown): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }
            return (await axe.run({ runOnly: { type: 'tag', values: tags } })).violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)
          }, WCAG)
          assert.deepEqual(found, [], address)
        },
        { viewport: { width: 320, height: 700 }, colorScheme },
      )
    }
  })
}

test('the choices of paper are at least 44 px high', async () => {
  await on(async (page) => {
    await page.goto(`${root}/cards/press-up/`)
    const heights = await page.locator('.paper-choice label').evaluateAll((all) => all.map((label) => label.getBoundingClientRect().height))
    assert.equal(heights.length, 5)
    for (const height of heights) assert.ok(height >= 44, String(height))
  }, { viewport: { width: 390, height: 800 } })
})

/** A workspace of its own with one ladder, without a published address, its edition with a day. */
function workspace(name: string, change: (ladder: string) => string = (ladder) => ladder): string {
  const place = path.join(folder, name)
  mkdirSync(path.join(place, 'ladders'), { recursive: true })
  writeFileSync(path.join(place, 'handbook.yaml'), 'title: A small handbook\norganisation: Tarnwick Gym Club\nedition: "1"\ncontact: nobody yet\neditions: [{ edition: "1", on: 2026-11-02 }]\n')
  writeFileSync(path.join(place, 'ladders/landing.md'), change(readFileSync(path.join(REPOSITORY, 'ladders/landing.md'), 'utf8')))
  return place
}

test('each sheet of each booklet fits one page of A4 and of Letter, with every safety note of its rung on it, and pocket cards fit Letter', async () => {
  for (const { id, rungs } of ladders) {
    await on(async (page) => {
      for (const paper of ['a4', 'letter'] as const) {
        await page.goto(`${root}/cards/${id}/booklet/`)
        await page.check(`#paper-${paper}`)
        assert.equal(await page.locator('.booklet-sheet').count(), rungs.length + 1, id)
        assert.equal(pagesOf(await page.pdf({ preferCSSPageSize: true })), rungs.length + 1, `${id}, ${paper}`)
      }
      await page.goto(`${root}/cards/${id}/pocket/`)
      await page.check('#paper-letter')
      assert.equal(pagesOf(await page.pdf({ preferCSSPageSize: true })), await page.locator('.pocket-sheet').count(), id)
    })
  }
}, 300_000) // three papers of every ladder, on whatever machine

test('build --pdf writes tagged PDFs, lists them in build.json, links them, and says the day and the path where there is no address', async () => {
  const place = workspace('printed')
  const { code, out, note } = await run(place, 'build', '--pdf')
  assert.equal(code, 0, out + note)
  const read = (file: string): string => readFileSync(path.join(place, '_site', file), 'latin1')
  const listed = (JSON.parse(read('build.json')) as { files: { file: string }[] }).files.map(({ file }) => file)
  for (const file of ['pdf/landing-wall-a4.pdf', 'pdf/landing-pocket.pdf', 'pdf/landing-booklet-a4.pdf']) {
    assert.ok(listed.includes(file), file)
    assert.match(read(file), /^%PDF-[^]*\/MarkInfo <<[^>]*\/Marked true/, file)
    assert.doesNotMatch(read(file), /127\.0\.0\.1/, file)
  }
  assert.match(read('cards/landing/index.html'), /href="\.\.\/\.\.\/pdf\/landing-wall-a4\.pdf"/)
  assert.doesNotMatch(read('cards/landing/pocket/index.html'), /<svg class="qr"/)
  assert.match(read('cards/landing/pocket/index.html'), /Edition 1, 2026-11-02 .*In the handbook: \/landing\/snap-down\//)
})

test('build --pdf says in a sentence what to do where there is no Chromium, and writes nothing', async () => {
  const place = workspace('unprinted')
  const before = process.env.CHROMIUM_PATH
  process.env.CHROMIUM_PATH = path.join(folder, 'not-there')
  const { code, note } = await run(place, 'build', '--pdf')
  if (before === undefined) delete process.env.CHROMIUM_PATH
  else process.env.CHROMIUM_PATH = before
  assert.equal(code, 2)
  assert.equal(note.split('\n')[0], NO_CHROMIUM)
  assert.deepEqual((await filesBelow(place)).filter((file) => file.startsWith('_site')), [])
})

/** A ladder with so many stop signs and people who ask first, each so long. */
const wordy = (count: number, long: number) => (ladder: string): string => {
  const lines = Array.from({ length: count }, (_, nth) => `  - ${`sign number ${nth + 1} ${'is told in a good many words '.repeat(20)}`.slice(0, long).trim()}`).join('\n')
  return ladder.replace(/^stop:\n(  - .*\n)*/m, `stop:\n${lines}\n`).replace(/^ask_first:\n(  - .*\n)*/m, `ask_first:\n${lines}\n`)
}

test('notes too long for a sheet make the pocket cards larger; the page says why there is no wall card, and a card why it holds none', async () => {
  for (const { count, long, size, says } of [
    { count: 11, long: 122, size: 'a5', says: /Stop when/ },
    { count: 14, long: 200, size: 'a4', says: /Stop when/ },
    { count: 20, long: 300, size: 'a6', says: /The safety notes of this rung are longer than a sheet holds\. Read its page in the handbook before anyone starts\./ },
  ]) {
    const place = workspace(`long-${size}`, wordy(count, long))
    const { code, out, note } = await run(place, 'build')
    assert.equal(code, 0, out + note)
    const files = new Map((await filesBelow(path.join(place, '_site'))).map((file) => [file, readFileSync(path.join(place, '_site', file))]))
    assert.match(String(files.get('cards/landing/index.html')), /No wall card is drawn: its form points, stop signs and ask-first list leave no room for a rung on the same sheet\. Use the pocket cards\./)
    const { server: own, port } = await previewServer(() => files, 0)
    await on(
      async (page) => {
        await page.emulateMedia({ media: 'print' })
        await page.goto(`http://127.0.0.1:${port}/cards/landing/pocket/`)
        for (const card of await page.locator('.pocket-card').all()) {
          assert.match((await card.getAttribute('class')) ?? '', new RegExp(`pocket-${size}$`))
          assert.match(await card.innerText(), says)
          assert.ok(await card.evaluate((each) => each.scrollHeight <= each.clientHeight && each.scrollWidth <= each.clientWidth && each.getBoundingClientRect().height <= 1123), `${size} overflows`)
        }
        assert.equal(pagesOf(await page.pdf({ preferCSSPageSize: true })), await page.locator('.pocket-sheet').count())
      },
      { viewport: { width: 794, height: 1123 } },
    )
    own.close()
  }
})
