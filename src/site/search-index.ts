import { createHash } from 'node:crypto'
import type { WrittenPage } from '../page/handbook-pages.ts'
import { NO_CACHE, type Cache } from './cache.ts'
import { sha256Of } from './copies.ts'
import { indexerVersion, indexOf, withIndexer, type IndexFile, type Searched } from './indexer.ts'
import { packed, unpacked } from './packed.ts'
import { fileOf } from './plugin.ts'
import type { SiteFile } from './site-file.ts'

/** Of what the indexer gives, what a page of ours loads: an index for each part, the scripts once. Its ready-made faces and its worker stay away. */
const INDEX = /^pagefind-entry\.json$|\.pf_(meta|index|fragment|filter|sort)$/
const INDEX_AND_SCRIPTS = new RegExp(`${INDEX.source}|^pagefind\\.js$|^wasm\\..*\\.pagefind$`)

/** Of a page what is searched, in its language; undefined for a page that is not. The index is the same to the byte as that of whole pages, for two thirds of the time. */
function searched({ address, html }: WrittenPage): Searched | undefined {
  const from = html.indexOf('<main id="page" data-pagefind-body>')
  const root = html.slice(0, html.indexOf('>', html.indexOf('<html')) + 1)
  return from < 0 ? undefined : { sourcePath: fileOf(address), content: `${root}<body>${html.slice(from, html.lastIndexOf('</main>'))}</main></body></html>` }
}

/** In how many parts the index is wanted, as the search page says that asks for them. */
const partsWanted = (pages: readonly WrittenPage[]): number => Number(/ data-parts="(\d+)"/.exec(pages.find(({ address }) => address === '/search/')?.html ?? '')?.[1] ?? 1)

/** The part a page stands in: all pages of a ladder in one, whatever other ladders there are. */
const partOf = ({ sourcePath }: Searched, parts: number): number => createHash('sha256').update(sourcePath.split('/')[0] ?? '').digest().readUInt32BE() % parts

/** The files of the search index of some pages, by name below pagefind/. A large handbook's is in parts, which the search page joins; with a cache, a part whose pages are as they were is not made again. */
export async function searchFiles(pages: readonly WrittenPage[], cache: Cache = NO_CACHE): Promise<SiteFile[]> {
  const parts = Array.from({ length: partsWanted(pages) }, (): Searched[] => [])
  for (const page of pages.map(searched)) if (page) parts[partOf(page, parts.length)]?.push(page)
  const version = await indexerVersion()
  return withIndexer(async () => {
    const files: SiteFile[] = []
    for (const [part, within] of parts.entries()) {
      const [folder, wanted] = part === 0 ? ['pagefind/', INDEX_AND_SCRIPTS] : [`pagefind/part-${part}/`, INDEX]
      const from = within.map(({ sourcePath, content }) => `${sourcePath} ${sha256Of(content)}\n`).join('')
      const made = await cache.of(`search index, ${wanted.source}, ${version}`, from, async () => packed((await indexOf(within)).filter(({ name }) => wanted.test(name))))
      files.push(...unpacked<IndexFile>(made).map(({ name, bytes }) => ({ name: folder + name, bytes })))
    }
    return files
  })
}
