import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import Papa from 'papaparse'
import { expect, test } from 'vitest'
import type { Ladder, RungWords } from '../../src/ladder/curriculum.ts'
import { ladderSchema } from '../../src/ladder/schema.ts'
import { models } from '../../src/load/index.ts'
import { readLadderFile } from '../../src/read/read-ladder.ts'
import { readTable } from '../../src/read/read-table.ts'
import { guarded, unguarded } from '../../src/read/table-cell.ts'
import { columns, letters } from '../../src/read/table-columns.ts'
import { ladderFileText, tableFile } from '../../src/read/table-files.ts'
import { tableText } from '../../src/read/write-table.ts'

const ROOT = path.resolve(import.meta.dirname, '../..')
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)

/** A ladder without the places it was read from. */
const said = ({ places: _, ...ladder }: Ladder): object => ladder

const readAs = (text: string): Ladder | undefined => {
  const { value, findings } = readLadderFile('x.md', bytes(text), '')
  return value?.kind === 'ladder' && findings.length === 0 ? value.ladder : undefined
}

/** Through a table and back: what was read, and the table it gives. */
function through(table: string): { readonly ladders: readonly Ladder[]; readonly messages: readonly string[] } {
  const read = readTable('t.csv', bytes(table))
  const files = (read.value ?? []).map(tableFile)
  return { ladders: files.flatMap(({ value }) => (value ? [value.ladder] : [])), messages: [...read.findings, ...files.flatMap(({ findings }) => findings)].map(({ message }) => message) }
}

/** The one finding about a small table. */
const finding = (...lines: readonly string[]): string => {
  const { messages } = through(lines.join('\n'))
  assert.equal(messages.length, 1, messages.join('\n'))
  return messages[0] ?? ''
}

const HEAD = 'ladder,rung,title,model,load_kg,ladder_title,movement,aim,standard_sets,standard_reps,cues'
const FIRST = 'press,kg-1,Light,one-rep-max,20,Press,press,kg-1,3,10,'

test('every starter ladder comes back from a table as it was, and gives the same table again', () => {
  const ladders = readdirSync(path.join(ROOT, 'ladders')).filter((file) => /^[a-z-]+\.md$/.test(file)).map((file) => readAs(readFileSync(path.join(ROOT, 'ladders', file), 'utf8')))
  const whole = ladders.filter((ladder) => ladder !== undefined)
  assert.ok(whole.length >= 19)
  const table = tableText(whole)
  const back = through(table)
  assert.deepEqual(back.messages, [])
  assert.deepEqual(back.ladders.map(said), whole.map(said))
  assert.equal(tableText(back.ladders), table)
})

/** Letters a spreadsheet, a table or Markdown could take for something, among plain ones. */
const piece = fc.constantFrom('a', 'B', 'é', '🧍', 'ñ', '漢', '"', "'", ',', ';', '=', '+', '-', '@', '|', '\\', '*', '(', ')', ':', '#', '{', '[', '&', '1', '9', ' ', '(empty)', '=cmd', "'=1", '“', '\u00a0x')
const line = fc.array(piece, { minLength: 1, maxLength: 12 }).map((parts) => parts.join('').trim()).filter((text) => text !== '' && text.length <= 70)
const text = fc.array(line, { maxLength: 3 }).map((lines) => lines.join('\n\n'))
const optional = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined })
const fault = fc.record({ seen: line, cause: fc.oneof(line, fc.constant('')), say: line, remedy: fc.oneof(line, fc.constant('')) })
const words: fc.Arbitrary<RungWords> = fc.record({ intro: text, set_up: optional(text), full_rep: optional(fc.array(line, { maxLength: 3 })), cues: optional(fc.array(fc.oneof(line, text), { maxLength: 3 })), faults: optional(fc.array(fault, { maxLength: 2 })), notes: optional(text).map((body) => (body === undefined ? [] : [{ title: 'Notes', body }])) })
const load = fc.oneof(
  fc.record({ model: fc.constant('one-rep-max'), load_kg: fc.integer({ min: 2, max: 900 }).map((half) => half / 2) }),
  fc.constant({ model: 'skill' }),
  fc.record({ model: fc.constant('assisted'), exercise: fc.constant('hang'), band_points: fc.array(fc.tuple(fc.nat(2000), fc.nat(2000)), { minLength: 1, maxLength: 3 }), stretch_start_cm: fc.nat(400) }),
)
const ids = fc.uniqueArray(fc.stringMatching(/^[a-z][a-z0-9]{0,5}(-[a-z0-9]{1,4})?$/).filter((id) => ladderSchema.shape.aim.safeParse(id).success), { minLength: 1, maxLength: 4 })

