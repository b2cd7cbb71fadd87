import assert from 'node:assert/strict'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { TYPES } from '../../src/page/served.ts'

/** Where files are served, and an end to it. */
export type Hosted = { readonly root: string; readonly close: () => void }

/** What the header file says of every file. */
const headersOf = (text: string): Record<string, string> => Object.fromEntries((text.split('\n\n')[0] ?? '').split('\n').slice(1).map((line) => [line.slice(0, line.indexOf(':')).trim(), line.slice(line.indexOf(':') + 1).trim()]))

/** Serves the files of a handbook by name as a host would, with the headers that the build wrote and compressed where there is a smaller copy; below a folder of the host where one is given. */
export async function hosted(files: ReadonlyMap<string, Buffer>, below = ''): Promise<Hosted> {
  const always = headersOf(String(files.get('_headers')))
  assert.ok(always['Content-Security-Policy'], 'the header file holds the policy')
  const server = createServer(({ url = '/', headers }, response) => {
    const [address = '/'] = url.split('?')
    const inside = address.startsWith(`${below}/`) ? address.slice(below.length + 1) : 'elsewhere'
    const asked = inside === '' || inside.endsWith('/') ? `${inside}index.html` : inside
    const name = files.has(asked) ? asked : '404.html'
    const small = String(headers['accept-encoding']).includes('br') ? files.get(`${name}.br`) : undefined
    response.writeHead(name === asked ? 200 : 404, { ...always, 'content-type': TYPES[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream', ...(small && { 'content-encoding': 'br' }) })
    response.end(small ?? files.get(name))
  })
  await new Promise<void>((resolve) => void server.listen(0, '127.0.0.1', resolve))
  return {
    root: `http://127.0.0.1:${(server.address() as AddressInfo).port}${below}`,
    close() {
      server.close()
      server.closeAllConnections()
    },
  }
}
