import { mkdir, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { close, createIndex } from 'pagefind'
import type { WrittenPage } from '../page/handbook-pages.ts'
import { fileOf } from './plugin.ts'

/** Of what the indexer gives, the part a page of ours loads; its ready-made faces stay away. */
const WANTED = /^(pagefind\.js|pagefind-worker\.js|pagefind-entry\.json|wasm\..*\.pagefind|.*\.pf_(meta|index|fragment|filter|sort))$|\/.*\.pf_/

/**
 * Writes the search index of pages below `folder`/pagefind.
 *
 * Throws  bug, when a page of ours cannot be indexed.
 */
export async function writeSearchIndex(pages: readonly WrittenPage[], folder: string): Promise<void> {
  try {
    const { index, errors } = await createIndex({})
    if (!index) throw new Error(`bug: no search index: ${errors.join('; ')}`)
    for (const { address, html } of pages) {
      const added = await index.addHTMLFile({ sourcePath: fileOf(address), content: html })
      if (added.errors.length > 0) throw new Error(`bug: ${address} cannot be indexed: ${added.errors.join('; ')}`)
    }
    const { files } = await index.getFiles()
    for (const { path: name, content } of files) {
      if (!WANTED.test(name)) continue
      const to = path.join(folder, 'pagefind', name)
      await mkdir(path.dirname(to), { recursive: true })
      await writeFile(to, content)
    }
  } finally {
    await close()
  }
}