const someLadder = ids.chain((rungIds) =>
  fc.record({
    id: fc.constantFrom('press', 'row', 'squat'),
    fields: fc.record({ title: line, movement: line.filter((name) => name.length <= 60), aim: fc.constantFrom(...rungIds), equipment: fc.array(line, { maxLength: 2 }), standard: fc.record({ sets: fc.integer({ min: 1, max: 10 }), reps: fc.integer({ min: 1, max: 200 }) }), first_reps: optional(fc.integer({ min: 1, max: 50 })), form: fc.array(line, { maxLength: 3 }), stop: fc.array(line, { maxLength: 3 }), ask_first: fc.array(line, { maxLength: 2 }), sources: optional(fc.array(fc.record({ id: line.filter((name) => name.length <= 40), cite: line, doi: optional(line) }), { maxLength: 2 })), silence: optional(fc.array(fc.record({ rule: line, because: line, until: fc.constant('2027-03-01'), rung: optional(fc.constantFrom(...rungIds)) }), { maxLength: 2 })) }),
    intro: text,
    rungs: fc.tuple(...rungIds.map((id) => fc.record({ id: fc.constant(id), title: line, after: optional(fc.subarray(rungIds.filter((other) => other !== id))), demand: optional(fc.subarray(['balance', 'one side', 'speed'])), load, cautions: optional(fc.array(line, { maxLength: 2 })), first_side: optional(line), entry: optional(fc.record({ reps: fc.integer({ min: 1, max: 200 }) })) }))),
    words: fc.array(optional(words), { minLength: rungIds.length, maxLength: rungIds.length }),
  }),
)

test('any ladder that can be written comes back from a table letter for letter, whatever quotes, lines, formulas and alphabets it holds', () => {
  let written = 0
  let tried = 0
  fc.assert(
    fc.property(someLadder, (made) => {
      tried += 1
      const fields = ladderSchema.safeParse(JSON.parse(JSON.stringify({ id: made.id, ...made.fields, rungs: made.rungs })))
      if (!fields.success) return
      const saidBy = new Map(made.rungs.flatMap(({ id }, index) => (made.words[index] ? [[id, made.words[index]] as const] : [])))
      const ladder = readAs(ladderFileText({ fields: fields.data, intro: made.intro, words: saidBy }))
      if (!ladder) return // words that Markdown reads otherwise: no file says them
      written += 1
      const table = tableText([ladder])
      const back = through(table)
      assert.deepEqual(back.messages, [])
      assert.deepEqual(back.ladders.map(said), [said(ladder)])
      assert.equal(tableText(back.ladders), table)
    }),
    { numRuns: 120 },
  )
  assert.ok(written > tried / 4, `only ${written} of ${tried} could be written`)
})

test('reading a table never throws, whatever bytes it is', () => {
  fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), fc.boolean(), (some, headed) => void through(`${headed ? `${HEAD}\n` : ''}${new TextDecoder().decode(some)}`)), { numRuns: 200 })
  fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), (some) => void readTable('t.csv', some)), { numRuns: 200 })
})

