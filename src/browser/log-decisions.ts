import { isMissing, missing, type Outcome } from '../quantity/outcome.ts'
import { decide, type Decided, type Session } from '../measure/decide.ts'
import type { FullEntry } from '../measure/entry.ts'
import type { LadderData } from '../page/data.ts'
import type { LoggedSession } from './log-record.ts'

/** As many sessions as a standard may ask for running. */
const RUNNING = 10

/** What decides on a ladder. */
export type Ladder = Pick<LadderData, 'id' | 'title' | 'rungs' | 'retired' | 'standard' | 'first_reps'>
export type LadderRung = LadderData['rungs'][number]

/** What a session ends in for one way onward: the rung it leads to, if any, what that asks, and the decision. */
export type Verdict = { readonly to: LadderRung | undefined; readonly entry: FullEntry; readonly decided: Outcome<Decided> }

/** A session, the rung it counts on today, and what it ended in, which is decided when somebody looks. */
export type Entry = { readonly session: LoggedSession; readonly rung: string; readonly verdicts: readonly Verdict[] }

const full = ({ sets, amount, sessions, reserve_reps }: LadderData['standard']): FullEntry => ({ sets, amount, sessions, reserve_reps })

/** The rung a session counts on: itself, or the heir of a rung that was withdrawn or renamed, and of that one's heir. */
export const heirOf = (ladder: Pick<Ladder, 'rungs' | 'retired'>, rung: string): string => heirsOn(ladder)(rung)

/** The same for many sessions. */
export function heirsOn({ rungs, retired }: Pick<Ladder, 'rungs' | 'retired'>): (rung: string) => string {
  const there = new Set(rungs.map(({ id }) => id))
  const heirs = new Map(retired.map(({ id, heir }) => [id, heir]))
  return (rung) => {
    let now = rung
    for (let turn = 0; turn <= retired.length && !there.has(now); turn += 1) now = heirs.get(now) ?? now
    return there.has(now) ? now : rung
  }
}

/** Every way on from a rung with what it asks; at the end of a branch the ladder's own standard, leading nowhere. */
export function waysOn(ladder: Ladder, rung: string): readonly { readonly to: LadderRung | undefined; readonly entry: FullEntry }[] {
  const ways = ladder.rungs.flatMap((to) => to.steps.flatMap(({ from, entry }) => (from === rung ? [{ to, entry: full(entry) }] : [])))
  return ways.length > 0 ? ways : [{ to: undefined, entry: full(ladder.standard) }]
}

/** A session as the rules see it. Amounts in another unit than the standard's are none. */
const seen = (session: LoggedSession, unit: string | undefined): Session => ({ ...session, amounts: session.unit === unit ? session.amounts : [] })

/**
 * What the rules decide of a session, for every way on from its rung.
 *
 * Missing where it was logged in another unit than the ladder asks for today, unless pain or lost form decides.
 */
function verdictsOn(ladder: Ladder, rung: string, session: LoggedSession, before: readonly LoggedSession[]): Verdict[] {
  return waysOn(ladder, rung).map(({ to, entry }) => {
    const unit = entry.amount?.unit
    if (unit === session.unit) return { to, entry, decided: decide(seen(session, unit), before.map((each) => seen(each, unit)), entry, ladder.first_reps) }
    const decided = decide(seen(session, unit), [], { ...entry, amount: undefined }, undefined)
    return { to, entry, decided: decided.decision === 'hold' ? missing(`it was logged in ${session.unit}, and the ladder asks for ${unit ?? 'no amount'}`) : decided }
  })
}

/** The sessions of one ladder, oldest first, each with its decision. On one day the order of logging stands. */
export function historyOf(ladder: Ladder, sessions: readonly LoggedSession[]): Entry[] {
  const heir = heirsOn(ladder)
  const onRung = new Map<string, LoggedSession[]>()
  return byDay(sessions.filter((session) => session.ladder === ladder.id)).map((session) => {
    const rung = heir(session.rung)
    const there = onRung.get(rung) ?? []
    onRung.set(rung, there)
    const at = there.push(session) - 1
    return entryOf(ladder, rung, session, () => there.slice(Math.max(0, at - RUNNING), at).toReversed())
  })
}

function entryOf(ladder: Ladder, rung: string, session: LoggedSession, before: () => LoggedSession[]): Entry {
  let verdicts: readonly Verdict[] | undefined
  return {
    session,
    rung,
    get verdicts() {
      return (verdicts ??= verdictsOn(ladder, rung, session, before()))
    },
  }
}

/** Sessions by their day, and on one day as they were logged. */
export const byDay = (sessions: readonly LoggedSession[]): LoggedSession[] => sessions.toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))

/** The verdict a session is known by: the first that moves on, else the first. */
export const chiefVerdict = (verdicts: readonly Verdict[]): Verdict | undefined => verdicts.find(({ decided }) => !isMissing(decided) && decided.decision === 'move on') ?? verdicts[0]
