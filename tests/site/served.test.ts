import assert from 'node:assert/strict'
import { spawn, type ChildProcess } from 'node:child_process'
import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import http from 'node:http'
import net from 'node:net'
import path from 'node:path'
import { gunzipSync, gzipSync } from 'node:zlib'
import { afterAll, describe, test } from 'vitest'
import { ALWAYS, ASKED, headersFile, KEPT, objectStorageTable, TYPES } from '../../src/page/served.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { publish } from '../../src/site/publish.ts'
import { nginxPath } from '../nginx-path.ts'
import { REPOSITORY, run, scratch } from './demo.ts'

const shipped = (name: string): string => readFileSync(path.join(REPOSITORY, 'hosting', name), 'utf8')

test('the header file of static hosts holds every header, and keeps for a year only what is named by its content', () => {
  assert.equal(
    headersFile(['', 'es/']),
    `/*
${ALWAYS.map(([name, value]) => `  ${name}: ${value}\n`).join('')}  Cache-Control: no-cache

/pagefind/fragment/*
  Cache-Control: public, max-age=31536000, immutable

/pagefind/index/*
  Cache-Control: public, max-age=31536000, immutable

/pictures/*
  Cache-Control: public, max-age=31536000, immutable

/es/pagefind/fragment/*
  Cache-Control: public, max-age=31536000, immutable

/es/pagefind/index/*
  Cache-Control: public, max-age=31536000, immutable

/es/pictures/*
  Cache-Control: public, max-age=31536000, immutable
`,
  )
  assert.ok(headersFile([''], 3).endsWith(['part-1/fragment', 'part-1/index', 'part-2/fragment', 'part-2/index'].map((place) => `\n/pagefind/${place}/*\n  Cache-Control: ${KEPT}\n`).join('')))
})

test('the table for object storage is the one the program would write', () => assert.equal(shipped('object-storage.tsv'), objectStorageTable()))

/** What the table gives a file: for each header, the last line whose pattern fits. */
function tabled(name: string): Record<string, string> {
  const fits = (pattern: string): boolean => new RegExp(`^${pattern.split('*').map((part) => part.replace(/[.]/g, '\\.')).join('.*')}$`).test(name)
  const rows = shipped('object-storage.tsv').trim().split('\n').slice(1).map((line) => line.split('\t') as [string, string, string])
  return Object.fromEntries(rows.filter(([pattern]) => fits(pattern)).map(([, header, value]) => [header, value]))
}

test('by the table a packed page stays a page, a search fragment is kept, and a page is asked for', () => {
  assert.deepEqual([tabled('index.html.gz')['Content-Type'], tabled('index.html.gz')['Content-Encoding']], ['text/html; charset=utf-8', 'gzip'])
  assert.deepEqual([tabled('es/pagefind/fragment/en_1.pf_fragment')['Cache-Control'], tabled('pagefind/part-1/index/en_1.pf_index')['Cache-Control'], tabled('index.html')['Cache-Control']], [KEPT, KEPT, ASKED])
  for (const [name, value] of ALWAYS) assert.equal(tabled('a/b/index.html')[name], value)
})

const nginx = nginxPath()
const started: ChildProcess[] = []
afterAll(() => started.forEach((child) => child.kill('SIGQUIT')))

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const server = net.createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as net.AddressInfo
      server.close(() => resolve(port))
    })
  })

