import assert from 'node:assert/strict'
import { execFileSync } from 'node:child_process'
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { crc32, deflateSync } from 'node:zlib'
import { test } from 'vitest'
import { findingsIn, noTrace, withinLimits } from './held.ts'
import { everything, rooms, write, type Files } from './place.ts'
import { ran } from './ran.ts'

function chunk(type: string, body: Uint8Array): Buffer {
  const named = Buffer.concat([Buffer.from(type), body])
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)]
  length.writeUInt32BE(body.length)
  sum.writeUInt32BE(crc32(named))
  return Buffer.concat([length, named, sum])
}

/** A picture file that says it is so large, of a few bytes that would unpack to much more. */
function png(width_px: number, height_px: number, unpacked_bytes: number): Buffer {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width_px, 0)
  head.writeUInt32BE(height_px, 4)
  head.set([1, 0, 0, 0, 0], 8)
  return Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), chunk('IHDR', head), chunk('IDAT', deflateSync(Buffer.alloc(unpacked_bytes))), chunk('IEND', Buffer.alloc(0))])
}

const svg = (inside: string, head = ''): string => `${head}<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32">${inside}</svg>\n`

/** A page in a folder of its own, and the picture it shows; `page` where that is not written the usual way. */
type Shown = { readonly says: string; readonly shows?: string; readonly page?: string; readonly files?: Files; readonly prepare?: (folder: string, room: string) => void; readonly finds: readonly string[] }

