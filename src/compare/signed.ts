import type { MeasuredLadder } from '../measure/measure.ts'
import type { Held, Side, Weight } from './change.ts'
import { named } from './make.ts'
import type { Add } from './typed.ts'

/** What is said about the ladder rather than in it: who reviewed it, which rules are silent, whose heir is whose, why a note was taken out. */
export function signed(add: Add, before: MeasuredLadder, after: MeasuredLadder): void {
  type Told = readonly (readonly [text: string, held: Held])[]
  const side = (lines: Told): Side => ({ text: lines.map(([text]) => text).join('; ') || 'none', holds: lines.map(([, held]) => held) })
  const told = (name: string, weight: Weight, of: (ladder: MeasuredLadder) => Told): void => {
    const [was, is] = [side(of(before)), side(of(after))]
    if (was.text !== is.text) add('list-changed', name, weight, { before: was, after: is }, [name])
  }
  told('review', 'wording', ({ review }) => (review ? [[`${review.by}, ${review.on}`, { reviewer: review.by, on: review.on }]] : []))
  told('silence', 'to judge', (ladder) => (ladder.silence ?? []).map(({ rule, rung, because, until }) => [`${rule}${rung === undefined ? '' : ` on ${rung}`} until ${until}: ${because}`, { rule, ...(rung === undefined ? {} : { on: named(ladder, rung) }), until, because }]))
  const stands = (ladder: MeasuredLadder, id: string): boolean => ladder.rungs.some((rung) => rung.id === id)
  told('retired', 're-placing', (ladder) => (ladder.retired ?? []).filter(({ id }) => !stands(before, id) && !stands(after, id)).map(({ id, heir }) => [`${id} → ${heir}`, { gone: named(ladder, id), heir: named(ladder, heir) }]))
  told('withdraw_notes', 'to judge', ({ withdrawn_notes }) => withdrawn_notes.map(({ note, because, by }) => [`${note} (${by}: ${because})`, { note, by, because }]))
}
