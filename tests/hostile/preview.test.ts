import assert from 'node:assert/strict'
import { spawn, type ChildProcess } from 'node:child_process'
import net from 'node:net'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, test } from 'vitest'
import { rooms, write } from './place.ts'

/** The real preview in a process of its own, spoken to over a bare socket: no client in between mends what is sent. */
const { workspace, room } = rooms()('preview', {})
let child: ChildProcess
let port = 0

beforeAll(async () => {
  write(room, { 'secret.txt': 'a secret' })
  write(workspace, { '.git/config': 'a secret', 'content/page.md': '---\ntitle: A page\nsummary: A page.\n---\n\nWords.\n' })
  child = spawn(process.execPath, [path.resolve(import.meta.dirname, '../../src/command/bin.mjs'), 'preview', '--port', '0'], { cwd: workspace, stdio: ['ignore', 'pipe', 'inherit'] })
  port = await new Promise<number>((resolve, reject) => {
    let said = ''
    child.stdout?.on('data', (bytes: Buffer) => {
      said += bytes.toString()
      const at = /http:\/\/127\.0\.0\.1:(\d+)/.exec(said)?.[1]
      if (at) resolve(Number(at))
    })
    child.once('exit', (code) => reject(new Error(`the preview ended with ${code}: ${said}`)))
  })
}, 120_000)

afterAll(() => void child.kill('SIGTERM'))

/** What comes back for these bytes, until the other side ends or nothing has come for a while. */
function said(bytes: string | Uint8Array, quiet_ms = 1500): Promise<string> {
  return new Promise((resolve) => {
    let back = ''
    const socket = net.connect(port, '127.0.0.1')
    const done = (): void => {
      socket.destroy()
      resolve(back)
    }
    socket.setTimeout(quiet_ms, done)
    socket.on('data', (part: Buffer) => (back += part.toString())).on('end', done).on('error', done)
    socket.write(bytes)
  })
}

const get = (address: string, headers: readonly string[] = [`Host: 127.0.0.1:${port}`], method = 'GET'): Promise<string> => said(`${method} ${address} HTTP/1.1\r\n${[...headers, 'Connection: close'].join('\r\n')}\r\n\r\n`)
const status = (answer: string): number => Number(/^HTTP\/1\.1 (\d{3})/.exec(answer)?.[1] ?? 0)
const own = (): string => `Host: 127.0.0.1:${port}`

test('a page is answered, and no other site may hold it in a frame or read it', async () => {
  const answer = await get('/page/')
  assert.equal(status(answer), 200)
  assert.match(answer, /^x-content-type-options: nosniff\r$/im)
  assert.match(answer, /^cross-origin-resource-policy: same-origin\r$/im)
  assert.match(answer, /^cache-control: no-store\r$/im)
  assert.doesNotMatch(answer, /^access-control-/im)
})

test('only this machine\'s own names are answered, and only its own origin', async () => {
  for (const headers of [['Host: evil.example'], [`Host: evil.example:${port}`], ['Host: 127.0.0.1'], ['Host: 127.0.0.1.evil.example'], [`Host: 127.0.0.1:${port}@evil.example`], ['Host: [::1]'], ['Host:']]) assert.equal(status(await get('/', headers)), 403, headers.join())
  for (const origin of ['https://evil.example', 'null', 'http://127.0.0.1', `https://127.0.0.1:${port}`, `http://127.0.0.1:${port}.evil.example`]) assert.equal(status(await get('/', [own(), `Origin: ${origin}`])), 403, origin)
  assert.equal(status(await get('/', [])), 400, 'no host at all')
  assert.equal(status(await get('/', [own(), 'Host: evil.example'])), 403, 'two hosts')
  assert.equal(status(await get('http://evil.example/page/')), 404, 'a whole address of another')
})

test('it listens to this machine alone', async () => {
  const outside = Object.values(os.networkInterfaces()).flat().filter((each) => each && !each.internal && each.family === 'IPv4')
  for (const each of outside) {
    const answered = await new Promise((resolve) => void net.connect({ port, host: each?.address ?? '', timeout: 2000 }).on('connect', () => resolve(true)).on('error', () => resolve(false)).on('timeout', () => resolve(false)))
    assert.equal(answered, false, each?.address)
  }
})

