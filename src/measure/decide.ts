import type { SourceKey } from '../load/sources.ts'
import type { FullEntry } from './entry.ts'

/** What a session on a rung ends in. */
export type Decision = 'move on' | 'hold' | 'step back' | 'stop'

/** What was seen in one session. Pain on a scale of 0 to 10; amounts in the standard's own unit, one a set. */
export type Session = {
  readonly amounts: readonly number[]
  /** Sets in which a form point was lost. */
  readonly sets_out_of_form: number
  readonly pain_during: number
  /** Pain next morning, where it is known, and what it is like on other mornings. */
  readonly pain_next_morning?: number
  readonly pain_usual?: number
}

/** A decision with its reason, the rule it follows from and where that comes from. */
export type Decided = { readonly decision: Decision; readonly because: string; readonly rule: string; readonly source: SourceKey | 'common practice' }

type Rule = Omit<Decided, 'because'> & { readonly when: (seen: Seen) => string | undefined }

type Seen = { readonly session: Session; readonly before: readonly Session[]; readonly standard: FullEntry; readonly first_reps: number | undefined }

const PAIN_STOP = 5
const PAIN_SAFE = 2

/** True where a session shows the whole standard in form. */
function meets({ amounts, sets_out_of_form }: Session, { sets, amount }: FullEntry): boolean {
  return amount !== undefined && sets_out_of_form === 0 && amounts.filter((done) => done >= amount.value).length >= sets
}

/**
 * The rules, the weightiest first: the first that speaks decides.
 *
 * Source  thomee1997: pain above 5 stops, 2 to 5 is acceptable, and it is back at its earlier level by next morning (zones from memory);
 *         acsm2009: move up when one or two repetitions over the goal can be done; the rest is common practice.
 */
export const decisionRules: readonly Rule[] = [
  {
    decision: 'stop',
    rule: 'Pain above 5 of 10 ends the session.',
    source: 'thomee1997',
    when: ({ session: { pain_during } }) => (pain_during > PAIN_STOP ? `pain was ${pain_during} of 10` : undefined),
  },
  {
    decision: 'step back',
    rule: 'Pain that is not back at its usual level next morning asks for an easier rung.',
    source: 'thomee1997',
    when: ({ session: { pain_next_morning = 0, pain_usual } }) => (pain_next_morning > (pain_usual ?? 0) ? `pain next morning was ${pain_next_morning}${pain_usual === undefined ? '' : `, usually ${pain_usual}`}` : undefined),
  },
  {
    decision: 'step back',
    rule: 'Form lost in two sets of a session asks for an easier rung.',
    source: 'common practice',
    when: ({ session: { sets_out_of_form } }) => (sets_out_of_form >= 2 ? `form was lost in ${sets_out_of_form} sets` : undefined),
  },
  {
    decision: 'step back',
    rule: 'Fewer repetitions than a rung may begin with ask for an easier one.',
    source: 'common practice',
    when: ({ session: { amounts }, standard: { amount }, first_reps }) => {
      const best = Math.max(0, ...amounts)
      return amount?.unit === 'reps' && first_reps !== undefined && best < first_reps ? `the best set was ${best}, and ${first_reps} are the fewest to begin with` : undefined
    },
  },
  {
    decision: 'hold',
    rule: 'Form lost in one set holds the rung.',
    source: 'common practice',
    when: ({ session: { sets_out_of_form } }) => (sets_out_of_form === 1 ? 'form was lost in one set' : undefined),
  },
  {
    decision: 'hold',
    rule: 'Pain above 2 and up to 5 of 10 is acceptable, and holds the rung.',
    source: 'thomee1997',
    when: ({ session: { pain_during } }) => (pain_during > PAIN_SAFE ? `pain was ${pain_during} of 10` : undefined),
  },
  {
    decision: 'move on',
    rule: 'The whole standard, in form, as many sessions running as it asks.',
    source: 'acsm2009',
    when: ({ session, before, standard }) => {
      const running = [session, ...before.slice(0, standard.sessions - 1)]
      return running.length >= standard.sessions && running.every((each) => meets(each, standard)) ? `the standard was met in ${standard.sessions} ${standard.sessions === 1 ? 'session' : 'sessions running'}` : undefined
    },
  },
  {
    decision: 'hold',
    rule: 'The standard once, in form: show it again.',
    source: 'common practice',
    when: ({ session, standard }) => (meets(session, standard) ? 'the standard was met; it is asked for again' : undefined),
  },
  {
    decision: 'hold',
    rule: 'Short of the standard, in form: add a little next time, such as one repetition a set.',
    source: 'common practice',
    when: () => 'the standard is not met yet',
  },
]

/** Decides one session: move on, hold, step back or stop, with the rule. `before` holds the sessions on this rung before it, newest first. */
export function decide(session: Session, before: readonly Session[], standard: FullEntry, first_reps: number | undefined): Decided {
  for (const { when, decision, rule, source } of decisionRules) {
    const because = when({ session, before, standard, first_reps })
    if (because !== undefined) return { decision, because, rule, source }
  }
  throw new Error('bug: no rule decides')
}