/** Starts the real nginx with the shipped file, in which only the lines to be changed are changed. */
async function served(folder: string, root: string): Promise<number> {
  const port = await freePort()
  const site = shipped('nginx.conf').replace(/^( *)listen .*HERE$/m, `$1listen 127.0.0.1:${port};`).replace(/^( *)root .*HERE.*$/m, `$1root "${root}";`)
  assert.equal(site.match(/HERE/g)?.length, 2, 'the comment above, and the name')
  const paths = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map((kind) => `${kind}_temp_path ${folder}/${kind};`).join(' ')
  writeFileSync(path.join(folder, 'main.conf'), `${process.getuid?.() === 0 ? 'user root;\n' : ''}daemon off; pid ${folder}/pid; error_log ${folder}/errors warn; worker_processes 2;\nevents { worker_connections 512; }\nhttp { access_log off; ${paths}\n${site}\n}\n`)
  const child = spawn(nginx ?? '', ['-p', folder, '-c', path.join(folder, 'main.conf')], { stdio: 'inherit' })
  started.push(child)
  for (let attempt = 0; attempt < 100; attempt += 1) {
    if (await new Promise((resolve) => void net.connect(port, '127.0.0.1').on('connect', () => resolve(true)).on('error', () => resolve(false)))) return port
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
  throw new Error(`nginx did not start: ${readFileSync(path.join(folder, 'errors'), 'utf8')}`)
}

type Answer = { readonly status: number; readonly headers: http.IncomingHttpHeaders; readonly body: Buffer }

const ask = (port: number, address: string, { headers = {}, method = 'GET', agent }: { headers?: http.OutgoingHttpHeaders; method?: string; agent?: http.Agent } = {}): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const request = http.request({ host: '127.0.0.1', port, path: address, method, headers, ...(agent ? { agent } : {}) }, (response) => {
      const parts: Buffer[] = []
      response.on('data', (part: Buffer) => parts.push(part))
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }))
      response.on('error', reject)
    })
    request.on('error', reject).end()
  })

function alwaysThere({ headers }: Answer, where: string): void {
  for (const [name, value] of ALWAYS) assert.equal(headers[name.toLowerCase()], value, `${name} of ${where}`)
  assert.equal(headers.server, 'nginx', 'no version is told')
}

