import type { MeasuredLadder } from '../measure/measure.ts'
import { forDiagram } from '../read/flowchart.ts'
import { linkTo, ladderAddress, rungAddress, type Address } from './address.ts'
import { html, type Html, type Part } from './html.ts'
import { ladderFacts, type RungFact, type StepFact } from './ladder-facts.ts'
import { ENGLISH, type Tongue } from './tongue.ts'
import { spoken } from './written.ts'

/** Letters a line of a label may have before it wraps. */
const LINE_LETTERS = 26

/** Breaks a label into short lines, at spaces. */
function wrapped(text: Part, tongue: Tongue): string {
  const lines: string[] = []
  for (const word of spoken(text, tongue).split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && `${last} ${word}`.length <= LINE_LETTERS) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines.join('\n')
}

/** By what name the drawing of a ladder is known. */
export const diagramName = ({ id }: Pick<MeasuredLadder, 'id'>): string => `diagram-of-${id}`

/**
 * A ladder as a Mermaid flowchart, the first rung at the bottom.
 *
 * Shape   a measured ladder and a language to text, the same bytes for the same two.
 */
export function ladderDiagram(ladder: MeasuredLadder, tongue: Tongue = ENGLISH): string {
  const { rungs, steps } = ladderFacts(ladder)
  const name = new Map(rungs.map(({ id }, index) => [id, `r${index}`]))
  const node = ({ id, title, load, demand, aim }: RungFact): string => {
    const lines = [title, load, ...(demand ? [demand] : []), ...(aim ? ['the aim'] : [])]
      .map((text) => wrapped(text, tongue))
      .join('\n')
    return `  ${name.get(id)}[${forDiagram(lines)}]${aim ? `\n  class ${name.get(id)} aim` : ''}`
  }
  const edge = ({ from, to, entry }: StepFact): string => `  ${name.get(from)} -->|${forDiagram(wrapped(entry, tongue))}| ${name.get(to)}`
  return ['flowchart BT', ...rungs.map(node), ...steps.map(edge), ''].join('\n')
}

/** The same facts as an ordered list, first rung first. */
export function ladderInWords(ladder: MeasuredLadder, from: Address = ladderAddress(ladder.id)): Html {
  const { rungs, steps } = ladderFacts(ladder)
  const title = (id: string): string => rungs.find((rung) => rung.id === id)?.title ?? id
  return html`<ol class="in-words">${rungs.map(
    (rung) => html`
<li><a href="${linkTo(from, rungAddress(ladder.id, rung.id))}">${rung.title}</a>: ${rung.load}${rung.demand && html`; ${rung.demand}`}${rung.aim && html`; <strong>the aim</strong>`}${steps
      .filter(({ to }) => to === rung.id)
      .map((step) => html`. After ${title(step.from)}: ${step.entry}`)}</li>`,
  )}
</ol>`
}
