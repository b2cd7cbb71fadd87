import assert from 'node:assert/strict'
import { test } from 'vitest'
import { drawDiagram } from '../../src/site/draw-diagram.ts'
import { drawingTeam, drawingThread, type Job } from '../../src/site/drawing-team.ts'

const charts = Array.from({ length: 54 }, (_, index) => [`flowchart BT\n  a["Version ${index}"] --> b["${'Longer '.repeat(index % 5)}version"]`, `chart-n${index}`] as const)
const BROKEN = 'flowchart BT\n  a -->'

/** Everything a thread answers when nobody else draws. */
const drawnByThread = (asked: readonly (readonly [source: string, name: string])[]): Promise<PromiseSettledResult<string>[]> => {
  const waiting: Job[] = []
  const answers = Promise.allSettled(asked.map(([source, name]) => new Promise<string>((drawn, failed) => waiting.push({ source, name, drawn, failed }))))
  return new Promise((resolve) => drawingThread(waiting, () => resolve(answers)))
}

test('A thread draws the same bytes as this one, fails where this one does, and ends when nothing is left', async () => {
  const [first, second] = [charts[3], charts[4]]
  assert.ok(first && second)
  const [one, none, two] = await drawnByThread([first, [BROKEN, 'broken'], second])
  assert.deepEqual([one, two], [{ status: 'fulfilled', value: await drawDiagram(...first) }, { status: 'fulfilled', value: await drawDiagram(...second) }])
  assert.match(String(none?.status === 'rejected' && none.reason), /^Error: bug: "broken" cannot be drawn$/)
})

test('However many hands draw, each chart is answered, and one that cannot be drawn fails alone', async () => {
  const answers = (hands: number, worth_a_thread?: number): Promise<PromiseSettledResult<string>[]> => {
    const draw = drawingTeam(hands, worth_a_thread)
    return Promise.allSettled(charts.map(([source, name], index) => draw(index % 9 === 0 ? BROKEN : source, name)))
  }
  const told = (all: readonly PromiseSettledResult<string>[]): string[] => all.map((each) => (each.status === 'fulfilled' ? each.value : String(each.reason)))
  const alone = told(await answers(1))
  assert.deepEqual(told(await answers(1, 20)), alone)
  assert.deepEqual(told(await answers(3, 20)), alone)
  assert.deepEqual(alone.flatMap((svg, index) => (svg.startsWith('<svg') ? [] : [index])), [0, 9, 18, 27, 36, 45])
})
