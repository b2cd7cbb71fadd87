import { digestOf } from '../ladder/digest.ts'
import type { Change, ChangeKind, Side, Subject, Weight } from './change.ts'

/** What a change is made from; the rest has plain defaults. */
export type Made = {
  readonly kind: ChangeKind
  readonly subject: Subject
  readonly name: string
  readonly weight: Weight
  readonly before?: Side | undefined
  readonly after?: Side | undefined
  readonly unsafe?: boolean
  readonly was?: Change['was'] | undefined
  readonly is?: Change['is'] | undefined
  readonly causes?: readonly string[]
  readonly example?: Change['example']
}

/** A change with its fingerprint: of what it is about and how it reads in data, never of a sentence, so that an approval outlives a reword. */
export function change(made: Made): Change {
  const { kind, subject, name, before, after, unsafe = false, causes = [], ...others } = made
  const given = Object.fromEntries(Object.entries({ before, after, ...others }).filter(([, value]) => value !== undefined)) as Omit<Change, 'kind' | 'subject' | 'name' | 'unsafe' | 'causes' | 'fingerprint'>
  return { ...given, kind, subject, name, unsafe, causes, fingerprint: digestOf({ kind, subject, name, before: before?.text, after: after?.text }) }
}
