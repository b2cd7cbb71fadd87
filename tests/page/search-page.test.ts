import assert from 'node:assert/strict'
import { test } from 'vitest'
import { measure } from '../../src/measure/measure.ts'
import { searchable } from '../../src/page/found.ts'
import { html, inEnglish } from '../../src/page/html.ts'
import { searchChoices } from '../../src/page/search-choices.ts'
import { searchPage } from '../../src/page/search-page.ts'
import { speechesOf } from '../../src/page/speech.ts'
import { tongueOf } from '../../src/page/tongue.ts'
import { written } from '../../src/page/written.ts'
import { edited, LADDER } from '../read/said.ts'
import { read, TWO } from '../read/spanish.ts'

/** A ladder by another name, of a movement and with some equipment. */
const ladder = (id: string, movement: string, equipment: string): string => edited(edited(edited(LADDER, 'id: balance', `id: ${id}`), 'movement: balance', `movement: ${movement}`), 'equipment: [wall]', `equipment: [${equipment}]`)

/** What may be chosen in each language of a handbook of such ladders. */
const choices = (files: Readonly<Record<string, string>>) => speechesOf(measure(read({ 'handbook.yaml': TWO, ...files }))).map((speech) => searchChoices(speech).map(({ kind, values }) => [kind, Object.fromEntries(values)]))

test('each value counts the pages it finds: that of the ladder and those of its rungs, each once', () => {
  const [english] = choices({ 'ladders/one.md': ladder('one', 'balance', 'wall, mat'), 'ladders/two.md': edited(ladder('two', 'hinge', 'mat'), 'title: Free\n', 'title: Free\n    equipment: [rope]\n    demand: [grip, balance]\n') })
  assert.deepEqual(english, [['movement', { balance: 3, hinge: 3 }], ['equipment', { mat: 5, rope: 1, wall: 3 }], ['demand', { balance: 1, grip: 1 }]])
})

test('a kind of which there is one value, or none, has no list', () => {
  assert.deepEqual(choices({ 'ladders/one.md': ladder('one', 'balance', 'wall, mat') })[0], [['equipment', { mat: 3, wall: 3 }]])
})

test('values are said as pages say them; two that one word says are one, and a page with both counts once', () => {
  const [english, spanish] = choices({ 'ladders/one.md': ladder('one', 'balance', 'mat, soft mat, wall'), 'ladders/two.md': ladder('two', 'hinge', 'mat'), 'words.es.yaml': 'mat: colchoneta\nsoft mat: colchoneta\nwall: pared\nhinge: bisagra\nbalance: equilibrio\n' })
  assert.deepEqual(english, [['movement', { balance: 3, hinge: 3 }], ['equipment', { mat: 6, 'soft mat': 3, wall: 3 }]])
  assert.deepEqual(spanish, [['movement', { bisagra: 3, equilibrio: 3 }], ['equipment', { colchoneta: 6, pared: 3 }]])
})

test('200 values make a list, 201 none', () => {
  const many = (values: number) => Object.fromEntries(Array.from({ length: 10 }, (_, nth) => [`ladders/no-${nth}.md`, ladder(`no-${nth}`, 'balance', Array.from({ length: Math.ceil((values - nth) / 10) }, (__, each) => `thing ${nth + 10 * each}`).join(', '))]))
  assert.deepEqual(choices(many(200))[0]?.map(([kind, values]) => [kind, Object.keys(values ?? {}).length]), [['equipment', 200]])
  assert.deepEqual(choices(many(201))[0], [])
})

test('a handbook that is not searched, as an earlier edition is, offers no choice and asks for nothing ahead', () => {
  const page = inEnglish(searchPage([]).body)
  assert.match(page, /id="search-results"/)
  assert.doesNotMatch(page, /<link|<select|data-/)
})

test('an index in parts is asked for ahead part by part, and the page says how many there are', () => {
  const page = inEnglish(searchPage([], { parts: 2, tag: '0a', scripts: ['assets/search-A.js'], files: ['pagefind/wasm.en.pagefind', 'pagefind/pagefind-entry.json', 'pagefind/part-1/pagefind-entry.json'] }).body)
  assert.deepEqual(page.match(/href="[^"]*"/g)?.slice(0, 4), ['href="../assets/search-A.js"', 'href="../pagefind/wasm.en.pagefind"', 'href="../pagefind/pagefind-entry.json?ts=0a"', 'href="../pagefind/part-1/pagefind-entry.json?ts=0a"'])
  assert.match(page, /<ol id="search-results" class="results" data-tag="0a" data-parts="2"><\/ol>/)
})

test('a page gives the index each value once, as it says it', () => {
  const tongue = tongueOf('es', { words: { mat: 'colchoneta', 'soft mat': 'colchoneta', wall: 'pared' } })
  const page = written(searchable({ address: '/one/', title: 'One', description: '', body: html``, found: { kind: 'rung', equipment: ['mat', 'soft mat', 'wall'] } }) ?? html``, tongue)
  assert.deepEqual([...page.matchAll(/filter="equipment">([^<]*)</g)].map(([, value]) => value), ['colchoneta', 'pared'])
})
