import { isMissing, type Outcome } from '../quantity/outcome.ts'
import type { MeasuredCurriculum } from '../measure/measure.ts'
import type { EditionChanges } from '../page/changes-page.ts'
import { dataFiles } from '../page/data.ts'
import type { Drawn } from '../page/drawn.ts'
import { editionsFiles } from '../page/editions-data.ts'
import { feed } from '../page/feed.ts'
import { handbookPages, type WrittenPage } from '../page/handbook-pages.ts'
import { raw, type Html } from '../page/html.ts'
import { languagesOf, speechesOf, type Speech } from '../page/speech.ts'
import { searchParts } from '../page/search-parts.ts'
import { headersFile } from '../page/served.ts'
import { siteMap, webManifest } from '../page/site-files.ts'
import { diagramName, ladderDiagram } from '../page/ladder-diagram.ts'
import { assetFiles } from './assets.ts'
import { NO_CACHE, type Cache } from './cache.ts'
import { drawingTeam } from './drawing-team.ts'
import { drawFences } from './draw-fences.ts'
import { drawnOnce } from './drawn-once.ts'
import { keptAt, readEditions, seenFrom } from './editions.ts'
import { writeManifest } from './manifest.ts'
import { offlineFile } from './offline-files.ts'
import type { Shelves } from './picture-bytes.ts'
import { publishedPictures } from './pictures.ts'
import { pageFiles } from './page-files.ts'
import { fileOf } from './plugin.ts'
import { shareFiles } from './drawn-pictures.ts'
import { cardPdfs } from './print-pdf.ts'
import { publish } from './publish.ts'
import { fillFolder, type Filling } from './filling.ts'
import { ruleExamples } from './rule-examples.ts'
import { searchFiles } from './search-index.ts'
import { sideBySide } from './side-by-side.ts'
import type { SiteFile } from './site-file.ts'

/** What a build did. */
export type Built = { readonly pages: number; readonly files: number }

/** A handbook in one language with its pages made. */
type Made = Speech & { readonly pages: readonly WrittenPage[] }

/** What pages show beside the curriculum, whatever the language; `drawn` holds the pictures that stand in them, `workers` draw. */
type Shown = { readonly editions: readonly EditionChanges[]; readonly cache: Cache; readonly workers: number; readonly drawn?: Drawn; readonly pdfs?: boolean; readonly progress?: (stage: string) => void }

/** In each language: draws every ladder's diagram and every flowchart that coaches wrote, then makes every page with the pictures in it. */
export async function drawnPages(speeches: readonly Speech[], { editions, cache, workers, drawn = new Map(), pdfs = false, progress }: Shown): Promise<Made[]> {
  const draw = await drawnOnce(cache, drawingTeam(workers))
  const examples = await ruleExamples()
  const languages = languagesOf(speeches)
  const drawings = await Promise.all(speeches.map(({ curriculum: { ladders }, tongue }) => Promise.all(ladders.map(async (ladder) => [ladder.id, raw(await draw(ladderDiagram(ladder, tongue), diagramName(ladder)))] as const))))
  progress?.('making pages')
  const made: Made[] = []
  for (const [index, speech] of speeches.entries()) {
    const { curriculum, tongue } = speech
    const diagrams = new Map<string, Html>(drawings[index])
    made.push({ ...speech, pages: handbookPages(curriculum, { diagrams, drawn: new Map([...drawn, ...(await drawFences(curriculum, draw))]), examples, editions: seenFrom(editions, speech.under), pdfs, languages }, tongue) })
  }
  return made
}

/** What stands beside the pages of one language: what they load, its feed, its data; `share` holds the pictures beside links, which have no letters and are the same in all. */
async function besidePages({ curriculum, tongue }: Speech, editions: readonly EditionChanges[], share: readonly SiteFile[]): Promise<SiteFile[]> {
  return [
    { name: 'manifest.webmanifest', bytes: webManifest(curriculum, tongue) },
    ...(await assetFiles(curriculum.handbook, tongue)),
    ...share,
    { name: 'feed.xml', bytes: feed(curriculum, editions, tongue) },
    ...dataFiles(curriculum),
    ...editionsFiles(curriculum, editions),
  ]
}

