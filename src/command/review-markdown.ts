import type { Change, Comparison } from '../compare/change.ts'
import { editionKind } from '../compare/compare.ts'
import { changeText, exampleText, tally, WEIGHS, whereOf } from '../compare/say.ts'
import { ladderDiagram } from '../page/ladder-diagram.ts'
import type { MeasuredCurriculum, MeasuredLadder } from '../measure/measure.ts'
import type { Reviewed } from './review.ts'

/** Letters a comment of a code host may have, and room for the sentence that says what was left out. */
const MOST = 65_536
const ROOM = 400

/** Changes that could hurt somebody, named on top. Chosen by us; the rest stand in the tables. */
const FIRST = 20

/** A mark by which the next run finds this comment and writes it anew. */
export const COMMENT_MARK = '<!-- rungbook review -->'

/** Characters a code host makes a mention of, even where they are written as entities: a space of no width follows them. */
const MENTIONS = new Set(['@', '#'])

/** Text from a curriculum in a comment: no mention, no markup, no table cell ended, no line begun. */
export const forComment = (text: string): string =>
  text
    .replace(/[\u0000-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/g, ' ')
    .replace(/[&<>@#|`*_~[\]()\\!:]/g, (character) => `&#${character.codePointAt(0)};${MENTIONS.has(character) ? '&#8203;' : ''}`)

const row = (change: Change, number: string, causes: string): string => {
  const example = exampleText(change)
  return `| ${number} | ${forComment(whereOf(change))} | ${forComment(changeText(change))}${example ? `<br>${forComment(example)}` : ''} | ${causes} |`
}

function table(title: string, changes: readonly Change[], last: string, cells: (change: Change, index: number) => [number: string, last: string]): string[] {
  if (changes.length === 0) return []
  return ['', `<details><summary>${title}: ${changes.length}</summary>`, '', `| | where | what | ${last} |`, '|---|---|---|---|', ...changes.map((change, index) => row(change, ...cells(change, index))), '', '</details>']
}

/** A diagram that ends no fence, and of which no line commands a workflow that prints it. */
const diagramText = (ladder: MeasuredLadder): string => ladderDiagram(ladder).trimEnd().replaceAll('```', '').replaceAll('::', '#58;#58;')

/** The ladders that changed, each as a diagram with the changed rungs marked. */
function diagrams(after: MeasuredCurriculum, { typed, followed }: Comparison): string[] {
  return after.ladders.flatMap((ladder) => {
    const changed = new Set([...typed, ...followed].flatMap(({ subject }) => (subject.ladder === ladder.id && subject.rung !== undefined ? [subject.rung] : [])))
    if (changed.size === 0) return []
    const marked = ladder.rungs.flatMap(({ id }, index) => (changed.has(id) ? [`  class r${index} changed`] : []))
    return ['', `<details><summary>${forComment(ladder.title)}</summary>`, '', '```mermaid', diagramText(ladder), ...marked, '  classDef changed stroke-width:3px', '```', '', '</details>']
  })
}

/** A comment on a pull request: short on top, the rest folded, never longer than a code host takes. */
export function reviewMarkdown({ comparison, notes, after }: Reviewed): string {
  const { typed, followed } = comparison
  const numbers = new Map(typed.map(({ fingerprint }, index) => [fingerprint, index + 1]))
  if (typed.length === 0) return notes.length === 0 ? '' : within([[COMMENT_MARK, ...notes.map(forComment)].join('\n')])
  const unsafe = [...typed, ...followed].filter((change) => change.unsafe)
  const top = [
    COMMENT_MARK,
    `**The next edition: ${editionKind(comparison)}**`,
    '',
    ...notes.map((note) => `> ${forComment(note)}`),
    ...tally(comparison).flatMap(([weight, count]) => (count > 0 ? [`- ${count} ${WEIGHS[weight]}`] : [])),
    ...(unsafe.length > 0 ? ['', '**Look at these first**', '', ...unsafe.slice(0, FIRST).map((change) => `- ${forComment(whereOf(change))}: ${forComment(changeText(change))}`), ...(unsafe.length > FIRST ? [`- and ${unsafe.length - FIRST} more`] : [])] : []),
  ]
  const parts = [
    top,
    table('Typed', typed, 'line', (change, index) => [`${index + 1}`, change.is ? forComment(`${change.is.file}:${change.is.line}`) : '–']),
    table('What follows', followed, 'from', ({ causes }) => ['', causes.map((cause) => numbers.get(cause)).filter((number) => number !== undefined).join(', ')]),
    ...diagrams(after, comparison).join('\n').split(/\n(?=<details>)/).map((diagram) => ['', ...diagram.split('\n')]),
  ]
  return within(parts.map((part) => part.join('\n')))
}

/** Whole parts while they fit, then how many were left out; a part that does not fit is cut at a line. */
function within(parts: readonly string[]): string {
  let text = ''
  for (const [index, part] of parts.entries()) {
    if (text.length + part.length + 1 <= MOST - ROOM) {
      text += `${part}\n`
      continue
    }
    const kept = part.split('\n').reduce((lines, line) => (text.length + lines.length + line.length + 1 <= MOST - ROOM - 20 ? `${lines}${line}\n` : lines), '')
    const open = kept.includes('<details>') && !kept.includes('</details>') ? '\n</details>\n' : ''
    return `${text}${index < 2 ? kept + open : ''}\nThis comment is as long as it may be; ${parts.length - index} parts are shortened or left out. Run \`rungbook review\` to see them.\n`
  }
  return text
}
