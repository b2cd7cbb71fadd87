import type { MeasuredCurriculum, MeasuredLadder } from '../measure/measure.ts'
import type { Handbook } from '../ladder/schema.ts'
import { accentOf, LIGHT_PAPER, STARTER_ACCENT } from '../page/accent.ts'
import { iconShapes, iconSvg } from '../page/icon.ts'
import { handbookPicture, ladderPicture, shareAddress } from '../page/share-picture.ts'
import type { Picture } from '../page/shape.ts'
import { paint } from './paint.ts'
import { ico, png } from './png.ts'
import type { SiteFile } from './site-file.ts'

const fileFor = (address: string): string => address.slice(1)
const accentIn = (handbook: Handbook): string => accentOf(handbook.colours?.accent ?? STARTER_ACCENT).onLight

/** The icon on a ground, filling a part of the square. */
const icon = (wide: number, part: number, ground: string, colour: string): Picture => ({ wide, high: wide, ground, shapes: iconShapes(colour, (wide * (1 - part)) / 2, (wide * (1 - part)) / 2, wide * part) })

/** The icon in every form that a device or a browser asks for. A maskable one keeps to the middle four fifths, which no device cuts away. */
export function iconFiles(handbook: Handbook): SiteFile[] {
  const accent = accentIn(handbook)
  const plain = (wide: number): Buffer => png(paint(icon(wide, 0.86, LIGHT_PAPER, accent)))
  return [
    { name: 'assets/icon.svg', bytes: iconSvg(accent) },
    { name: 'assets/icon-192.png', bytes: plain(192) },
    { name: 'assets/icon-512.png', bytes: plain(512) },
    { name: 'assets/icon-maskable-512.png', bytes: png(paint(icon(512, 0.62, accent, '#ffffff'))) },
    { name: 'assets/apple-touch-icon.png', bytes: plain(180) },
    { name: 'favicon.ico', bytes: ico(plain(32), 32) },
  ]
}

/** The picture that stands beside links to a ladder; only where the handbook says where it is published, as such a link has to be whole. */
export const ladderShareFile = (ladder: MeasuredLadder, handbook: Handbook): SiteFile[] => (handbook.address === undefined ? [] : [{ name: fileFor(shareAddress(ladder.id)), bytes: png(paint(ladderPicture(ladder, handbook))) }])

/** The picture beside links to all other pages. */
export const handbookShareFile = ({ handbook, ladders }: MeasuredCurriculum): SiteFile[] => (handbook.address === undefined ? [] : [{ name: fileFor(shareAddress(undefined)), bytes: png(paint(handbookPicture(ladders, handbook))) }])

/** All of these. */
export const shareFiles = (curriculum: MeasuredCurriculum): SiteFile[] => [...handbookShareFile(curriculum), ...curriculum.ladders.flatMap((ladder) => ladderShareFile(ladder, curriculum.handbook))]
