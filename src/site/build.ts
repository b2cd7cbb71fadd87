import { isMissing, type Outcome } from '../quantity/outcome.ts'
import type { MeasuredCurriculum } from '../measure/measure.ts'
import { cardPages } from '../page/cards-page.ts'
import { frameOf, writtenPage } from '../page/handbook-pages.ts'
import { languagesOf, speechesOf, type Speech } from '../page/speech.ts'
import { assetsOf } from './assets.ts'
import { NO_CACHE, type Kept } from './cache.ts'
import { drawFences } from './draw-fences.ts'
import { drawingTeam } from './drawing-team.ts'
import { drawnOnce } from './drawn-once.ts'
import { keptAt, readEditions } from './editions.ts'
import { fillFolder } from './filling.ts'
import { writeManifest } from './manifest.ts'
import { offlineFile } from './offline-files.ts'
import type { Shelves } from './picture-bytes.ts'
import { publishedPictures } from './pictures.ts'
import { fileOf } from './plugin.ts'
import { cardPdfs } from './print-pdf.ts'
import { publish } from './publish.ts'
import { ruleExamples } from './rule-examples.ts'
import { below, type SiteFile } from './site-file.ts'
import { writeHandbook, type Shown } from './whole-handbook.ts'

/** Everything is made anew. */
const NOTHING_KEPT: Kept = { cache: NO_CACHE, tool: '' }

/** What a build did. */
export type Built = { readonly pages: number; readonly files: number }

/** Cards printed to files by a Chromium, where one was asked for. */
async function printedCards(speeches: readonly Speech[], shown: Shown, chromium: string | undefined): Promise<Outcome<readonly SiteFile[]>> {
  if (chromium === undefined) return []
  shown.progress('printing cards')
  const printed: SiteFile[] = []
  for (const { curriculum, tongue, tongueOf, under } of speeches) {
    const frame = frameOf(curriculum, languagesOf(speeches), tongue)
    const drawn = new Map([...shown.drawn, ...(await drawFences(curriculum, shown.draw))])
    const cards = curriculum.ladders.flatMap((ladder) => cardPages(ladder, curriculum, true).map((page) => writtenPage(page, frame, drawn, tongueOf(ladder))))
    const files = await cardPdfs([...cards.map(({ address, html }) => ({ name: fileOf(address), bytes: html })), ...(await assetsOf(curriculum.handbook, tongue)).files], curriculum.ladders.map(({ id }) => id), chromium)
    if (isMissing(files)) return files
    printed.push(...below(under, files))
  }
  return printed
}

/** An edition that stays, in the language it was written in. */
const first = (curriculum: MeasuredCurriculum): Speech[] => speechesOf(curriculum).slice(0, 1)

/**
 * Draws, writes, indexes and publishes a checked curriculum. `source` is the workspace it was read from; an earlier edition that stays shows its pictures' texts. `progress` is told each stage;
 * with a Chromium, cards are printed to PDF as well; with a cache, what was made before is not made again, and with more workers diagrams are drawn side by side, to the same bytes.
 *
 * Missing when a card could not be printed, or another build is writing there; the old handbook stays.
 */
export async function buildSite(curriculum: MeasuredCurriculum, source: Shelves, out: string, progress: (stage: string) => void, { chromium, kept: { cache, tool } = NOTHING_KEPT, workers = 1, link = false }: { chromium?: string | undefined; kept?: Kept | undefined; workers?: number; link?: boolean } = {}): Promise<Outcome<Built>> {
  progress('reading earlier editions')
  const { changes, kept: editions } = await readEditions(source.folder, curriculum)
  progress('preparing pictures')
  const pictures = await publishedPictures(curriculum, source, cache)
  const shown: Shown = { editions: changes, examples: await ruleExamples(), drawn: pictures.drawn, pdfs: chromium !== undefined, draw: await drawnOnce(cache, drawingTeam(workers)), cache, tool, progress }
  const speeches = speechesOf(curriculum)
  const pdfs = await printedCards(speeches, shown, chromium)
  if (isMissing(pdfs)) return pdfs
  let built: Built = { pages: 0, files: 0 }
  const published = await publish(out, async (folder, before) => {
    const filling = await fillFolder(folder, { before, cache })
    const pages = await writeHandbook(speeches, shown, filling)
    progress('writing what is left')
    for (const { under } of speeches) await filling.write(below(under, pictures.files))
    for (const { edition, curriculum: then } of editions) await writeHandbook(first(then), { ...shown, editions: [], drawn: new Map(), pdfs: false, progress: () => undefined }, filling, { folder: keptAt(edition).slice(1), searched: false })
    await filling.write(pdfs)
    const folders = speeches.map(({ under }) => under).filter((under) => under !== '')
    const written = filling.originals()
    await filling.write(speeches.flatMap(({ under }) => below(under, [offlineFile(curriculum, written, under, under === '' ? folders : [])])))
    await writeManifest(folder, curriculum.handbook.edition, filling.all())
    built = { pages, files: filling.all().length }
  }, { link })
  if (isMissing(published)) return published
  await cache.tidy()
  return built
}
