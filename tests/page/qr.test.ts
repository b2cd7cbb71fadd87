import assert from 'node:assert/strict'
import fc from 'fast-check'
import jsqr from 'jsqr'
import { test } from 'vitest'
import { codeAddress } from '../../src/page/card-words.ts'
import { inEnglish } from '../../src/page/html.ts'
import { qrCode } from '../../src/page/qr.ts'

/** The types of the decoder take the module for its default export. */
const decode = jsqr as unknown as (pixels: Uint8ClampedArray, wide: number, high: number) => { readonly data: string } | null

/** Pixels to a module, as a camera might see it. */
const SCALE = 4

/** The modules of a drawing, read from its path; `wide` counts the quiet zone. */
function modulesOf(svg: string): { readonly wide: number; readonly dark: ReadonlySet<string> } {
  const wide = Number(/viewBox="0 0 (\d+) \1"/.exec(svg)?.[1])
  const runs = [...svg.matchAll(/M(\d+) (\d+)H(\d+)v1H\1z/g)].map((match) => match.slice(1).map(Number))
  return { wide, dark: new Set(runs.flatMap(([from = 0, y = 0, to = 0]) => Array.from({ length: to - from }, (_, x) => `${from + x} ${y}`))) }
}

/** What an independent decoder reads from a drawing. */
function read(svg: string): string | undefined {
  const { wide, dark } = modulesOf(svg)
  const side = wide * SCALE
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255)
  for (let y = 0; y < side; y += 1) for (let x = 0; x < side; x += 1) if (dark.has(`${Math.floor(x / SCALE)} ${Math.floor(y / SCALE)}`)) pixels.fill(0, 4 * (y * side + x), 4 * (y * side + x) + 3)
  return decode(pixels, side, side)?.data
}

const code = (text: string): string => inEnglish(qrCode(text, 'a code'))

test('another decoder reads what was written, at every length an address may have', () => {
  for (let length = 1; length <= 420; length += 7) {
    const text = `https://handbook.example/${'press-up-2026'.repeat(40).slice(0, length)}`
    assert.equal(read(code(text)), text)
  }
})

test('the longest address there can be is read: 200 characters, two ids of 60, an edition of 31', () => {
  const text = codeAddress(`https://${'a'.repeat(184)}.example`, `/${'l'.repeat(60)}/${'r'.repeat(60)}/`, '9'.repeat(31))
  assert.equal(text.length, 200 + 123 + '?edition='.length + 31)
  assert.equal(read(code(text)), text)
})

test('any address of the signs a handbook may use is read', () => {
  const sign = fc.constantFrom(...'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-._~/?=:')
  fc.assert(
    fc.property(fc.array(sign, { minLength: 1, maxLength: 120 }), (signs) => assert.equal(read(code(signs.join(''))), signs.join(''))),
    { numRuns: 60 },
  )
})

test('four modules of white lie all round, and the same text gives the same bytes', () => {
  const svg = code('https://handbook.example/press-up/?edition=2026.2')
  const { wide, dark } = modulesOf(svg)
  const xs = [...dark].flatMap((at) => at.split(' ').map(Number))
  assert.equal(Math.min(...xs), 4)
  assert.equal(Math.max(...xs), wide - 5)
  assert.equal((wide - 8 - 17) % 4, 0)
  assert.equal(code('https://handbook.example/press-up/?edition=2026.2'), svg)
})

test('it is one path with a name and no style of its own, and the name is escaped', () => {
  const svg = inEnglish(qrCode('https://handbook.example/', 'Code that leads to "A & B"'))
  assert.equal([...svg.matchAll(/<path/g)].length, 1)
  assert.match(svg, /role="img" aria-label="Code that leads to &quot;A &amp; B&quot;"/)
  assert.doesNotMatch(svg, /style|fill=|<rect/)
})

test('a slash at the end of the published address is not doubled', () => {
  assert.equal(codeAddress('https://handbook.example/club/', '/press-up/floor/', '2026.2'), 'https://handbook.example/club/press-up/floor/?edition=2026.2')
})
