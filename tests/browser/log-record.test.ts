import assert from 'node:assert/strict'
import fc from 'fast-check'
import { parseHTML } from 'linkedom'
import { test } from 'vitest'
import { addAthlete, addSession, deleteAthlete, editSession, mergeLogs, removeSession, renameAthlete } from '../../src/browser/log-changes.ts'
import { isNewer, logText, onlyOf, readLog, sizeTrouble } from '../../src/browser/log-file.ts'
import { contentOf, eachOnce, EMPTY, isRefused, joined, LIMITS, MOST, nameTrouble, readSession, SESSION_KEYS, sessionCount, tidyName, type Log, type LoggedSession, type LogUnit, type Refused } from '../../src/browser/log-record.ts'
import { handbookSchema } from '../../src/ladder/schema.ts'
import { inEnglish } from '../../src/page/html.ts'
import { myLaddersPage } from '../../src/page/my-ladders-page.ts'

const SESSION: LoggedSession = { ladder: 'press-up', rung: 'floor', on: '2026-10-03', unit: 'reps', amounts: [12, 12, 11], sets_out_of_form: 0, pain_during: 0, edition: '2026.2' }

/** A log, or a failure that says why not. */
function taken(outcome: Log | Refused): Log {
  assert.ok(!isRefused(outcome), JSON.stringify(outcome))
  return outcome
}
const reasons = (outcome: object): readonly string[] => (isRefused(outcome) ? outcome.refused : [])
const wrap = (athletes: unknown, more: object = {}): unknown => ({ log: 'my-ladders', version: 1, athletes, ...more })
const withSession = (session: unknown): unknown => wrap([{ name: 'Isolde Farrow', sessions: [session] }])

const pain = fc.integer({ min: 0, max: 10 })
const short = fc.stringMatching(/^[a-z][a-z0-9]{0,6}(-[a-z0-9]{1,4}){0,2}$/)
const day = fc.date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true }).map((date) => date.toISOString().slice(0, 10))
const note = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 60 }).filter((text) => SESSION_KEYS.note.fits(text))
const amounts = fc.constantFrom<LogUnit>('reps', 'seconds', 'metres').chain((unit) =>
  fc.record({ unit: fc.constant(unit), amounts: fc.array(unit === 'reps' ? fc.integer({ min: 0, max: MOST.reps }) : fc.double({ min: 0, max: MOST[unit], noNaN: true }).map((amount) => amount + 0), { minLength: 1, maxLength: 8 }) }),
)
const session: fc.Arbitrary<LoggedSession> = fc
  .tuple(amounts, fc.record({ ladder: short, rung: short, on: day, pain_during: pain, edition: fc.constantFrom('2026.1', '2026.2') }), fc.record({ pain_next_morning: pain, pain_usual: pain, note }, { requiredKeys: [] }), fc.nat())
  .map(([sets, rest, besides, lost]) => {
    const read = readSession({ ...rest, ...sets, ...besides, sets_out_of_form: lost % (sets.amounts.length + 1) })
    if (isRefused(read)) throw new Error(read.refused.join())
    return read
  })
const name = fc.oneof(fc.constantFrom('Isolde Farrow', 'Bram Okoye', '__proto__', 'constructor', 'Ünal Ğ', 'नेहा'), fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 }).map(tidyName).filter((text) => nameTrouble(text) === undefined))
const log: fc.Arbitrary<Log> = fc.array(fc.record({ name, sessions: fc.array(session, { maxLength: 6 }) }), { maxLength: 5 }).map((athletes) => ({ ...EMPTY, athletes: joined(athletes) }))

/** Everything a log holds, whatever the order. */
const contents = ({ athletes }: Log): string[] => athletes.flatMap(({ name: whose, sessions }) => [JSON.stringify([whose]), ...sessions.map((each) => JSON.stringify([whose, contentOf(each)]))]).toSorted()

test('a log that was saved and read again is the same log', () => {
  fc.assert(fc.property(log, (each) => assert.deepEqual(readLog(JSON.parse(logText(each)) as unknown), each)))
})

test('a log added to itself stays as it is', () => {
  fc.assert(fc.property(log, (each) => assert.deepEqual(mergeLogs(each, each), each)))
})

