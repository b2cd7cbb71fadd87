import assert from 'node:assert/strict'
import { test } from 'vitest'
import { measure } from '../../src/measure/measure.ts'
import { inEnglish } from '../../src/page/html.ts'
import { blockText, dataBlock, handbookAbout, ladderAbout, pageAbout, rungAbout, type Says, type Thing } from '../../src/page/linked-data.ts'
import { ENGLISH } from '../../src/page/tongue.ts'
import { spoken } from '../../src/page/written.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readWorkspace } from '../../src/site/disk.ts'

/** What a coach may write into a title, and what no block of data may then hold. */
for (const text of ['</script><script>alert(1)</script>', '<!--<script>', '-->', ']]>', '&lt;', 'a\u2028b\u2029c', '"quoted" \\ and back', 'plain', '\u0000', '<\\/script>']) {
  test(`${JSON.stringify(text)} stays text in a block of data`, () => {
    const block = blockText({ name: text })
    assert.doesNotMatch(block, /[<>&\u2028\u2029]/)
    assert.deepEqual(JSON.parse(block), { name: text })
  })
}

test('a block is one element that no script runs, and nothing where there is nothing to say', () => {
  assert.equal(inEnglish(dataBlock([{ '@type': 'Thing', name: '<b>' }])), '<script type="application/ld+json">{"@context":"https://schema.org","@graph":[{"@type":"Thing","name":"\\u003cb\\u003e"}]}</script>\n')
  assert.equal(inEnglish(dataBlock([])), '')
})

const { layers } = await readWorkspace(new URL('../../site-demo', import.meta.url).pathname)
const reading = readCurriculum(layers)
assert.ok('value' in reading && reading.value)
const curriculum = measure(reading.value)
const says: Says = { to: (address) => `https://handbook.example${address}`, words: (words) => spoken(words, ENGLISH), language: 'en', organisation: 'A union' }
const ladder = curriculum.ladders.find(({ id }) => id === 'press-up') ?? assert.fail('no press-up')

const oneOf = (things: readonly Thing[], type: string): Thing => things.find((thing) => thing['@type'] === type) ?? assert.fail(`no ${type}`)
const itemsOf = (list: Thing): readonly Thing[] => list['itemListElement'] as readonly Thing[]

test('a ladder lists its rungs in order, each with its place, name and whole address', () => {
  const list = oneOf(ladderAbout('A handbook', ladder, 'what it is')(says), 'ItemList')
  assert.equal(list['numberOfItems'], ladder.rungs.length)
  assert.deepEqual(
    itemsOf(list).map(({ position, name, url }) => [position, name, url]),
    ladder.rungs.map(({ id, title }, index) => [index + 1, title, `https://handbook.example/press-up/${id}/`]),
  )
})

test('a rung is an exercise plan with its standard, rest and load, and says the way to it', () => {
  const rung = ladder.rungs.find(({ id }) => id === 'floor') ?? assert.fail('no floor')
  const things = rungAbout('A handbook', rung, ladder, 'what it is')(says)
  const plan = oneOf(things, 'ExercisePlan')
  assert.equal(plan['name'], 'Hands on the floor')
  assert.equal(plan['restPeriods'], '90 s between sets')
  assert.deepEqual(plan['repetitions'], { '@type': 'QuantitativeValue', value: 36, unitText: 'repetitions in 3 sets' }) // by hand: 3 sets of 12
  assert.match(String(plan['intensity']), /^force on one working hand: \d+ % of body weight$/)
  assert.deepEqual(itemsOf(oneOf(things, 'BreadcrumbList')).map(({ name }) => name), ['A handbook', 'Press-up', 'Hands on the floor'])
})

/** Letters and numbers of the vocabulary's own rules for lists: places count from one, every item has a name and somewhere to be found. */
test('every list of every page counts from one and leads somewhere', () => {
  const all = [
    ...handbookAbout(curriculum)(says),
    ...curriculum.ladders.flatMap((each) => [...ladderAbout('A handbook', each, 'x')(says), ...each.rungs.flatMap((rung) => rungAbout('A handbook', rung, each, 'x')(says))]),
    ...curriculum.pages.flatMap((page) => pageAbout('A handbook', page)(says)),
  ]
  const lists = all.filter((thing) => Array.isArray(thing['itemListElement']))
  assert.ok(lists.length > curriculum.ladders.length)
  for (const list of lists) {
    for (const [index, item] of itemsOf(list).entries()) {
      assert.equal(item['position'], index + 1)
      assert.ok(String(item['name']).length > 0)
      assert.match(String(item['url'] ?? item['item']), /^https:\/\/handbook\.example\//)
    }
  }
})