test('no cell begins as a formula would, and the apostrophe before it comes off again exactly', () => {
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 6 }).map((parts) => parts.join('')), (cell) => {
      assert.equal(unguarded(guarded(cell)), cell)
      assert.ok(!/^[=+@\t\r＝＋－＠]|^-(?!\d+(\.\d+)?$)/.test(guarded(cell)), guarded(cell))
    }),
  )
  assert.equal(guarded('=1+1'), "'=1+1")
  assert.equal(guarded("'=1+1"), "''=1+1")
  assert.equal(guarded("'tis"), "'tis")
  assert.equal(guarded('-5'), '-5')
  assert.equal(guarded('+5'), "'+5")
  assert.equal(guarded('-5+1'), "'-5+1")
})

test('a table is RFC 4180: CRLF line ends, quotes doubled, and another reader sees the same cells', () => {
  const ladder = readAs(ladderFileText({ fields: ladderSchema.parse({ id: 'press', title: 'The "press", heavy; slow', movement: 'press', aim: 'a', equipment: ['bench'], standard: { sets: 3, reps: 10 }, form: ['one', 'two'], stop: [], ask_first: [], rungs: [{ id: 'a', title: 'A', load: { model: 'skill' } }] }), intro: '', words: new Map() }))
  assert.ok(ladder)
  const table = tableText([ladder])
  assert.ok(table.startsWith('\ufeffladder,rung,title,'))
  assert.equal(table.split('\r\n').length, 3)
  assert.ok(table.includes(',"The ""press"", heavy; slow",'))
  assert.ok(table.includes(',"one\ntwo",'))
  const [header = [], row = []] = Papa.parse<string[]>(table.slice(1), { delimiter: ',' }).data
  assert.equal(row[header.indexOf('ladder_title')], 'The "press", heavy; slow')
})

test('semicolons, tabs, a byte order mark, UTF-16, a line of sep= and rows that end early are read as they are meant', () => {
  const table = `${HEAD}\n${FIRST}\npress,kg-2,Heavy,one-rep-max,22\n,,\n`
  const expected = through(table)
  assert.deepEqual(expected.messages, [])
  assert.equal(expected.ladders[0]?.rungs[1]?.title, 'Heavy')
  const wide = new Uint8Array([0xff, 0xfe, ...[...table].flatMap((letter) => [letter.charCodeAt(0), 0])])
  for (const other of [bytes(table.replaceAll(',', ';')), bytes(table.replaceAll(',', '\t')), bytes(`\ufeff${table}`), bytes(table.replaceAll('\n', '\r\n')), bytes(`sep=;\n${table.replaceAll(',', ';')}`), wide]) {
    const read = readTable('t.csv', other)
    assert.deepEqual(read.findings, [])
    assert.deepEqual(read.value?.[0]?.fields, readTable('t.csv', bytes(table)).value?.[0]?.fields)
  }
})

test('what is said of a ladder may stand on any of its rows, once or the same', () => {
  const [ladder] = through(`${HEAD}\npress,kg-1,Light,one-rep-max,20\n${FIRST.replace('kg-1,Light', 'kg-2,Heavy')}`).ladders
  assert.equal(ladder?.title, 'Press')
})

