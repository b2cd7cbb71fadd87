import { digestOf } from '../ladder/digest.ts'
import { flowchartSource, type Flowchart } from '../read/flowchart.ts'
import { drawnHere } from './drawn.ts'
import { escaped } from './escaped.ts'
import { html, inEnglish, raw, type Html } from './html.ts'

/** By what name the drawing of a flowchart is known. */
export const drawingKey = (chart: Flowchart): string => `drawing-${digestOf(flowchartSource(chart))}`

/** A coach's words, as they are in every language. */
const theirs = (text: string): Html => raw(escaped(text.replaceAll('\n', ' ')))

/** A label before an answer: a question mark ends it, else a comma does. */
function ended(label: Html | undefined): string {
  const text = label === undefined ? '' : inEnglish(label)
  return text === '' || /[?!.:]$/.test(text) ? text : `${text},`
}

/** A flowchart in a page: its title, the drawing in a frame that scrolls, and the same in words. */
export function flowchart(chart: Flowchart): Html {
  const { title, description, boxes, arrows } = chart
  const label = new Map(boxes.map((box) => [box.id, theirs(box.label)]))
  const alone = boxes.filter(({ id }) => !arrows.some(({ from, to }) => from === id || to === id))
  return html`<figure class="drawn"><figcaption>${theirs(title)}</figcaption>
<div class="scroll" role="img" tabindex="0" aria-label="${theirs(description === undefined ? title : `${title}. ${description}`)}">${drawnHere(drawingKey(chart))}</div>
<details><summary>The diagram in words</summary>
<ul>${alone.map(({ id }) => html`
<li>${label.get(id)}</li>`)}${arrows.map(({ from, to, label: words }) => (words === undefined ? html`
<li>${label.get(from)}, then ${label.get(to)}</li>` : html`
<li>${raw(ended(label.get(from)))} ${theirs(words)}: ${label.get(to)}</li>`))}
</ul></details></figure>
`
}
