import { existsSync, realpathSync } from 'node:fs'
import path from 'node:path'
import type { EditorFile } from '../editor/outline.ts'
import { HANDBOOK_FILE } from '../read/read-curriculum.ts'
import { editorWorkspace, type EditorWorkspace } from './editor-workspace.ts'
import { watchForEditor } from './editor-watch.ts'
import { pathOfUri, uriOfPath } from './file-address.ts'

/** A workspace and the file of it that an address names. */
export type Opened = { readonly workspace: EditorWorkspace; readonly name: string }

/** The workspaces of an editor's folders, each opened when a file of it is. Nothing outside these folders and the layers their handbooks name is looked at. */
export type Desk = {
  /** Undefined for a file that is in no workspace here. */
  open(uri: string): Opened | undefined
  /** The address of a file, as the editor itself wrote it where it has done so. */
  uriOf(name: string): string
  workspaces(): readonly EditorWorkspace[]
  end(): void
}

/** Lays out a desk over folders. `changed` is called when a workspace changed on disk. */
export function deskOver(folders: readonly string[], changed: (workspace: EditorWorkspace) => void): Desk {
  const roots = folders.map(realOf)
  const opened = new Map<string, EditorWorkspace>()
  const uris = new Map<string, string>()
  const ends: (() => void)[] = []

  function workspaceIn(folder: string): EditorWorkspace {
    const before = opened.get(folder)
    if (before) return before
    const workspace = editorWorkspace(folder)
    opened.set(folder, workspace)
    ends.push(
      watchForEditor(folder, () => {
        workspace.forget()
        changed(workspace)
      }),
    )
    return workspace
  }

  return {
    open(uri) {
      const typed = pathOfUri(uri)
      if (typed === undefined) return undefined
      const name = path.join(realOf(path.dirname(typed)), path.basename(typed))
      const root = roots.find((candidate) => name.startsWith(candidate + path.sep))
      const folder = root === undefined ? undefined : workspaceOf(name, root)
      if (folder === undefined) return undefined
      uris.set(name, uri)
      return { workspace: workspaceIn(folder), name }
    },
    uriOf: (name) => uris.get(name) ?? uriOfPath(name),
    workspaces: () => [...opened.values()],
    end: () => ends.forEach((end) => end()),
  }
}

/** The nearest folder around a file that holds a handbook.yaml, no further out than the root. */
function workspaceOf(name: string, root: string): string | undefined {
  for (let at = path.dirname(name); at === root || at.startsWith(root + path.sep); at = path.dirname(at)) {
    if (existsSync(path.join(at, HANDBOOK_FILE)) || path.join(at, HANDBOOK_FILE) === name) return at
  }
  return undefined
}

/** The one true name of a folder; of one that is not there, the name that was typed. */
function realOf(folder: string): string {
  try {
    return realpathSync(folder)
  } catch {
    return path.resolve(folder)
  }
}

/** Where a file of a workspace lies. */
export const nameOf = (workspace: EditorWorkspace, { shown }: Pick<EditorFile, 'shown'>): string => path.resolve(workspace.folder, shown)
