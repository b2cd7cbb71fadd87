import path from 'node:path'
import { isMissing, type Outcome } from '../quantity/outcome.ts'
import type { MeasuredCurriculum } from '../measure/measure.ts'
import type { EditionChanges } from '../page/changes-page.ts'
import { dataFiles } from '../page/data.ts'
import type { Drawn } from '../page/drawn.ts'
import { feed } from '../page/feed.ts'
import { handbookPages, type WrittenPage } from '../page/handbook-pages.ts'
import { raw, type Html } from '../page/html.ts'
import { coachWords } from '../page/coach-words.ts'
import { tongueOf, type Tongue } from '../page/tongue.ts'
import { headersFile, siteMap, webManifest } from '../page/site-files.ts'
import { ladderDiagram } from '../page/ladder-diagram.ts'
import { assetFiles } from './assets.ts'
import { NO_CACHE, type Cache } from './cache.ts'
import { drawFences } from './draw-fences.ts'
import { drawnOnce } from './drawn-once.ts'
import { keptAt, readEditions } from './editions.ts'
import { writeCompressed, writeManifest } from './manifest.ts'
import { offlineFile } from './offline-files.ts'
import type { Shelves } from './picture-bytes.ts'
import { publishedPictures } from './pictures.ts'
import { fileOf } from './plugin.ts'
import { cardPdfs } from './print-pdf.ts'
import { publish } from './publish.ts'
import { ruleExamples } from './rule-examples.ts'
import { searchFiles } from './search-index.ts'
import { writeFiles, type SiteFile } from './site-file.ts'
import { writePages } from './write-pages.ts'

/** What a build did. */
export type Built = { readonly pages: number; readonly files: number }

/** The language a curriculum is written in. */
const tongueIn = (curriculum: MeasuredCurriculum): Tongue => tongueOf(curriculum.handbook.languages[0] ?? 'en', { units: curriculum.handbook.units, theirs: coachWords(curriculum) })

/** Draws every ladder's diagram and every flowchart that coaches wrote, then makes every page with the pictures in it. */
async function drawnPages(curriculum: MeasuredCurriculum, editions: readonly EditionChanges[], cache: Cache, { drawn = new Map(), pdfs = false }: { readonly drawn?: Drawn; readonly pdfs?: boolean } = {}): Promise<WrittenPage[]> {
  const draw = await drawnOnce(cache)
  const tongue = tongueIn(curriculum)
  const diagrams = new Map<string, Html>()
  for (const ladder of curriculum.ladders) diagrams.set(ladder.id, raw(await draw(ladderDiagram(ladder, tongue), `diagram-of-${ladder.id}`)))
  return handbookPages(curriculum, { diagrams, drawn: new Map([...drawn, ...(await drawFences(curriculum, draw))]), examples: await ruleExamples(), editions, pdfs }, tongue)
}

/** Writes a handbook's pages and what they load below a folder. */
async function writeWhole(curriculum: MeasuredCurriculum, pages: readonly WrittenPage[], editions: readonly EditionChanges[], folder: string): Promise<void> {
  await writePages(pages, folder)
  const { address } = curriculum.handbook
  const about: SiteFile[] = [
    { name: 'manifest.webmanifest', bytes: webManifest(curriculum) },
    { name: '_headers', bytes: headersFile() },
    ...(address === undefined ? [] : [{ name: 'sitemap.xml', bytes: siteMap(pages, address) }]),
  ]
  await writeFiles([...about, ...(await assetFiles(curriculum.handbook, tongueIn(curriculum))), { name: 'feed.xml', bytes: feed(curriculum, editions) }, ...dataFiles(curriculum)], folder)
}

/** A page as a file, as it is served. */
const pageFile = ({ address, html }: WrittenPage): SiteFile => ({ name: fileOf(address), bytes: html })

/** Cards printed to files by a Chromium, where one was asked for. */
async function printedCards(curriculum: MeasuredCurriculum, pages: readonly WrittenPage[], chromium: string | undefined): Promise<Outcome<readonly SiteFile[]>> {
  if (chromium === undefined) return []
  return cardPdfs([...pages.map(pageFile), ...(await assetFiles(curriculum.handbook, tongueIn(curriculum)))], curriculum.ladders.map(({ id }) => id), chromium)
}

/**
 * Draws, writes, indexes and publishes a checked curriculum. `source` is the workspace it was read from; an earlier edition that stays shows its pictures' texts. `progress` is told each stage;
 * with a Chromium, cards are printed to PDF as well; with a cache, what was made before is not made again, to the same bytes.
 *
 * Missing when a card could not be printed; the old handbook stays.
 */
export async function buildSite(curriculum: MeasuredCurriculum, source: Shelves, out: string, progress: (stage: string) => void, { chromium, cache = NO_CACHE }: { chromium?: string | undefined; cache?: Cache } = {}): Promise<Outcome<Built>> {
  progress('reading earlier editions')
  const { changes, kept } = await readEditions(source.folder, curriculum)
  progress('preparing pictures')
  const pictures = await publishedPictures(curriculum, source, cache)
  progress('drawing diagrams')
  const pages = await drawnPages(curriculum, changes, cache, { drawn: pictures.drawn, pdfs: chromium !== undefined })
  if (chromium !== undefined) progress('printing cards')
  const pdfs = await printedCards(curriculum, pages, chromium)
  if (isMissing(pdfs)) return pdfs
  let files = 0
  await publish(out, async (folder) => {
    progress('writing pages')
    await writeWhole(curriculum, pages, changes, folder)
    await writeFiles(pictures.files, folder)
    for (const { edition, curriculum: then } of kept) await writeWhole(then, await drawnPages(then, [], cache), [], path.join(folder, keptAt(edition)))
    progress('indexing for search')
    await writeFiles(await searchFiles(pages), folder)
    await writeFiles([await offlineFile(curriculum, folder)], folder)
    await writeFiles(pdfs, folder)
    progress('compressing')
    await writeCompressed(folder, cache)
    files = await writeManifest(folder, curriculum.handbook.edition)
  })
  await cache.tidy()
  return { pages: pages.length, files }
}

/** The whole handbook in memory, as a preview serves it. */
export async function siteInMemory(curriculum: MeasuredCurriculum, source: Shelves, cache: Cache = NO_CACHE): Promise<SiteFile[]> {
  const { changes } = await readEditions(source.folder, curriculum)
  const pictures = await publishedPictures(curriculum, source, cache)
  const pages = await drawnPages(curriculum, changes, cache, { drawn: pictures.drawn })
  return [...pages.map(pageFile), ...pictures.files, { name: 'feed.xml', bytes: feed(curriculum, changes) }, ...dataFiles(curriculum), ...(await assetFiles(curriculum.handbook, tongueIn(curriculum))), ...(await searchFiles(pages))]
}
