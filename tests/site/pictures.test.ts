import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { mkdir, readdir, readFile, rm, symlink, truncate, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { deflateSync } from 'node:zlib'
import { parseHTML } from 'linkedom'
import sharp from 'sharp'
import { beforeAll, test } from 'vitest'
import { cacheIn } from '../../src/site/cache.ts'
import { renditionsOnce } from '../../src/site/renditions-once.ts'
import { REPOSITORY, run, scratch } from './demo.ts'

const folder = await scratch()
const at = (...names: string[]): string => path.join(folder, 'club', ...names)
const put = async (name: string, bytes: Uint8Array | string): Promise<void> => {
  await mkdir(path.dirname(at(name)), { recursive: true })
  await writeFile(at(name), bytes)
}

const plain = (width: number, height: number) => sharp({ create: { width, height, channels: 3, background: '#7a3b12' } })
/** Stripes, so that turned and unturned differ. */
const stripes = (width: number, height: number) => sharp(Buffer.from(Array.from({ length: width * height * 3 }, (_, nth) => (nth % (width * 3) < width ? 240 : 20))), { raw: { width, height, channels: 3 } })
const PLACE = { IFD0: { Make: 'CAMERA-OF-A-CHILD' }, IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '47/1 30/1 0/1' } }

/** A chunk of a PNG file. Source PNG specification, 5.3; the checksum is not looked at before the length. */
const chunk = (name: string, data: Uint8Array): Buffer => {
  const head = Buffer.alloc(8)
  head.writeUInt32BE(data.length)
  head.write(name, 4, 'latin1')
  const sum = Buffer.alloc(4)
  sum.writeUInt32BE(crc(Buffer.concat([head.subarray(4), data])))
  return Buffer.concat([head, data, sum])
}
function crc(bytes: Uint8Array): number {
  let sum = 0xffffffff
  for (const byte of bytes) {
    sum ^= byte
    for (let bit = 0; bit < 8; bit += 1) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0)
  }
  return (sum ^ 0xffffffff) >>> 0
}
/** A PNG of one colour that claims to be of this size. */
function claiming(width: number, height: number, rows: Uint8Array): Buffer {
  const size = Buffer.alloc(13)
  size.writeUInt32BE(width, 0)
  size.writeUInt32BE(height, 4)
  size.set([1, 0, 0, 0, 0], 8)
  return Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), chunk('IHDR', size), chunk('IDAT', rows), chunk('IEND', new Uint8Array())])
}

/** A ladder with nothing wrong in it, and no picture. */
const SOUND = readFileSync(path.join(REPOSITORY, 'tests/check/pictures-have-text.good.md'), 'utf8').replaceAll(/!\[[^\]]*\]\([^)]*\)/g, '')

const HANDBOOK = 'title: A club\norganisation: A club\nedition: "1"\ncontact: The club\n'
const page = (body: string): string => `---\ntitle: Safety\norder: 1\nsummary: What to mind.\n---\n${body}`

beforeAll(async () => {
  await put('handbook.yaml', HANDBOOK)
  await put('content/safety.md', page('![Two stripes](../pictures/grip.jpg "How wide the hands go")\n\nText with ![a drawing](pictures/mark.svg) in it.\n\n![Small & "quoted" <b>](pictures/Small%20one.png)\n'))
  await put('pictures/grip.jpg', await stripes(500, 2000).withExif(PLACE).withMetadata({ orientation: 6 }).jpeg().toBuffer())
  await put('content/pictures/Small one.png', await sharp({ create: { width: 40, height: 30, channels: 4, background: { r: 1, g: 2, b: 3, alpha: 0.5 } } }).png().toBuffer())
  await put('content/pictures/mark.svg', '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50"><path d="M0 40h100" fill="none" stroke="currentColor"/></svg>')
})

const build = (out: string, ...more: string[]) => run(at(), 'build', ...more, '--output', path.join(folder, out))
const shown = async (out: string): Promise<Document> => parseHTML(await readFile(path.join(folder, out, 'safety/index.html'), 'utf8')).document

