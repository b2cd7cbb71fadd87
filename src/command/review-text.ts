import type { Change } from '../compare/change.ts'
import { editionKind } from '../compare/compare.ts'
import { changeText, exampleText, tally, WEIGHS, whereOf } from '../compare/say.ts'
import type { Place } from '../ladder/finding.ts'
import { forTerminal } from './report-text.ts'
import type { Reviewed } from './review.ts'

/** One line of a terminal: a name with a newline in it begins no line of its own. */
const oneLine = (text: string): string => forTerminal(text).replaceAll('\n', ' ')

const at = (place: Place | undefined): string => (place ? `${place.file}:${place.line}` : '–')

function lines(change: Change, numbers: ReadonlyMap<string, number>): string[] {
  const example = exampleText(change)
  const causes = change.causes.map((cause) => numbers.get(cause)).filter((number) => number !== undefined)
  return [
    `  ${change.unsafe ? '!' : ' '} ${whereOf(change)}  ${changeText(change)}`,
    `      ${change.was ? `${at(change.was)} → ` : ''}${at(change.is)}${causes.length > 0 ? `   follows from ${causes.join(', ')}` : ''}`,
    ...(example ? [`      ${example}`] : []),
  ]
}

/** Two lists, never mixed: what was typed, numbered, and what follows, with the numbers it follows from. */
export function reviewText({ comparison, notes }: Reviewed): string {
  const { typed, followed } = comparison
  if (typed.length === 0) return notes.map((note) => `${oneLine(note)}\n`).join('')
  const numbers = new Map(typed.map(({ fingerprint }, index) => [fingerprint, index + 1]))
  const counted = tally(comparison).filter(([, count]) => count > 0)
  const blocks = [
    ...notes,
    `The next edition: ${editionKind(comparison)}`,
    ...counted.map(([weight, count]) => `  ${String(count).padStart(3)}  ${WEIGHS[weight]}`),
    '  !    could hurt somebody: look at it first',
    '',
    'Typed',
    ...typed.flatMap((change, index) => lines(change, numbers).map((line, nth) => (nth === 0 ? `${String(index + 1).padStart(3)}${line}` : `   ${line}`))),
    ...(followed.length > 0 ? ['', 'Follows', ...followed.flatMap((change) => lines(change, numbers).map((line) => `   ${line}`))] : []),
  ]
  return `${blocks.map(oneLine).join('\n')}\n`
}
