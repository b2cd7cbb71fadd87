import { once } from '../quantity/once.ts'
import { diagramName, ladderDiagram } from '../page/ladder-diagram.ts'
import { changesPage } from '../page/changes-page.ts'
import { cardPages } from '../page/cards-page.ts'
import { dataFiles, ladderDataFile } from '../page/data.ts'
import { editionsFiles } from '../page/editions-data.ts'
import { drawnHere, type Drawn } from '../page/drawn.ts'
import { feed } from '../page/feed.ts'
import { firstPage, frameOf, ladderPages, otherPages, writtenPage, type WrittenPage } from '../page/handbook-pages.ts'
import { searchChoices } from '../page/search-choices.ts'
import { searchPage } from '../page/search-page.ts'
import { searchParts } from '../page/search-parts.ts'
import { webManifest } from '../page/site-files.ts'
import type { SitePage } from '../page/site-page.ts'
import type { Tongue } from '../page/tongue.ts'
import { languagesOf, speechesOf, type Speech } from '../page/speech.ts'
import type { MeasuredCurriculum, MeasuredLadder } from '../measure/measure.ts'
import { LIST } from '../browser/offline-list.ts'
import { assetsOf } from './assets.ts'
import type { Cache } from './cache.ts'
import { sha256Of } from './copies.ts'
import { drawFences } from './draw-fences.ts'
import { drawnOnce } from './drawn-once.ts'
import { shareFiles } from './drawn-pictures.ts'
import { readEditions, seenFrom } from './editions.ts'
import { keptNowhere } from './offline-files.ts'
import type { Shelves } from './picture-bytes.ts'
import { publishedPictures } from './pictures.ts'
import { fileOf } from './plugin.ts'
import { ruleExamples } from './rule-examples.ts'
import { isSearched, searchFiles, type SearchedPage } from './search-index.ts'
import { entriesIn, searchOpening } from './search-opening.ts'
import type { SiteFile } from './site-file.ts'

/** A handbook made file by file, when somebody asks: a save costs only what is looked at. The files are those of a build, less what serves readers without a signal. */
export type LiveHandbook = { file(name: string): Promise<SiteFile['bytes'] | undefined> }

/** Stylesheet and scripts, which outlive a change of the curriculum. */
export type AssetMemory = Map<string, Promise<Assets>>
type Assets = { readonly byName: ReadonlyMap<string, SiteFile['bytes']>; readonly searching: readonly string[] }

/** Where the pictures that stand beside links are: painted only when one of them is asked for. */
const SHARED = 'assets/share/'

const byName = (files: readonly SiteFile[]): ReadonlyMap<string, SiteFile['bytes']> => new Map(files.map(({ name, bytes }) => [name, bytes]))
const byFile = (pages: readonly SitePage[]): ReadonlyMap<string, SitePage> => new Map(pages.map((page) => [fileOf(page.address), page]))

/** Everything of a measured curriculum that a build would write, each file when it is asked for. */
export function liveHandbook(curriculum: MeasuredCurriculum, source: Shelves, cache: Cache, assets: AssetMemory): LiveHandbook {
  const speeches = once(() => speechesOf(curriculum))
  const draw = once(() => drawnOnce(cache))
  const pictures = once(() => publishedPictures(curriculum, source, cache))
  const editions = once(() => readEditions(source.folder, curriculum))
  const voices = once(() => speeches().map((speech) => voice(speech, { speeches: speeches(), draw, pictures, editions, assets })))
  return {
    async file(name) {
      const own = voices().toSorted((a, b) => b.under.length - a.under.length).find(({ under }) => name.startsWith(under))
      return own?.file(name.slice(own.under.length))
    },
  }
}

type Shared = {
  readonly speeches: readonly Speech[]
  readonly draw: () => ReturnType<typeof drawnOnce>
  readonly pictures: () => ReturnType<typeof publishedPictures>
  readonly editions: () => ReturnType<typeof readEditions>
  readonly assets: AssetMemory
}

