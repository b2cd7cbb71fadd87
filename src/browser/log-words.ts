import { isMissing } from '../quantity/outcome.ts'
import { sources } from '../load/sources.ts'
import type { Decided } from '../measure/decide.ts'
import { entryText } from '../measure/entry.ts'
import { chiefVerdict, type Ladder, type Verdict } from './log-decisions.ts'
import type { LoggedSession, LogUnit } from './log-record.ts'
import { said } from './said.ts'

const SHORT: Readonly<Record<LogUnit, string>> = { reps: 'reps', seconds: 's', metres: 'm' }

/** "12, 12, 11 reps" */
export const amountsText = ({ amounts, unit }: Pick<LoggedSession, 'amounts' | 'unit'>): string => `${amounts.join(', ')} ${unit === 'reps' && amounts.length === 1 && amounts[0] === 1 ? 'rep' : SHORT[unit]}`

/** "12 reps", "30 s" */
export const amountText = (amount: number, unit: LogUnit): string => amountsText({ amounts: [amount], unit })

/** "3 sets", "1 set" */
export const counted = (count: number, one: string): string => `${count} ${count === 1 ? one : `${one}s`}`

/** Form and pain in words: "form lost in 1 set · pain 3 of 10 · next morning 2 of 10". */
export function besidesText({ sets_out_of_form, pain_during, pain_next_morning, pain_usual }: LoggedSession): string {
  return [
    sets_out_of_form === 0 ? 'all in form' : `form lost in ${counted(sets_out_of_form, 'set')}`,
    `pain ${pain_during} of 10`,
    pain_next_morning === undefined ? '' : `next morning ${pain_next_morning} of 10`,
    pain_usual === undefined ? '' : `usually ${pain_usual} of 10`,
  ]
    .filter(Boolean)
    .map(said)
    .join(' · ')
}

/** "Common practice." or where the rule comes from and how far that was followed back. */
export const sourceText = ({ source }: Decided): string => (source === 'common practice' ? 'Common practice.' : `${sources[source].cite} (${sources[source].seen}).`)

/** A decision in a word or two, and the rungs it leads to. */
export function decisionText(verdicts: readonly Verdict[]): string {
  const chief = chiefVerdict(verdicts)
  if (!chief || isMissing(chief.decided)) return 'not decided'
  return chief.decided.decision
}

/** What stands beside a decision: what each way onward asks. */
export const asksText = (ladder: Ladder, verdicts: readonly Pick<Verdict, 'to' | 'entry'>[]): string =>
  verdicts.map(({ to, entry }) => said(to ? `To move on to “${to.title}”: ${entryText(entry)}, all of it in form.` : `“${ladder.title}” ends here; its standard is ${entryText(entry)}.`)).join(' ')
