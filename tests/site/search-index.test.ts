import assert from 'node:assert/strict'
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { gunzipSync } from 'node:zlib'
import { createIndex } from 'pagefind'
import { afterEach, test, vi } from 'vitest'
import { searchParts } from '../../src/page/search-parts.ts'
import { cacheIn } from '../../src/site/cache.ts'
import { sha256Of } from '../../src/site/copies.ts'
import * as indexer from '../../src/site/indexer.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { fileOf } from '../../src/site/plugin.ts'
import { isSearched, searchFiles } from '../../src/site/search-index.ts'
import { entriesIn, searchOpening } from '../../src/site/search-opening.ts'
import type { SiteFile } from '../../src/site/site-file.ts'
import { builtDemo, scratch } from './demo.ts'

const folder = await scratch()
const demo = await builtDemo()

/** Pages of the demo in English as they were written; a sixth of its ladders, so that the index is soon made. */
const pages = (await filesBelow(demo))
  .filter((file) => /^([a-f][a-z-]*\/([a-z0-9-]+\/)?|index|search\/)(index)?(\.html)?$/.test(file) && file.endsWith('.html') && !/^(cards|checks|editions|es)\//.test(file))
  .map((file) => ({ address: (file.endsWith('index.html') ? `/${file.slice(0, -'index.html'.length)}` : `/${file}`) as `/${string}`, html: readFileSync(path.join(demo, file), 'utf8') }))
const searchedIn = (of: typeof pages) => of.flatMap(({ address, html }) => (isSearched(html) ? [{ name: fileOf(address), sha256: sha256Of(html), text: () => html }] : []))

const bytesOf = (files: readonly SiteFile[]): [string, string][] => files.map(({ name, bytes }): [string, string] => [name, Buffer.from(bytes).toString('base64')]).toSorted(([a], [b]) => (a < b ? -1 : 1))

const TAG = '0a1b2c3d'

type Index = { init(): Promise<void>; mergeIndex(place: string, options: object): Promise<void>; filters(): Promise<Record<string, Record<string, number>>>; search(words: string | null, options: object): Promise<{ results: { data(): Promise<{ url: string; excerpt: string; meta: Record<string, string>; anchors: unknown[] }> }[] }> }

/** The index as the search page opens it, with a disk for a network; what it asks for is noted. */
async function opened(name: string, parts: number, asked: string[] = []): Promise<Index> {
  const place = path.join(folder, name)
  for (const { name: file, bytes } of await searchFiles(searchedIn(pages), parts)) {
    mkdirSync(path.dirname(path.join(place, file)), { recursive: true })
    writeFileSync(path.join(place, file), bytes)
  }
  vi.stubGlobal('fetch', async (address: string) => {
    asked.push(address.slice(place.length + 1))
    return new Response(readFileSync(address.replace(/\?.*/, '')))
  })
  const { createInstance } = (await import(pathToFileURL(path.join(place, 'pagefind/pagefind.js')).href)) as { createInstance(options: object): Index }
  const index = createInstance({ basePath: `${place}/pagefind/`, noWorker: true, language: 'en', metaCacheTag: TAG })
  await index.init()
  for (let part = 1; part < parts; part += 1) await index.mergeIndex(`${place}/pagefind/part-${part}/`, { metaCacheTag: TAG })
  return index
}
afterEach(() => void vi.unstubAllGlobals())

/** What stands beside each result, by address: its words and where they stand, its title, its filters. */
const fragmentsIn = (files: readonly { readonly path: string; readonly content: Uint8Array }[]): Map<string, Record<string, unknown>> =>
  new Map(
    files.flatMap(({ path: name, content }) => {
      if (!name.endsWith('.pf_fragment')) return []
      const { anchors: _, ...rest } = JSON.parse(gunzipSync(content).toString().replace('pagefind_dcd', '')) as Record<string, unknown>
      return [[String(rest['url']), rest] as const]
    }),
  )

test('an index of what is searched holds the words, titles and filters of an index of whole pages, and no headings', { timeout: 120_000 }, async () => {
  assert.ok(pages.length > 40, `${pages.length} pages`)
  const whole = await indexer.withIndexer(async () => {
    const { index } = await createIndex({})
    for (const { address, html } of pages) await index?.addHTMLFile({ sourcePath: fileOf(address), content: html })
    return (await index?.getFiles())?.files ?? []
  })
  const ours = (await searchFiles(searchedIn(pages), 1)).map(({ name, bytes }) => ({ path: name, content: Buffer.from(bytes) }))
  assert.ok(ours.length > 40)
  assert.deepEqual(fragmentsIn(ours), fragmentsIn(whole))
  const weight = (files: typeof whole, kind: string): number => files.filter(({ path: name }) => name.endsWith(kind)).reduce((sum, { content }) => sum + content.length, 0)
  for (const kind of ['.pf_index', '.pf_filter', '.pf_meta']) assert.ok(Math.abs(weight(ours, kind) / weight(whole, kind) - 1) < 0.02, kind)
  for (const { path: name, content } of ours) if (name.endsWith('.pf_fragment')) assert.match(gunzipSync(content).toString(), /"anchors":\[\]/)
})

test('an index in parts finds what one index finds, with the same filters and titles', { timeout: 120_000 }, async () => {
  const [one, four] = [await opened('one', 1), await opened('four', 4)]
  assert.deepEqual(readdirSync(path.join(folder, 'four/pagefind')).filter((name) => name.startsWith('part-')), ['part-1', 'part-2', 'part-3'])
  assert.deepEqual(await four.filters(), await one.filters())
  const found = async (index: Index, words: string | null, filters: object) =>
    (await Promise.all((await index.search(words, { filters })).results.map((result) => result.data()))).map(({ url, meta, anchors, excerpt }) => ({ url: url.replace(/^.*\/(one|four)\//, '/'), meta, anchors, excerpt })).toSorted((a, b) => (a.url < b.url ? -1 : 1))
  for (const [words, filters] of [['elbows', {}], ['heel floor', {}], ['dip', {}], [null, { equipment: 'mat' }], ['hold', { demand: 'balance' }], ['zzz', {}]] as const) {
    const all = await found(one, words, filters)
    assert.ok(all.length > 0 || words === 'zzz', `${words} ${JSON.stringify(filters)}`)
    assert.deepEqual(await found(four, words, filters), all)
  }
})

for (const parts of [1, 4]) {
  test(`a search of an index in ${parts} begins with the files that are asked for ahead and no other, and loads a filter file only for a choice`, { timeout: 120_000 }, async () => {
    const asked: string[] = []
    const index = await opened(`ahead-${parts}`, parts, asked)
    assert.ok((await index.search('elbows', { filters: {} })).results.length > 0)
    const { files, tag, parts: told } = searchOpening(entriesIn(await searchFiles(searchedIn(pages), parts)), [])
    assert.equal(told, parts)
    assert.match(tag, /^[0-9a-f]{8}$/)
    assert.deepEqual(asked.filter((file) => !file.includes('/index/')).toSorted(), files.map((file) => (file.endsWith('.json') ? `${file}?ts=${TAG}` : file)).toSorted())
    await index.search('elbows', { filters: { equipment: 'mat' } })
    assert.equal(asked.filter((file) => file.includes('/filter/')).length, parts)
  })
}

test('only the part of a changed page is indexed again, to the same bytes; where the old handbook has lost a file of it, a part is too', { timeout: 120_000 }, async () => {
  const cache = cacheIn(path.join(folder, 'cache'))
  const lies = new Map<string, Uint8Array>()
  const old = (name: string, sha256: string): Uint8Array | undefined => {
    const bytes = lies.get(name)
    return bytes && sha256Of(bytes) === sha256 ? bytes : undefined
  }
  const indexed = vi.spyOn(indexer, 'indexOf')
  const times = async (of: typeof pages): Promise<number> => {
    indexed.mockClear()
    const files = await searchFiles(searchedIn(of), 4, { cache, old })
    const made = indexed.mock.calls.length
    for (const { name, bytes } of files) lies.set(name, Buffer.from(bytes))
    assert.deepEqual(bytesOf(files), bytesOf(await searchFiles(searchedIn(of), 4)))
    return made
  }
  const changed = pages.map(({ address, html }) => ({ address, html: address === '/dip/' ? html.replace('</h1>', ' anew</h1>') : html }))
  assert.deepEqual([await times(pages), await times(pages), await times(changed)], [4, 0, 1])
  lies.delete([...lies.keys()].find((name) => name.startsWith('pagefind/part-2/fragment/')) ?? '')
  assert.equal(await times(changed), 1)
})

test('few ladders have one index, parts double as ladders do up to a thousand, and then both parts and what is in each grow', () =>
  assert.deepEqual([0, 1, 256, 257, 512, 513, 1000, 1024, 1025, 4000, 10_000, 100_000].map(searchParts), [1, 1, 1, 2, 2, 4, 4, 4, 4, 8, 16, 32]))
