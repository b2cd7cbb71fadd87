import type { WrittenPage } from '../page/handbook-pages.ts'
import { fileOf } from './plugin.ts'
import type { SiteFile } from './site-file.ts'

/** Of what the indexer gives, the part a page of ours loads; its ready-made faces and its worker stay away. */
const WANTED = /^(pagefind\.js|pagefind-entry\.json|wasm\..*\.pagefind|.*\.pf_(meta|index|fragment|filter|sort))$|\/.*\.pf_/

/**
 * The files of the search index of some pages, by name below pagefind/.
 *
 * Throws  bug, when a page of ours cannot be indexed.
 */
export async function searchFiles(pages: readonly WrittenPage[]): Promise<SiteFile[]> {
  const { close, createIndex } = await import('pagefind')
  try {
    const { index, errors } = await createIndex({})
    if (!index) throw new Error(`bug: no search index: ${errors.join('; ')}`)
    for (const { address, html } of pages) {
      const added = await index.addHTMLFile({ sourcePath: fileOf(address), content: html })
      if (added.errors.length > 0) throw new Error(`bug: ${address} cannot be indexed: ${added.errors.join('; ')}`)
    }
    const { files } = await index.getFiles()
    return files.filter(({ path }) => WANTED.test(path)).map(({ path, content }) => ({ name: `pagefind/${path}`, bytes: content }))
  } finally {
    await close()
  }
}
