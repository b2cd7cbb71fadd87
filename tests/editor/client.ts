import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { createMessageConnection, StreamMessageReader, StreamMessageWriter, type Diagnostic } from 'vscode-languageserver/node'
import { REPOSITORY } from '../site/demo.ts'

/** A position a test names by the letters before the cursor: the first place in the text where they stand. */
export function positionAfter(text: string, letters: string): { line: number; character: number } {
  const at = text.indexOf(letters)
  if (at < 0) throw new Error(`the text does not hold ${letters}`)
  const lines = text.slice(0, at + letters.length).split(/\r\n|\n|\r/)
  return { line: lines.length - 1, character: (lines.at(-1) ?? '').length }
}

/** A folder of files for one test, gone when it ends. */
export function folderOf(files: Readonly<Record<string, string>>, name = 'a club'): { folder: string; write(file: string, text: string): void; remove(): void } {
  const around = mkdtempSync(path.join(os.tmpdir(), 'rungbook-editor-'))
  const folder = path.join(around, name)
  const write = (file: string, text: string): void => {
    mkdirSync(path.dirname(path.join(folder, file)), { recursive: true })
    writeFileSync(path.join(folder, file), text)
  }
  for (const [file, text] of Object.entries(files)) write(file, text)
  return { folder, write, remove: () => rmSync(around, { recursive: true, force: true }) }
}

/** An editor: the server in a process of its own, asked through the protocol. */
export async function editorOn(folder: string, ...words: string[]) {
  const server = spawn(process.execPath, [path.join(REPOSITORY, 'src/command/bin.mjs'), 'editor', ...words], { cwd: folder, stdio: ['pipe', 'pipe', 'pipe'] })
  let complaints = ''
  server.stderr.on('data', (bytes: Buffer) => (complaints += String(bytes)))
  const connection = createMessageConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin))
  const log: string[] = []
  const found = new Map<string, Diagnostic[]>()
  const waiting: { file: string; until: (list: Diagnostic[]) => boolean; done: (list: Diagnostic[]) => void }[] = []
  connection.onNotification('window/logMessage', ({ message }: { message: string }) => void log.push(message))
  connection.onNotification('textDocument/publishDiagnostics', ({ uri, diagnostics }: { uri: string; diagnostics: Diagnostic[] }) => {
    found.set(uri, diagnostics)
    for (const each of waiting.filter(({ file, until }) => uriOf(file) === uri && until(diagnostics))) {
      waiting.splice(waiting.indexOf(each), 1)
      each.done(diagnostics)
    }
  })
  connection.listen()
  const uriOf = (file: string): string => pathToFileURL(path.join(folder, file)).href
  const document = (file: string) => ({ textDocument: { uri: uriOf(file) } })
  const { capabilities } = await connection.sendRequest<{ capabilities: Record<string, unknown> }>('initialize', { processId: process.pid, rootUri: pathToFileURL(folder).href, capabilities: {} })
  await connection.sendNotification('initialized', {})
  const versions = new Map<string, number>()
  return {
    capabilities,
    log,
    uriOf,
    complaints: () => complaints,
    open: (file: string, text: string) => connection.sendNotification('textDocument/didOpen', { textDocument: { uri: uriOf(file), languageId: 'markdown', version: 1, text } }),
    close: (file: string) => connection.sendNotification('textDocument/didClose', document(file)),
    change(file: string, text: string) {
      const version = (versions.get(file) ?? 1) + 1
      versions.set(file, version)
      return connection.sendNotification('textDocument/didChange', { textDocument: { uri: uriOf(file), version }, contentChanges: [{ text }] })
    },
    /** Writes letters in place of a stretch, as an editor does key by key. */
    type(file: string, start: { line: number; character: number }, end: { line: number; character: number }, text: string) {
      const version = (versions.get(file) ?? 1) + 1
      versions.set(file, version)
      return connection.sendNotification('textDocument/didChange', { textDocument: { uri: uriOf(file), version }, contentChanges: [{ range: { start, end }, text }] })
    },
    /** Answers of the server, by the method's own name. */
    ask: <Answer>(method: string, file: string, position: { line: number; character: number }, more: object = {}) => connection.sendRequest<Answer>(`textDocument/${method}`, { ...document(file), position, ...more }),
    send: <Answer>(method: string, parameters: object) => connection.sendRequest<Answer>(method, parameters),
    /** The findings of a file once they are as the test expects. */
    findings: (file: string, until: (list: Diagnostic[]) => boolean, within_ms = 20_000): Promise<Diagnostic[]> =>
      new Promise((done, failed) => {
        const now = found.get(uriOf(file))
        if (now && until(now)) return done(now)
        const timer = setTimeout(() => failed(new Error(`no such findings of ${file}: ${JSON.stringify(found.get(uriOf(file)))} ${log.join('\n')} ${complaints}`)), within_ms)
        waiting.push({ file, until, done: (list) => (clearTimeout(timer), done(list)) })
      }),
    async end(): Promise<number | null> {
      await connection.sendRequest('shutdown')
      const exit = once(server, 'exit')
      await connection.sendNotification('exit')
      const [code] = (await exit) as [number | null]
      connection.dispose()
      return code
    },
    kill: () => void server.kill(),
  }
}

export type Editor = Awaited<ReturnType<typeof editorOn>>
