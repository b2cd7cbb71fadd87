import assert from 'node:assert/strict'
import path from 'node:path'
import { parseHTML } from 'linkedom'
import { beforeAll, test } from 'vitest'
import { measure, type MeasuredCurriculum } from '../../src/measure/measure.ts'
import { siteMap } from '../../src/page/site-files.ts'
import { speechesOf, type Speech } from '../../src/page/speech.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readWorkspace } from '../../src/site/disk.ts'
import { readEditions } from '../../src/site/editions.ts'
import { ruleExamples } from '../../src/site/rule-examples.ts'
import { REPOSITORY } from '../site/demo.ts'
import { everyPage } from './every-page.ts'

/** The demo handbook and the starter in English and Spanish, every page by its address from the root of the host. */
const speeches: Speech[] = []
const pages = new Map<string, Document>()
const ROOT = 'https://handbook.example'

async function measured(workspace: string): Promise<MeasuredCurriculum> {
  const { layers } = await readWorkspace(path.join(REPOSITORY, workspace))
  const { value } = readCurriculum(layers) as { value?: Parameters<typeof measure>[0] }
  assert.ok(value)
  return measure({ ...value, handbook: { ...value.handbook, languages: ['en', 'es'], address: `${ROOT}/` } })
}

beforeAll(async () => {
  const demo = await measured('site-demo')
  speeches.push(...speechesOf(demo))
  const { changes } = await readEditions(path.join(REPOSITORY, 'site-demo'), demo)
  const languages = speeches.map(({ tongue: { language, name }, under, curriculum: { handbook } }) => ({ language, name, under, root: handbook.address }))
  const examples = await ruleExamples()
  for (const speech of speeches) {
    for (const { address, html } of everyPage(speech, { examples, editions: changes, pdfs: true, languages })) pages.set(`/${speech.under}${address.slice(1)}`, parseHTML(html).document)
  }
})

test('in Spanish no phrase of the interface is left in English', () => {
  const es = speeches[1]
  assert.equal(es?.tongue.language, 'es')
  assert.deepEqual([...(es?.tongue.untranslated ?? ['not asked'])], [])
})

test('every page stands in each language under the same address, and says which it is in', () => {
  const of = (under: string): string[] => [...pages.keys()].filter((address) => address.startsWith('/es/') === (under !== '')).map((address) => address.slice(under.length)).toSorted()
  assert.deepEqual(of('/es'), of(''))
  assert.ok(of('').length > 300)
  for (const [address, page] of pages) assert.equal(page.documentElement.getAttribute('lang'), address.startsWith('/es/') ? 'es' : 'en', address)
})

/** What a page says of itself in other languages, by language. */
const alternates = (page: Document | undefined): Record<string, string> => Object.fromEntries([...(page?.querySelectorAll('link[hreflang]') ?? [])].map((link) => [link.getAttribute('hreflang') ?? '', link.getAttribute('href') ?? '']))

test('each page names itself in every language, all of them alike, and the first for everybody else', () => {
  let named = 0
  for (const [address, page] of pages) {
    if (address.endsWith('404.html')) continue
    const own = address.replace(/^\/es\//, '/')
    assert.deepEqual(alternates(page), { en: ROOT + own, es: `${ROOT}/es${own}`, 'x-default': ROOT + own }, address)
    for (const href of Object.values(alternates(page))) assert.deepEqual(alternates(pages.get(href.slice(ROOT.length))), alternates(page), `${address} and ${href}`)
    named += 1
  }
  assert.ok(named > 600)
})

test('a reader finds the other language by its own name, on the same page', () => {
  for (const [address, page] of pages) {
    const [link, ...more] = page.querySelectorAll('nav.languages a')
    const es = address.startsWith('/es/')
    assert.deepEqual([link?.textContent, link?.getAttribute('lang'), more.length], [es ? 'English' : 'Español', es ? 'en' : 'es', 0], address)
    assert.equal(new URL(link?.getAttribute('href') ?? '', ROOT + address).pathname, es ? address.replace(/^\/es\//, '/') : `/es${address}`)
  }
})

test('the map of the site holds every page in every language, each with the others', () => {
  const map = siteMap(speeches.map(({ tongue: { language }, curriculum: { handbook } }) => ({ language, root: handbook.address ?? '', pages: [{ address: '/', html: '' }, { address: '/press-up/', html: '' }, { address: '/404.html', html: '' }] })))
  const other = (address: string): string => ['en', 'es', 'x-default'].map((language) => `<xhtml:link rel="alternate" hreflang="${language}" href="${ROOT}${language === 'es' ? '/es' : ''}${address}"/>`).join('')
  assert.equal(map, `<?xml version="1.0" encoding="utf-8"?>
<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9" xmlns:xhtml="http://www.w3.org/1999/xhtml">
  <url><loc>${ROOT}/</loc>${other('/')}</url>
  <url><loc>${ROOT}/press-up/</loc>${other('/press-up/')}</url>
  <url><loc>${ROOT}/es/</loc>${other('/')}</url>
  <url><loc>${ROOT}/es/press-up/</loc>${other('/press-up/')}</url>
</urlset>
`)
})

test('the code of a card leads to the language of the card', () => {
  assert.match(pages.get('/es/cards/press-up/')?.querySelector('.wall-foot')?.textContent ?? '', /handbook\.example\/es\/press-up\//)
  assert.match(pages.get('/cards/press-up/')?.querySelector('.wall-foot')?.textContent ?? '', /handbook\.example\/press-up\//)
})

test('the same numbers stand on a page in both languages, written as each writes them', () => {
  const figures = (address: string): string[] => [...(pages.get(address)?.querySelectorAll('a.figure') ?? [])].map(({ textContent }) => (textContent.match(/[\d.,]+/g) ?? []).join(' '))
  for (const address of ['/press-up/floor/', '/row-straps/lean-45/', '/overhead-press/', '/'].filter((each) => pages.has(each))) {
    assert.deepEqual(figures(`/es${address}`), figures(address).map((text) => text.replaceAll('.', ',')), address)
  }
})
