import assert from 'node:assert/strict'
import { test } from 'vitest'
import { measure } from '../../src/measure/measure.ts'
import { booklet } from '../../src/page/booklet.ts'
import { cardCautions, imprintOf, plainLine } from '../../src/page/card-words.ts'
import { escaped } from '../../src/page/escaped.ts'
import { html } from '../../src/page/html.ts'
import { supervisionText } from '../../src/page/safety.ts'
import { ENGLISH } from '../../src/page/tongue.ts'
import { spoken, written } from '../../src/page/written.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { readWorkspace } from '../../src/site/disk.ts'

const { layers } = await readWorkspace(new URL('../../site-demo', import.meta.url).pathname)
const reading = readCurriculum(layers)
assert.ok('value' in reading && reading.value)
const { handbook, ladders } = measure(reading.value)

for (const ladder of ladders) {
  test(`${ladder.id}: every rung has a sheet of its own, with who watches, what to take care of, when to stop and who asks first on it`, () => {
    const [, first = '', ...sheets] = written(html`${booklet(ladder, imprintOf(handbook))}`, ENGLISH).split('<article ')
    assert.ok(first.includes(escaped(ladder.title)))
    assert.equal(sheets.length, ladder.rungs.length)
    for (const [index, rung] of ladder.rungs.entries()) {
      const sheet = (sheets[index] ?? '').replace(/<[^>]*>/g, '')
      const notes = [supervisionText(rung.supervision ?? ladder.supervision), ...cardCautions(rung), ...ladder.stop.map(plainLine), ...ladder.ask_first.map(plainLine)]
      for (const note of notes.map((each) => spoken(each, ENGLISH))) assert.ok(sheet.includes(escaped(note)), `${rung.id}: ${note}`)
      assert.ok(sheet.includes(`Edition ${handbook.edition}`), rung.id)
    }
  })
}
