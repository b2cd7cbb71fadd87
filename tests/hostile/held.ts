import assert from 'node:assert/strict'
import { test } from 'vitest'
import { everything, rooms, write, LADDER_FILE, type Files } from './place.ts'
import { ran, type Ran } from './ran.ts'

/**
 * One hostile workspace: its files beside a harmless handbook and ladder, and what the build must say of it.
 * `finds` are whole findings as a terminal shows them, `file:line:column  words  (rule)`; with `of` there are so many, and these are the first.
 */
export type Case = { readonly says: string; readonly files: Files; readonly finds: readonly string[]; readonly of?: number; readonly prepare?: (workspace: string, room: string) => void; readonly as_nobody?: boolean }

/**
 * The most a case may take. Units s of work on any core, and MB at the highest.
 * The program's own start takes 0.6 s and 111 MB of it (measured on the machine this was written on, of which two cores were shared),
 * so the seconds are counted from what a harmless workspace takes in the same run; the memory is not.
 */
const MOST_S = 1
const MOST_MB = 200

/** Root reads everything, so where the tests run as root, what may not be read is tried as somebody else. */
const NOBODY = process.getuid?.() === 0 ? { uid: 65534 } : {}

let harmless: Promise<Ran> | undefined

/** What a check of the harmless workspace takes: the start of the program, and little else. */
const start = (room: ReturnType<typeof rooms>): Promise<Ran> => (harmless ??= ran(room('harmless', {}).workspace, ['check']))

/** The findings of a text report, a line each. */
export const findingsIn = (out: string): string[] => out.split('\n').filter((line) => /^ {2}\S.*:\d+:\d+ {2}/.test(line)).map((line) => line.trim())

/** No stack, no mistake of ours, and nothing on the other stream. */
export function noTrace({ out, note, signal }: Ran): void {
  assert.equal(signal, null)
  assert.equal(note, '')
  assert.doesNotMatch(out, /\n\s+at .*(\.ts|\.js|node:)/)
}

export async function withinLimits({ spent_s, most_mb }: Ran, room: ReturnType<typeof rooms>): Promise<void> {
  const { spent_s: start_s = Number.NaN } = await start(room)
  assert.ok(spent_s !== undefined && most_mb !== undefined, 'the process was aborted')
  assert.ok(spent_s <= start_s + MOST_S, `${spent_s} s of work, where a harmless workspace takes ${start_s} s`)
  assert.ok(most_mb <= MOST_MB, `${most_mb} MB`)
}

/** A test for each case: a fresh process builds it, ends with 1 and these findings, within the limits, and touches nothing. */
export function held(cases: readonly Case[]): void {
  const room = rooms()
  for (const { says, files, finds, of, prepare, as_nobody } of cases) {
    test.concurrent(`${says}: ${finds.length === 0 ? 'nothing to put right' : 'a finding'}, in time, and nothing is touched`, async () => {
      const place = room(says, files)
      prepare?.(place.workspace, place.room)
      const before = everything(place.room)
      const outcome = await ran(place.workspace, [finds.length === 0 ? 'check' : 'build'], as_nobody ? NOBODY : {})
      const found = findingsIn(outcome.out)
      assert.deepEqual(found.slice(0, finds.length || undefined), finds)
      assert.equal(found.length, of ?? finds.length)
      assert.equal(outcome.code, finds.length === 0 ? 0 : 1)
      noTrace(outcome)
      await withinLimits(outcome, room)
      assert.deepEqual(everything(place.room), before)
    })
  }
}

/** One hostile ladder file among many that one process reads; its findings as `line:column  words  (rule)`; with `of` there are so many. */
export type Body = { readonly says: string; readonly body: string | Uint8Array; readonly finds: readonly string[]; readonly of?: number }

/** A test for each file: one process reads all of them, and each has its own findings and nobody else's. A file that is fine gets an id of its own. */
export function heldTogether(what: string, cases: readonly Body[]): void {
  const room = rooms()
  const place = room(what, { [LADDER_FILE]: undefined })
  const named = cases.map((each, index) => ({ ...each, file: `ladders/c${index}.md` }))
  write(place.workspace, Object.fromEntries(named.map(({ file, body }, index) => [file, typeof body === 'string' ? body.replace(/id: hollow-hold(?=[\r\n])/, `id: case-${index}`) : body])))
  const before = everything(place.room)
  let once: Promise<Ran> | undefined
  const outcome = (): Promise<Ran> => (once ??= ran(place.workspace, ['build']))

  for (const { says, file, finds, of } of named) {
    test(`${says}: ${finds.length === 0 ? 'nothing to put right' : 'a finding'}`, async () => {
      const found = findingsIn((await outcome()).out).flatMap((line) => (line.startsWith(`${file}:`) ? [line.slice(file.length + 1)] : []))
      assert.deepEqual(found.slice(0, finds.length || undefined), finds)
      assert.equal(found.length, of ?? finds.length)
    })
  }

  test(`${what}, ${cases.length} files together: in time, and nothing is touched`, async () => {
    const all = await outcome()
    assert.equal(all.code, 1)
    noTrace(all)
    await withinLimits(all, room)
    assert.deepEqual(everything(place.room), before)
  })
}

/** A test for each workspace of some that differ only in files they add: one process builds all of these files at once, and finds of each what it finds of each alone. */
export function heldAtOnce(what: string, cases: readonly Pick<Case, 'says' | 'files' | 'finds'>[]): void {
  const room = rooms()
  const place = room(what, Object.assign({}, ...cases.map(({ files }) => files)) as Files)
  const before = everything(place.room)
  let once: Promise<Ran> | undefined
  const outcome = (): Promise<Ran> => (once ??= ran(place.workspace, ['build']))

  for (const { says, finds } of cases) {
    test(`${says}: a finding`, async () => {
      const found = findingsIn((await outcome()).out)
      assert.deepEqual(found.filter((line) => finds.includes(line)), finds)
    })
  }

  test(`${what}, ${cases.length} at once: nothing else is found, in time, and nothing is touched`, async () => {
    const all = await outcome()
    assert.equal(findingsIn(all.out).length, cases.reduce((sum, { finds }) => sum + finds.length, 0))
    assert.equal(all.code, 1)
    noTrace(all)
    await withinLimits(all, room)
    assert.deepEqual(everything(place.room), before)
  })
}