/** Files of one language, in its folder. */
const below = (under: string, files: readonly SiteFile[]): SiteFile[] => files.map(({ name, bytes }) => ({ name: under + name, bytes }))

/** Writes a handbook's pages in every language, and what they load, below a folder of the output. */
async function writeWhole(made: readonly Made[], editions: readonly EditionChanges[], filling: Filling, folder = ''): Promise<void> {
  const share = made[0] ? shareFiles(made[0].curriculum) : []
  for (const each of made) await filling.write(below(folder + each.under, [...(await pageFiles(each.pages)), ...(await besidePages(each, editions, share))]))
  const mapped = made.flatMap(({ tongue: { language }, curriculum: { handbook: { address } }, pages }) => (address === undefined ? [] : [{ language, root: address, pages }]))
  await filling.write(below(folder, [{ name: '_headers', bytes: headersFile(made.map(({ under }) => under), searchParts(made[0]?.curriculum.ladders.length ?? 0)) }, ...(mapped.length === 0 ? [] : [{ name: 'sitemap.xml', bytes: siteMap(mapped) }])]))
}

/** A page as a file, as it is served. */
const pageFile = ({ address, html }: WrittenPage): SiteFile => ({ name: fileOf(address), bytes: html })

/** Cards printed to files by a Chromium, where one was asked for. */
async function printedCards(made: readonly Made[], chromium: string | undefined): Promise<Outcome<readonly SiteFile[]>> {
  if (chromium === undefined) return []
  const printed: SiteFile[] = []
  for (const { pages, curriculum, tongue, under } of made) {
    const files = await cardPdfs([...pages.map(pageFile), ...(await assetFiles(curriculum.handbook, tongue))], curriculum.ladders.map(({ id }) => id), chromium)
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
export async function buildSite(curriculum: MeasuredCurriculum, source: Shelves, out: string, progress: (stage: string) => void, { chromium, cache = NO_CACHE, workers = 1, link = false }: { chromium?: string | undefined; cache?: Cache; workers?: number; link?: boolean } = {}): Promise<Outcome<Built>> {
  progress('reading earlier editions')
  const { changes, kept } = await readEditions(source.folder, curriculum)
  progress('preparing pictures')
  const pictures = await publishedPictures(curriculum, source, cache)
  progress('drawing diagrams')
  const made = await drawnPages(speechesOf(curriculum), { editions: changes, cache, workers, drawn: pictures.drawn, pdfs: chromium !== undefined, progress })
  if (chromium !== undefined) progress('printing cards')
  const pdfs = await printedCards(made, chromium)
  if (isMissing(pdfs)) return pdfs
  let files = 0
  const published = await publish(out, async (folder, before) => {
    const filling = await fillFolder(folder, { before, cache })
    progress('writing pages')
    const pages = async (): Promise<void> => {
      await writeWhole(made, changes, filling)
      for (const { under } of made) await filling.write(below(under, pictures.files))
      for (const { edition, curriculum: then } of kept) await writeWhole(await drawnPages(first(then), { editions: [], cache, workers }), [], filling, keptAt(edition).slice(1))
      await filling.write(pdfs)
    }
    const search = async (): Promise<void> => {
      for (const { pages: indexed, under } of made) await filling.write(below(under, await searchFiles(indexed, { cache, old: (name, sha256) => filling.old(under + name, sha256) })))
    }
    await sideBySide([search, pages], (each) => each()) // the index is made by a process of its own
    const folders = made.map(({ under }) => under).filter((under) => under !== '')
    const written = filling.originals()
    await filling.write(made.flatMap(({ under }) => below(under, [offlineFile(curriculum, written, under, under === '' ? folders : [])])))
    await writeManifest(folder, curriculum.handbook.edition, filling.all())
    files = filling.all().length
  }, { link })
  if (isMissing(published)) return published
  await cache.tidy()
  return { pages: made.reduce((sum, { pages }) => sum + pages.length, 0), files }
}
