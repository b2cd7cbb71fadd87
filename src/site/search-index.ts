import { createHash } from 'node:crypto'
import { NO_CACHE, type Cache } from './cache.ts'
import { sha256Of } from './copies.ts'
import { indexerVersion, indexOf, withIndexer, type Searched } from './indexer.ts'
import type { SiteFile } from './site-file.ts'

/** Of what the indexer gives, what a page of ours loads: an index for each part, the scripts once. Its ready-made faces and its worker stay away. */
const INDEX = /^pagefind-entry\.json$|\.pf_(meta|index|fragment|filter|sort)$/
const INDEX_AND_SCRIPTS = new RegExp(`${INDEX.source}|^pagefind\\.js$|^wasm\\..*\\.pagefind$`)

/** Where the searched part of a page begins. */
const BEGINS = '<main id="page" data-pagefind-body>'

export const isSearched = (html: string): boolean => html.includes(BEGINS)

/** What the indexer passes over: drawings, what is typed into, and sections that are not searched, none of which holds another. */
const PASSED_OVER = /<(svg|form|label|section(?=[^<>]* data-pagefind-ignore))[\s>][\s\S]*?<\/\1>/g
/** Of what stands in a tag, it reads nothing but what is written for it. It would list every id with the words below it beside each result, and no result of ours leads to one. */
const UNREAD = / (?!data-pagefind)[a-z][a-z0-9-]*(?:="[^"<>]*")?(?=[\s>])/g

/** Of a page what is searched, in its language. It is found by the same words as the whole page, for a third of the time. */
function searched(html: string): string {
  const root = html.slice(0, html.indexOf('>', html.indexOf('<html')) + 1)
  const main = html.slice(html.indexOf(BEGINS), html.lastIndexOf('</main>'))
  return `${root}<body>${main.replace(PASSED_OVER, '').replace(/<[a-z][a-z0-9]* [^<>]*>/g, (tag) => tag.replace(UNREAD, ''))}</main></body></html>`
}

/** A page that is searched: its file, the digest of that, and its text for when it is wanted. */
export type SearchedPage = { readonly name: string; readonly sha256: string; readonly text: () => string }

/** The part of so many that a page stands in: all pages of a ladder in one, whatever other ladders there are. */
export const partOf = (name: string, parts: number): number => createHash('sha256').update(name.split('/')[0] ?? '').digest().readUInt32BE() % parts

/** A file of an index that was made before, by its digest. */
type Known = { readonly name: string; readonly sha256: string }
/** What is kept from before: in a cache the digests of each part's files, and the files themselves in the old handbook, which gives the bytes of a name where they have a digest. */
type Before = { readonly cache: Cache; readonly old: (name: string, sha256: string) => Uint8Array | undefined }
const NOTHING: Before = { cache: NO_CACHE, old: () => undefined }

/** The files of the search index of some pages, by name below pagefind/, in as many parts as the search page joins. */
export const searchFiles = (pages: readonly SearchedPage[], parts: number, before = NOTHING): Promise<SiteFile[]> =>
  withIndexer(async () => {
    const files: SiteFile[] = []
    for (let part = 0; part < parts; part += 1) files.push(...(await partFiles(part, pages.filter(({ name }) => partOf(name, parts) === part), before)))
    return files
  })

/** The files of one part. Where its pages are as they were before, it is not made again. */
export async function partFiles(part: number, pages: readonly SearchedPage[], { cache, old } = NOTHING): Promise<SiteFile[]> {
  const [folder, wanted] = part === 0 ? ['pagefind/', INDEX_AND_SCRIPTS] : [`pagefind/part-${part}/`, INDEX]
  const made = async (): Promise<SiteFile[]> => {
    const read = pages.map(({ name, text }): Searched => ({ sourcePath: name, content: searched(text()) }))
    return (await withIndexer(() => indexOf(read))).filter(({ name }) => wanted.test(name)).map(({ name, bytes }) => ({ name: folder + name, bytes }))
  }
  const from = pages.map(({ name, sha256 }) => `${name} ${sha256}\n`).join('')
  const fresh: SiteFile[] = []
  const known = await cache.of(`search index in ${folder}, ${wanted.source}, ${await indexerVersion()}`, from, async () => {
    fresh.push(...(await made()))
    return Buffer.from(JSON.stringify(fresh.map(({ name, bytes }): Known => ({ name, sha256: sha256Of(bytes) }))))
  })
  if (fresh.length > 0) return fresh
  const there = (JSON.parse(Buffer.from(known).toString()) as Known[]).map(({ name, sha256 }) => ({ name, bytes: old(name, sha256) }))
  const whole = there.flatMap(({ name, bytes }) => (bytes ? [{ name, bytes }] : []))
  return whole.length === there.length ? whole : made()
}
