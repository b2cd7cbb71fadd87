import type { MeasuredLadder } from '../measure/measure.ts'
import type { Found } from './rule.ts'

/** What a rule found, with the rule's name. */
export type Named = Found & { readonly rule: string }

const RULE = 'silences-are-used'

/** Rules nobody may keep quiet: what they ask for is what stops somebody being hurt. */
const LOUD = new Set(['stop-signs-are-given', 'landings-stay-within-limits', 'anchored-rungs-ask-for-a-rated-anchor', 'banded-rungs-carry-a-caution', 'supervision-rises-with-risk', 'translated-safety-notes-stand'])

/** True where a finding is of the rule and, if one is named, on the rung. */
function covers({ rule, rung }: { readonly rule: string; readonly rung?: string | undefined }, finding: Named, ladder: MeasuredLadder): boolean {
  const [part, at] = finding.path
  const on = part === 'rungs' ? (typeof at === 'number' ? ladder.rungs[at]?.id : at) : undefined
  return finding.rule === rule && (rung === undefined || rung === on)
}

/**
 * Takes away what the ladder silences, for a reason and until a day. A silence that has ended, or that keeps nothing quiet, is itself found.
 *
 * Shape   findings of one ladder to those that remain, and those about its silences.
 */
export function silenced(found: readonly Named[], ladder: MeasuredLadder, today: string): Named[] {
  const silences = ladder.silence ?? []
  const standing = silences.filter(({ until, rule }) => until >= today && !LOUD.has(rule))
  const kept = found.filter((finding) => !standing.some((silence) => covers(silence, finding, ladder)))
  const wrong = silences.flatMap((silence, index): Named[] => {
    const path = ['silence', index]
    const where = silence.rung === undefined ? '' : ` on "${silence.rung}"`
    if (LOUD.has(silence.rule)) return [{ rule: RULE, path, message: `${silence.rule} cannot be silenced: it is about safety. Put right what it finds.` }]
    if (silence.until < today) return [{ rule: RULE, path, message: `The silence of ${silence.rule}${where} ended on ${silence.until}. Put right what it kept quiet, or give a new day and reason.` }]
    return found.some((finding) => covers(silence, finding, ladder)) ? [] : [{ rule: RULE, path, message: `The silence of ${silence.rule}${where} keeps nothing quiet. Take it out.` }]
  })
  return [...kept, ...wrong]
}