test('two logs come to the same in either order, and a third in any', () => {
  fc.assert(fc.property(log, log, (one, other) => assert.deepEqual(contents(taken(mergeLogs(one, other))), contents(taken(mergeLogs(other, one))))))
  fc.assert(fc.property(log, log, log, (a, b, c) => assert.deepEqual(mergeLogs(taken(mergeLogs(a, b)), c), mergeLogs(a, taken(mergeLogs(b, c))))))
})

test('adding a log loses nothing, keeps once what is in both, and makes nothing up', () => {
  fc.assert(
    fc.property(log, log, (one, other) => {
      const all = new Set([...contents(one), ...contents(other)])
      assert.deepEqual(contents(taken(mergeLogs(one, other))), [...all].toSorted())
    }),
  )
})

test('no JSON whatever makes the reader throw, and what it takes it takes again', () => {
  const near = fc.oneof(fc.jsonValue(), log, session, fc.object({ key: fc.constantFrom('log', 'version', 'athletes', 'name', 'sessions', '__proto__', 'amounts', 'on'), maxDepth: 4 }))
  fc.assert(
    fc.property(fc.oneof(near, near.map((value) => withSession(value)), near.map((value) => wrap(value)), near.map((value) => wrap([value]))), (value) => {
      const read = readLog(JSON.parse(JSON.stringify(value ?? null)) as unknown)
      if (isRefused(read)) assert.ok(read.refused.length > 0 && read.refused.every((reason) => reason.endsWith('.') && reason.length < 300), JSON.stringify(read))
      else assert.deepEqual(readLog(JSON.parse(logText(read)) as unknown), read)
    }),
    { numRuns: 500 },
  )
})

test('a session with one key spoilt is refused, and the reason names the key', () => {
  const spoils = fc.constantFrom<unknown>(null, '', '12', -1, 1.5, 10.5, 1e9, Number.MAX_VALUE, [], [[]], {}, true, '9999-01-01', 'a\u202eb')
  fc.assert(
    fc.property(session, fc.constantFrom(...Object.keys(SESSION_KEYS)), spoils, (each, key, spoil) => {
      const read = readLog(withSession({ ...each, [key]: spoil }))
      if (isRefused(read)) assert.ok(read.refused.some((reason) => reason.includes(key) || reason.includes('amounts') || reason.includes('sets_out_of_form')), read.refused.join())
      else assert.deepEqual(read.athletes[0]?.sessions[0], { ...each, [key]: spoil })
    }),
  )
})

