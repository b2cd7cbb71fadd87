import type { MeasuredLadder } from '../measure/measure.ts'
import { ladderPictures } from '../check/prose.ts'
import { cardPages } from '../page/cards-page.ts'
import { ladderDataFile } from '../page/data.ts'
import { pictureKey, type Drawn } from '../page/drawn.ts'
import { ladderPages, writtenPage } from '../page/handbook-pages.ts'
import type { Html } from '../page/html.ts'
import type { Frame } from '../page/site-page.ts'
import type { Speech } from '../page/speech.ts'
import { sha256Of } from './copies.ts'
import { fileOf } from './plugin.ts'
import type { SiteFile } from './site-file.ts'

/** What the files of every ladder are made with, in one language: `drawn` holds the pictures of all of them. */
export type Setting = { readonly speech: Speech; readonly frame: Frame; readonly drawn: Drawn; readonly pdfs: boolean; readonly share: (ladder: MeasuredLadder) => readonly SiteFile[] }

/** The files that are one ladder's own: its pages and those of its rungs and cards, the picture beside links to it, its data. */
export function ladderFiles(ladder: MeasuredLadder, diagram: Html, { speech: { curriculum, tongueOf }, frame, drawn, pdfs, share }: Setting): SiteFile[] {
  const tongue = tongueOf(ladder)
  const pages = [...ladderPages(ladder, diagram, curriculum), ...cardPages(ladder, curriculum, pdfs)].map((page) => writtenPage(page, frame, drawn, tongue))
  return [...pages.map(({ address, html }) => ({ name: fileOf(address), bytes: html })), ...share(ladder), ladderDataFile(ladder, curriculum.handbook.edition)]
}

/** What the files of every ladder are made from beside the ladder itself and the tool. */
export const madeWith = ({ speech: { curriculum: { handbook, words }, tongue: { language }, toldApart }, frame, pdfs }: Setting): string =>
  text([handbook, words?.get(language), language, frame, pdfs, toldApart.map(({ names, words: said }) => [sha256Of(text(names)), sha256Of(text(said))])])

/** All that is known of a ladder before it is measured, and the pictures it shows: with the tool and the rest of the handbook it decides every byte of its files. */
export function madeFrom({ known: _, places: __, rungs, ...ladder }: MeasuredLadder, pictures: readonly string[], drawn: Drawn): string {
  const read = rungs.map(({ model: ___, inputs: ____, outcome: _____, standard: ______, steps: _______, ...rung }) => rung)
  return text([ladder, read, pictures.map((key) => [key, drawn.get(key)])])
}

/** The pictures that a ladder shows, by key. */
export const picturesOf = (ladder: MeasuredLadder): string[] => ladderPictures(ladder).map(({ file }) => pictureKey(file))

/**
 * A value as text, other for every other value.
 *
 * Throws  bug, when something in it is a function: what that does is not to be seen.
 */
const text = (value: unknown): string => JSON.stringify(value, plainly)

function plainly(_: string, value: unknown): unknown {
  if (typeof value === 'function') throw new Error('bug: a ladder is made from a function')
  if (value instanceof Set || value instanceof Map) return [...value]
  return typeof value === 'number' && !Number.isFinite(value) ? String(value) : value
}
