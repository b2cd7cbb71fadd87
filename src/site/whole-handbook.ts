import type { MeasuredLadder } from '../measure/measure.ts'
import type { EditionChanges } from '../page/changes-page.ts'
import type { Examples } from '../page/check-pages.ts'
import { commonDataFiles } from '../page/data.ts'
import type { Drawn } from '../page/drawn.ts'
import { editionsFiles } from '../page/editions-data.ts'
import { feed } from '../page/feed.ts'
import { firstPage, otherPages, writtenPage } from '../page/handbook-pages.ts'
import { diagramName, ladderDiagram } from '../page/ladder-diagram.ts'
import { searchChoices } from '../page/search-choices.ts'
import { searchPage } from '../page/search-page.ts'
import { searchParts } from '../page/search-parts.ts'
import { headersFile } from '../page/served.ts'
import { siteMap, webManifest } from '../page/site-files.ts'
import type { Speech } from '../page/speech.ts'
import type { Tongue } from '../page/tongue.ts'
import { assetsOf } from './assets.ts'
import type { Cache } from './cache.ts'
import { drawFences } from './draw-fences.ts'
import type { Draw } from './drawn-once.ts'
import { handbookShareFile } from './drawn-pictures.ts'
import { seenFrom } from './editions.ts'
import type { Filling } from './filling.ts'
import { withIndexer } from './indexer.ts'
import { laddersOnce, lay, layLadder, type Ladders, type Laid, type Looked } from './ladders-once.ts'
import { pageFiles } from './page-files.ts'
import { addressOf, fileOf } from './plugin.ts'
import { partFiles, partOf } from './search-index.ts'
import { entriesIn, searchOpening } from './search-opening.ts'
import { sideBySide } from './side-by-side.ts'
import { below, type SiteFile } from './site-file.ts'

/** What a handbook shows beside its curriculum, and by what it is made: `drawn` holds the pictures that stand in pages, `draw` draws charts, `tool` is the digest of what makes it all. */
export type Shown = { readonly editions: readonly EditionChanges[]; readonly examples: Examples; readonly drawn: Drawn; readonly pdfs: boolean; readonly draw: Draw; readonly cache: Cache; readonly tool: string; readonly progress: (stage: string) => void }

/** Where a handbook is written: below a folder of the output, with a search index or without. */
type Where = { readonly folder: string; readonly searched: boolean }

/** Writes a handbook in every language. A ladder whose files lie in the old handbook already is not drawn and not made. Returns the number of pages. */
export async function writeHandbook(speeches: readonly Speech[], shown: Shown, filling: Filling, where: Where = { folder: '', searched: true }): Promise<number> {
  shown.progress('looking for what has not changed')
  const languages = await laddersOnce(speeches, shown, where.folder)
  shown.progress('drawing diagrams')
  const drawings = await Promise.all(languages.map((ladders) => diagramsOf(ladders, shown.draw)))
  shown.progress('making pages')
  const mapped: { language: string; root: string | undefined; pages: readonly string[] }[] = []
  for (const [index, ladders] of languages.entries()) {
    const { curriculum: { handbook }, tongue: { language } } = ladders.setting.speech
    mapped.push({ language, root: handbook.address, pages: await writeSpeech(ladders, drawings[index] ?? new Map(), shown, filling, where) })
  }
  const addressed = mapped.flatMap(({ language, root, pages }) => (root === undefined ? [] : [{ language, root, pages: pages.map((name) => ({ address: addressOf(name) })) }]))
  await filling.write(below(where.folder, [{ name: '_headers', bytes: headersFile(speeches.map(({ under }) => under), partsOf(speeches[0])) }, ...(addressed.length === 0 ? [] : [{ name: 'sitemap.xml', bytes: siteMap(addressed) }])]))
  return mapped.reduce((sum, { pages }) => sum + pages.length, 0)
}

/** In how many parts its search index is. */
const partsOf = (speech: Speech | undefined): number => searchParts(speech?.curriculum.ladders.length ?? 0)

/** The diagrams of the ladders whose files are not known, by id. */
const diagramsOf = async ({ looked, setting: { speech: { tongueOf } } }: Ladders, draw: Draw): Promise<ReadonlyMap<string, string>> =>
  new Map(await Promise.all(looked.flatMap(({ ladder, known }) => (known ? [] : [drawnFor(ladder, tongueOf(ladder), draw).then((svg) => [ladder.id, svg] as const)]))))

