import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { FIRST } from '../../src/browser/search.ts'

/** What a browser loads to answer a first query: how many files, and how many bytes as they are sent. */
export type FirstQuery = { readonly files: number; readonly bytes: number; readonly kinds: Readonly<Record<string, number>> }

type Index = { init(): Promise<void>; mergeIndex(place: string): Promise<void>; search(words: string, options: object): Promise<{ results: { data(): Promise<unknown> }[] }> }

const kindOf = (file: string): string => (/\.pf_(\w+)$/.exec(file)?.[1] ?? (file.includes('wasm') ? 'wasm' : file.endsWith('.js') ? 'script' : 'entry'))

/** Opens the index of a built handbook as the search page does, every file of it once, asks for a word, and opens the results that stand there first. */
export async function firstQuery(site: string, words: string): Promise<FirstQuery> {
  const place = path.join(site, 'pagefind/')
  const loaded = new Map<string, number>()
  const load = (file: string): Buffer => {
    const bytes = readFileSync(file)
    loaded.set(file, existsSync(`${file}.br`) ? readFileSync(`${file}.br`).length : bytes.length)
    return bytes
  }
  const network = globalThis.fetch
  globalThis.fetch = async (address) => new Response(new Uint8Array(load(String(address).replace(/\?.*/, ''))))
  load(path.join(place, 'pagefind.js'))
  const { createInstance } = (await import(pathToFileURL(path.join(place, 'pagefind.js')).href)) as { createInstance(options: object): Index }
  const index = createInstance({ basePath: place, noWorker: true, language: 'en' })
  await index.init()
  for (let part = 1; existsSync(path.join(place, `part-${part}`)); part += 1) await index.mergeIndex(path.join(place, `part-${part}/`))
  const { results } = await index.search(words, { filters: {} })
  if (results.length === 0) throw new Error(`bug: nothing found for ${words}`)
  await Promise.all(results.slice(0, FIRST).map((result) => result.data()))
  globalThis.fetch = network
  const kinds: Record<string, number> = {}
  for (const [file, bytes] of loaded) kinds[kindOf(file)] = (kinds[kindOf(file)] ?? 0) + bytes
  return { files: loaded.size, bytes: [...loaded.values()].reduce((sum, bytes) => sum + bytes, 0), kinds }
}
