import { isRefused, isSame, joined, LIMITS, nameTrouble, readSession, sessionCount, tidyName, type Log, type LoggedAthlete, type LoggedSession, type Refused } from './log-record.ts'

/** A change of a log: the log after it, or why not. It is made again on whatever another tab has written meanwhile. */
export type Change = (log: Log) => Log | Refused

const refuse = (...refused: readonly string[]): Refused => ({ refused })
const nobody = (name: string): Refused => refuse(`There is no athlete named “${name}” on this device any more.`)
const alike = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase()

const named = ({ athletes }: Log, name: string): LoggedAthlete | undefined => athletes.find((athlete) => athlete.name === name)
const withAthlete = (log: Log, name: string, now: LoggedAthlete): Log => ({ ...log, athletes: log.athletes.map((athlete) => (athlete.name === name ? now : athlete)) })

/** Adds an athlete under a name nobody else has, in whatever case. */
export function addAthlete(log: Log, typed: string): Log | Refused {
  const name = tidyName(typed)
  const trouble = nameTrouble(name)
  if (trouble) return refuse(trouble)
  if (log.athletes.some((athlete) => alike(athlete.name, name))) return refuse(`“${name}” is on this device already.`)
  if (log.athletes.length >= LIMITS.athletes) return refuse(`A log holds at most ${LIMITS.athletes} athletes.`)
  return { ...log, athletes: [...log.athletes, { name, sessions: [] }] }
}

/** Gives an athlete another name; the sessions stay theirs. */
export function renameAthlete(log: Log, name: string, typed: string): Log | Refused {
  const now = tidyName(typed)
  const trouble = nameTrouble(now)
  const athlete = named(log, name)
  if (trouble) return refuse(trouble)
  if (!athlete) return nobody(name)
  if (log.athletes.some((other) => other !== athlete && alike(other.name, now))) return refuse(`“${now}” is on this device already.`)
  return withAthlete(log, name, { ...athlete, name: now })
}

/** Takes an athlete and all their sessions out. */
export const deleteAthlete = (log: Log, name: string): Log | Refused => (named(log, name) ? { ...log, athletes: log.athletes.filter((athlete) => athlete.name !== name) } : nobody(name))

/** Adds a session to an athlete. The same content twice is a slip of the finger, and is said. */
export function addSession(log: Log, name: string, typed: LoggedSession): Log | Refused {
  const athlete = named(log, name)
  const session = readSession(typed)
  if (isRefused(session)) return session
  if (!athlete) return nobody(name)
  if (sessionCount(log) >= LIMITS.sessions) return refuse(`A log holds at most ${LIMITS.sessions} sessions. Save it as a file, then delete an athlete.`)
  if (has(athlete, session)) return refuse('The very same session is in the log already. If it was a second one that day, say so in its note.')
  return withAthlete(log, name, { name, sessions: [...athlete.sessions, session] })
}

const has = ({ sessions }: LoggedAthlete, session: LoggedSession): boolean => sessions.some((other) => isSame(other, session))
const gone = refuse('That session is no longer in the log: it was changed or deleted elsewhere.')

/** Puts a session in the place of another, which is known by its content. */
export function editSession(log: Log, name: string, was: LoggedSession, typed: LoggedSession): Log | Refused {
  const athlete = named(log, name)
  const session = readSession(typed)
  if (isRefused(session)) return session
  if (!athlete) return nobody(name)
  if (!has(athlete, was)) return gone
  const others = athlete.sessions.filter((other) => !isSame(other, was))
  if (has({ name, sessions: others }, session)) return refuse('The very same session is in the log already.')
  return withAthlete(log, name, { name, sessions: athlete.sessions.map((other) => (isSame(other, was) ? session : other)) })
}

/** Takes one session out. */
export function removeSession(log: Log, name: string, was: LoggedSession): Log | Refused {
  const athlete = named(log, name)
  if (!athlete) return nobody(name)
  if (!has(athlete, was)) return gone
  return withAthlete(log, name, { name, sessions: athlete.sessions.filter((other) => !isSame(other, was)) })
}

/** Joins two logs: nothing of either is lost, and what both hold is kept once. */
export function mergeLogs(log: Log, other: Log): Log | Refused {
  const merged: Log = { ...log, athletes: joined([...log.athletes, ...other.athletes]) }
  if (merged.athletes.length > LIMITS.athletes) return refuse(`Together there would be ${merged.athletes.length} athletes; a log holds at most ${LIMITS.athletes}. Nothing was added.`)
  if (sessionCount(merged) > LIMITS.sessions) return refuse(`Together there would be ${sessionCount(merged)} sessions; a log holds at most ${LIMITS.sessions}. Nothing was added.`)
  return merged
}
