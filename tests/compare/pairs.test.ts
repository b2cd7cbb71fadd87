import assert from 'node:assert/strict'
import { test } from 'vitest'
import { OPPOSITE, type ChangeKind } from '../../src/compare/change.ts'
import { pairs } from './pairs.ts'
import { before, compared, editedFiles, line, lines } from './versions.ts'

/** A line of a typed change with its kind undone. Where a rung comes or goes its name says more, and not the same both ways. */
function undone(change: string): string {
  const [, subject = '', kind = '', name = ''] = /^(.*): ([a-z-]+), (.*)$/.exec(change) ?? []
  assert.ok(kind in OPPOSITE, change)
  return kind.startsWith('rung-') ? `${subject}: ${OPPOSITE[kind as ChangeKind]}` : `${subject}: ${OPPOSITE[kind as ChangeKind]}, ${name}`
}

const bare = (change: string): string => change.replace(/^(.*: rung-[a-z]+), .*$/, '$1')

for (const { says, edits, typed, followed = {}, unsafe = [], back } of pairs) {
  test(`${says}: ${typed.length === 0 ? 'nothing' : typed.join('; ')}`, () => {
    const was = before(edits)
    const comparison = compared(was, editedFiles(was, edits))
    assert.deepEqual(lines(comparison), { typed: typed.toSorted(), followed })
    assert.deepEqual(comparison.typed.filter((change) => change.unsafe).map(line), unsafe)
    assert.deepEqual(comparison.typed.slice(0, unsafe.length).map(line), unsafe, 'what could hurt somebody comes first')
  })

  test(`taken back, ${says.replace(/^the |^an? /, 'the ')} is undone`, () => {
    const was = before(edits)
    const { typed: undoing, followed: follows } = lines(compared(editedFiles(was, edits), was))
    if (back !== undefined) return assert.deepEqual(undoing, back.toSorted())
    assert.deepEqual(undoing.map(bare), typed.map(undone).toSorted())
    const expected = Object.entries(followed).map(([rung, kinds]) => [rung, kinds.map((kind) => OPPOSITE[kind]).toSorted()])
    assert.deepEqual(follows, Object.fromEntries(expected))
  })
}

test('the pairs show every kind of change that can be typed, one way or the other', () => {
  const shown = new Set(pairs.flatMap(({ typed, followed = {}, back = [] }) => [...[...typed, ...back].map((change) => /: ([a-z-]+),/.exec(change)?.[1]), ...Object.values(followed).flat()]))
  const missing = (Object.keys(OPPOSITE) as ChangeKind[]).filter((kind) => !kind.startsWith('translation-') && !shown.has(kind) && !shown.has(OPPOSITE[kind]))
  assert.deepEqual(missing, ['seal-broken', 'seal-mended']) // a seal is over the demo: laws.test.ts
})
