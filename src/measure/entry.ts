import type { Entry, Standard } from '../ladder/schema.ts'

/** What must be shown on the rung before: every part of it filled in. Exactly one of reps, seconds and metres is given. */
export type FullEntry = {
  readonly sets: number
  readonly amount: { readonly unit: 'reps' | 'seconds' | 'metres'; readonly value: number } | undefined
  readonly sessions: number
  readonly reserve_reps: number
}

type Amount = FullEntry['amount']

const amountOf = ({ reps, seconds, metres }: Pick<Entry, 'reps' | 'seconds' | 'metres'>): Amount =>
  reps !== undefined
    ? { unit: 'reps', value: reps }
    : seconds !== undefined
      ? { unit: 'seconds', value: seconds }
      : metres !== undefined
        ? { unit: 'metres', value: metres }
        : undefined

/** A rung's entry over the ladder's standard: what the rung says wins, part by part. */
export function fullEntry(standard: Standard, entry: Entry): FullEntry {
  return {
    sets: entry.sets ?? standard.sets,
    amount: amountOf(entry) ?? amountOf(standard),
    sessions: entry.sessions ?? standard.sessions,
    reserve_reps: entry.reserve_reps ?? standard.reserve_reps,
  }
}

const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`

/** "3 sets of 12 repetitions, 2 sessions running" */
export function entryText({ sets, amount, sessions }: FullEntry): string {
  const each = amount === undefined ? '' : ` of ${amount.unit === 'reps' ? plural(amount.value, 'repetition', 'repetitions') : amount.unit === 'seconds' ? `${amount.value} s` : `${amount.value} m`}`
  return `${plural(sets, 'set', 'sets')}${each}, ${sessions === 1 ? 'in one session' : `${sessions} sessions running`}`
}
