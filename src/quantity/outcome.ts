/** A value, or the reason we decline to give one. Never NaN, never a clamped guess. */
export type Outcome<Value = number> = Value | Missing

/** The reason is a phrase a coach can read after "not computed:". */
export type Missing = { readonly missing: string }

/** Declines to answer, saying why. */
export const missing = (why: string): Missing => ({ missing: why })

/** True where there is no answer. */
export function isMissing(outcome: unknown): outcome is Missing {
  return typeof outcome === 'object' && outcome !== null && 'missing' in outcome
}

/** What there is of a list, and nothing where it is missing. */
export const orNone = <Value>(outcome: Outcome<readonly Value[]>): readonly Value[] => (isMissing(outcome) ? [] : outcome)
