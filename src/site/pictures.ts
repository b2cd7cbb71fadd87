import path from 'node:path'
import { once } from '../quantity/once.ts'
import { shownPictures, type ShownPicture } from '../check/prose.ts'
import type { Curriculum } from '../ladder/curriculum.ts'
import type { Finding } from '../ladder/finding.ts'
import type { MeasuredCurriculum } from '../measure/measure.ts'
import { pictureKey, type Drawn } from '../page/drawn.ts'
import { readShapes } from '../read/read-shapes.ts'
import type { Cache } from './cache.ts'
import { sha256Of } from './copies.ts'
import { pictureBytes, type Shelves } from './picture-bytes.ts'
import { rasterFlaw, type Rendition } from './raster.ts'
import { renditionsOnce } from './renditions-once.ts'
import type { SiteFile } from './site-file.ts'

const RULE = 'pictures-can-be-shown'

/** A drawing by a coach stands in the page itself, so that it takes the colour of its text, by day and by night. Units bytes. Chosen by us. */
const drawing = (file: string, bytes: Uint8Array) => readShapes(file, bytes, { rule: RULE, name: 'picture', most_bytes: 64 * 1024, heavy: '. Draw it with fewer points, or save it as PNG.', head: ' class="picture-drawn" role="img" aria-label="{text}"' })

const isDrawing = (file: string): boolean => file.toLowerCase().endsWith('.svg')

/** Every picture that cannot be shown, where a text shows it; what is wrong within a drawing, where it stands in the drawing. */
export async function pictureFindings(curriculum: Pick<Curriculum, 'ladders' | 'pages'>, shelves: Shelves): Promise<readonly Finding[]> {
  const before = new Map<string, readonly Finding[]>()
  const found = new Map<string, Finding>()
  for (const { file, place } of shownPictures(curriculum)) {
    const key = `${file}\n${place.file}`
    const own = before.get(key) ?? (await flaws({ file, place }, shelves))
    before.set(key, own)
    for (const finding of own) {
      const placed = finding.file === file ? finding : { ...finding, ...place }
      found.set(`${placed.file}:${placed.line} ${placed.message}`, placed)
    }
  }
  return [...found.values()]
}

async function flaws({ file, place }: ShownPicture, shelves: Shelves): Promise<readonly Finding[]> {
  const taken = await pictureBytes(file, place.file, shelves)
  if ('wrong' in taken) return [{ ...place, rule: RULE, message: taken.wrong }]
  if (isDrawing(file)) return drawing(file, taken.bytes).findings
  const flaw = await rasterFlaw(taken.bytes)
  return flaw === undefined ? [] : [{ ...place, rule: RULE, message: `The picture "${path.basename(file)}" ${flaw}.` }]
}

/** The pictures of a curriculum: what stands in a page for each, by its key, and the files they are. One that cannot be shown is left out; the checks have said so. */
export type Pictures = { readonly drawn: Drawn; readonly files: readonly SiteFile[] }

export async function publishedPictures(curriculum: MeasuredCurriculum, shelves: Shelves, cache: Cache): Promise<Pictures> {
  const drawn = new Map<string, string>()
  const files = new Map<string, SiteFile>()
  const sized = once(() => renditionsOnce(cache)) // most handbooks show none
  for (const { file, place } of shownPictures(curriculum)) {
    const key = pictureKey(file)
    const taken = drawn.has(key) ? undefined : await pictureBytes(file, place.file, shelves)
    if (!taken || 'wrong' in taken) continue
    if (isDrawing(file)) {
      const { value } = drawing(file, taken.bytes)
      if (value !== undefined) drawn.set(key, value)
      continue
    }
    const sizes = await (await sized())(taken.bytes)
    if (sizes.length === 0) continue
    const named = sizes.map((size) => ({ size, name: nameOf(file, size) }))
    drawn.set(key, pictureMarkup(named))
    for (const { size, name } of named) files.set(name, { name, bytes: size.bytes })
  }
  return { drawn, files: [...files.values()] }
}

const ENDS = { webp: 'webp', jpeg: 'jpg', png: 'png' } as const

/** `pictures/grip-480-1f2e3d4c5b.webp`: the name changes with the bytes, so that a copy may be kept for ever. */
function nameOf(file: string, { width_px, kind, bytes }: Rendition): string {
  const slug = path.basename(file, path.extname(file)).normalize('NFKD').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 40) || 'picture'
  return `pictures/${slug}-${width_px}-${sha256Of(bytes).slice(0, 10)}.${ENDS[kind]}`
}

/** How wide a picture stands: the width of a phone less its margins, or that of a column of prose. */
const SIZES = '(max-width: 45rem) calc(100vw - 2.2rem), 42rem'

function pictureMarkup(named: readonly { readonly size: Rendition; readonly name: string }[]): string {
  const set = (wanted: (kind: Rendition['kind']) => boolean): string => named.filter(({ size }) => wanted(size.kind)).map(({ size, name }) => `{root}${name} ${size.width_px}w`).join(', ')
  const plain = named.filter(({ size }) => size.kind !== 'webp')
  const { size, name } = plain.at(-1) ?? { size: undefined, name: '' }
  return `<picture><source type="image/webp" srcset="${set((kind) => kind === 'webp')}" sizes="${SIZES}"><img src="{root}${name}" srcset="${set((kind) => kind !== 'webp')}" sizes="${SIZES}" width="${size?.width_px ?? 0}" height="${size?.height_px ?? 0}" loading="lazy" decoding="async" alt="{text}"></picture>`
}
