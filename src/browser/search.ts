/** What we use of the search index's own script. */
type Found = { readonly url: string; readonly excerpt: string; readonly meta: Readonly<Record<string, string>> }
type Results = { readonly results: readonly { data(): Promise<Found> }[] }
type Index = { init(): Promise<void>; search(words: string): Promise<Results> }

/** Results shown at once. Chosen by us: two screens of a phone. */
const MOST = 20

/** Runs the search page: asks the index, and lists what it finds, from text nodes only. */
export function startSearch(page: Document, { search, href }: Location): void {
  const list = page.querySelector('#search-results')
  const says = page.querySelector('#search-says')
  const input = page.querySelector<HTMLInputElement>('#q')
  const words = new URLSearchParams(search).get('q')?.trim() ?? ''
  if (!list || !says) return
  if (input) input.value = words
  if (words === '') {
    says.textContent = 'Type a word above: a movement, a cue, a fault, a piece of equipment.'
    return
  }
  says.textContent = 'Searching …'
  void find(new URL('../pagefind/pagefind.js', href).href, words).then(
    (found) => show(page, list, says, words, found),
    () => void (says.textContent = 'The search index could not be loaded. Look on the first page.'),
  )
}

async function find(script: string, words: string): Promise<readonly Found[]> {
  const index = (await import(script)) as Index
  await index.init()
  const { results } = await index.search(words)
  return Promise.all(results.slice(0, MOST).map((result) => result.data()))
}

function show(page: Document, list: Element, says: Element, words: string, found: readonly Found[]): void {
  says.textContent = found.length === 0 ? `Nothing found for “${words}”.` : `${found.length === MOST ? `The first ${MOST}` : found.length} found for “${words}”.`
  list.replaceChildren(...found.map((result) => entry(page, result)))
}

function entry(page: Document, { url, meta, excerpt }: Found): HTMLLIElement {
  const line = page.createElement('li')
  const link = page.createElement('a')
  link.href = url
  link.textContent = meta.title ?? url
  const about = page.createElement('p')
  about.className = 'about'
  about.textContent = [meta.kind, meta.load].filter(Boolean).join(' · ')
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
