import assert from 'node:assert/strict'
import { test } from 'vitest'
import { amount, between, html, inEnglish, raw, say, type Html } from '../../src/page/html.ts'
import { tongueOf, type Catalogue } from '../../src/page/tongue.ts'
import { spoken, written } from '../../src/page/written.ts'

/** A tongue whose words are given here, so that no test leans on the program's catalogues. */
const tongue = (language: string, words: Catalogue, theirs: readonly string[] = []) => tongueOf(language, { words, theirs: new Set(theirs) })
const inWords = (page: Html, words: Catalogue, theirs: readonly string[] = []): string => written(page, tongue('es', words, theirs))

test('a page in English is its templates as they stand', () => {
  const page = html`<p class="a"> After ${'Box & bench'}:  <strong>${3} sets</strong>${undefined}${false}${[html`<br>`, ' or ']}</p>\n`
  assert.equal(inEnglish(page), '<p class="a"> After Box &amp; bench:  <strong>3 sets</strong><br> or </p>\n')
})

test('a sentence is found whole, with its holes and inline elements in the order the language wants', () => {
  const page = html`<li class="x"><p>After ${'Caja'}: <a href="${'../a/'}">${'Banco'}</a>; done</p></li>`
  assert.equal(
    inWords(page, { 'After {1}: <1>{2}</1>; done': '<1>{2}</1> listo, después de {1}' }, ['Caja', 'Banco']),
    '<li class="x"><p><a href="../a/">Banco</a> listo, después de Caja</p></li>',
  )
})

test('elements side by side without words between them are sentences of their own', () => {
  const page = html`<nav><a href="./">Ladders</a> · <a href="x/">Pages</a></nav>`
  assert.equal(inWords(page, { Ladders: 'Escaleras', Pages: 'Páginas' }), '<nav><a href="./">Escaleras</a> · <a href="x/">Páginas</a></nav>')
})

test('attributes a reader hears are said, and no other', () => {
  const page = html`<div role="region" aria-label="What ${'polea'} asks" data-kind="region" class="Inputs"></div>`
  assert.equal(inWords(page, { 'What {1} asks': 'Lo que pide {1}', Inputs: 'x', region: 'x' }, ['polea']), '<div role="region" aria-label="Lo que pide polea" data-kind="region" class="Inputs"></div>')
})

test('the description of a page is said, and no other content of a head', () => {
  const page = html`<meta name="description" content="${'Inputs'}"><meta name="referrer" content="no-referrer">`
  assert.equal(inWords(page, { Inputs: 'Datos' }), '<meta name="description" content="Datos"><meta name="referrer" content="no-referrer">')
})

test('attributes made in a hole stay as they are', () => {
  const page = html`<input${html` checked`}${html` data-to="${'Ladders'}"`}>`
  assert.equal(inWords(page, { checked: 'x', Ladders: 'x' }), '<input checked data-to="Ladders">')
})

test('code, ids and links are never said', () => {
  const page = html`<p><code>${'reps'}</code></p><pre>reps ${'reps'}</pre><a id="${'reps'}" href="${'reps'}">${'reps'}</a>`
  assert.equal(inWords(page, { reps: 'repeticiones' }), '<p><code>reps</code></p><pre>reps reps</pre><a id="reps" href="reps">repeticiones</a>')
})

test('what is not known stands in English, says so, and is counted', () => {
  const es = tongue('es', {}, ['Banco'])
  assert.equal(written(html`<p>Begin ${'here.'} ${'Banco'}</p><option>${'no such thing'}</option>`, es), '<p><span lang="en">Begin <span lang="en">here.</span> Banco</span></p><option>no such thing</option>')
  assert.deepEqual([...es.untranslated].toSorted(), ['Begin {1} {2}', 'here.', 'no such thing'])
})

test("a coach's own words stay, and are not counted", () => {
  const es = tongue('es', {}, ['Hands on a bench'])
  assert.equal(written(html`<h1>${'Hands on a bench'}</h1>`, es), '<h1>Hands on a bench</h1>')
  assert.equal(es.untranslated.size, 0)
})

test('markup made elsewhere is written as it stands', () => {
  assert.equal(inWords(html`<div>${raw('<p>Begin here.</p>')}</div>`, { 'Begin here.': 'x' }), '<div><p>Begin here.</p></div>')
})

test("a layer's words cannot bring markup", () => {
  assert.equal(inWords(html`<p>Begin here.</p>`, { 'Begin here.': '<img src=x> & <b>' }), '<p>&lt;img src=x&gt; &amp; &lt;b&gt;</p>')
})

test("a layer's words replace English ones", () => {
  assert.equal(written(html`<h2>Cues</h2>`, tongue('en', { Cues: 'What to say' })), '<h2>What to say</h2>')
})