describe.skipIf(!nginx)(`the shipped nginx file${nginx ? '' : ' (NOT RUN: this machine has no nginx; Debian calls it nginx-light)'}`, async () => {
  if (!nginx) return
  const folder = await scratch()
  const place = path.join(folder, 'club')
  mkdirSync(path.join(place, 'ladders'), { recursive: true })
  writeFileSync(path.join(place, 'handbook.yaml'), 'title: A small handbook\norganisation: Tarnwick Gym Club\nedition: "1"\ncontact: nobody yet\n')
  writeFileSync(path.join(place, 'ladders/landing.md'), readFileSync(path.join(REPOSITORY, 'ladders/landing.md')))
  const built = await run(place, 'build', '--link', '--output', path.join(folder, 'current'))
  assert.equal(built.code, 0, built.note + built.out)
  const root = path.join(folder, 'current')
  const port = await served(folder, root)
  const names = await filesBelow(root)

  test('every file is served as it is, with every header, its kind and how long it may be kept', async () => {
    assert.ok(names.length > 100)
    for (const name of names.filter((each) => !/(^|\/)(\.|_headers$)|\.(gz|br)$/.test(each))) {
      const answer = await ask(port, `/${name}`)
      assert.equal(answer.status, 200, name)
      alwaysThere(answer, name)
      assert.equal(answer.headers['content-type'], TYPES[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream', name)
      assert.equal(answer.headers['cache-control'], /^(es\/)?(pagefind\/(fragment|index)|pictures)\//.test(name) ? KEPT : ASKED, name)
      assert.deepEqual(answer.body, readFileSync(path.join(root, name)), name)
    }
  })

  test('a client that takes gzip is sent the packed file as it lies there', async () => {
    const answer = await ask(port, '/index.html', { headers: { 'accept-encoding': 'gzip' } })
    assert.deepEqual([answer.status, answer.headers['content-encoding'], answer.headers.vary, answer.headers['content-type']], [200, 'gzip', 'Accept-Encoding', 'text/html; charset=utf-8'])
    assert.deepEqual(answer.body, readFileSync(path.join(root, 'index.html.gz')))
    alwaysThere(answer, 'a packed page')
  })

  test('a folder is its page, with the slash put on; nothing is listed', async () => {
    assert.equal((await ask(port, '/landing/')).status, 200)
    const moved = await ask(port, '/landing')
    assert.deepEqual([moved.status, moved.headers.location], [301, '/landing/'])
    alwaysThere(moved, 'a redirect')
    assert.equal((await ask(port, '/assets/')).status, 404)
  })

  test('what is not there, hidden, or leads up is the page that says so, with every header', async () => {
    writeFileSync(path.join(folder, 'secret.txt'), 'secret')
    symlinkSync(path.join(folder, 'secret.txt'), path.join(root, 'leak.txt'))
    for (const address of ['/nowhere/', '/_headers', '/.rungbook-output', '/.git/config', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/assets/..%2f..%2fsecret.txt']) {
      const answer = await ask(port, address)
      assert.ok(answer.status === 404 || answer.status === 400, `${answer.status} ${address}`)
      assert.doesNotMatch(answer.body.toString(), /^secret/)
      if (answer.status === 404) alwaysThere(answer, address)
    }
    const [missing, linked] = [await ask(port, '/nowhere/'), await ask(port, '/leak.txt')]
    assert.deepEqual(missing.body, readFileSync(path.join(root, '404.html')))
    assert.equal(linked.status, 404)
    for (const method of ['POST', 'PUT', 'DELETE', 'TRACE']) assert.equal((await ask(port, '/', { method })).status, 405)
  })

  test('a range is a part, and what has not changed is not sent again', async () => {
    const whole = await ask(port, '/assets/handbook.css')
    const part = await ask(port, '/assets/handbook.css', { headers: { range: 'bytes=10-19' } })
    assert.deepEqual([part.status, part.headers['content-range'], part.body], [206, `bytes 10-19/${whole.body.length}`, whole.body.subarray(10, 20)])
    alwaysThere(part, 'a range')
    assert.equal((await ask(port, '/assets/handbook.css', { headers: { range: 'bytes=99999999-' } })).status, 416)
    for (const headers of [{ 'if-none-match': whole.headers.etag ?? '' }, { 'if-modified-since': whole.headers['last-modified'] ?? '' }]) {
      const again = await ask(port, '/assets/handbook.css', { headers })
      assert.deepEqual([again.status, again.body.length], [304, 0])
      alwaysThere(again, 'what has not changed')
    }
    assert.equal((await ask(port, '/assets/handbook.css', { headers: { 'if-none-match': '"another"' } })).status, 200)
  })

  test('while editions take one another\'s place, no request fails, none is answered from two, and none goes back to an older one', async () => {
    const live = path.join(folder, 'live')
    const said = (edition: number, file: number): string => `edition ${edition} file ${file}\n`.repeat(4000)
    const written = (edition: number) => publish(live, async (into) => {
      for (let file = 0; file < 6; file += 1) {
        writeFileSync(path.join(into, `f${file}.html`), said(edition, file))
        writeFileSync(path.join(into, `f${file}.html.gz`), gzipSync(said(edition, file)))
      }
    }, { link: true })
    await written(0)
    const own = path.join(folder, 'swaps')
    mkdirSync(own)
    const busy = await served(own, live)
    const [SWAPS, CLIENTS] = [25, 4]
    const progress = { newest: 0, over: false, served: 0 }
    const client = async (nth: number): Promise<void> => {
      const agent = new http.Agent({ keepAlive: true, maxSockets: 1 })
      let last = 0
      for (let round = nth; !progress.over; round += 1) {
        const [file, packed, atLeast] = [round % 6, round % 2 === 0, progress.newest]
        const { status, body, headers } = await ask(busy, `/f${file}.html`, { agent, headers: packed ? { 'accept-encoding': 'gzip' } : {} })
        assert.equal(status, 200)
        assert.equal(headers['content-encoding'], packed ? 'gzip' : undefined)
        const text = (packed ? gunzipSync(body) : body).toString()
        const edition = Number(/^edition (\d+) /.exec(text)?.[1])
        assert.equal(text, said(edition, file), 'whole, and of one edition')
        assert.ok(edition >= Math.max(last, atLeast), `edition ${edition} after ${last}, when ${atLeast} stood`)
        last = edition
        progress.served += 1
      }
      agent.destroy()
    }
    const clients = Promise.all(Array.from({ length: CLIENTS }, (_, nth) => client(nth)))
    for (let edition = 1; edition <= SWAPS; edition += 1) {
      await written(edition)
      progress.newest = edition
      await new Promise((resolve) => setTimeout(resolve, 10))
    }
    progress.over = true
    await clients
    assert.ok(progress.served > 100, `${progress.served} requests`)
    if (process.env.TELL_FIGURES) process.stdout.write(`${progress.served} requests during ${SWAPS} swaps\n`)
  })
})
