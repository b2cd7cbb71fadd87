/// <reference lib="webworker" />
import { cacheName, cachesOf, isOfflineList, LIST, type Asked, type OfflineList } from './offline-list.ts'

/**
 * Keeps the handbook readable without a signal.
 *
 * It answers from the cache of one build, whole pages of one edition, never a mixture. It changes to a new build only when
 * the reader asks, and takes itself away when the published list says so.
 */
declare const self: ServiceWorkerGlobalScope

const root = new URL('./', self.location.href)
const absolute = (file: string): string => new URL(file, root).href

/** The list as it is published now, or nothing without a signal. */
async function published(): Promise<OfflineList | undefined> {
  const response = await fetch(absolute(LIST), { cache: 'no-store' }).catch(() => undefined)
  const value: unknown = response?.ok ? await response.json().catch(() => undefined) : undefined
  return isOfflineList(value) ? value : undefined
}

/** The build this device keeps: the one whose list was put away with its files. */
async function kept(): Promise<{ cache: Cache; list: OfflineList } | undefined> {
  for (const name of await caches.keys()) {
    const cache = await caches.open(name)
    const value: unknown = await (await cache.match(absolute(LIST)))?.json().catch(() => undefined)
    if (name.startsWith(cachesOf(root)) && isOfflineList(value) && cacheName(root, value.build) === name) return { cache, list: value }
  }
  return undefined
}

/** Puts files away, a few at a time; those that fail are fetched again when they are asked for. */
async function store(cache: Cache, files: readonly string[]): Promise<void> {
  for (let at = 0; at < files.length; at += 8) {
    await Promise.all(
      files.slice(at, at + 8).map(async (file) => {
        if (await cache.match(absolute(file))) return
        const response = await fetch(absolute(file), { cache: 'no-cache' }).catch(() => undefined)
        if (response?.ok) await cache.put(absolute(file), response)
      }),
    )
  }
}

/** Fetches the core of a build whole, then lets it take the place of the one before. The list goes in last: without it a cache counts for nothing. */
async function take(list: OfflineList): Promise<void> {
  const before = await kept()
  const cache = await caches.open(cacheName(root, list.build))
  await store(cache, list.core)
  await cache.put(absolute(LIST), new Response(JSON.stringify(list), { headers: { 'content-type': 'application/json' } }))
  for (const name of await caches.keys()) if (name.startsWith(cachesOf(root)) && name !== cacheName(root, list.build)) await caches.delete(name)
  const ladders = before ? Object.entries(before.list.ladders).filter(([id]) => list.ladders[id] !== undefined) : []
  for (const [id, files] of ladders) if (files[0] !== undefined && before && (await before.cache.match(absolute(files[0])))) await store(cache, list.ladders[id] ?? [])
}

/** Takes the worker and all it kept away. */
async function leave(): Promise<void> {
  for (const name of await caches.keys()) if (name.startsWith(cachesOf(root))) await caches.delete(name)
  await self.registration.unregister()
}

self.addEventListener('install', (event) => {
  event.waitUntil(
    published().then(async (list) => {
      if (list && !list.off && !(await kept())) await take(list)
      await self.skipWaiting()
    }),
  )
})

self.addEventListener('activate', (event) => {
  event.waitUntil(
    published().then(async (list) => {
      if (list?.off) await leave()
      else await self.clients.claim()
    }),
  )
})

self.addEventListener('message', (event) => {
  const asked = event.data as Asked
  event.waitUntil(
    (async () => {
      if ('take' in asked) {
        const list = await published()
        if (list && !list.off) await take(list)
      } else {
        const here = await kept()
        if (here && asked.keep === 'ladder') await store(here.cache, here.list.ladders[asked.ladder] ?? [])
        if (here && asked.keep === 'everything') await store(here.cache, [...Object.values(here.list.ladders).flat(), ...here.list.rest])
      }
      event.source?.postMessage({ done: asked })
    })(),
  )
})

/** The file a request is for: a folder is its page. Questions after the address change nothing of a static page. */
function fileOf(request: Request): string | undefined {
  const url = new URL(request.url)
  if (request.method !== 'GET' || !url.href.startsWith(root.href) || url.pathname.endsWith(`/${LIST}`) || url.pathname.endsWith('service-worker.js')) return undefined
  const file = url.pathname.slice(root.pathname.length)
  return file === '' || file.endsWith('/') ? `${file}index.html` : file
}

/** From the kept build; what it does not hold comes from the network, and is put away if it is of the same build. */
async function answer(request: Request, file: string): Promise<Response> {
  const here = await kept()
  const found = here && (await here.cache.match(absolute(file)))
  if (found) return found
  const response = await fetch(request).catch(() => undefined)
  if (response) return response
  return (here && (await here.cache.match(absolute('404.html')))) ?? new Response('This page was not kept on this device, and there is no signal.', { status: 503, headers: { 'content-type': 'text/plain; charset=utf-8' } })
}

self.addEventListener('fetch', (event) => {
  const file = fileOf(event.request)
  if (file !== undefined) event.respondWith(answer(event.request, file))
})
