import { fencesIn, readFlowchart } from '../read/flowchart.ts'
import { writtenIn } from './prose.ts'
import type { Rule } from './rule.ts'

/** Drawing one takes a twentieth of a second. Chosen by us. */
const MOST_DIAGRAMS = 12

/** What is wrong with the diagrams of one text, each on its line. */
function flawed(text: string): { readonly line: number; readonly message: string }[] {
  const fences = fencesIn(text)
  const extra = fences[MOST_DIAGRAMS]
  if (extra) return [{ line: extra.line, message: `More than ${MOST_DIAGRAMS} diagrams stand in one text. Move some to another page.` }]
  return fences.flatMap((fence) => readFlowchart(fence).flaws.map(({ line, message }) => ({ line: fence.line + 1 + line, message })))
}

export const diagramsCanBeDrawn: Rule = {
  name: 'diagrams-can-be-drawn',
  says: 'Every diagram is a flowchart of plain boxes and arrows, and has a title.',
  why: 'A diagram is drawn when the handbook is built, from boxes and arrows alone; a title and the same in words are there for who cannot see it.',

  check: (ladder) => writtenIn(ladder).flatMap(({ path, text }) => flawed(text).map(({ line, message }) => ({ path: [...path, 'text', line], message }))),

  checkPage: ({ body }) => flawed(body).map(({ line, message }) => ({ path: ['body', line], message })),
}
