import { randomBytes, timingSafeEqual } from 'node:crypto'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { PREVIEW_POLICY, WORKER_POLICY } from '../page/trusted.ts'
import type { SiteFile } from './site-file.ts'

const TYPES: Record<string, string> = {
  html: 'text/html; charset=utf-8',
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  json: 'application/json',
  svg: 'image/svg+xml',
  webp: 'image/webp',
  png: 'image/png',
  jpg: 'image/jpeg',
  xml: 'application/xml',
  webmanifest: 'application/manifest+json',
  pagefind: 'application/wasm',
}

/** The files of a handbook by name: all of them at hand, or each made when it is asked for. */
export type Files = { get(name: string): SiteFile['bytes'] | undefined | Promise<SiteFile['bytes'] | undefined> }

/** What an author is told beside the handbook. Without one, a preview is the handbook alone. */
export type Author = {
  /** The scripts and styles of the author's panel, by name. */
  panel(name: string): Promise<SiteFile['bytes'] | undefined>
  /** What is to be put right, as JSON. */
  findings(): string
  /** Rises with each save. */
  version(): number
}

/** What a request may be called: this machine, by one of its own names, on the port it listens at. */
const isHere = (host: string | undefined, port: number): boolean => host === `127.0.0.1:${port}` || host === `localhost:${port}`
const isOwnOrigin = (origin: string | undefined, port: number): boolean => origin === undefined || origin === `http://127.0.0.1:${port}` || origin === `http://localhost:${port}`

/** A request longer than this is none of ours. Units bytes. */
const MOST_ADDRESS = 2048
/** Pages of one author that may wait for a save at once. Chosen by us. */
const MOST_WAITING = 32
/** Often enough that nothing between takes a quiet stream for dead. Units ms. */
const HEARTBEAT_MS = 15_000

/** A preview that answers until it is closed; `tell` says to every open page that something was saved. */
export type PreviewServer = { readonly server: Server; readonly port: number; tell(): void; close(): void }

/**
 * Serves a handbook from memory on 127.0.0.1; there is no file system behind it.
 *
 * Only to this machine's own names and origin; what the author's panel asks needs the token that stands in the pages served, which no
 * other site can read.
 */
export async function previewServer(files: () => Files, port: number, author?: Author): Promise<PreviewServer> {
  const token = randomBytes(24).toString('base64url')
  const waiting = new Set<ServerResponse>()
  const server = createServer({ requestTimeout: 10_000, headersTimeout: 5_000, connectionsCheckingInterval: 1_000, maxHeaderSize: 8192 }, (request, response) => {
    answer(request, response, { files: files(), author, token, waiting, port: (server.address() as AddressInfo).port }).catch((error: unknown) => {
      if (!response.headersSent) response.writeHead(500, { 'content-type': 'text/plain' })
      response.end(error instanceof Error && error.message.startsWith('bug:') ? `${error.message}\n` : 'bug: this page could not be made\n')
    })
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, '127.0.0.1', resolve)
  })
  const send = (text: string): void => waiting.forEach((response) => void response.write(text))
  const heartbeat = setInterval(() => send(': still here\n\n'), HEARTBEAT_MS)
  heartbeat.unref()
  return {
    server,
    port: (server.address() as AddressInfo).port,
    tell: () => send(`event: saved\ndata: ${author?.version() ?? 0}\n\n`),
    close() {
      clearInterval(heartbeat)
      server.close()
      server.closeAllConnections()
    },
  }
}

type Answering = { readonly files: Files; readonly author: Author | undefined; readonly token: string; readonly waiting: Set<ServerResponse>; readonly port: number }

async function answer(request: IncomingMessage, response: ServerResponse, { files, author, token, waiting, port }: Answering): Promise<void> {
  const send = (status: number, type: string, bytes: SiteFile['bytes']): void => {
    response.writeHead(status, { 'content-type': type, 'cache-control': 'no-store', 'x-content-type-options': 'nosniff', 'referrer-policy': 'no-referrer', 'cross-origin-resource-policy': 'same-origin', 'x-frame-options': 'DENY' })
    response.end(request.method === 'HEAD' ? undefined : bytes)
  }
  if (request.headersDistinct['host']?.length !== 1 || !isHere(request.headers.host, port) || !isOwnOrigin(request.headers.origin, port)) return send(403, 'text/plain', 'This preview answers only to this machine.\n')
  if (request.method !== 'GET' && request.method !== 'HEAD') return send(405, 'text/plain', 'Only reading is possible here.\n')
  if ((request.url ?? '/').length > MOST_ADDRESS) return send(414, 'text/plain', 'This address is too long.\n')
  const [address = '/', query = ''] = (request.url ?? '/').split('?')
  if (author && (address === '/preview/saved' || address === '/preview/findings.json')) {
    if (!same(new URLSearchParams(query).get('token') ?? '', token)) return send(403, 'text/plain', 'This is for the pages of the preview.\n')
    if (address === '/preview/findings.json') return send(200, TYPES['json'] ?? '', author.findings())
    return wait(response, waiting, author.version())
  }
  if (author && address.startsWith('/preview/')) {
    const bytes = await author.panel(address.slice('/preview/'.length))
    return bytes === undefined ? send(404, 'text/plain', 'not here\n') : send(200, typeOf(address), bytes)
  }
  const name = address.endsWith('/') ? `${address.slice(1)}index.html` : address.slice(1)
  const page = (text: string): string => (author ? withPanel(text, token) : text)
  const bytes = await files.get(name)
  if (bytes !== undefined) return send(200, typeOf(name), name.endsWith('.html') && author ? page(textOf(bytes)) : bytes)
  return send(404, 'text/html; charset=utf-8', page(textOf((await files.get('404.html')) ?? NOTHING_YET)))
}

const textOf = (bytes: SiteFile['bytes']): string => (typeof bytes === 'string' ? bytes : new TextDecoder().decode(bytes))
const typeOf = (name: string): string => TYPES[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream'

/** Compared without telling by the time it takes how much was right. */
const same = (given: string, token: string): boolean => {
  const [one, other] = [Buffer.from(given), Buffer.from(token)] // a letter may be several bytes
  return one.length === other.length && timingSafeEqual(one, other)
}

/** Where the handbook cannot be read at all, the panel stands alone. */
const NOTHING_YET = '<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>Preview</title></head><body><main><p>There is no page here yet.</p></main></body></html>\n'

/** A page with the author's panel, which learns of saves, shows what is to be put right, and may make drawings. */
const withPanel = (page: string, token: string): string =>
  page.replace(`trusted-types ${WORKER_POLICY}`, `trusted-types ${WORKER_POLICY} ${PREVIEW_POLICY}`).replace('</head>', `<link rel="stylesheet" href="/preview/panel.css"><script type="module" src="/preview/panel.js" data-token="${token}"></script></head>`)

function wait(response: ServerResponse, waiting: Set<ServerResponse>, version: number): void {
  if (waiting.size >= MOST_WAITING) {
    const [oldest] = waiting
    oldest?.end()
    if (oldest) waiting.delete(oldest)
  }
  response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store', 'x-content-type-options': 'nosniff' })
  response.write(`retry: 500\nevent: now\ndata: ${version}\n\n`)
  waiting.add(response)
  response.once('close', () => waiting.delete(response))
}
