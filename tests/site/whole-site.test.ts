import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { parseHTML } from 'linkedom'
import { beforeAll, test } from 'vitest'
import { editionsDataSchema } from '../../src/page/editions-data.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { builtDemo } from './demo.ts'
import { faultsOfPage, faultsOfXml } from './faults-of-page.ts'

/** The demo handbook, as a reader gets it: every page by its address. */
let site: string
const pages = new Map<string, Document>()

beforeAll(async () => {
  site = await builtDemo()
  for (const file of await filesBelow(site)) {
    if (!file.endsWith('.html')) continue
    pages.set(`/${file}`.replace(/index\.html$/, ''), parseHTML(readFileSync(path.join(site, file), 'utf8')).document)
  }
})

const everywhere = function* (selector: string): Generator<{ address: string; element: Element }> {
  for (const [address, page] of pages) for (const element of page.querySelectorAll(selector)) yield { address, element }
}

/** Where a link leads: the address of a page and a fragment. */
const led = (address: string, href: string) => {
  const url = new URL(href, `https://handbook.example${address}`)
  return { page: url.pathname, fragment: decodeURIComponent(url.hash.slice(1)) }
}

test('there is a home, a page a ladder, a page a rung, the written pages, sources, checks, search and 404', () => {
  for (const address of ['/', '/press-up/', '/press-up/floor/', '/wet-exit/', '/safety/', '/welcome/', '/sources/', '/checks/', '/search/', '/404.html']) assert.ok(pages.has(address), address)
})

test('every internal link leads to a page, and every fragment to an id on it', async () => {
  const files = new Set((await filesBelow(site)).map((file) => `/${file}`))
  let links = 0
  for (const { address, element } of everywhere('a[href], link[href], script[src], form[action]')) {
    const href = element.getAttribute('href') ?? element.getAttribute('src') ?? element.getAttribute('action') ?? ''
    if (/^(https:|mailto:|tel:)/.test(href)) continue
    const { page, fragment } = led(address, href)
    assert.ok(files.has(page) || files.has(`${page}index.html`), `${address} links to ${href}`)
    if (fragment) assert.ok(pages.get(page)?.getElementById(fragment), `${address} links to ${href}, and there is no ${fragment} there`)
    links += 1
  }
  assert.ok(links > 1000, `only ${links} links were seen`)
})

test('every page is valid HTML, and every drawing, feed and map of the site well-formed XML', { timeout: 120_000 }, async () => {
  for (const file of await filesBelow(site)) {
    if (!/\.(html|svg|xml)$/.test(file)) continue
    const text = readFileSync(path.join(site, file), 'utf8')
    assert.deepEqual(file.endsWith('.html') ? faultsOfPage(text) : faultsOfXml(text), [], file)
  }
})

for (const [body, fault] of [
  ['<p>One <ul><li>two</li></ul></p>', 'opened or closed by the parser: <p>One <ul><li>two</li></ul></p>'],
  ['<p>One</p></p>', 'opened or closed by the parser: <p>'],
  ['<table><tr><td>One</td></tr></table>', 'opened or closed by the parser: <tbody>'],
  ['<a href="/"><a href="/b/">One</a></a>', 'opened or closed by the parser: <a href="/"><a href="/b/">One</a></a>'],
  ['<ul><p>One</p></ul>', '<p> in <ul>: <ul><p>One</p></ul>'],
  ['<label for="b">One</label><input id="a">', 'a control without a name: <input id="a">'],
  ['<nav aria-labelledby="c">One</nav>', 'no id c: <nav aria-labelledby="c">One</nav>'],
  ['<p id="a">One</p><p id="a">Two</p>', 'id a twice'],
  ['<p title="a" title="b">One</p>', 'duplicate-attribute, line 1'],
] as const) {
  test(`a page with ${body} is told apart from a valid one`, () => {
    const page = (within: string): string => `<!doctype html><html lang="en"><head><title>A page</title></head><body>${within}</body></html>`
    assert.deepEqual(faultsOfPage(page('<p>One <b>word</b><br>and another</p>')), [])
    assert.ok(faultsOfPage(page(body)).some((found) => found.startsWith(fault)), faultsOfPage(page(body)).join('; '))
  })
}

test('a drawing that is no XML is told', () => assert.match(faultsOfPage('<!doctype html><html lang="en"><head><title>A page</title></head><body><svg viewBox=0><path></svg></body></html>').join(), /rror/))