const hostile: readonly (readonly [what: string, value: unknown, says: string])[] = [
  ['nothing', null, 'This is no log of this page: it does not begin with "log": "my-ladders".'],
  ['a list', [], 'This is no log of this page: it does not begin with "log": "my-ladders".'],
  ['another program’s file', { version: 1, athletes: [] }, 'This is no log of this page: it does not begin with "log": "my-ladders".'],
  ['a later version', { log: 'my-ladders', version: 2, athletes: [] }, 'The log is of version 2; this page reads version 1. Open it with the edition that wrote it.'],
  ['a version in words', { log: 'my-ladders', version: '1', athletes: [] }, 'The log must say "version": 1.'],
  ['athletes by name', wrap({ Isolde: [] }), 'athletes must be a list.'],
  ['a key too many', wrap([], { owner: 'x' }), 'The log holds keys besides log, version and athletes.'],
  ['a prototype', JSON.parse('{"log":"my-ladders","version":1,"athletes":[],"__proto__":{"athletes":[1]}}'), 'The log holds keys besides log, version and athletes.'],
  ['an inherited log', Object.create({ log: 'my-ladders', version: 1, athletes: [] }), 'This is no log of this page: it does not begin with "log": "my-ladders".'],
  ['51 athletes', wrap(Array.from({ length: 51 }, (_, index) => ({ name: `Athlete ${index}`, sessions: [] }))), 'There are 51 athletes; a log holds at most 50.'],
  ['20,001 sessions', wrap([{ name: 'Isolde', sessions: Array.from({ length: 20_001 }, () => SESSION) }]), 'There are 20001 sessions; a log holds at most 20000.'],
  ['an athlete without a name', wrap([{ name: '  ', sessions: [] }]), 'Athlete 1: Give a name.'],
  ['a name that writes backwards', wrap([{ name: 'Bram\u202e', sessions: [] }]), 'Athlete 1: A name has at most 60 letters, none of them hidden.'],
  ['a name of 61 letters', wrap([{ name: 'é'.repeat(61), sessions: [] }]), 'Athlete 1: A name has at most 60 letters, none of them hidden.'],
  ['an athlete with more', wrap([{ name: 'Bram', sessions: [], mass_kg: 70 }]), 'Athlete 1: must hold name and sessions, and nothing else.'],
  ['sessions by day', wrap([{ name: 'Bram', sessions: {} }]), 'Athlete 1: sessions must be a list.'],
  ['a session that is a word', withSession('floor'), 'Athlete 1, session 1: a session must be a record of keys and values.'],
  ['the year 9999', withSession({ ...SESSION, on: '9999-01-01' }), 'Athlete 1, session 1: on must be a day from 2000 to 2099, such as 2026-10-03.'],
  ['no day of the calendar', withSession({ ...SESSION, on: '2026-02-30' }), 'Athlete 1, session 1: on must be a day from 2000 to 2099, such as 2026-10-03.'],
  ['letters for numbers', withSession({ ...SESSION, amounts: ['12'] }), 'Athlete 1, session 1: amounts must be a list of 1 to 30 numbers, one a set.'],
  ['no sets', withSession({ ...SESSION, amounts: [] }), 'Athlete 1, session 1: amounts must be a list of 1 to 30 numbers, one a set.'],
  ['half a repetition', withSession({ ...SESSION, amounts: [1.5] }), 'Athlete 1, session 1: amounts must be whole numbers where the unit is reps.'],
  ['a thousand and one repetitions', withSession({ ...SESSION, amounts: [1001] }), 'Athlete 1, session 1: amounts must be at most 1000 reps a set.'],
  ['more sets out of form than sets', withSession({ ...SESSION, sets_out_of_form: 4 }), 'Athlete 1, session 1: sets_out_of_form is 4, and there were 3 sets.'],
  ['pain of eleven', withSession({ ...SESSION, pain_during: 11 }), 'Athlete 1, session 1: pain_during must be a whole number from 0 to 10.'],
  ['pain of half', withSession({ ...SESSION, pain_next_morning: 0.5 }), 'Athlete 1, session 1: pain_next_morning must be a whole number from 0 to 10.'],
  ['another unit', withSession({ ...SESSION, unit: 'kg' }), 'Athlete 1, session 1: unit must be reps, seconds or metres.'],
  ['a ladder’s id that is a prototype', withSession({ ...SESSION, ladder: '__proto__' }), 'Athlete 1, session 1: ladder must be a short name such as press-up.'],
  ['a rung’s id that is a path', withSession({ ...SESSION, rung: '../floor' }), 'Athlete 1, session 1: rung must be a short name such as bench-hands.'],
  ['a note of 301 letters', withSession({ ...SESSION, note: 'a'.repeat(301) }), 'Athlete 1, session 1: note must be words on one line, at most 300 letters, none of them hidden.'],
  ['a note on two lines', withSession({ ...SESSION, note: 'a\nb' }), 'Athlete 1, session 1: note must be words on one line, at most 300 letters, none of them hidden.'],
  ['an edition with a space', withSession({ ...SESSION, edition: 'a b' }), 'Athlete 1, session 1: edition must be an edition such as 2026.2.'],
  ['a session with a prototype', withSession(JSON.parse(`{"__proto__": {"x": 1}, ${JSON.stringify(SESSION).slice(1)}`)), 'Athlete 1, session 1: "__proto__" is no key of this record.'],
]

for (const [what, value, says] of hostile) test(`${what} is refused, and said`, () => assert.deepEqual(reasons(readLog(value)), [says]))

test('every place that is wrong is said, up to a number that can be read', () => {
  const read = reasons(readLog(wrap([{ name: 'Bram', sessions: Array.from({ length: 40 }, () => ({ ...SESSION, pain_during: -1 })) }])))
  assert.equal(read.length, LIMITS.said + 1)
  assert.equal(read[1], 'Athlete 1, session 2: pain_during must be a whole number from 0 to 10.')
  assert.equal(read.at(-1), 'And 20 more.')
  const two = reasons(readSession({ ...SESSION, on: 'today', note: '' }))
  assert.deepEqual(two, ['on must be a day from 2000 to 2099, such as 2026-10-03', 'note must be words on one line, at most 300 letters, none of them hidden'])
})