/** The handbook in one language. */
function voice(speech: Speech, shared: Shared): LiveHandbook & { readonly under: string } {
  const { curriculum, tongue, under } = speech
  const tongues = new Map<MeasuredLadder, Tongue>()
  const frame = frameOf(curriculum, languagesOf(shared.speeches), tongue)
  const ladders = new Map(curriculum.ladders.map((ladder) => [ladder.id, ladder]))
  const ofLadder = new Map<string, ReadonlyMap<string, SitePage>>()
  const rest = once(async () => byFile([...otherPages(curriculum, { examples: await ruleExamples(), editions: [] }), ...curriculum.ladders.flatMap((ladder) => cardPages(ladder, curriculum, false))]))
  const fences = once(async () => drawFences(curriculum, await shared.draw()))
  const drawn = once(async (): Promise<Drawn> => new Map([...(await shared.pictures()).drawn, ...(await fences())]))
  const data = once(() => byName(dataFiles(curriculum)))
  const share = once(() => byName(shareFiles(curriculum)))
  const index = once(async () => searchFiles(await searchedPages(), searchParts(curriculum.ladders.length)))
  const search = once(async () => byName(await index()))

  async function pageAt(name: string): Promise<SitePage | undefined> {
    if (name === 'index.html') return firstPage(curriculum)
    if (name === 'search/index.html') return searchPage(searchChoices(speech), searchOpening(entriesIn(await index()), (await assets()).searching))
    if (name === 'changes/index.html') return changesPage(curriculum, seenFrom((await shared.editions()).changes, under))
    const id = name.slice(0, name.indexOf('/'))
    const ladder = ladders.get(id)
    if (!ladder) return (await rest()).get(name)
    const known = ofLadder.get(id) ?? byFile(ladderPages(ladder, drawnHere(diagramName(ladder)), curriculum))
    ofLadder.set(id, known)
    return known.get(name) ?? (await rest()).get(name)
  }

  async function finished(page: SitePage): Promise<WrittenPage> {
    const ladder = ladders.get(page.ladder ?? '')
    const own: Drawn = ladder ? new Map([[diagramName(ladder), await (await shared.draw())(ladderDiagram(ladder, tongueOf(page)), diagramName(ladder))]]) : new Map()
    return writtenPage(page, frame, new Map([...(await drawn()), ...own]), tongueOf(page))
  }

  function tongueOf({ ladder: of, address }: SitePage): Tongue {
    const ladder = ladders.get(of ?? /^\/cards\/([^/]+)\//.exec(address)?.[1] ?? '')
    if (!ladder) return tongue
    const known = tongues.get(ladder) ?? speech.tongueOf(ladder)
    tongues.set(ladder, known)
    return known
  }

  async function searchedPages(): Promise<SearchedPage[]> {
    const all = [firstPage(curriculum), ...curriculum.ladders.flatMap((ladder) => ladderPages(ladder, drawnHere(diagramName(ladder)), curriculum)), ...(await rest()).values()]
    const pages = all.map((page) => writtenPage(page, frame, new Map(), tongueOf(page))) // pictures hold nothing to search
    return pages.flatMap(({ address, html }) => (isSearched(html) ? [{ name: fileOf(address), sha256: sha256Of(html), text: () => html }] : []))
  }

  function assets(): Promise<Assets> {
    const key = JSON.stringify([curriculum.handbook, tongue.language, [...(curriculum.words?.get(tongue.language) ?? [])]])
    const made = shared.assets.get(key) ?? assetsOf(curriculum.handbook, tongue).then(({ files, searching }) => ({ byName: byName(files), searching }))
    shared.assets.set(key, made)
    return made
  }

  return {
    under,
    async file(name) {
      if (name.endsWith('.html')) {
        const page = await pageAt(name)
        return page && (await finished(page)).html
      }
      if (name.startsWith('pagefind/')) return (await search()).get(name)
      if (name.startsWith('data/ladders/')) {
        const ladder = ladders.get(name.slice('data/ladders/'.length, -'.json'.length))
        return ladder && ladderDataFile(ladder, curriculum.handbook.edition).bytes
      }
      if (name.startsWith('data/editions')) return byName(editionsFiles(curriculum, (await shared.editions()).changes)).get(name)
      if (name === LIST) return keptNowhere(curriculum).bytes
      if (name.startsWith('data/')) return data().get(name)
      if (name === 'feed.xml') return feed(curriculum, (await shared.editions()).changes, tongue)
      if (name === 'manifest.webmanifest') return webManifest(curriculum, tongue)
      if (name === 'service-worker.js') return undefined // nothing is kept of a preview, and its list says so
      if (name.startsWith(SHARED)) return share().get(name)
      return (await assets()).byName.get(name) ?? (await shared.pictures()).files.find((file) => file.name === name)?.bytes
    },
  }
}
