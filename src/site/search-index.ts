import { createHash } from 'node:crypto'
import type { WrittenPage } from '../page/handbook-pages.ts'
import { NO_CACHE, type Cache } from './cache.ts'
import { sha256Of } from './copies.ts'
import { indexerVersion, indexOf, withIndexer, type Searched } from './indexer.ts'
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

/** A file of an index that was made before, by its digest. */
type Known = { readonly name: string; readonly sha256: string }
/** What is kept from before: in a cache the digests of each part's files, and the files themselves in the old handbook, which gives the bytes of a name where they have a digest. */
type Before = { readonly cache: Cache; readonly old: (name: string, sha256: string) => Uint8Array | undefined }

/** The files of the search index of some pages, by name below pagefind/. A large handbook's is in parts, which the search page joins; a part whose pages are as they were before is not made again. */
export async function searchFiles(pages: readonly WrittenPage[], before: Before = { cache: NO_CACHE, old: () => undefined }): Promise<SiteFile[]> {
  const parts = Array.from({ length: partsWanted(pages) }, (): Searched[] => [])
  for (const page of pages.map(searched)) if (page) parts[partOf(page, parts.length)]?.push(page)
  const version = await indexerVersion()
  return withIndexer(async () => {
    const files: SiteFile[] = []
    for (const [part, within] of parts.entries()) files.push(...(await partFiles(part, within, version, before)))
    return files
  })
}

async function partFiles(part: number, pages: readonly Searched[], version: string, { cache, old }: Before): Promise<SiteFile[]> {
  const [folder, wanted] = part === 0 ? ['pagefind/', INDEX_AND_SCRIPTS] : [`pagefind/part-${part}/`, INDEX]
  const made = async (): Promise<SiteFile[]> => (await indexOf(pages)).filter(({ name }) => wanted.test(name)).map(({ name, bytes }) => ({ name: folder + name, bytes }))
  const from = pages.map(({ sourcePath, content }) => `${sourcePath} ${sha256Of(content)}\n`).join('')
  const fresh: SiteFile[] = []
  const known = await cache.of(`search index in ${folder}, ${wanted.source}, ${version}`, from, async () => {
    fresh.push(...(await made()))
    return Buffer.from(JSON.stringify(fresh.map(({ name, bytes }): Known => ({ name, sha256: sha256Of(bytes) }))))
  })
  if (fresh.length > 0) return fresh
  const there = (JSON.parse(Buffer.from(known).toString()) as Known[]).map(({ name, sha256 }) => ({ name, bytes: old(name, sha256) }))
  const whole = there.flatMap(({ name, bytes }) => (bytes ? [{ name, bytes }] : []))
  return whole.length === there.length ? whole : made()
}