test('no address leads out of the handbook, in any writing, and nothing is listed', async () => {
  for (const address of [
    '/../secret.txt', '/..%2fsecret.txt', '/..%2f..%2fetc/passwd', '/%2e%2e/secret.txt', '/%252e%252e/secret.txt', '/..\\secret.txt', '/..%5csecret.txt', '/..%c0%afsecret.txt', '//etc/passwd', '///etc/passwd', '/etc/passwd', `/${workspace}/handbook.yaml`,
    '/handbook.yaml', '/ladders/a.md', '/ladders/', '/assets/', '/.git/config', '/.rungbook-output', '/%00', '/page/%00', '/page/..;/secret.txt', '/__proto__', '/constructor', '/toString/',
    '/preview/../../secret.txt', '/preview/%2e%2e/%2e%2e/package.json', '/preview/..%2f..%2f..%2fpackage.json', '/preview/preview-server.ts', '/preview/constructor', '/preview/',
  ]) {
    const answer = await get(address)
    assert.equal(status(answer), 404, address)
    assert.doesNotMatch(answer, /a secret|root:|organisation: Tarnwick|"dependencies"|model: skill \}/)
  }
  for (const query of ['?raw', '?url', '?import', '?token=x', '?..%2fsecret.txt']) assert.equal(status(await get(`/page/${query}`)), 200, 'what follows a question mark changes nothing')
})

test('nothing but reading is possible, and what is no request is refused', async () => {
  for (const method of ['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS']) assert.equal(status(await get('/', [own(), 'Content-Length: 0'], method)), 405, method)
  for (const bytes of ['\0\0\0\0\r\n\r\n', 'GET / HTTP/1.1\nHost: x\n\n', 'GET /\0 HTTP/1.1\r\nHost: x\r\n\r\n', `GET / HTTP/1.1\r\n${own()}\r\nA\0: b\r\n\r\n`, `POST / HTTP/1.1\r\n${own()}\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n`]) assert.ok([0, 400, 405].includes(status(await said(bytes))), JSON.stringify(bytes))
  assert.ok([414, 431].includes(status(await get(`/${'a'.repeat(3000)}`))))
  assert.equal(status(await get(`/${'a'.repeat(100_000)}`)), 431)
  assert.equal(status(await get('/', [own(), ...Array.from({ length: 500 }, (_, nth) => `X-${nth}: ${'b'.repeat(40)}`)])), 431)
})

test('who would hear of saves needs the token of a page, letter for letter', async () => {
  const token = /data-token="([^"]+)"/.exec(await get('/page/'))?.[1] ?? ''
  assert.ok(token.length >= 32)
  for (const address of ['/preview/saved', '/preview/findings.json']) {
    for (const given of ['', '?token=', `?token=${token.slice(1)}`, `?token=${'x'.repeat(token.length)}`, `?token=${encodeURIComponent('é'.repeat(token.length))}`, `?token=${token}x`, `?Token=${token}`]) assert.equal(status(await get(address + given)), 403, given)
    assert.equal(status(await get(`${address}?token=${token}`, [own(), 'Origin: https://evil.example'])), 403)
    assert.equal(status(await get(`${address}?token=${token}`)), 200)
  }
})

test('a request of one byte a second is ended, and a thousand that say nothing keep nobody waiting', { timeout: 60_000 }, async () => {
  const slow = new Promise<number>((resolve) => {
    const began = performance.now()
    const socket = net.connect(port, '127.0.0.1')
    const letters = [...`GET / HTTP/1.1\r\n${own()}\r\nX: ${'y'.repeat(60)}`]
    const timer = setInterval(() => socket.write(letters.shift() ?? 'y'), 1000)
    socket.resume().on('error', () => undefined).on('close', () => {
      clearInterval(timer)
      resolve(performance.now() - began)
    })
  })
  const open = new Set<net.Socket>()
  const silent = Array.from({ length: 1000 }, () => net.connect(port, '127.0.0.1').on('error', () => undefined).resume())
  for (const socket of silent) socket.on('connect', () => open.add(socket)).on('close', () => open.delete(socket))
  await Promise.all(silent.map((socket) => new Promise((resolve) => void socket.once('connect', resolve).once('error', resolve))))
  const began = performance.now()
  assert.equal(status(await get('/page/')), 200)
  assert.ok(performance.now() - began < 5000)
  assert.ok((await slow) < 15_000, `${await slow} ms`)
  for (let waited = 0; open.size > 0 && waited < 100; waited += 1) await new Promise((resolve) => setTimeout(resolve, 100))
  assert.equal(open.size, 0, 'those that said nothing were ended')
  assert.equal(child.exitCode, null)
})

test('of forty pages that wait for a save, the last thirty-two do', { timeout: 30_000 }, async () => {
  const token = /data-token="([^"]+)"/.exec(await get('/page/'))?.[1] ?? ''
  let open = 0
  const streams: net.Socket[] = []
  for (let nth = 0; nth < 40; nth += 1) {
    const socket = net.connect(port, '127.0.0.1').on('error', () => undefined)
    streams.push(socket)
    await new Promise((resolve) => {
      socket.once('data', resolve).write(`GET /preview/saved?token=${token} HTTP/1.1\r\n${own()}\r\n\r\n`)
    })
    open += 1
    socket.on('data', (part: Buffer) => part.toString().endsWith('0\r\n\r\n') && (open -= 1))
  }
  await new Promise((resolve) => setTimeout(resolve, 500))
  assert.equal(open, 32)
  streams.forEach((socket) => socket.destroy())
})
