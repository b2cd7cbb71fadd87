import assert from 'node:assert/strict'
import { test } from 'vitest'
import { compare } from '../../src/compare/compare.ts'
import { changeText, whereOf } from '../../src/compare/say.ts'
import { measure } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { withoutUnchanged } from '../../src/read/unchanged.ts'
import { layer } from '../read/layers.ts'
import { edited } from '../read/said.ts'
import { FULL, FULL_ES, read, sealed, TWO } from '../read/spanish.ts'

type Files = Readonly<Record<string, string>>

const PAGE = { 'content/safety.md': '---\ntitle: Safety\nsummary: When to stop.\n---\n\nStop.\n', 'content/safety.es.md': '---\ntranslates: safety\ntitle: Seguridad\nsummary: Cuándo parar.\n---\n\nPara.\n' }
const BOTH = sealed('safety', 'content/safety.es.md', sealed('balance', 'ladders/balance.es.md', { 'handbook.yaml': TWO, 'ladders/balance.md': FULL, 'ladders/balance.es.md': FULL_ES, ...PAGE }))

/** Both lists of a comparison, as a reviewer reads them. */
function said(before: Files, after: Files): { typed: string[]; followed: string[] } {
  const { typed, followed } = compare(measure(read(before)), measure(read(after)))
  assert.ok([...typed, ...followed].filter(({ kind }) => kind.startsWith('translation')).every(({ weight, unsafe }) => weight === 'wording' && !unsafe))
  const known = new Set(typed.map(({ fingerprint }) => fingerprint))
  assert.ok(followed.every(({ causes }) => causes.length > 0 && causes.every((cause) => known.has(cause))))
  const lines = (changes: typeof typed): string[] => changes.map((change) => `${whereOf(change)} at ${change.is?.file}:${change.is?.line}, ${changeText(change)}`)
  return { typed: lines(typed), followed: lines(followed) }
}

const without = (files: Files, name: string): Files => Object.fromEntries(Object.entries(files).filter(([file]) => file !== name))
const ladderWith = (from: string, to: string): Files => ({ ...BOTH, 'ladders/balance.md': edited(FULL, from, to) })

test('a translation said otherwise is wording, part by part', () => {
  const other = { ...BOTH, 'ladders/balance.es.md': edited(edited(BOTH['ladders/balance.es.md'] ?? '', 'Dedos quietos', 'Dedos tranquilos'), 'un tobillo que cede', 'un tobillo que se tuerce') }
  assert.deepEqual(said(BOTH, other), {
    typed: ['balance at ladders/balance.es.md:5, translation said otherwise: es stop, un tobillo que cede → un tobillo que se tuerce', 'balance at ladders/balance.es.md:49, translation said otherwise: es free/cues, Dedos quietos. → Dedos tranquilos.'],
    followed: [],
  })
})

test('a translation that no longer stands follows from what was typed in the original', () => {
  const { typed, followed } = said(BOTH, ladderWith('Quiet toes', 'Still toes'))
  assert.deepEqual(typed, ['balance/free at ladders/balance.md:41, wording: cues, Quiet toes. → Still toes.'])
  assert.deepEqual(followed, ['balance at ladders/balance.es.md:2, translation no longer stands: es, free/cues'])
  assert.deepEqual(said(ladderWith('Quiet toes', 'Still toes'), BOTH).followed, ['balance at ladders/balance.es.md:2, translation stands again: es, free/cues'])
  const page = said(BOTH, { ...BOTH, 'content/safety.md': edited(PAGE['content/safety.md'], 'Stop.', 'Stop at once.') })
  assert.deepEqual(page.followed, ['page safety at content/safety.es.md:2, translation no longer stands: es, intro'])
})

test('words shared by all that are said otherwise are wording of the handbook', () => {
  const listed = (text: string): Files => ({ ...BOTH, 'words.es.yaml': text })
  assert.deepEqual(said(listed('wall: pared\n'), listed('wall: muro\nbalance: equilibrio\n')).typed, ['handbook at undefined:undefined, translation said otherwise: es wall, pared → muro', 'handbook at undefined:undefined, translation said otherwise: es balance, equilibrio'])
})

test('a translation made again stands again, where its ladder is the very value it was', () => {
  const [reading, measuring] = [new Map(), new WeakMap()]
  const at = (files: Files) => measure(readCurriculum([layer('', files)], reading).value ?? assert.fail(), undefined, measuring)
  const stale = { ...ladderWith('Quiet toes', 'Still toes') }
  const again = sealed('balance', 'ladders/balance.es.md', { ...stale, 'ladders/balance.es.md': edited(stale['ladders/balance.es.md'] ?? '', 'Dedos quietos', 'Dedos inmóviles') })
  const { typed, followed } = compare(at(stale), at(again))
  assert.deepEqual([...typed, ...followed].map(changeText), ['translation said otherwise: es free/cues, Dedos quietos. → Dedos inmóviles.', 'translation stands again: es, free/cues'])
})

test('a translation that came or went is one change', () => {
  const english = without(BOTH, 'ladders/balance.es.md')
  assert.deepEqual(said(english, BOTH), { typed: ['balance at ladders/balance.es.md:2, new translation: es, Standing on one leg'], followed: [] })
  assert.deepEqual(said(BOTH, english), { typed: ['balance at undefined:undefined, translation withdrawn: es, was: Standing on one leg'], followed: [] })
  assert.deepEqual(said(BOTH, BOTH), { typed: [], followed: [] })
})

test('what did not change is left out of a comparison, a ladder and its translations together', () => {
  const before = { ...BOTH, 'ladders/other.md': edited(FULL, 'id: balance', 'id: other') }
  const kept = (after: Files): string[] => {
    const [[was], [is]] = withoutUnchanged([layer('', before)], [layer('', after)])
    assert.deepEqual(was?.files.map(({ file }) => file), is?.files.map(({ file }) => file))
    assert.deepEqual(readCurriculum(is ? [is] : []).findings, [])
    return (is?.files ?? []).map(({ file }) => file)
  }
  assert.deepEqual(kept(before), ['handbook.yaml'])
  assert.deepEqual(kept({ ...before, 'ladders/balance.es.md': `${BOTH['ladders/balance.es.md']}\n` }), ['handbook.yaml', 'ladders/balance.md', 'ladders/balance.es.md'])
  assert.deepEqual(kept({ ...before, 'ladders/balance.md': `${FULL}\n` }), ['handbook.yaml', 'ladders/balance.md', 'ladders/balance.es.md'])
  assert.deepEqual(kept({ ...before, 'content/safety.md': `${PAGE['content/safety.md']}\n` }), ['handbook.yaml', 'content/safety.md', 'content/safety.es.md'])
})
