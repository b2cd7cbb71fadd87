import { SEARCH_KINDS } from '../page/search-kinds.ts'
import { said } from './said.ts'

/** What we use of the search index's own script. */
type Found = { readonly url: string; readonly excerpt: string; readonly meta: Readonly<Record<string, string>> }
type Results = { readonly results: readonly { data(): Promise<Found> }[] }
type Index = { options(wanted: { noWorker: boolean; metaCacheTag: string }): Promise<void>; init(): Promise<void>; mergeIndex(folder: string, options: { metaCacheTag: string }): Promise<void>; search(words: string | null, options: { filters: Record<string, string> }): Promise<Results> }

/** Results shown at once. Chosen by us: two screens of a phone. */
const MOST = 20
/** Results shown before the others are fetched. Chosen by us: one screen of a phone, below what may be chosen. */
export const FIRST = 3
/** How long results wait to be drawn before the others are fetched, at most: on a page that nobody looks at nothing is drawn. Chosen by us. Units ms. */
const DRAWN_ms = 100

/** The search page's parts. */
type Parts = { readonly page: Document; readonly list: Element; readonly says: Element }

/** Runs the search page: asks the index, and lists what it finds, from text nodes only. Returns when the index is open and what the address asks for is answered. */
export async function startSearch(page: Document, location: Location): Promise<void> {
  const [list, says] = ['#search-results', '#search-says'].map((selector) => page.querySelector(selector))
  if (!list || !says) return
  const parts = { page, list, says }
  const asked = new URLSearchParams(location.search)
  const index = opened(new URL('../pagefind/', location.href), list)
  const input = page.querySelector<HTMLInputElement>('#q')
  if (input) input.value = asked.get('q') ?? ''
  let turns = 0
  const ask = async (): Promise<void> => {
    const turn = (turns += 1)
    const latest = (): boolean => turn === turns
    await answer(index, parts, asked, location, latest).catch(() => {
      if (latest()) says.textContent = said('The search index could not be loaded. Look on the first page.')
    })
  }
  page.addEventListener('keydown', (event) => walk(event, parts))
  if (input) askHere(input, asked, () => void ask())
  choose(page, asked, () => void ask())
  await ask()
  await index.catch(() => undefined)
}

/** Other words are looked for without another page. */
function askHere(input: HTMLInputElement, asked: URLSearchParams, ask: () => void): void {
  input.form?.addEventListener('submit', (event) => {
    event.preventDefault()
    asked.set('q', input.value)
    ask()
  })
}

/** The index, with the parts of it that lie in folders of their own. Each entry is asked for by the name that the page has asked for ahead. */
async function opened(folder: URL, list: Element): Promise<Index> {
  const metaCacheTag = list.getAttribute('data-tag') ?? ''
  const parts = Number(list.getAttribute('data-parts') ?? 1)
  const coming = import(new URL('pagefind.js', folder).href) as Promise<Index>
  setTimeout(() => withSegmenter(list.ownerDocument.documentElement.lang))
  const index = await coming
  await index.options({ noWorker: true, metaCacheTag }) // it would start its worker by a string that no policy vouches for
  await index.init()
  await Promise.all(Array.from({ length: parts - 1 }, (_, before) => index.mergeIndex(new URL(`part-${before + 1}/`, folder).pathname, { metaCacheTag })))
  return index
}

/** Loads what the index will take words apart by. Nothing else it does takes a slow telephone as long: done while the line is busy, no task of a search is felt. */
function withSegmenter(language: string): void {
  try {
    new Intl.Segmenter(language, { granularity: 'grapheme' }).segment('')
  } catch {
    // an older browser has none, and the index does without
  }
}

/** The lists show what the address chooses; what somebody chose before this script was there counts too. The address keeps what is chosen. */
function choose(page: Document, asked: URLSearchParams, changed: () => void): void {
  for (const select of page.querySelectorAll<HTMLSelectElement>('#search-filters select')) {
    const keep = (): void => (select.value === '' ? asked.delete(select.name) : asked.set(select.name, select.value))
    if (select.value !== '') keep()
    else if ([...select.options].some(({ value }) => value === asked.get(select.name))) select.value = asked.get(select.name) ?? ''
    select.addEventListener('change', () => {
      keep()
      changed()
    })
  }
}

async function answer(index: Promise<Index>, parts: Parts, asked: URLSearchParams, location: Location, latest: () => boolean): Promise<void> {
  const { list, says, page } = parts
  const words = asked.get('q')?.trim() ?? ''
  const filters = Object.fromEntries(SEARCH_KINDS.flatMap((kind) => (asked.get(kind) ? [[kind, asked.get(kind) ?? '']] : [])))
  page.defaultView?.history.replaceState(null, '', `${location.pathname}?${asked.toString()}`)
  if (words === '' && Object.keys(filters).length === 0) {
    says.textContent = said('Type a word above: a movement, a cue, a fault, a piece of equipment.')
    list.replaceChildren()
    return
  }
  if (!list.firstElementChild) says.textContent = said('Searching …')
  const { results } = await (await index).search(words === '' ? null : words, { filters })
  const about = [words === '' ? [] : [`“${words}”`], Object.values(filters)].flat().join(', ')
  for (const [from, to] of [[0, FIRST], [FIRST, MOST]] as const) {
    const found = await Promise.all(results.slice(from, to).map((result) => result.data()))
    if (!latest()) return // asked again meanwhile, which is answered by itself
    if (from === 0) {
      list.replaceChildren()
      says.textContent = said(results.length === 0 ? `Nothing found for ${about}.` : `${results.length > MOST ? `The first ${MOST} of ${results.length}` : results.length} found for ${about}.`)
    }
    list.append(...found.map((result) => entry(page, result)))
    if (from === 0) await drawn()
  }
}

/** When what stands on the page has been drawn. */
const drawn = (): Promise<void> =>
  new Promise((resolve) => {
    requestAnimationFrame(() => setTimeout(resolve))
    setTimeout(resolve, DRAWN_ms)
  })

/** Down and up walk through what was found, and back to the words. */
function walk(event: KeyboardEvent, { page, list }: Parts): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return
  if (page.activeElement instanceof HTMLSelectElement) return
  const links = [...list.querySelectorAll('a')]
  const at = links.findIndex((link) => link === page.activeElement)
  const next = at + (event.key === 'ArrowDown' ? 1 : -1)
  const target = next < 0 ? page.querySelector<HTMLElement>('#q') : links[Math.min(next, links.length - 1)]
  target?.focus()
  event.preventDefault()
}

function entry(page: Document, { url, meta, excerpt }: Found): HTMLLIElement {
  const line = page.createElement('li')
  const link = page.createElement('a')
  link.href = url
  link.textContent = meta.title ?? url
  const about = page.createElement('p')
  about.className = 'about'
  about.textContent = said([meta.kind, meta.load].filter(Boolean).join(' · '))
  const extract = page.createElement('p')
  extract.append(...marked(page, excerpt))
  line.append(link, about, extract)
  return line
}

/** The excerpt comes as text with <mark> around the words found; nothing else in it is taken for markup. */
function marked(page: Document, excerpt: string): Node[] {
  return excerpt.split(/<mark>(.*?)<\/mark>/g).map((part, index) => {
    const text = part.replace(/&(lt|gt|amp|quot|#39);/g, (_, name: string) => ({ lt: '<', gt: '>', amp: '&', quot: '"', '#39': "'" })[name] ?? '')
    if (index % 2 === 0) return page.createTextNode(text)
    const mark = page.createElement('mark')
    mark.textContent = text
    return mark
  })
}
