import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
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
  pagefind: 'application/wasm',
}

/** What a request may be called: this machine, by one of its own names, on the port it listens at. */
const isHere = (host: string | undefined, port: number): boolean => host === `127.0.0.1:${port}` || host === `localhost:${port}`

/** A request longer than this is none of ours. Units bytes. */
const MOST_ADDRESS = 2048

/** Serves files from memory on 127.0.0.1; there is no file system behind it. `files` is asked again at each request. */
export async function previewServer(files: () => ReadonlyMap<string, SiteFile['bytes']>, port: number): Promise<{ readonly server: Server; readonly port: number }> {
  const server = createServer({ requestTimeout: 10_000, headersTimeout: 5_000, maxHeaderSize: 8192 }, (request, response) => answer(request, response, files(), (server.address() as AddressInfo).port))
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, '127.0.0.1', resolve)
  })
  return { server, port: (server.address() as AddressInfo).port }
}

function answer(request: IncomingMessage, response: ServerResponse, files: ReadonlyMap<string, SiteFile['bytes']>, port: number): void {
  const send = (status: number, type: string, bytes: SiteFile['bytes']): void => {
    response.writeHead(status, { 'content-type': type, 'cache-control': 'no-store', 'x-content-type-options': 'nosniff' })
    response.end(request.method === 'HEAD' ? undefined : bytes)
  }
  if (!isHere(request.headers.host, port)) return send(403, 'text/plain', 'This preview answers only to this machine.\n')
  if (request.method !== 'GET' && request.method !== 'HEAD') return send(405, 'text/plain', 'Only reading is possible here.\n')
  const address = (request.url ?? '/').split('?')[0] ?? '/'
  if (address.length > MOST_ADDRESS) return send(414, 'text/plain', 'This address is too long.\n')
  const name = address.endsWith('/') ? `${address.slice(1)}index.html` : address.slice(1)
  const bytes = files.get(name)
  if (bytes !== undefined) return send(200, TYPES[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream', bytes)
  return send(404, 'text/html; charset=utf-8', files.get('404.html') ?? 'not here')
}
