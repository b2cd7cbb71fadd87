import assert from 'node:assert/strict'
import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { parseHTML } from 'linkedom'
import { beforeAll, test } from 'vitest'
import { isMissing } from '../../src/quantity/outcome.ts'
import { measure } from '../../src/measure/measure.ts'
import { buildSite } from '../../src/site/build.ts'
import { edited } from '../read/said.ts'
import { FULL, FULL_ES, read, sealed, TWO } from '../read/spanish.ts'
import { scratch } from './demo.ts'

/** A small handbook in English and Spanish, as it is published; one fault of its ladder has moved on since it was translated. */
const folder = await scratch()
const out = path.join(folder, 'site')
const textOf = (file: string): string => readFileSync(path.join(out, file), 'utf8')
const page = (address: string): Document => parseHTML(textOf(`${address}index.html`)).document

const PAGE = '---\ntitle: Safety\nsummary: When to stop.\n---\n\nStop at pain.\n'
const FILES = {
  'handbook.yaml': `${TWO}address: https://handbook.example/club\n`,
  'ladders/balance.md': FULL,
  'ladders/balance.es.md': FULL_ES,
  'content/safety.md': PAGE,
  'words.es.yaml': 'balance: equilibrio\nwall: pared\nCues: Indicaciones\n',
  'words.en.yaml': 'Cues: What to call out\n',
}

beforeAll(async () => {
  const files = sealed('balance', 'ladders/balance.es.md', FILES)
  const curriculum = measure(read({ ...files, 'ladders/balance.md': edited(FULL, 'eyes wander', 'the eyes wander') }))
  const built = await buildSite(curriculum, { folder, layers: [] }, out, () => undefined)
  assert.ok(!isMissing(built))
}, 120_000)

test('each language has its pages, data, feed, manifest, search index and worker, the first at the root', () => {
  for (const file of ['index.html', 'balance/free/index.html', 'data/ladders/balance.json', 'data/offline.json', 'feed.xml', 'manifest.webmanifest', 'pagefind/pagefind.js', 'service-worker.js']) {
    assert.ok(existsSync(path.join(out, file)), file)
    assert.ok(existsSync(path.join(out, 'es', file)), `es/${file}`)
  }
  assert.match(textOf('es/feed.xml'), /xml:lang="es"/)
  assert.match(textOf('es/manifest.webmanifest'), /"lang": "es"/)
  assert.match(textOf('es/data/ladders/balance.json'), /"title": "De pie sobre una pierna"/)
})

test('what a device keeps for one language is that language alone', () => {
  const list = (under: string): string[] => Object.values(JSON.parse(textOf(`${under}data/offline.json`)) as Record<string, unknown>).flatMap((value) => (typeof value === 'object' && value !== null ? Object.values(value).flat() : [])).filter((file) => typeof file === 'string')
  const [en, es] = [list(''), list('es/')]
  assert.ok(en.includes('balance/free/index.html') && es.includes('balance/free/index.html'))
  assert.deepEqual(en.filter((file) => file.startsWith('es/')), [])
  for (const file of es) assert.ok(existsSync(path.join(out, 'es', file)), file)
})

test('a search index holds one language', () => {
  for (const [under, language] of [['', 'en'], ['es/', 'es']] as const) {
    const { languages } = JSON.parse(textOf(`${under}pagefind/pagefind-entry.json`)) as { languages: Record<string, unknown> }
    assert.deepEqual(Object.keys(languages), [language])
  }
})

test('the scripts of a language hold its words, and those of English none', () => {
  const words = (under: string): string => (/"(assets\/handbook\.js)"|assets\/handbook\.js/.test(textOf(`${under}index.html`)) ? (JSON.parse(textOf(`${under}data/offline.json`)) as { core: string[] }).core.filter((file) => file.endsWith('.js')).map((file) => textOf(under + file)).join('') : '')
  assert.match(words('es/'), /Guardar todo el manual/)
  assert.doesNotMatch(words(''), /Guardar todo el manual/)
})

test('a translation stands in its own language, and what has moved on in the original, marked and told of', () => {
  const es = page('es/balance/free/')
  assert.equal(es.querySelector('h1')?.textContent, 'Libre')
  assert.match(es.querySelector('.lead')?.textContent ?? '', /Un peldaño sin ayuda/)
  assert.equal(es.querySelector('.untranslated')?.textContent, 'Parte de esto aún no tiene una traducción que diga lo que dice ahora el original. Se muestra en el original: inglés.')
  const fault = es.querySelector('.faults summary')
  assert.deepEqual([fault?.getAttribute('lang'), fault?.textContent], ['en', 'Arms wave'])
  assert.equal(es.querySelector('.cues ul')?.hasAttribute('lang'), false)
  assert.equal(page('balance/free/').querySelector('.untranslated'), null)
  assert.equal(page('es/balance/').querySelector('.untranslated'), null)
})

test('a page that nobody has translated stands in the original, and says so in the language of the reader', () => {
  const es = page('es/safety/')
  assert.equal(es.documentElement.getAttribute('lang'), 'es')
  assert.equal(es.querySelector('.untranslated')?.textContent, 'Esto aún no tiene una traducción que diga lo que dice ahora el original. Se muestra en el original: inglés.')
  assert.equal(es.querySelector('.prose [lang="en"]')?.textContent?.trim(), 'Stop at pain.')
  assert.equal(es.querySelector('h1 [lang="en"]')?.textContent, 'Safety')
})

test("a layer's words replace those of the interface, in either language", () => {
  assert.equal(page('es/balance/free/').querySelector('#cues')?.textContent, 'Indicaciones')
  assert.equal(page('balance/free/').querySelector('#cues')?.textContent, 'What to call out')
})

test('the map of the site and every page name both languages by their whole address', () => {
  assert.match(textOf('sitemap.xml'), /<loc>https:\/\/handbook\.example\/club\/es\/balance\/free\/<\/loc><xhtml:link rel="alternate" hreflang="en" href="https:\/\/handbook\.example\/club\/balance\/free\/"\/>/)
  assert.equal(page('es/balance/').querySelector('link[hreflang="es"]')?.getAttribute('href'), 'https://handbook.example/club/es/balance/')
})