const drawnFor = (ladder: MeasuredLadder, tongue: Tongue, draw: Draw): Promise<string> => draw(ladderDiagram(ladder, tongue), diagramName(ladder))

/** Writes a handbook in one language. Returns the names of its pages, in order. */
async function writeSpeech(ladders: Ladders, diagrams: ReadonlyMap<string, string>, shown: Shown, filling: Filling, { searched }: Where): Promise<string[]> {
  const { setting: { speech, frame }, place, looked } = ladders
  const { curriculum, tongue, under } = speech
  const whole: Ladders = { ...ladders, setting: { ...ladders.setting, drawn: new Map([...shown.drawn, ...(await drawFences(curriculum, shown.draw))]) } }
  const made = await pageFiles([firstPage(curriculum), ...otherPages(curriculum, { examples: shown.examples, editions: seenFrom(shown.editions, under) })].map((page) => writtenPage(page, frame, whole.setting.drawn, tongue)))
  const ofNone = await lay(made, place, filling)
  const laid = new Map<string, readonly Laid[]>()
  const ofLadders = (some: readonly Looked[]): Laid[] => some.flatMap(({ ladder: { id } }) => laid.get(id) ?? [])
  const parts = partsOf(speech)
  const assets = await assetsOf(curriculum.handbook, tongue)
  const entries: SiteFile[] = []
  const index = async (part: number, within: readonly Looked[]): Promise<void> => {
    const pages = [...ofNone.filter(({ name }) => partOf(name, parts) === part), ...ofLadders(within)].flatMap(({ name, sha256, searched: is }) => (is ? [{ name, sha256, text: () => filling.text(place + name) }] : []))
    const files = await partFiles(part, pages, { cache: shown.cache, old: (name, sha256) => filling.old(place + name, sha256) })
    entries.push(...entriesIn(files))
    await filling.write(below(place, files))
  }
  await behind(async (begin) => {
    for (const { part, within } of partsOfLadders(looked, parts)) {
      await sideBySide(within, async (each) => void laid.set(each.ladder.id, await layLadder(each, async ({ id }) => diagrams.get(id) ?? drawnFor(each.ladder, speech.tongueOf(each.ladder), shown.draw), whole, filling)))
      if (searched) begin(() => index(part, within))
    }
    await filling.write(below(place, [...assets.files, ...besidePages(speech, shown.editions)]))
    await filling.copies()
  })
  const search = writtenPage(searched ? searchPage(searchChoices(speech), searchOpening(entries, assets.searching)) : searchPage([]), frame, whole.setting.drawn, tongue)
  const last = await lay([{ name: fileOf(search.address), bytes: search.html }], place, filling)
  return [...ofNone.slice(0, 1), ...ofLadders(looked), ...ofNone.slice(1), ...last].flatMap(({ name }) => (name.endsWith('.html') ? [name] : []))
}

/** The ladders by the part of the index they stand in. A part that will be made anew comes first: it is indexed while files of the others are laid down. */
const partsOfLadders = (looked: readonly Looked[], parts: number): { part: number; within: Looked[] }[] =>
  Array.from({ length: parts }, (_, part) => ({ part, within: looked.filter(({ ladder: { id } }) => partOf(id, parts) === part) })).toSorted((a, b) => Number(allKnown(a.within)) - Number(allKnown(b.within)))

const allKnown = (looked: readonly Looked[]): boolean => looked.every(({ known }) => known)

/** Does work beside which other work can be begun, one after another; the indexer's process is there as long. */
const behind = (work: (begin: (other: () => Promise<void>) => void) => Promise<void>): Promise<void> =>
  withIndexer(async () => {
    const failed: unknown[] = []
    let others = Promise.resolve()
    await work((other) => {
      others = others.then(() => (failed.length === 0 ? other() : undefined)).catch((error: unknown) => void failed.push(error))
    }).catch((error: unknown) => void failed.push(error))
    await others
    if (failed.length > 0) throw failed[0]
  })

/** What stands beside the pages of one language: its feed, its data. */
function besidePages({ curriculum, tongue }: Speech, editions: readonly EditionChanges[]): SiteFile[] {
  return [
    { name: 'manifest.webmanifest', bytes: webManifest(curriculum, tongue) },
    ...handbookShareFile(curriculum),
    { name: 'feed.xml', bytes: feed(curriculum, editions, tongue) },
    ...commonDataFiles(curriculum),
    ...editionsFiles(curriculum, editions),
  ]
}
