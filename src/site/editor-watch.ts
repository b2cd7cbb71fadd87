import { watch } from 'node:fs'
import path from 'node:path'

/** Calls `changed` when something a workspace is read from changes on disk; gives what ends the watch. Folders that are not there are not watched. */
export function watchForEditor(folder: string, changed: () => void): () => void {
  const watched = [
    { name: folder, recursive: false },
    { name: path.join(folder, 'ladders'), recursive: true },
    { name: path.join(folder, 'content'), recursive: true },
  ]
  const watchers = watched.flatMap(({ name, recursive }) => {
    try {
      const watcher = watch(name, { recursive, persistent: false }, (_, file) => {
        if (name !== folder || file === null || /^(handbook\.yaml|ladders|content|words\..*\.yaml|.*\.svg)$/.test(file)) changed()
      })
      return [watcher.on('error', () => watcher.close())]
    } catch {
      return []
    }
  })
  return () => watchers.forEach((watcher) => watcher.close())
}