test('no page has one id twice', () => {
  for (const [address, page] of pages) {
    const ids = [...page.querySelectorAll('[id]')].map(({ id }) => id)
    assert.deepEqual(ids.filter((id, index) => ids.indexOf(id) !== index), [], address)
  }
})

const UNIT = /\d ?(% of body weight|% of body mass|% of 1RM|%|cm|m|m\/s|kg|N|N·m\/kg|J\/kg|reps?|weeks?|× body weight)$|^\d+°$|^\d+\.\d\d$/

/** The same in Spanish, decimals with a comma. */
const UNIDAD = /\d ?(% del peso corporal|% de la masa corporal|% de 1RM|%|cm|m|m\/s|kg|N|N·m\/kg|J\/kg|repetici(ón|ones)|semanas?|× el peso corporal|veces el peso corporal)$|^\d+°$|^\d+,\d\d$/

test('every number that was computed carries its unit and leads to its derivation', () => {
  let figures = 0
  for (const { address, element } of everywhere('a.figure')) {
    const text = element.textContent ?? ''
    assert.match(text, address.startsWith('/es/') ? UNIDAD : UNIT, `${address}: ${text}`)
    const { page, fragment } = led(address, element.getAttribute('href') ?? '')
    const working = pages.get(page)?.getElementById(fragment)?.closest('section')
    assert.ok(working, `${address}: ${text} leads nowhere`)
    assert.match(working.textContent ?? '', address.startsWith('/es/') ? /Fuentes:/ : /Sources:/)
    figures += 1
  }
  assert.ok(figures > 500, `only ${figures} numbers were seen`)
})

test('a page that shows a load gives its formula, its numbers and a source', () => {
  const working = pages.get('/press-up/floor/')?.getElementById('working')?.closest('section')?.textContent ?? ''
  for (const words of ['F/W = Σ mᵢ (xᵢ − x_C) / [(H − C) × u]', 'hand_height_cm', 'de Leva', 'Lombardi']) assert.ok(working.includes(words), words)
})

test('a layer’s change of an entry reaches the page, with its reason and whose it is', () => {
  const text = pages.get('/press-up/')?.body.textContent ?? ''
  assert.match(text, /3 sets of 15 repetitions/)
  assert.match(text, /Changed by Morrowfleet Paddlesport Union \(review; changed: Hands on the floor\)/)
})

test('every ladder page carries stop signs, who asks first, and the notes that stand on every page', () => {
  for (const [address, page] of pages) {
    assert.match(page.querySelector('footer')?.textContent ?? '', address.startsWith('/es/') ? /no es (un )?consejo médico/ : /no medical advice/, address)
    if (!page.querySelector('.rungs')) continue
    const safety = page.querySelector('.safety')
    assert.match(safety?.textContent ?? '', address.startsWith('/es/') ? /Señales de parar/ : /Stop when/, address)
    assert.match(safety?.textContent ?? '', address.startsWith('/es/') ? /Consultar antes con profesionales de la salud/ : /Ask a clinician first/, address)
    assert.ok((safety?.querySelectorAll('li').length ?? 0) >= 4, address)
  }
})

test('the diagram shows what the list beside it says, rung by rung', () => {
  let compared = 0
  for (const [address, page] of pages) {
    const diagram = page.querySelector('figure.diagram')
    if (!diagram) continue
    const squeeze = (text: string | null | undefined): string => (text ?? '').replace(/\s+/g, '')
    const drawn = squeeze(diagram.textContent)
    const items = [...(page.querySelector('.in-words')?.children ?? [])]
    const titles = [...page.querySelectorAll('.rungs h3 a')].map(({ textContent }) => textContent)
    assert.deepEqual(items.map((item) => item.querySelector('a')?.textContent), titles, address)
    assert.equal(diagram.querySelectorAll('g.node').length, titles.length, address)
    for (const item of items) {
      assert.ok(drawn.includes(squeeze(item.querySelector('a')?.textContent)), `${address}: ${item.textContent}`)
      compared += 1
    }
  }
  assert.ok(compared > 60)
})

test('no page runs or styles anything inline, and each says what it may load', () => {
  for (const [address, page] of pages) {
    assert.equal(page.querySelectorAll('script:not([src]):not([type="application/ld+json"]), style, [style], [onclick], [onload]').length, 0, address)
    assert.match(page.querySelector('meta[http-equiv="Content-Security-Policy"]')?.getAttribute('content') ?? '', /^default-src 'none'/, address)
  }
})

