import { onceOfEach } from '../quantity/once.ts'
import { writtenIn } from '../check/prose.ts'
import type { MeasuredCurriculum, MeasuredLadder, MeasuredPage } from '../measure/measure.ts'
import { drawingKey } from '../page/drawn-flowchart.ts'
import { fencesIn, flowchartSource, readFlowchart, type Flowchart } from '../read/flowchart.ts'
import type { Draw } from './drawn-once.ts'

/** Every flowchart that coaches wrote, drawn once, by its key. The drawing program sees what we write from what we understood, never what was typed. */
export async function drawFences({ ladders, pages }: Pick<MeasuredCurriculum, 'ladders' | 'pages'>, draw: Draw): Promise<ReadonlyMap<string, string>> {
  const drawn = new Map<string, string>()
  for (const chart of [...pages.flatMap(ofPage), ...ladders.flatMap(ofLadder)]) {
    const key = drawingKey(chart)
    if (!drawn.has(key)) drawn.set(key, await draw(flowchartSource(chart), key))
  }
  return drawn
}

const chartsIn = (text: string): Flowchart[] => fencesIn(text).flatMap((fence) => readFlowchart(fence).value ?? [])

/** Kept with the page or ladder: of a thousand, a save makes one another. */
const ofPage = onceOfEach(({ body }: MeasuredPage) => chartsIn(body))
const ofLadder = onceOfEach((ladder: MeasuredLadder) => writtenIn(ladder).flatMap(({ text }) => chartsIn(text)))
