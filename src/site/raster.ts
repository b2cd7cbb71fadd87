import type { Sharp, SharpInput, SharpOptions } from 'sharp'

/** The most pixels a picture may have. Chosen by us: a few bytes can claim to be billions. */
const MOST_PIXELS = 40_000_000
/** How wide a picture is written, where it is that wide: a phone, a page, a page on a fine screen. Units pixels. */
const WIDTHS_PX = [480, 960, 1440]
/** Longer than this, in seconds, no picture of that size takes. */
const MOST_SECONDS = 60

const FORMATS = ['jpeg', 'png', 'webp'] as const

type Library = (input: SharpInput, options?: SharpOptions) => Sharp

/** The picture library, told to read three formats and to keep nothing; undefined where this machine has none. */
async function library(): Promise<Library | undefined> {
  const { default: sharp } = await import('sharp').catch(() => ({ default: undefined }))
  if (!sharp) return undefined
  sharp.block({ operation: ['VipsForeignLoad'] })
  sharp.unblock({ operation: ['VipsForeignLoadJpegBuffer', 'VipsForeignLoadPngBuffer', 'VipsForeignLoadWebpBuffer'] })
  sharp.cache(false)
  return sharp
}

const opened = (sharp: Library, bytes: Uint8Array): Sharp => sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error', sequentialRead: true }).timeout({ seconds: MOST_SECONDS })

const NO_LIBRARY = 'cannot be read on this machine, because the picture library is not installed. Install again without leaving out optional packages'

/** Why a picture cannot be shown, as the end of a sentence that began with its name; undefined where it can. Every pixel is read. */
export async function rasterFlaw(bytes: Uint8Array): Promise<string | undefined> {
  const sharp = await library()
  if (!sharp) return NO_LIBRARY
  try {
    const { format, width, height, pages = 1 } = await sharp(bytes, { limitInputPixels: false }).metadata()
    if (!FORMATS.some((each) => each === format)) return 'is no PNG, JPEG or WebP, whatever its name says. Save it as one of these'
    if (width * height > MOST_PIXELS) return `has ${width} by ${height} pixels, more than ${MOST_PIXELS / 1e6} million. Save it smaller; 1500 across are enough`
    if (pages > 1 || isMovingPng(bytes)) return 'moves. Save one frame of it: nobody can stop it on a page'
    await opened(sharp, bytes).resize({ width: 16 }).raw().toBuffer()
    return undefined
  } catch {
    return 'is damaged, or is no PNG, JPEG or WebP. Save it again'
  }
}

/** An animated PNG says so before its first pixels; the library shows only its first frame. */
function isMovingPng(bytes: Uint8Array): boolean {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length)
  if (!file.subarray(1, 4).equals(Buffer.from('PNG'))) return false
  const [moves, pixels] = [file.indexOf('acTL'), file.indexOf('IDAT')]
  return moves > 0 && moves < pixels
}

/** Which library makes the sizes: another one may make other bytes. */
export async function libraryVersion(): Promise<string> {
  const found = await import('sharp').catch(() => undefined)
  return found ? JSON.stringify(found.default.versions) : 'none'
}

/** One size of a picture, as it is published. */
export type Rendition = { readonly width_px: number; readonly height_px: number; readonly kind: 'webp' | 'jpeg' | 'png'; readonly bytes: Uint8Array }

/**
 * A picture in the sizes and formats a page offers: upright, in sRGB, without a word of what the camera noted of place, day or maker.
 *
 * Shape   bytes to at most three widths, each as WebP and as what every browser knows. None where this machine has no library.
 */
export async function renditions(bytes: Uint8Array): Promise<readonly Rendition[]> {
  const sharp = await library()
  if (!sharp) return []
  try {
    const { format, hasAlpha, autoOrient } = await opened(sharp, bytes).metadata()
    const widths = [...new Set(WIDTHS_PX.map((width) => Math.min(width, autoOrient.width)))]
    const plain = format === 'jpeg' || (format === 'webp' && !hasAlpha) ? 'jpeg' : 'png'
    const made: Rendition[] = []
    for (const width of widths) {
      const sized = opened(sharp, bytes).autoOrient().resize({ width, withoutEnlargement: true }).toColourspace('srgb')
      for (const [kind, picture] of [['webp', sized.clone().webp({ quality: 80, effort: 4 })], [plain, plain === 'jpeg' ? sized.clone().jpeg({ quality: 80, mozjpeg: true }) : sized.clone().png({ compressionLevel: 9 })]] as const) {
        const { data, info } = await picture.toBuffer({ resolveWithObject: true })
        made.push({ width_px: info.width, height_px: info.height, kind, bytes: data })
      }
    }
    return made
  } catch (cause) {
    throw new Error('bug: a picture that was checked cannot be written', { cause })
  }
}