/** Forms of one phrase for whole numbers, as CLDR divides them. */
const COUNTED: readonly (readonly [language: string, forms: Catalogue[string], said: readonly (readonly [number, string])[]])[] = [
  ['en', { one: '{1} rung', other: '{1} rungs' }, [[0, '0 rungs'], [1, '1 rung'], [2, '2 rungs'], [21, '21 rungs']]],
  ['es', { one: '{1} peldaño', other: '{1} peldaños' }, [[0, '0 peldaños'], [1, '1 peldaño'], [2, '2 peldaños'], [1_000_000, '1000000 peldaños']]],
  ['pl', { one: '{1} szczebel', few: '{1} szczeble', many: '{1} szczebli', other: '{1} szczebla' }, [[1, '1 szczebel'], [2, '2 szczeble'], [5, '5 szczebli'], [12, '12 szczebli'], [22, '22 szczeble'], [25, '25 szczebli']]],
]

for (const [language, forms, said] of COUNTED) {
  test(`a count takes the form its language has for it: ${language}`, () => {
    const own = tongue(language, { '{1} rungs': forms })
    for (const [count, text] of said) {
      assert.equal(written(html`<p>${count} rungs</p>`, own), `<p>${text}</p>`)
      assert.equal(spoken(say`${count} rungs`, own), text)
    }
  })
}

test('the hole that decides a form can be named', () => {
  const es = tongue('es', { '{1} of {2} rungs': { of: 2, one: '{1} de {2} peldaño', other: '{1} de {2} peldaños' } })
  assert.equal(spoken(say`${3} of ${1} rungs`, es), '3 de 1 peldaño')
  assert.equal(spoken(say`${1} of ${3} rungs`, es), '1 de 3 peldaños')
})

/** Decimal signs are those of CLDR for each language; none of them groups here, so that a number reads the same on every page. */
const NUMBERS: readonly (readonly [language: string, said: Readonly<Record<string, string>>])[] = [
  ['en', { '1.25': '1.25', '−3.5': '−3.5', '12000': '12000' }],
  ['es', { '1.25': '1,25', '−3.5': '−3,5', '12000': '12000' }],
  ['pl', { '1.25': '1,25', '−3.5': '−3,5', '12000': '12000' }],
]

for (const [language, said] of NUMBERS) {
  test(`numbers are written as the language writes them: ${language}`, () => {
    for (const [from, to] of Object.entries(said)) assert.equal(spoken(from, tongue(language, {})), to)
  })
}

test('a day is written as its language writes it', () => {
  assert.equal(spoken('2026-10-03', tongue('es', {})), '3 de octubre de 2026')
  assert.equal(spoken('2026-10-03', tongue('en', {})), '2026-10-03')
})

test('an edition that looks like a number stays what it is called', () => {
  assert.equal(spoken('2026.2', tongue('es', {}, ['2026.2'])), '2026.2')
})

test('amounts are rounded once and take the words of their unit', () => {
  const es = tongue('es', { '{1} kg': '{1} kg', '{1} to {2} % of body weight': 'de {1} a {2} % del peso corporal', '{1} % of body weight': '{1} % del peso corporal' })
  assert.equal(spoken(amount(12.349, 'kg'), es), '12,3 kg')
  assert.equal(spoken(between(66.2, 74.4, '% of body weight'), es), 'de 66 a 74 % del peso corporal')
  assert.equal(spoken(between(66.2, 66.4, '% of body weight'), es), '66 % del peso corporal')
})

test('a sentence that comes finished is found by its shape, and what stands in its holes is said in turn', () => {
  const es = tongue('es', { 'not even {1} repetitions leave {2}': 'ni {1} repeticiones dejan {2}', '{1} kg': '{1} kg', speed: 'velocidad', balance: 'equilibrio', and: 'y' })
  assert.equal(spoken('not even 20 repetitions leave 2.5 kg', es), 'ni 20 repeticiones dejan 2,5 kg')
  assert.equal(spoken('speed, balance', es), 'velocidad, equilibrio')
  assert.equal(spoken('speed and balance', es), 'velocidad y equilibrio')
  assert.equal(es.untranslated.size, 0)
  assert.equal(spoken('not even 20 repetitions leave a scratch', es), 'not even 20 repetitions leave a scratch')
  assert.deepEqual([...es.untranslated], ['not even 20 repetitions leave a scratch'])
})

test('what was said beside the words of one ladder is said anew beside those of another, where it matters', () => {
  const shared = tongue('es', { 'Stop when {1}': 'Pare si: {1}', 'one step': 'un paso' })
  const [cold, none] = [shared.among(new Set(['cold']), undefined), shared.among(new Set(), undefined)]
  for (const round of [1, 2]) {
    assert.deepEqual(cold.said('Stop when cold'), { text: 'Pare si: cold', known: true }, `round ${round}`)
    assert.deepEqual(none.said('Stop when cold'), { text: 'Stop when cold', known: false }, `round ${round}`)
    for (const each of [cold, none]) assert.deepEqual(each.said('Stop when one step'), { text: 'Pare si: un paso', known: true })
  }
})
