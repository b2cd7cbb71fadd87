import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'

/** Files that shrink, and from what size it is worth it. Units bytes. */
const TEXT = /\.(html|css|js|json|svg|xml|txt|webmanifest)$/
const WORTH_IT = 256

/** What comes with every page; the rest is read a page at a time. */
const EVERY_PAGE = /\.(js|css)$/
/** The window, as a power of two, up to which the thorough search is also a quick one, and the file it holds whole. Units bytes. */
const WINDOW = 16
const HELD_WHOLE = 2 ** WINDOW

/** A way of compressing; `kind` says what decides its bytes: a newer library may compress otherwise. */
export type Way = { readonly ending: 'br' | 'gz'; readonly kind: string; readonly of: (bytes: Uint8Array) => Promise<Uint8Array> }

const [br, gz] = [promisify(brotliCompress), promisify(gzip)]

const brotli = (quality: number, window = constants.BROTLI_DEFAULT_WINDOW): Way => ({
  ending: 'br',
  kind: `brotli ${quality}, window ${window}, ${process.versions.brotli}`,
  of: (bytes) => br(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: quality, [constants.BROTLI_PARAM_LGWIN]: window, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } }),
})

const GZIP: Way = { ending: 'gz', kind: `gzip 9, zlib ${process.versions.zlib}`, of: (bytes) => gz(bytes, { level: 9 }) }
const [MOST, WHOLE, LARGE] = [brotli(11), brotli(9, WINDOW), brotli(8)]

/** How a file is compressed: not at all where it would not shrink; hardest what comes with every page; a large one, which is read at a desk, less hard. */
export function waysOf(name: string, size_bytes: number): readonly Way[] {
  if (!TEXT.test(name) || size_bytes < WORTH_IT) return []
  return [EVERY_PAGE.test(name) ? MOST : size_bytes <= HELD_WHOLE ? WHOLE : LARGE, GZIP]
}