const SHOWN: readonly Shown[] = [
  { says: 'a picture from elsewhere', shows: 'https://evil.example/count.png', finds: ['p.md:6:1  The picture "https://evil.example/count.png" cannot be shown. Put a PNG, JPEG, WebP or SVG into the workspace, and write the way to it from this file, such as pictures/grip.jpg.  (pictures-lie-in-the-workspace)'] },
  { says: 'a picture from elsewhere without its scheme', shows: '//evil.example/count.png', finds: ['p.md:6:1  The picture "//evil.example/count.png" cannot be shown. Put a PNG, JPEG, WebP or SVG into the workspace, and write the way to it from this file, such as pictures/grip.jpg.  (pictures-lie-in-the-workspace)'] },
  { says: 'a picture in a link from elsewhere', page: '[![A grip](https://evil.example/count.png)](https://a.example)', finds: ['p.md:6:1  The picture "https://evil.example/count.png" cannot be shown. Put a PNG, JPEG, WebP or SVG into the workspace, and write the way to it from this file, such as pictures/grip.jpg.  (pictures-lie-in-the-workspace)'] },
  { says: 'a picture that is data', shows: 'data:image/png;base64,AAAA', finds: ['p.md:6:1  The picture "data:image/png;base64,AAAA" cannot be shown. Put a PNG, JPEG, WebP or SVG into the workspace, and write the way to it from this file, such as pictures/grip.jpg.  (pictures-lie-in-the-workspace)'] },
  { says: 'a picture outside the workspace', shows: '../../../secret.png', prepare: (_, room) => writeFileSync(path.join(room, 'secret.png'), png(8, 8, 16)), finds: ['p.md:6:1  The picture "secret.png" lies outside the workspace. Put it among the ladders or the content, such as in pictures/.  (pictures-can-be-shown)'] },
  { says: 'a picture at the root of the disk', shows: '/etc/passwd.png', finds: ['p.md:6:1  The picture "/etc/passwd.png" cannot be shown. Put a PNG, JPEG, WebP or SVG into the workspace, and write the way to it from this file, such as pictures/grip.jpg.  (pictures-lie-in-the-workspace)'] },
  { says: 'a picture by an encoded way up', shows: '%2e%2e/%2e%2e/%2e%2e/secret.png', prepare: (_, room) => writeFileSync(path.join(room, 'secret.png'), png(8, 8, 16)), finds: ['p.md:6:1  The picture "secret.png" lies outside the workspace. Put it among the ladders or the content, such as in pictures/.  (pictures-can-be-shown)'] },
  { says: 'a picture that is a link to a secret', shows: 'grip.png', prepare: (folder, room) => (write(room, { 'secret.png': png(8, 8, 16) }), symlinkSync(path.join(room, 'secret.png'), path.join(folder, 'grip.png'))), finds: ['p.md:6:1  The picture "grip.png" is a link, a folder or a device, or lies behind one. Put the file itself there.  (pictures-can-be-shown)'] },
  { says: 'a picture behind a link to a folder', shows: 'away/grip.png', prepare: (folder, room) => (write(room, { 'away/grip.png': png(8, 8, 16) }), symlinkSync(path.join(room, 'away'), path.join(folder, 'away'))), finds: ['away:1:1  This is a link to a folder. Put the folder itself here; links are not followed.  (files-are-text)', 'p.md:6:1  The picture "grip.png" is a link, a folder or a device, or lies behind one. Put the file itself there.  (pictures-can-be-shown)'] },
  { says: 'a folder as a picture', shows: 'grip.png', prepare: (folder) => void mkdirSync(path.join(folder, 'grip.png')), finds: ['p.md:6:1  The picture "grip.png" is a link, a folder or a device, or lies behind one. Put the file itself there.  (pictures-can-be-shown)'] },
  { says: 'a pipe as a picture', shows: 'grip.png', prepare: (folder) => void execFileSync('mkfifo', [path.join(folder, 'grip.png')]), finds: ['p.md:6:1  The picture "grip.png" is a link, a folder or a device, or lies behind one. Put the file itself there.  (pictures-can-be-shown)'] },
  { says: 'a hidden file as a picture', shows: '../.git/config', files: { '.git/config': '[core]\n' }, finds: ['p.md:6:1  The picture "../.git/config" cannot be shown. Put a PNG, JPEG, WebP or SVG into the workspace, and write the way to it from this file, such as pictures/grip.jpg.  (pictures-lie-in-the-workspace)'] },
  { says: 'a picture of 1 GB, nothing but holes', shows: 'grip.png', prepare: (folder) => void execFileSync('truncate', ['-s', '1G', path.join(folder, 'grip.png')]), finds: ['p.md:6:1  The picture "grip.png" is larger than 20 MB. Save it smaller; 1500 pixels across are enough.  (pictures-can-be-shown)'] },
  { says: 'a picture of 40,000 pixels each way in a few bytes', shows: 'grip.png', files: { 'grip.png': png(40_000, 40_000, 2000) }, finds: ['p.md:6:1  The picture "grip.png" has 40000 by 40000 pixels, more than 40 million. Save it smaller; 1500 across are enough.  (pictures-can-be-shown)'] },
  { says: 'a picture that unpacks to 60 MB', shows: 'grip.png', files: { 'grip.png': png(20_000, 20_000, 60_000_000) }, finds: ['p.md:6:1  The picture "grip.png" has 20000 by 20000 pixels, more than 40 million. Save it smaller; 1500 across are enough.  (pictures-can-be-shown)'] },
  { says: 'a picture that is cut off', shows: 'grip.png', files: { 'grip.png': png(64, 64, 600).subarray(0, 50) }, finds: ['p.md:6:1  The picture "grip.png" is damaged, or is no PNG, JPEG or WebP. Save it again.  (pictures-can-be-shown)'] },
  { says: 'a page named as a picture', shows: 'grip.png', files: { 'grip.png': '<html><script>alert(1)</script>' }, finds: ['p.md:6:1  The picture "grip.png" is damaged, or is no PNG, JPEG or WebP. Save it again.  (pictures-can-be-shown)'] },
  { says: 'an empty picture', shows: 'grip.png', files: { 'grip.png': '' }, finds: ['p.md:6:1  The picture "grip.png" is empty. Save it again.  (pictures-can-be-shown)'] },
  { says: 'a drawing with a script', shows: 'grip.svg', files: { 'grip.svg': svg('<script>alert(1)</script>') }, finds: ['grip.svg:1:61  A picture may not hold <script>. Keep to g, path, circle, ellipse, rect, line, polyline, polygon inside one svg.  (pictures-can-be-shown)'] },
  { says: 'a drawing that runs when it is loaded', shows: 'grip.svg', files: { 'grip.svg': svg('<path onload="alert(1)" d="M0 0"/>') }, finds: ['grip.svg:1:61  <path> of a picture may not have onload. Take it out; a shape takes the colour of the text by fill="currentColor".  (pictures-can-be-shown)'] },
  { says: 'a drawing that holds a page', shows: 'grip.svg', files: { 'grip.svg': svg('<foreignObject><p>x</p></foreignObject>') }, finds: ['grip.svg:1:61  A picture may not hold <foreignObject>. Keep to g, path, circle, ellipse, rect, line, polyline, polygon inside one svg.  (pictures-can-be-shown)'] },
  { says: 'a drawing that fetches', shows: 'grip.svg', files: { 'grip.svg': svg('<image href="https://evil.example/x.png"/>') }, finds: ['grip.svg:1:61  A picture may not hold <image>. Keep to g, path, circle, ellipse, rect, line, polyline, polygon inside one svg.  (pictures-can-be-shown)'] },
  { says: 'a drawing that uses another', shows: 'grip.svg', files: { 'grip.svg': svg('<use href="other.svg#x"/>') }, finds: ['grip.svg:1:61  A picture may not hold <use>. Keep to g, path, circle, ellipse, rect, line, polyline, polygon inside one svg.  (pictures-can-be-shown)'] },
  { says: 'a drawing that is styled', shows: 'grip.svg', files: { 'grip.svg': svg('<path style="fill:url(https://evil.example)" d="M0 0"/>') }, finds: ['grip.svg:1:61  <path> of a picture may not have style. Take it out; a shape takes the colour of the text by fill="currentColor".  (pictures-can-be-shown)'] },
  { says: 'a drawing filled from elsewhere', shows: 'grip.svg', files: { 'grip.svg': svg('<path fill="url(https://evil.example#x)" d="M0 0"/>') }, finds: ['grip.svg:1:61  fill of <path> must be currentColor or none.  (pictures-can-be-shown)'] },
  { says: 'a drawing that leads away', shows: 'grip.svg', files: { 'grip.svg': svg('<a href="javascript:alert(1)"><path d="M0 0"/></a>') }, finds: ['grip.svg:1:61  A picture may not hold <a>. Keep to g, path, circle, ellipse, rect, line, polyline, polygon inside one svg.  (pictures-can-be-shown)'] },
  { says: 'a drawing with a bomb of entities', shows: 'grip.svg', files: { 'grip.svg': svg('&d;', '<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;"><!ENTITY c "&b;&b;&b;"><!ENTITY d "&c;&c;&c;">]>') }, finds: ['grip.svg:1:1  Only tags with attributes in double quotes may stand in a picture. Take out text, comments and what a drawing program added.  (pictures-can-be-shown)'] },
  { says: 'a drawing that reads a file', shows: 'grip.svg', files: { 'grip.svg': svg('&a;', '<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]>') }, finds: ['grip.svg:1:1  Only tags with attributes in double quotes may stand in a picture. Take out text, comments and what a drawing program added.  (pictures-can-be-shown)'] },
  { says: 'a drawing of a million points', shows: 'grip.svg', files: { 'grip.svg': svg(`<path d="M0 0${' L1 1'.repeat(1_000_000)}"/>`) }, finds: ['grip.svg:1:1  The picture is larger than 64 KiB. Draw it with fewer points, or save it as PNG.  (pictures-can-be-shown)'] },
  { says: 'a drawing nested 5,000 deep', shows: 'grip.svg', files: { 'grip.svg': svg(`${'<g>'.repeat(5000)}${'</g>'.repeat(5000)}`) }, finds: ['grip.svg:1:118  More than 20 groups of a picture stand in one another. Take some of them apart.  (pictures-can-be-shown)'] },
]

const room = rooms()
const place = room('pictures', {})
const folderOf = (nth: number): string => `content/c${nth}`
for (const [nth, { shows, page, files = {}, prepare }] of SHOWN.entries()) {
  const words = page ?? `![A grip](${shows})`
  write(path.join(place.workspace, folderOf(nth)), { 'p.md': `---\ntitle: Page ${nth}\nsummary: A page.\n---\n\n${words}\n`, ...files })
  prepare?.(path.join(place.workspace, folderOf(nth)), place.room)
}
const before = everything(place.room)
const outcome = await ran(place.workspace, ['build'])

for (const [nth, { says, finds }] of SHOWN.entries()) {
  test(`${says}: a finding`, () => {
    const own = `${folderOf(nth)}/`
    assert.deepEqual(findingsIn(outcome.out).flatMap((line) => (line.startsWith(own) ? [line.slice(own.length)] : [])), finds)
  })
}

test(`pictures that nobody should open, ${SHOWN.length} together: in time, and nothing is touched`, async () => {
  assert.equal(outcome.code, 1)
  noTrace(outcome)
  await withinLimits(outcome, room)
  assert.deepEqual(everything(place.room), before)
})
