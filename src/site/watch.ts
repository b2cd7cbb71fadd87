import { watch } from 'node:fs'
import path from 'node:path'

/** Changes closer together than this are one save. Units ms. */
const TOGETHER_MS = 80

/** What of a workspace is read. */
const READ = /^(handbook\.yaml|words\.[^\\/]*\.yaml$|ladders([\\/]|$)|content([\\/]|$))/

/**
 * Calls `changed` after each save in any of the folders, once a save; saves during a call are answered by one more call after it.
 *
 * Shape   folders and what to do, to a function that ends the watch.
 */
export function watchWorkspace(folders: readonly string[], changed: () => Promise<void>): () => void {
  let timer: NodeJS.Timeout | undefined
  let running = false
  let again = false
  const call = async (): Promise<void> => {
    if (running) {
      again = true
      return
    }
    running = true
    do {
      again = false
      await changed()
    } while (again)
    running = false
  }
  const watchers = folders.map((folder) =>
    watch(folder, { recursive: true }, (_, name) => {
      if (name === null || !READ.test(path.normalize(name))) return
      clearTimeout(timer)
      timer = setTimeout(() => void call(), TOGETHER_MS)
    }),
  )
  return () => {
    clearTimeout(timer)
    for (const watcher of watchers) watcher.close()
  }
}