test('a picture is published in three widths and two formats, with its room kept and its caption below', async () => {
  await put('ladders/balance.md', SOUND)
  const { code, out, note } = await build('one')
  assert.equal(code, 0, out + note)
  const figure = (await shown('one')).querySelector('figure.picture')
  assert.equal(figure?.querySelector('figcaption')?.textContent, 'How wide the hands go')
  const [source, img] = [figure?.querySelector('source'), figure?.querySelector('img')]
  assert.equal(source?.getAttribute('type'), 'image/webp')
  assert.deepEqual([img?.getAttribute('alt'), img?.getAttribute('loading'), img?.getAttribute('width'), img?.getAttribute('height')], ['Two stripes', 'lazy', '1440', '360'], 'upright, as the camera meant it')
  const files = [...`${source?.getAttribute('srcset')}, ${img?.getAttribute('srcset')}`.matchAll(/(\S+) (\d+)w/g)]
  assert.deepEqual(files.map(([, file, width]) => `${file?.replace(/[0-9a-f]{10}/, '#')} ${width}`), ['webp', 'jpg'].flatMap((end) => [480, 960, 1440].map((width) => `../pictures/grip-${width}-#.${end} ${width}`)))
  for (const [, file = '', width] of files) {
    const bytes = await readFile(path.join(folder, 'one/safety', file))
    const { width: real, exif, icc, xmp, iptc } = await sharp(bytes).metadata()
    assert.deepEqual([real, exif, icc, xmp, iptc], [Number(width), undefined, undefined, undefined, undefined])
    assert.ok(!bytes.includes('CAMERA-OF-A-CHILD'))
  }
  assert.ok((await readFile(at('pictures/grip.jpg'))).includes('CAMERA-OF-A-CHILD'), 'it was there to be left out')
})

test('a drawing stands in the page itself, a small picture keeps its size, and no text of either becomes markup', async () => {
  const found = await shown('one')
  const drawn = found.querySelector('svg.picture-drawn')
  assert.deepEqual([drawn?.getAttribute('role'), drawn?.getAttribute('aria-label'), drawn?.querySelectorAll('path').length], ['img', 'a drawing', 1])
  const small = [...found.querySelectorAll('img')].at(-1)
  assert.deepEqual([small?.getAttribute('alt'), small?.getAttribute('width'), small?.getAttribute('srcset')?.replace(/[0-9a-f]{10}/, '#')], ['Small & "quoted" <b>', '40', '../pictures/small-one-40-#.png 40w'])
})

test('the same pictures give the same bytes, from the cache or anew', async () => {
  const published = async (out: string) => Object.fromEntries(await Promise.all((await readdir(path.join(folder, out, 'pictures'))).toSorted().map(async (name) => [name, (await readFile(path.join(folder, out, 'pictures', name))).toString('hex')] as const)))
  const first = await published('one')
  assert.equal((await build('two')).code, 0)
  assert.deepEqual(await published('two'), first)
  assert.equal((await build('three', '--no-cache')).code, 0)
  assert.deepEqual(await published('three'), first)
})

test('a picture that was made once is not made again', async () => {
  const cache = cacheIn(path.join(folder, 'cache'))
  const bytes = await readFile(at('pictures/grip.jpg'))
  const first = await (await renditionsOnce(cache))(bytes)
  assert.deepEqual(first.map(({ width_px, height_px, kind }) => `${width_px} ${height_px} ${kind}`), ['480 120 webp', '480 120 jpeg', '960 240 webp', '960 240 jpeg', '1440 360 webp', '1440 360 jpeg'])
  const again = await (await renditionsOnce({ ...cache, of: (kind, from) => cache.of(kind, from, () => assert.fail('made again')) }))(bytes)
  assert.deepEqual(again.map(({ bytes: own }) => Buffer.from(own).toString('hex')), first.map(({ bytes: own }) => Buffer.from(own).toString('hex')))
})