test('a file of 100 MB is not opened', () => {
  assert.equal(sizeTrouble(100_000_000), 'The file has 100 MB; a log has at most 20 MB. It was not opened.')
  assert.equal(sizeTrouble(20_000_000), undefined)
})

test('a hundred thousand brackets are refused, not climbed into', () => {
  const deep = JSON.parse(`{"log":"my-ladders","version":1,"athletes":[{"name":"Bram","sessions":${'['.repeat(4000)}${']'.repeat(4000)}}]}`) as unknown
  assert.deepEqual(reasons(readLog(deep)), ['Athlete 1, session 1: a session must be a record of keys and values.'])
})

test('a ladder this handbook does not have is kept', () => {
  const read = taken(readLog(withSession({ ...SESSION, ladder: 'handstand', rung: 'wall' })))
  assert.equal(read.athletes[0]?.sessions[0]?.ladder, 'handstand')
})

test('a later version is known for what it is, and only that', () => {
  assert.ok(isNewer({ log: 'my-ladders', version: 2 }))
  for (const value of [null, 2, [], { log: 'my-ladders', version: 1 }, { log: 'x', version: 2 }, { log: 'my-ladders', version: '2' }]) assert.ok(!isNewer(value))
})

test('minus nought is nought, and a name typed with spaces and split letters is the name', () => {
  const read = readSession({ ...SESSION, amounts: [-0], pain_during: -0 })
  assert.ok(!isRefused(read) && Object.is(read.amounts[0], 0) && Object.is(read.pain_during, 0))
  assert.equal(tidyName('  Re\u0301my \t  Dale '), 'R\u00e9my Dale')
})

const two = taken(addAthlete(taken(addAthlete(EMPTY, 'Isolde Farrow')), '  Bram   Okoye '))

test('an athlete is added under a name nobody has, in whatever case', () => {
  assert.deepEqual(two.athletes.map((athlete) => athlete.name), ['Isolde Farrow', 'Bram Okoye'])
  assert.deepEqual(reasons(addAthlete(two, 'ISOLDE farrow')), ['“ISOLDE farrow” is on this device already.'])
  assert.deepEqual(reasons(addAthlete(two, ' ')), ['Give a name.'])
  const full = Array.from({ length: 50 }).reduce((before: Log, _, index) => taken(addAthlete(before, `Athlete ${index}`)), EMPTY)
  assert.deepEqual(reasons(addAthlete(full, 'One more')), ['A log holds at most 50 athletes.'])
})

test('a session is added once, changed by its content, and removed', () => {
  const logged = taken(addSession(two, 'Bram Okoye', SESSION))
  assert.deepEqual(logged.athletes[1]?.sessions, [SESSION])
  assert.deepEqual(reasons(addSession(logged, 'Bram Okoye', { ...SESSION })), ['The very same session is in the log already. If it was a second one that day, say so in its note.'])
  assert.deepEqual(reasons(addSession(logged, 'Nobody', SESSION)), ['There is no athlete named “Nobody” on this device any more.'])
  assert.deepEqual(reasons(addSession(logged, 'Bram Okoye', { ...SESSION, pain_during: 12 })), ['pain_during must be a whole number from 0 to 10'])
  const changed = taken(editSession(logged, 'Bram Okoye', SESSION, { ...SESSION, pain_next_morning: 2 }))
  assert.deepEqual(changed.athletes[1]?.sessions, [{ ...SESSION, pain_next_morning: 2 }])
  assert.deepEqual(reasons(editSession(changed, 'Bram Okoye', SESSION, SESSION)), ['That session is no longer in the log: it was changed or deleted elsewhere.'])
  const three = [1, 2, 3].reduce((before: Log, reps) => taken(addSession(before, 'Bram Okoye', { ...SESSION, amounts: [reps] })), two)
  assert.deepEqual(taken(editSession(three, 'Bram Okoye', { ...SESSION, amounts: [2] }, { ...SESSION, amounts: [5] })).athletes[1]?.sessions.map((each) => each.amounts[0]), [1, 5, 3])
  const both = taken(addSession(changed, 'Bram Okoye', SESSION))
  assert.deepEqual(reasons(editSession(both, 'Bram Okoye', SESSION, { ...SESSION, pain_next_morning: 2 })), ['The very same session is in the log already.'])
  assert.deepEqual(taken(removeSession(logged, 'Bram Okoye', SESSION)), two)
  assert.deepEqual(reasons(removeSession(two, 'Bram Okoye', SESSION)), ['That session is no longer in the log: it was changed or deleted elsewhere.'])
})

