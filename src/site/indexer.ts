import { readFile } from 'node:fs/promises'

/** A page as the indexer is given it. */
export type Searched = { readonly sourcePath: string; readonly content: string }

/** The indexer is one process, for all that ask at the same time. */
const running = { users: 0 }

/** Does work that asks the indexer, and ends its process when nobody is left who does. */
export async function withIndexer<Done>(work: () => Promise<Done>): Promise<Done> {
  running.users += 1
  try {
    return await work()
  } finally {
    const { close } = await import('pagefind')
    running.users -= 1
    if (running.users === 0) await close()
  }
}

/**
 * The index of some pages.
 *
 * Throws  bug, when a page of ours cannot be indexed.
 */
export async function indexOf(pages: readonly Searched[]): Promise<{ name: string; bytes: Uint8Array }[]> {
  const { createIndex } = await import('pagefind')
  const { index, errors } = await createIndex({})
  if (!index) throw new Error(`bug: no search index: ${errors.join('; ')}`)
  const added = await Promise.all(pages.map(async (page) => ({ page, ...(await index.addHTMLFile(page)) }))) // they are taken in the order in which they were sent
  const failed = added.find((each) => each.errors.length > 0)
  if (failed) throw new Error(`bug: ${failed.page.sourcePath} cannot be indexed: ${failed.errors.join('; ')}`)
  const { files } = await index.getFiles()
  await index.deleteIndex()
  return files.map(({ path, content }) => ({ name: path, bytes: content }))
}

/** What decides the bytes of an index beside the pages: the indexer, by its version. */
export const indexerVersion = (): Promise<string> => readFile(new URL('../package.json', import.meta.resolve('pagefind')), 'utf8')