test('what lies behind a link, outside, or is no picture is found on its line, with what to do', async () => {
  const frames = await sharp([await plain(10, 10).png().toBuffer(), await stripes(10, 10).png().toBuffer()], { join: { animated: true } }).webp().toBuffer()
  const good = await plain(60, 40).png().toBuffer()
  const idat = good.indexOf('IDAT') - 4
  await put('content/p/moves.png', Buffer.concat([good.subarray(0, idat), chunk('acTL', Buffer.from([0, 0, 0, 2, 0, 0, 0, 0])), good.subarray(idat)]))
  await put('content/p/frames.webp', frames)
  await put('content/p/cut.png', good.subarray(0, idat + 12))
  await put('content/p/text.jpg', 'GIF89a no picture')
  await put('content/p/gif.png', Buffer.from('R0lGODlhAQABAIAAAAAAAP///yH5BAEAAAAALAAAAAABAAEAAAIBRAA7', 'base64'))
  await put('content/p/script.svg', '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><script>alert(1)</script></svg>')
  await put('content/p/svg.png', '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><image href="/etc/passwd"/></svg>')
  await put('content/p/none.png', '')
  await put('content/p/heavy.jpg', '')
  await truncate(at('content/p/heavy.jpg'), 21 * 1024 * 1024)
  await put('content/p/bomb.png', claiming(60_000, 60_000, deflateSync(Buffer.alloc(1000))))
  await put('content/p/wide.png', claiming(8000, 5001, deflateSync(Buffer.alloc(1001 * 5001))))
  await writeFile(path.join(folder, 'secret.png'), good)
  await symlink(path.join(folder, 'secret.png'), at('content/p/link.png'))
  await symlink(folder, at('content/q'))
  await mkdir(at('content/p/folder.png'))
  await put('content/p/grip.png', good)
  const names = ['p/moves.png', 'p/frames.webp', 'p/cut.png', 'p/text.jpg', 'p/gif.png', 'p/script.svg', 'p/svg.png', 'p/none.png', 'p/heavy.jpg', 'p/bomb.png', 'p/wide.png', 'p/link.png', 'q/secret.png', 'p/folder.png', 'p/grap.png', 'p/other.webp', '../../secret.png']
  await put('content/safety.md', page(names.map((name) => `![x](${name})`).join('\n')))
  const { code, out } = await run(at(), 'check', '--format', 'json')
  await rm(at('content/q'))
  assert.equal(code, 1)
  const findings = (JSON.parse(out) as { findings: { file: string; line: number; message: string; rule: string }[] }).findings
  assert.deepEqual(findings.filter(({ rule }) => rule === 'pictures-can-be-shown').map(({ file, line, message }) => `${file}:${line} ${message}`), [
    'content/p/script.svg:1 A picture may not hold <script>. Keep to g, path, circle, ellipse, rect, line, polyline, polygon inside one svg.',
    'content/safety.md:6 The picture "moves.png" moves. Save one frame of it: nobody can stop it on a page.',
    'content/safety.md:7 The picture "frames.webp" moves. Save one frame of it: nobody can stop it on a page.',
    'content/safety.md:8 The picture "cut.png" is damaged, or is no PNG, JPEG or WebP. Save it again.',
    'content/safety.md:9 The picture "text.jpg" is damaged, or is no PNG, JPEG or WebP. Save it again.',
    'content/safety.md:10 The picture "gif.png" is damaged, or is no PNG, JPEG or WebP. Save it again.',
    'content/safety.md:12 The picture "svg.png" is damaged, or is no PNG, JPEG or WebP. Save it again.',
    'content/safety.md:13 The picture "none.png" is empty. Save it again.',
    'content/safety.md:14 The picture "heavy.jpg" is larger than 20 MB. Save it smaller; 1500 pixels across are enough.',
    'content/safety.md:15 The picture "bomb.png" has 60000 by 60000 pixels, more than 40 million. Save it smaller; 1500 across are enough.',
    'content/safety.md:16 The picture "wide.png" has 8000 by 5001 pixels, more than 40 million. Save it smaller; 1500 across are enough.',
    'content/safety.md:17 The picture "link.png" is a link, a folder or a device, or lies behind one. Put the file itself there.',
    'content/safety.md:18 The picture "secret.png" is a link, a folder or a device, or lies behind one. Put the file itself there.',
    'content/safety.md:19 The picture "folder.png" is a link, a folder or a device, or lies behind one. Put the file itself there.',
    'content/safety.md:20 There is no picture "grap.png" there. Did you mean grip.png?',
    'content/safety.md:21 There is no picture "other.webp" there. Put it there, or mend the way to it.',
    'content/safety.md:22 The picture "secret.png" lies outside the workspace. Put it among the ladders or the content, such as in pictures/.',
  ])
})
