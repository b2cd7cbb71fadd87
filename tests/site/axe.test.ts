import assert from 'node:assert/strict'
import { beforeAll, test } from 'vitest'
import { KINDS, servedDemo, SPANISH_KINDS, violations, type ServedDemo } from './served-demo.ts'

/** axe on every kind of page, in every look and at every width: each pair of the three comes up, not each triple. The pages in Spanish are the same but for their words, and take one look each. */
let demo: ServedDemo
beforeAll(async () => {
  demo = await servedDemo()
})

const WIDTHS = [320, 768, 1280] as const
const LOOKS = {
  light: { colorScheme: 'light' },
  dark: { colorScheme: 'dark' },
  'forced colours': { forcedColors: 'active' },
  print: { media: 'print' },
} as const
const LOOKS_COUNT = Object.keys(LOOKS).length

/** On paper a link is words like any other: nobody can follow or touch it. */
const ON_PAPER = ['link-in-text-block', 'target-size']

for (const [at, [look, media]] of Object.entries(LOOKS).entries()) {
  test(`axe finds nothing at WCAG 2.2 AA on any kind of page, ${look}`, { timeout: 120_000 }, async () => {
    const { page } = await demo.opened('/')
    await page.emulateMedia(media)
    const addresses = [...KINDS, ...SPANISH_KINDS.filter((_, index) => index % LOOKS_COUNT === at)]
    for (const [index, address] of addresses.entries()) {
      const width = WIDTHS[(index + at) % WIDTHS.length] ?? 320
      await page.setViewportSize({ width, height: 800 })
      await page.goto(demo.root + address)
      await page.locator('#offline button').waitFor({ state: 'attached' })
      if (address.includes('/search/')) await page.locator('#search-results li').first().waitFor({ state: 'attached' })
      assert.deepEqual(await violations(page, look === 'print' ? ON_PAPER : []), [], `${address} at ${width} px`)
    }
    await page.context().close()
  })
}