test('the page of changes tells three editions apart, from what the repository itself holds', () => {
  const text = pages.get('/changes/')?.body.textContent ?? ''
  for (const words of ['criterion raised: entry reps, 13 reps → 15 reps', 'more first reps to expect: first reps from Hands on a low step', 'Throwing a line: new ladder', 'rung withdrawn: heir: Drop landing from 40 cm', 'rung withdrawn: heir: Pool capsize with a closed deck', 'safety note removed: cautions', 'more supervision: coach → qualified coach']) assert.ok(text.includes(words), words)
  assert.doesNotMatch(text, /cannot be said/)
})

test('a safety note that a layer took out stands on the page with its reason and a name', () => {
  const text = pages.get('/loaded-carry/')?.body.textContent ?? ''
  for (const words of ['Wipe up spilt water before the next walk', 'wiping one spill makes the rest look dry', 'Odalie Wrenfoss']) assert.ok(text.includes(words), words)
})

test('the logo stands in the head of every page, in the colour of the text and hidden from those who hear the page', () => {
  for (const [address, page] of pages) {
    const logo = page.querySelector('header .whose > svg.logo')
    assert.equal(logo?.getAttribute('aria-hidden'), 'true', address)
    const colours = [...(logo?.querySelectorAll('[fill], [stroke]') ?? [])].flatMap((shape) => [shape.getAttribute('fill'), shape.getAttribute('stroke')]).filter((colour) => colour !== null)
    assert.ok(colours.length >= 4, address)
    assert.deepEqual(colours.filter((colour) => colour !== 'currentColor' && colour !== 'none'), [], address)
  }
})

test('what a page is about stands in it as data, and every address there is of the handbook and leads to a page', () => {
  let addresses = 0
  const follow = (value: unknown): void => {
    if (typeof value === 'string' && value.startsWith('https://handbook.morrowfleet.example')) {
      addresses += 1
      assert.ok(pages.has(new URL(value).pathname), value)
    } else if (typeof value === 'object' && value !== null) Object.values(value).forEach(follow)
  }
  for (const { element } of everywhere('script[type="application/ld+json"]')) follow(JSON.parse(element.textContent ?? ''))
  assert.ok(addresses > pages.size)
})

test('a link to any page shows a title, words and a picture that is there', async () => {
  const files = new Set(await filesBelow(site))
  for (const [address, page] of pages) {
    const property = (name: string): string => page.querySelector(`meta[property="og:${name}"]`)?.getAttribute('content') ?? ''
    assert.ok(property('title') !== '' && property('description') !== '', address)
    assert.equal(property('url'), `https://handbook.morrowfleet.example${address}`)
    assert.ok(files.has(new URL(property('image')).pathname.slice(1)), property('image'))
  }
})

test('each edition says which ladders and rungs it changed, and every page of one tells a card of an older edition', () => {
  const { edition, editions } = editionsDataSchema.parse(JSON.parse(readFileSync(path.join(site, 'data/editions.json'), 'utf8')))
  const [newest] = editions
  assert.ok(newest && newest.edition === edition && newest.since !== edition && Array.isArray(newest.changed))
  assert.ok(newest.changed.includes('landing/drop-10') && newest.changed.includes('landing'))
  assert.ok(!newest.changed.includes('crawl'))
  const printed = pages.get('/landing/drop-10/')?.querySelector('#printed')
  assert.deepEqual([printed?.getAttribute('data-edition'), printed?.getAttribute('data-page'), printed?.getAttribute('data-data'), printed?.querySelector('a')?.getAttribute('href')], [edition, 'landing/drop-10', '../../data/editions.json', '../../changes/'])
})

test('a ladder says where to begin after weeks off, in words of the function that decides it', () => {
  const rows = [...(pages.get('/landing/')?.querySelectorAll('section:has(> #coming-back) tbody tr, #coming-back ~ div tbody tr') ?? [])].map((row) => row.textContent?.replace(/\s+/g, ' ').trim())
  assert.ok(rows.includes('2 to 5 weeksthe rung you were on, tested first with one easy setat least 50, 30, 20 and 10 % less in weeks 1 to 4'), rows.join(' | '))
  assert.ok(rows.some((row) => row?.startsWith('6 weeks or morethe rung before the one you were on')))
})
