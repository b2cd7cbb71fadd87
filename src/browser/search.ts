import { said } from './said.ts'

/** What we use of the search index's own script. */
type Found = { readonly url: string; readonly excerpt: string; readonly meta: Readonly<Record<string, string>> }
type Results = { readonly results: readonly { data(): Promise<Found> }[] }
type Filters = Readonly<Record<string, Readonly<Record<string, number>>>>
type Index = { options(wanted: { noWorker: boolean }): Promise<void>; init(): Promise<void>; mergeIndex(folder: string): Promise<void>; filters(): Promise<Filters>; search(words: string | null, options: { filters: Record<string, string> }): Promise<Results> }

/** Results shown at once. Chosen by us: two screens of a phone. */
const MOST = 20
/** Results shown before the others are fetched. Chosen by us: one screen of a phone. */
const FIRST = 5

/** What may be chosen beside the words, in the order it is shown. */
const CHOICES = ['movement', 'equipment', 'demand'] as const

/** The search page's parts. */
type Parts = { readonly page: Document; readonly list: Element; readonly says: Element; readonly choices: Element }

/** Runs the search page: asks the index, and lists what it finds, from text nodes only. */
export function startSearch(page: Document, location: Location): void {
  const [list, says, choices] = ['#search-results', '#search-says', '#search-filters'].map((selector) => page.querySelector(selector))
  if (!list || !says || !choices) return
  const parts = { page, list, says, choices }
  const asked = new URLSearchParams(location.search)
  const input = page.querySelector<HTMLInputElement>('#q')
  if (input) input.value = asked.get('q') ?? ''
  says.textContent = said('Searching …')
  void opened(new URL('../pagefind/', location.href), Number(list.getAttribute('data-parts') ?? 1)).then(
    async (index) => {
      let turns = 0
      const ask = (): Promise<void> => {
        const turn = (turns += 1)
        return answer(index, parts, asked, location, () => turn === turns)
      }
      if (input) askHere(input, asked, () => void ask())
      choose(parts, await index.filters(), asked, () => void ask())
      await ask()
    },
    () => void (says.textContent = said('The search index could not be loaded. Look on the first page.')),
  )
  page.addEventListener('keydown', (event) => walk(event, parts))
}

/** Once the index is open, other words are looked for in it without another page. */
function askHere(input: HTMLInputElement, asked: URLSearchParams, ask: () => void): void {
  input.form?.addEventListener('submit', (event) => {
    event.preventDefault()
    asked.set('q', input.value)
    ask()
  })
}

/** The index, with the parts of it that lie in folders of their own. */
async function opened(folder: URL, parts: number): Promise<Index> {
  const index = (await import(new URL('pagefind.js', folder).href)) as Index
  await index.options({ noWorker: true }) // it would start its worker by a string that no policy vouches for
  await index.init()
  await Promise.all(Array.from({ length: parts - 1 }, (_, before) => index.mergeIndex(new URL(`part-${before + 1}/`, folder).pathname)))
  return index
}

/** One list of choices for each kind, with how much there is of each; the address keeps what was chosen. */
function choose({ page, choices }: Parts, filters: Filters, asked: URLSearchParams, changed: () => void): void {
  for (const kind of CHOICES) {
    const values = Object.entries(filters[kind] ?? {}).toSorted(([a], [b]) => a.localeCompare(b))
    if (values.length < 2) continue
    const label = page.createElement('label')
    const select = page.createElement('select')
    select.append(new Option(said(`any ${kind}`), ''), ...values.map(([value, count]) => new Option(`${value} (${count})`, value, false, asked.get(kind) === value)))
    select.addEventListener('change', () => {
      if (select.value === '') asked.delete(kind)
      else asked.set(kind, select.value)
      changed()
    })
    label.append(said(kind), select)
    choices.append(label)
  }
}

async function answer(index: Index, parts: Parts, asked: URLSearchParams, location: Location, latest: () => boolean): Promise<void> {
  const { list, says, page } = parts
  const words = asked.get('q')?.trim() ?? ''
  const filters = Object.fromEntries(CHOICES.flatMap((kind) => (asked.get(kind) ? [[kind, asked.get(kind) ?? '']] : [])))
  page.defaultView?.history.replaceState(null, '', `${location.pathname}?${asked.toString()}`)
  if (words === '' && Object.keys(filters).length === 0) {
    says.textContent = said('Type a word above: a movement, a cue, a fault, a piece of equipment.')
    list.replaceChildren()
    return
  }
  const { results } = await index.search(words === '' ? null : words, { filters })
  const about = [words === '' ? [] : [`“${words}”`], Object.values(filters)].flat().join(', ')
  for (const [from, to] of [[0, FIRST], [FIRST, MOST]] as const) {
    const found = await Promise.all(results.slice(from, to).map((result) => result.data()))
    if (!latest()) return // asked again meanwhile, which is answered by itself
    if (from === 0) {
      list.replaceChildren()
      says.textContent = said(results.length === 0 ? `Nothing found for ${about}.` : `${results.length > MOST ? `The first ${MOST} of ${results.length}` : results.length} found for ${about}.`)
    }
    list.append(...found.map((result) => entry(page, result)))
  }
}

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
