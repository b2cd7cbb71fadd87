/** Where to begin after time off, and how much less to do in each of the first weeks. */
export type ComeBack = { readonly begin: string; readonly less_percent: readonly number[]; readonly says: string }

/** A lay-off of this many weeks or more lowers the volume. Source caterisano2019, value from memory. Units weeks. */
const LAY_OFF_WEEKS = 2
/** At least so much less volume in weeks 1 to 4. Source caterisano2019, figures from memory. Units %. */
const LESS_PERCENT = [50, 30, 20, 10] as const
/** Longer than this, strength itself is less. Chosen by us, after common practice. Units weeks. */
const LONG_WEEKS = 6

/**
 * How to come back to a rung.
 *
 * Shape   weeks off to where to begin and the volume of the first weeks.
 * Units   weeks, %.
 * Source  caterisano2019 for the volume (from memory); where to begin is common practice.
 */
export function comeBack(weeks_off: number): ComeBack {
  if (weeks_off < LAY_OFF_WEEKS) return { begin: 'the rung you were on', less_percent: [], says: 'Less than two weeks: carry on, a few repetitions short of your last.' }
  const begin = weeks_off >= LONG_WEEKS ? 'the rung before the one you were on, tested first with one easy set' : 'the rung you were on, tested first with one easy set'
  return { begin, less_percent: LESS_PERCENT, says: 'After two weeks or more: at least 50, 30, 20 and 10 % less volume in the first four weeks.' }
}