test('an athlete takes the sessions to another name, and away when deleted', () => {
  const logged = taken(addSession(two, 'Bram Okoye', SESSION))
  assert.deepEqual(taken(renameAthlete(logged, 'Bram Okoye', 'bram okoye')).athletes[1], { name: 'bram okoye', sessions: [SESSION] })
  assert.deepEqual(reasons(renameAthlete(logged, 'Bram Okoye', 'isolde farrow')), ['“isolde farrow” is on this device already.'])
  assert.deepEqual(taken(deleteAthlete(logged, 'Bram Okoye')).athletes, [{ name: 'Isolde Farrow', sessions: [] }])
  assert.deepEqual(reasons(deleteAthlete(logged, 'Bram')), ['There is no athlete named “Bram” on this device any more.'])
  assert.deepEqual(onlyOf(logged, 'Bram Okoye').athletes.length, 1)
})

test('a log that would be too large together is not added to, by half or at all', () => {
  const dayAfter = (index: number): string => new Date(Date.UTC(2000, 0, 1 + index)).toISOString().slice(0, 10)
  const sessions = Array.from({ length: 12_000 }, (_, index) => ({ ...SESSION, on: dayAfter(index) }))
  const one: Log = { ...EMPTY, athletes: [{ name: 'Isolde Farrow', sessions }] }
  const other: Log = { ...EMPTY, athletes: [{ name: 'Bram Okoye', sessions }] }
  assert.deepEqual(reasons(mergeLogs(one, other)), ['Together there would be 24000 sessions; a log holds at most 20000. Nothing was added.'])
  assert.equal(sessionCount(taken(mergeLogs(one, one))), 12_000)
  const crowd = (from: number): Log => ({ ...EMPTY, athletes: Array.from({ length: 30 }, (_, index) => ({ name: `Athlete ${from + index}`, sessions: [] })) })
  assert.deepEqual(reasons(mergeLogs(crowd(0), crowd(30))), ['Together there would be 60 athletes; a log holds at most 50. Nothing was added.'])
})

test('the page describes the very keys a session has, in their order, and its example is a log', () => {
  const { document } = parseHTML(`<main>${inEnglish(myLaddersPage({ handbook: handbookSchema.parse({ title: 'A handbook', organisation: 'Tarnwick Gym Club', edition: '1', contact: 'nobody yet' }), ladders: [], pages: [] }).body)}</main>`)
  assert.deepEqual([...document.querySelectorAll('.log-format dt code')].map(({ textContent }) => textContent), Object.keys(SESSION_KEYS))
  const example = taken(readLog(JSON.parse(document.querySelector('.log-format pre')?.textContent ?? '') as unknown))
  assert.equal(sessionCount(example), 1)
})

test('the days a session may have are the days of the calendar from 2000 to 2099', () => {
  const asked = Array.from({ length: 100 }, (_, year) => Array.from({ length: 14 }, (_, month) => Array.from({ length: 33 }, (_, day) => `20${String(year).padStart(2, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`))).flat(2)
  const calendar = Array.from({ length: 36_525 }, (_, day) => new Date(Date.UTC(2000, 0, 1 + day)).toISOString().slice(0, 10))
  assert.deepEqual(asked.filter((on) => SESSION_KEYS.on.fits(on)), calendar)
  for (const on of ['1999-12-31', '2100-01-01', '2026-1-01', '2026-01-01T', ' 2026-01-01']) assert.ok(!SESSION_KEYS.on.fits(on), on)
})

test('sessions of one day and rung are told apart by all they hold', () => {
  const other = { ...SESSION, note: 'evening' }
  assert.deepEqual(eachOnce([SESSION, other, { ...SESSION, ladder: 'dip' }, { ...other }, { ...SESSION }]), [SESSION, other, { ...SESSION, ladder: 'dip' }])
})