test('a wrong row is named by its row and column, with what to do', () => {
  assert.equal(finding(HEAD, FIRST, 'press,kg-2,Heavy,one-rep-max,twenty'), 'Row 3, column E (load_kg): "twenty" is not a plain number. Write it as 12 or 12.5.')
  assert.equal(finding(HEAD.replaceAll(',', ';'), FIRST.replaceAll(',', ';'), 'press;kg-2;Heavy;one-rep-max;2,5'), 'Row 3, column E (load_kg): "2,5" is not a plain number. Write it as 12 or 12.5.')
  assert.equal(finding(HEAD, FIRST, 'press,kg-2,Heavy,one-rep-max,2000'), 'Row 3, column E (load_kg): load_kg must be a number from 0.5 to 500 kg.')
  assert.equal(finding(HEAD, FIRST, 'press,Kg 2,Heavy,one-rep-max,22'), 'Row 3, column B (rung): id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.')
  assert.equal(finding(HEAD, FIRST, 'press,kg-2,,one-rep-max,22'), 'Row 3, column B (rung): title is not given here. Add it.')
  assert.equal(finding(HEAD, FIRST, ',kg-2,Heavy,one-rep-max,22'), 'Row 3, column A (ladder): The ladder this rung belongs to is not named. Write its id on every row.')
  assert.equal(finding(HEAD, FIRST, 'press,kg-2,Heavy,one-rep-max,22,Pressing'), 'Row 3, column F (ladder_title): This says otherwise of the ladder than row 2. Say it once, or the same.')
  assert.equal(finding(HEAD, FIRST, 'press,kg-2,Heavy,one-rep-max,22,,,,,,,,one more'), 'Row 3, column L: This row has 13 cells, the header 11. Put a cell that holds commas in quotation marks.')
  assert.equal(finding(HEAD, FIRST, 'press,"kg-2,Heavy,one-rep-max,22'), 'Row 3, column A: A quotation mark in this row is not closed, or stands within a cell that does not begin with one. Write a quotation mark within a cell twice.')
  assert.equal(finding(HEAD.replace('cues', 'faults'), `${FIRST}a | b | c | d | e`), 'Row 2, column K (faults): A line here has 5 parts; it may have 4: seen | cause | say | remedy. Write a bar within a part as \\|.')
  assert.equal(finding(HEAD.replace('cues', 'about'), `${FIRST}"## Another {#x}"`), 'Row 2, column K: These words would be read otherwise in a ladder file: they hold a heading, or begin like a list or a table. "Another" belongs to no rung. Give it the title of a rung, or add the rung\'s id: {#kg-1}. Write them as plain lines.')
})

test('a wrong header is named by its column, with the nearest that is known', () => {
  assert.equal(finding(HEAD.replace('title,model', 'titel,model'), FIRST), 'Row 1, column C: There is no column "titel". Did you mean title?')
  assert.equal(finding(HEAD.replace('cues', 'xyzzy'), FIRST), 'Row 1, column K: There is no column "xyzzy". Take it out, or name it as rungbook export --template does.')
  assert.equal(finding(HEAD.replace('cues', 'title'), FIRST), 'Row 1, column K: The column "title" stands twice. Take one out.')
  assert.equal(finding(HEAD.replace('rung,', ''), FIRST), 'Row 1, column K: The column "rung" is not there. Add it.')
  assert.equal(finding(''), 'The table is empty. Begin with the header that rungbook export --template writes.')
  assert.equal(finding(HEAD), 'The table has a header and no rows. Write one rung a row.')
})

test('letters that are not UTF-8 are named where they stand, and read in the encoding that is named', () => {
  const latin = new Uint8Array([...bytes(`${HEAD}\n${FIRST.replace('Light', 'L'.repeat(2))}`), 0xe9])
  expect(readTable('t.csv', latin).findings.map(({ message }) => message)).toEqual(['Row 2, column K: A letter here is not UTF-8. Save the table again as "CSV UTF-8", or import it with --encoding windows-1252 if an older spreadsheet wrote it.'])
  assert.deepEqual(readTable('t.csv', latin, 'windows-1252').value?.[0]?.words.get('kg-1')?.cues, ['é'])
})

test('a table that is too large is refused before it is read', () => {
  assert.deepEqual(readTable('t.csv', new Uint8Array(9 * 1024 * 1024)).findings.map(({ message }) => message), ['The table is larger than 8 MiB. Split it.'])
})

test('every key a load model asks has a column, and no two columns one name', () => {
  const names = columns.map(({ name }) => name)
  for (const { keys } of models) for (const key of Object.keys(keys)) assert.ok(names.includes(key), key)
  assert.equal(new Set(names).size, names.length)
  assert.deepEqual([0, 25, 26, 701, 702].map(letters), ['A', 'Z', 'AA', 'ZZ', 'AAA'])
})

test('README names every column that is no key of a load model', () => {
  const readme = readFileSync(path.join(ROOT, 'README.md'), 'utf8')
  const asked = new Set(models.flatMap(({ keys }) => Object.keys(keys)))
  assert.deepEqual(columns.filter(({ name }) => !asked.has(name) && !readme.includes(`\`${name}\``)).map(({ name }) => name), [])
})
