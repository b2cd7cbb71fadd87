import assert from 'node:assert/strict'
import { test } from 'vitest'
import { inEnglish } from '../../src/page/html.ts'
import { isMissing } from '../../src/quantity/outcome.ts'
import { loadRail, railKey } from '../../src/page/rail.ts'
import { ladderOf } from '../measure/ladders.ts'

const lift = (kg: number, more = ''): string => `${more}load: { model: one-rep-max, load_kg: ${kg} }`
const ladder = ladderOf({
  rungs: [['a', lift(40)], ['b', lift(41)], ['c', lift(50)], ['d', lift(70)], ['e', lift(70, 'demand: [balance], ')], ['f', lift(60)]],
  aim: 'f',
})
const rails = new Map(ladder.rungs.map((rung) => [rung.id, inEnglish(loadRail(rung, ladder))]))
const kindOf = (id: string): unknown => {
  const kind = ladder.rungs.find((rung) => rung.id === id)?.steps[0]?.kind
  return kind === undefined || isMissing(kind) ? undefined : kind
}
/** Numbers of the first path of a class: where a mark begins and ends. */
const mark = (id: string, name: string): number[] => (new RegExp(`class="${name}" d="([^"]*)"`).exec(rails.get(id) ?? '')?.[1]?.match(/-?\d+/g) ?? []).map(Number)

test('each kind of step is told on its rail by its shape alone', () => {
  assert.deepEqual(['b', 'c', 'd', 'e', 'f'].map(kindOf), ['comfortable', 'uncertain', 'too steep', 'level', 'backwards'])
  const shapes = ['b', 'c', 'd', 'e', 'f'].map((id) => (rails.get(id) ?? '').replace(/\d+/g, '').match(/class="rail-(notch|open|ghost)" d="[^"]*"/)?.[0])
  assert.equal(new Set(shapes).size, 5, shapes.join(' '))
  assert.doesNotMatch(rails.get('a') ?? '', /rail-(notch|open|ghost)/)
})

test('the mark reaches from the load before to the load — by hand: 50 and 70 of 70 kg on a rail of 1000 are 714 and 1000', () => {
  assert.deepEqual(mark('d', 'rail-open').slice(0, 3), [714, 6, 1000])
  assert.deepEqual(mark('f', 'rail-ghost').slice(0, 3), [857, 6, 1000]) // 60 and 70 of 70
})

test('a small step is wide enough to be seen', () => {
  const small = ladderOf({ rungs: [['a', lift(20)], ['b', lift(21)], ['c', lift(100)]], aim: 'c' })
  const [from = 0] = (/class="rail-notch" d="M(\d+)/.exec(inEnglish(loadRail(small.rungs[1] ?? assert.fail(), small))) ?? []).slice(1).map(Number)
  assert.equal(from, 194) // by hand: 21 of 100 kg on 1000 is 210, less 16
})

test('the key shows the kinds a ladder has, and only those', () => {
  const kinds = (text: string): number => [...text.matchAll(/<li>/g)].length
  assert.equal(kinds(inEnglish(railKey(ladder))), 5)
  assert.equal(kinds(inEnglish(railKey(ladderOf({ rungs: [['a', lift(40)], ['b', lift(41)]], aim: 'b' })))), 1)
})
