import { writtenIn } from '../check/prose.ts'
import type { MeasuredCurriculum } from '../measure/measure.ts'
import { drawingKey } from '../page/drawn-flowchart.ts'
import { fencesIn, flowchartSource, readFlowchart } from '../read/flowchart.ts'
import type { Draw } from './drawn-once.ts'

/** Every flowchart that coaches wrote, drawn once, by its key. The drawing program sees what we write from what we understood, never what was typed. */
export async function drawFences({ ladders, pages }: MeasuredCurriculum, draw: Draw): Promise<ReadonlyMap<string, string>> {
  const texts = [...pages.map(({ body }) => body), ...ladders.flatMap(writtenIn).map(({ text }) => text)]
  const charts = texts.flatMap(fencesIn).flatMap((fence) => readFlowchart(fence).value ?? [])
  const drawn = new Map<string, string>()
  for (const chart of charts) {
    const key = drawingKey(chart)
    if (!drawn.has(key)) drawn.set(key, await draw(flowchartSource(chart), key))
  }
  return drawn
}
