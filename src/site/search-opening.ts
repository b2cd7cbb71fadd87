import type { Opening } from '../page/search-page.ts'
import { sha256Of } from './copies.ts'
import type { SiteFile } from './site-file.ts'

const ENTRY = /pagefind-entry\.json$/

/** The entries among an index's files, one for each part. */
export const entriesIn = (files: readonly SiteFile[]): SiteFile[] => files.filter(({ name }) => ENTRY.test(name))

/** What an index says of itself in its entry: for each language the digest in its list's name, and which of its engines speaks it. */
type Entry = { readonly languages: Readonly<Record<string, { readonly hash: string; readonly wasm: string | null; readonly page_count: number }>> }

/** What every search of a handbook begins with, by the entries of its index: the engine, and of each part its entry and its list of pages. The engine is the heaviest, so it is the first. */
export function searchOpening(entries: readonly SiteFile[], scripts: readonly string[]): Opening {
  const parts = entries.toSorted((a, b) => a.name.length - b.name.length || (a.name < b.name ? -1 : 1))
  const read = parts.flatMap(({ name, bytes }) => {
    const { languages } = JSON.parse(Buffer.from(bytes).toString()) as Entry
    const [most] = Object.values(languages).toSorted((a, b) => b.page_count - a.page_count) // one, for a handbook's pages are of one language
    return most ? [{ name, list: name.replace(ENTRY, `pagefind.${most.hash}.pf_meta`), engine: name.replace(ENTRY, `wasm.${most.wasm ?? 'unknown'}.pagefind`) }] : []
  })
  return {
    parts: parts.length,
    tag: sha256Of(parts.map(({ bytes }) => Buffer.from(bytes).toString()).join('\n')).slice(0, 8),
    scripts: [...scripts, 'pagefind/pagefind.js'],
    files: [...read.slice(0, 1).map(({ engine }) => engine), ...read.map(({ name }) => name), ...read.map(({ list }) => list)],
  }
}
