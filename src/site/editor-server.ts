import type { Readable, Writable } from 'node:stream'
import { CodeActionKind, createConnection, ProposedFeatures, ResponseError, TextDocuments, TextDocumentSyncKind, type Connection, type InitializeParams, type InitializeResult, type TextDocumentPositionParams } from 'vscode-languageserver/node'
import { TextDocument } from 'vscode-languageserver-textdocument'
import { completionsAt, definitionsAt, diagnosticsOf, fixesIn, hoverAt, referencesAt, renamableAt, renameAt, type Asked } from './editor-answers.ts'
import { deskOver, type Desk } from './editor-desk.ts'
import type { EditorWorkspace } from './editor-workspace.ts'
import { pathOfUri } from './file-address.ts'

/** Typing that pauses for less than this is not yet checked. Units ms. Chosen by us. */
const PAUSE_MS = 150

const capabilities: InitializeResult['capabilities'] = {
  textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: { includeText: false } },
  completionProvider: { triggerCharacters: [' ', ':', '/', '(', '#', '[', ','] },
  hoverProvider: true,
  definitionProvider: true,
  referencesProvider: true,
  renameProvider: { prepareProvider: true },
  codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] },
}

/**
 * Serves an editor over two streams until it says exit; then the process ends.
 *
 * Shape   `folder`, where one is given, takes the place of the folders the editor names; `started` is where the program was started.
 */
export function serveEditor(input: Readable, output: Writable, folder: string | undefined, started: string): void {
  const connection = createConnection(ProposedFeatures.all, input, output)
  const documents = new TextDocuments(TextDocument)
  let desk: Desk = deskOver([], () => undefined)
  const publishing = publisher(connection, () => desk)

  connection.onInitialize((params) => {
    desk = deskOver(folder === undefined ? foldersOf(params, started) : [folder], publishing)
    return { capabilities, serverInfo: { name: 'rungbook' } }
  })
  connection.onShutdown(() => desk.end())

  documents.onDidChangeContent(({ document }) => lay(desk, document.uri, document.getText(), publishing))
  documents.onDidClose(({ document }) => lay(desk, document.uri, undefined, publishing))
  documents.onDidSave(() => afresh(desk, publishing))
  connection.onDidChangeWatchedFiles(() => afresh(desk, publishing))

  const at = <Params extends TextDocumentPositionParams, Answer>(answer: (asked: Asked, params: Params) => Promise<Answer>) =>
    guarded(connection, async (params: Params) => {
      const opened = desk.open(params.textDocument.uri)
      return opened ? await answer({ desk, opened, position: params.position }, params) : null
    })
  connection.onCompletion(at(completionsAt))
  connection.onHover(at(hoverAt))
  connection.onDefinition(at(definitionsAt))
  connection.onReferences(at(referencesAt))
  connection.onPrepareRename(at(renamableAt))
  connection.onRenameRequest(at((asked, { newName }) => renameAt(asked, newName)))
  connection.onCodeAction(
    guarded(connection, async ({ textDocument, range }) => {
      const opened = desk.open(textDocument.uri)
      return opened ? fixesIn({ desk, opened }, range) : []
    }),
  )
  documents.listen(connection)
  connection.listen()
}

/** The folders an editor has open, or where the program was started. */
function foldersOf({ workspaceFolders, rootUri }: InitializeParams, started: string): string[] {
  const uris = workspaceFolders?.map(({ uri }) => uri) ?? (typeof rootUri === 'string' ? [rootUri] : [])
  const folders = uris.map(pathOfUri).filter((name) => name !== undefined)
  return folders.length > 0 ? folders : [started]
}

function lay(desk: Desk, uri: string, text: string | undefined, publishing: (workspace: EditorWorkspace) => void): void {
  const opened = desk.open(uri)
  if (!opened) return
  opened.workspace.lay(opened.name, text)
  publishing(opened.workspace)
}

/** What is on disk is read again, everywhere. */
function afresh(desk: Desk, publishing: (workspace: EditorWorkspace) => void): void {
  for (const workspace of desk.workspaces()) {
    workspace.forget()
    publishing(workspace)
  }
}

/** A mistake of ours is told to the editor's log, and costs one answer, not the server. */
function guarded<Params, Answer>(connection: Connection, answer: (params: Params) => Promise<Answer>): (params: Params) => Promise<Answer | null> {
  return async (params) => {
    try {
      return (await answer(params)) ?? null
    } catch (error) {
      if (error instanceof ResponseError) throw error
      connection.console.error(`This is a mistake of ours, not yours. Please report it.\n${error instanceof Error ? error.stack : String(error)}`)
      return null
    }
  }
}

/** Sends the findings of a workspace once its typing pauses: those of each file in which something is otherwise than before. */
function publisher(connection: Connection, desk: () => Desk): (workspace: EditorWorkspace) => void {
  const timers = new Map<EditorWorkspace, NodeJS.Timeout>()
  const told = new WeakMap<EditorWorkspace, Map<string, string>>()
  const publish = guarded(connection, async (workspace: EditorWorkspace) => {
    const found = diagnosticsOf(workspace, await workspace.state())
    const before = told.get(workspace) ?? new Map<string, string>()
    told.set(workspace, before)
    for (const name of new Set([...before.keys(), ...found.keys()])) {
      const diagnostics = found.get(name) ?? []
      const now = JSON.stringify(diagnostics)
      if (now === (before.get(name) ?? '[]')) continue
      before.set(name, now)
      void connection.sendDiagnostics({ uri: desk().uriOf(name), diagnostics })
    }
  })
  return (workspace) => {
    clearTimeout(timers.get(workspace))
    timers.set(workspace, setTimeout(() => void publish(workspace), PAUSE_MS))
  }
}
