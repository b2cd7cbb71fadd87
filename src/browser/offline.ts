import { WORKER_POLICY } from '../page/trusted.ts'
import { isOfflineList, LIST, type Asked, type OfflineList } from './offline-list.ts'
import { said } from './said.ts'
import { vouching } from './trusted.ts'

/** The list as it is published now, or nothing without a signal. */
async function publishedList(root: URL): Promise<OfflineList | undefined> {
  const response = await fetch(new URL(LIST, root), { cache: 'no-store' }).catch(() => undefined)
  const value: unknown = response?.ok ? await response.json().catch(() => undefined) : undefined
  return isOfflineList(value) ? value : undefined
}

/** Tells the worker, and waits until it has done so. */
function ask(worker: ServiceWorker, asked: Asked): Promise<void> {
  return new Promise((resolve) => {
    const heard = ({ data }: MessageEvent): void => {
      if (JSON.stringify((data as { done?: unknown }).done) !== JSON.stringify(asked)) return
      navigator.serviceWorker.removeEventListener('message', heard)
      resolve()
    }
    navigator.serviceWorker.addEventListener('message', heard)
    worker.postMessage(asked)
  })
}

/** A line with a button below the page's own words; the button says what it has done. */
function offer(place: Element, says: string, label: string, act: () => Promise<void>, done: string): void {
  const line = document.createElement('p')
  const button = document.createElement('button')
  button.type = 'button'
  button.textContent = said(label)
  button.addEventListener('click', () => {
    button.disabled = true
    void act().then(() => (line.textContent = said(done)))
  })
  line.append(said(says), ' ', button)
  place.append(line)
}

/** Takes away a worker that an earlier edition left, and what it kept. */
async function leave(): Promise<void> {
  for (const registration of await navigator.serviceWorker.getRegistrations()) await registration.unregister()
  for (const name of await caches.keys()) if (name.startsWith('handbook-')) await caches.delete(name)
}

/** The worker's address below a root, as a browser takes it. */
const workerAt = (root: URL): string => vouching(WORKER_POLICY, { createScriptURL: (below) => new URL('service-worker.js', below).href }).createScriptURL(root.href)

/** Keeps this ladder for reading without a signal, offers the rest, and offers a new edition when there is one; it forces neither. */
export async function startOffline(page: Document, root: URL): Promise<void> {
  const place = page.querySelector('#offline')
  if (!place || !('serviceWorker' in navigator)) return
  const now = await publishedList(root)
  if (now?.off) return leave()
  const registration = await navigator.serviceWorker.register(workerAt(root)).catch(() => undefined)
  if (!registration) return
  const { active } = await navigator.serviceWorker.ready
  if (!active) return
  const ladder = page.body.dataset.ladder
  if (ladder !== undefined) void ask(active, { keep: 'ladder', ladder })
  offer(place, 'What you open here is kept on this device, for reading without a signal.', 'Keep the whole handbook', () => ask(active, { keep: 'everything' }), 'The whole handbook is kept on this device.')
  const here = await keptList(root)
  if (!now || !here || now.build === here.build) return
  offer(place, `What is kept on this device is edition ${here.edition}; a newer state of the handbook is published, edition ${now.edition}.`, 'Show the newer one', () => ask(active, { take: 'new edition' }).then(() => page.location.reload()), 'Loading it …')
}

/** The list that was put away with the build this device keeps. */
async function keptList(root: URL): Promise<OfflineList | undefined> {
  const value: unknown = await (await caches.match(new URL(LIST, root)))?.json().catch(() => undefined)
  return isOfflineList(value) ? value : undefined
}
