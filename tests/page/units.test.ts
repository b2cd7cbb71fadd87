import assert from 'node:assert/strict'
import path from 'node:path'
import { parseHTML } from 'linkedom'
import { beforeAll, test } from 'vitest'
import { imperialText } from '../../src/quantity/imperial.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { withImperial } from '../../src/page/both-units.ts'
import { AVERAGE, measure, type MeasuredCurriculum } from '../../src/measure/measure.ts'
import { floorMarks, markRows } from '../../src/load/floor-marks.ts'
import { ladderData } from '../../src/page/data.ts'
import { speechesOf } from '../../src/page/speech.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readWorkspace } from '../../src/site/disk.ts'
import { REPOSITORY } from '../site/demo.ts'
import { everyPage } from './every-page.ts'

/** The starter in feet and pounds. */
const pages = new Map<string, Document>()
let curriculum: MeasuredCurriculum | undefined

beforeAll(async () => {
  const { layers } = await readWorkspace(path.join(REPOSITORY, '.'))
  const { value } = readCurriculum(layers) as { value?: Parameters<typeof measure>[0] }
  assert.ok(value)
  const [speech] = speechesOf(measure({ ...value, handbook: { ...value.handbook, languages: ['en'], units: 'imperial' } }))
  assert.ok(speech)
  curriculum = speech.curriculum
  for (const { address, html } of everyPage(speech, { examples: new Map(), editions: [] })) pages.set(address, parseHTML(html).document)
})

const figures = (page: Document | undefined): string[] => [...(page?.querySelectorAll('a.figure') ?? [])].map(({ textContent }) => textContent)

test('no figure of an imperial handbook is in centimetres, kilograms or newtons', () => {
  let seen = 0
  for (const [address, page] of pages) {
    const all = figures(page)
    seen += all.length
    assert.deepEqual(all.filter((text) => /\d ?(cm|m|kg|N|m\/s)$/.test(text)), [], address)
  }
  assert.ok(seen > 1000, `only ${seen} figures were seen`)
})

test('floor marks are turned into inches from the marks themselves, and rounded once', () => {
  const rung = curriculum?.ladders.find(({ id }) => id === 'press-up')?.rungs.find(({ id }) => id === 'bench-hands')
  assert.ok(rung)
  const statures = [60, 63, 66, 70, 74, 78].map((inches) => inches * 2.54)
  const marks = floorMarks(rung.inputs, AVERAGE, statures)
  assert.ok(!isMissing(marks))
  const wanted = markRows(rung.inputs).flatMap((row) => marks.map(([, mark]) => (isMissing(mark) ? '–' : (imperialText(row.value(mark) ?? 0, row.unit) ?? 'no such unit'))))
  const table = pages.get('/press-up/bench-hands/')?.querySelector('section:has(#marks) table') ?? pages.get('/press-up/bench-hands/')?.querySelector('[aria-labelledby="marks"] table')
  assert.deepEqual([...(table?.querySelectorAll('td') ?? [])].map(({ textContent }) => textContent), wanted)
  assert.deepEqual([...(table?.querySelectorAll('thead th') ?? [])].slice(1).map(({ textContent }) => textContent), ['5 ft', '5 ft 3 in', '5 ft 6 in', '5 ft 10 in', '6 ft 2 in', '6 ft 6 in'])
})

test('a sentence that comes finished says both: criteria in metres, what a load is computed from, what is assumed', () => {
  const text = (address: string): string => pages.get(address)?.querySelector('main')?.textContent ?? ''
  assert.match(text('/loaded-carry/'), /Standard for stepping up 3 sets of 20 m \(65 ft 7½ in\), 2 sessions running/)
  assert.match(text('/cards/loaded-carry/'), /3 sets of 20 m \(65 ft 7½ in\), 2 sessions running/)
  assert.match(text('/press-up/bench-hands/'), /hand_height_cm45 cm \(17½ in\)/)
  assert.match(text('/pull-up/band-broad/'), /on a body of 67\.5 kg \(149 lb\)/)
})

test('only whole figures of a sentence are said twice, both ends of a span together', () => {
  assert.equal(withImperial('Hands 5 to 10 cm up, no more than 2.5 kg.'), 'Hands 5 to 10 cm (2 in to 4 in) up, no more than 2.5 kg (6 lb).')
  assert.equal(withImperial('It holds 0.69 N·m/kg at 9.80665 m/s², 12 kgs, 3 m²: nothing.'), 'It holds 0.69 N·m/kg at 9.80665 m/s², 12 kgs, 3 m²: nothing.')
})

test('a reader of an imperial handbook is asked for pounds, feet and inches first', () => {
  const page = pages.get('/press-up/floor/')
  assert.deepEqual([...(page?.querySelectorAll('#own-numbers option[selected]') ?? [])].map((option) => option.getAttribute('value')), ['lb', 'ft-in'])
})

test('data stay metric, whatever a handbook shows', () => {
  const ladder = curriculum?.ladders.find(({ id }) => id === 'press-up')
  assert.ok(ladder)
  const data = ladderData(ladder, '1')
  assert.equal(data.rungs.find(({ id }) => id === 'bench-hands')?.figures.find(({ unit }) => unit === 'cm')?.unit, 'cm')
})
