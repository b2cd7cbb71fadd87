import { digestOf } from '../ladder/digest.ts'
import type { MeasuredLadder } from '../measure/measure.ts'
import type { Change, ChangeKind, Named, Side, Subject, Weight } from './change.ts'

/** What a change is made from; the rest has plain defaults. */
export type Made = {
  readonly kind: ChangeKind
  readonly subject: Subject
  readonly name: string
  /** A rung the name is to end in. */
  readonly of?: Named | undefined
  readonly weight: Weight
  readonly before?: Side | undefined
  readonly after?: Side | undefined
  readonly unsafe?: boolean
  readonly was?: Change['was'] | undefined
  readonly is?: Change['is'] | undefined
  readonly causes?: readonly string[]
  readonly example?: Change['example']
}

/** A rung of a ladder by its id and title; by its id alone where the ladder does not hold it. */
export const named = ({ rungs }: MeasuredLadder, id: string): Named => ({ id, title: rungs.find((rung) => rung.id === id)?.title ?? id })

/** A change with its fingerprint: of what it is about and how it reads in data, never of a sentence, so that an approval outlives a reword. */
export function change(made: Made): Change {
  const { kind, subject, weight, before, after, unsafe = false, causes = [], ...others } = made
  const name = made.of === undefined ? made.name : `${made.name} ${made.of.id}`
  const given = Object.fromEntries(Object.entries({ before, after, ...others }).filter(([, value]) => value !== undefined)) as Omit<Change, 'kind' | 'subject' | 'name' | 'weight' | 'unsafe' | 'causes' | 'fingerprint'>
  return { ...given, kind, subject, name, weight, unsafe, causes, fingerprint: digestOf({ kind, subject, name, before: before?.text, after: after?.text }) }
}
