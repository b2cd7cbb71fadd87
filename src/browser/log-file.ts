import { atOnce, type Work } from '../quantity/work.ts'
import { isKeyed, isRefused, joined, LIMITS, nameTrouble, own, readSession, tidyName, type Log, type LoggedAthlete, type LoggedSession, type Refused } from './log-record.ts'

/** The version this page writes and reads. It rises when a reader would have to change. */
export const VERSION = 1

/** True for a record of a later version: a newer edition's page can read it, and nobody may write over it. */
export const isNewer = (value: unknown): boolean => isKeyed(value) && own(value, 'log') === 'my-ladders' && Number.isInteger(own(value, 'version')) && Number(own(value, 'version')) > VERSION

/** Why a file of this size is not even opened, or undefined. Units bytes. */
export const sizeTrouble = (bytes: number): string | undefined =>
  bytes > LIMITS.file_bytes ? `The file has ${(bytes / 1e6).toFixed(0)} MB; a log has at most ${(LIMITS.file_bytes / 1e6).toFixed(0)} MB. It was not opened.` : undefined

/**
 * Reads a whole log out of any value, or says what is wrong with it, every place up to a number that can be read.
 *
 * Shape   what came out of a file or a store to a log, each athlete and each session once; never half of one.
 */
export const readLog = (value: unknown): Log | Refused => atOnce(logReading(value))

/** The same, which can be left off after each session. */
export function* logReading(value: unknown): Work<Log | Refused> {
  if (!isKeyed(value) || own(value, 'log') !== 'my-ladders') return { refused: ['This is no log of this page: it does not begin with "log": "my-ladders".'] }
  if (isNewer(value)) return { refused: [`The log is of version ${String(own(value, 'version'))}; this page reads version ${VERSION}. Open it with the edition that wrote it.`] }
  if (own(value, 'version') !== VERSION) return { refused: [`The log must say "version": ${VERSION}.`] }
  const extra = Object.keys(value).filter((key) => !['log', 'version', 'athletes'].includes(key)).length
  const athletes = own(value, 'athletes')
  if (extra > 0) return { refused: ['The log holds keys besides log, version and athletes.'] }
  if (!Array.isArray(athletes)) return { refused: ['athletes must be a list.'] }
  if (athletes.length > LIMITS.athletes) return { refused: [`There are ${athletes.length} athletes; a log holds at most ${LIMITS.athletes}.`] }
  return yield* readAthletes(athletes)
}

function* readAthletes(athletes: readonly unknown[]): Work<Log | Refused> {
  const lists = athletes.map((athlete) => (isKeyed(athlete) ? own(athlete, 'sessions') : undefined))
  const count = lists.reduce((sum: number, list) => sum + (Array.isArray(list) ? list.length : 0), 0)
  if (count > LIMITS.sessions) return { refused: [`There are ${count} sessions; a log holds at most ${LIMITS.sessions}.`] }
  const wrong: string[] = []
  const read: LoggedAthlete[] = []
  for (const [index, athlete] of athletes.entries()) read.push(yield* readAthlete(athlete, `Athlete ${index + 1}`, wrong))
  if (wrong.length === 0) return { log: 'my-ladders', version: VERSION, athletes: joined(read) }
  const more = wrong.length - LIMITS.said
  return { refused: [...wrong.slice(0, LIMITS.said), ...(more > 0 ? [`And ${more} more.`] : [])] }
}

/** Reads one athlete, and adds to `wrong` whatever is. */
function* readAthlete(value: unknown, where: string, wrong: string[]): Work<LoggedAthlete> {
  const name = isKeyed(value) ? own(value, 'name') : undefined
  const sessions = isKeyed(value) ? own(value, 'sessions') : undefined
  const tidy = typeof name === 'string' ? tidyName(name.slice(0, 1000)) : ''
  const trouble = nameTrouble(tidy)
  if (!isKeyed(value) || Object.keys(value).some((key) => key !== 'name' && key !== 'sessions')) wrong.push(`${where}: must hold name and sessions, and nothing else.`)
  else if (trouble) wrong.push(`${where}: ${trouble}`)
  else if (!Array.isArray(sessions)) wrong.push(`${where}: sessions must be a list.`)
  return { name: tidy, sessions: Array.isArray(sessions) ? yield* readSessions(sessions, where, wrong) : [] }
}

function* readSessions(sessions: readonly unknown[], where: string, wrong: string[]): Work<LoggedSession[]> {
  const read: LoggedSession[] = []
  for (const [index, value] of sessions.entries()) {
    const session = readSession(value)
    if (isRefused(session)) wrong.push(...session.refused.map((reason) => `${where}, session ${index + 1}: ${reason}.`))
    else read.push(session)
    yield
  }
  return read
}

/** A log as its file is written: one line a session, so that two files can be laid side by side. */
export function logText({ log, version, athletes }: Log): string {
  const each = athletes.map(({ name, sessions }) => `  {"name": ${JSON.stringify(name)}, "sessions": [${sessions.map((session) => `\n    ${JSON.stringify(session)}`).join(',')}\n  ]}`)
  return `{"log": ${JSON.stringify(log)}, "version": ${version}, "athletes": [\n${each.join(',\n')}\n]}\n`
}

/** Only one athlete's part of a log. */
export const onlyOf = (log: Log, name: string): Log => ({ ...log, athletes: log.athletes.filter((athlete) => athlete.name === name) })
