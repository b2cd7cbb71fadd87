/** A whole log as it is kept on a device and as its file is written. Athletes stand in the order they were added. */
export type Log = { readonly log: 'my-ladders'; readonly version: 1; readonly athletes: readonly LoggedAthlete[] }

/** One named athlete and the sessions logged for them, in the order they were logged. */
export type LoggedAthlete = { readonly name: string; readonly sessions: readonly LoggedSession[] }

export type LogUnit = 'reps' | 'seconds' | 'metres'

/** One session on one rung. Amounts are one a set, in `unit`; pain is on a scale of 0 to 10. */
export type LoggedSession = {
  readonly ladder: string
  readonly rung: string
  /** The day, as 2026-10-03. */
  readonly on: string
  readonly unit: LogUnit
  readonly amounts: readonly number[]
  readonly sets_out_of_form: number
  readonly pain_during: number
  /** Pain next morning, where it is known, and what it is like on other mornings. */
  readonly pain_next_morning?: number
  readonly pain_usual?: number
  readonly note?: string
  /** The edition of the handbook the session was done by. */
  readonly edition: string
}

/** Why something was not taken: sentences a reader can act on. */
export type Refused = { readonly refused: readonly string[] }

/** True where something was refused. */
export const isRefused = (value: object): value is Refused => 'refused' in value

/** How much a log may hold. Chosen by us: a club's years, within what a browser keeps for one site. */
export const LIMITS = { athletes: 50, sessions: 20_000, name_letters: 60, note_letters: 300, sets: 30, file_bytes: 20_000_000, said: 20 } as const

/** The most of each unit in one set. Chosen by us, far above any ladder's standard. */
export const MOST: Readonly<Record<LogUnit, number>> = { reps: 1000, seconds: 7200, metres: 50_000 }

/** A log of nobody. */
export const EMPTY: Log = { log: 'my-ladders', version: 1, athletes: [] }

/** Letters that cannot be seen, write backwards or are half of one: they make two names look alike. */
const HIDDEN = /[\p{Cc}\p{Cs}\u00ad\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]/u

const ID = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/
const DAY = /^20(\d\d)-(\d\d)-(\d\d)$/

const isText = (value: unknown, most: number): value is string => typeof value === 'string' && value.length > 0 && (value.length <= most || (value.length <= most * 2 && [...value].length <= most)) && !HIDDEN.test(value)
const isId = (value: unknown): boolean => typeof value === 'string' && value.length <= 60 && ID.test(value)
const isPain = (value: unknown): boolean => Number.isInteger(value) && Number(value) >= 0 && Number(value) <= 10

/** Days of a month; of these hundred years every fourth has a day more. */
const daysIn = (year: number, month: number): number => (month === 2 ? (year % 4 === 0 ? 29 : 28) : 30 + ((month + (month >> 3)) % 2))

function isDay(value: unknown): boolean {
  const found = typeof value === 'string' && value.length === 10 ? DAY.exec(value) : null
  if (!found) return false
  const [year, month, day] = [Number(found[1]), Number(found[2]), Number(found[3])]
  return month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month)
}

const amountsFit = (value: unknown): boolean => Array.isArray(value) && value.length > 0 && value.length <= LIMITS.sets && value.every((amount) => Number.isFinite(amount) && amount >= 0)

/** What a session may hold: the one description of the record. */
export const SESSION_KEYS: Readonly<Record<keyof LoggedSession, { readonly says: string; readonly fits: (value: unknown) => boolean; readonly optional?: true }>> = {
  ladder: { says: 'must be a short name such as press-up', fits: isId },
  rung: { says: 'must be a short name such as bench-hands', fits: isId },
  on: { says: 'must be a day from 2000 to 2099, such as 2026-10-03', fits: isDay },
  unit: { says: 'must be reps, seconds or metres', fits: (value) => value === 'reps' || value === 'seconds' || value === 'metres' },
  amounts: { says: `must be a list of 1 to ${LIMITS.sets} numbers, one a set`, fits: amountsFit },
  sets_out_of_form: { says: 'must be a whole number of sets', fits: (value) => Number.isInteger(value) && Number(value) >= 0 },
  pain_during: { says: 'must be a whole number from 0 to 10', fits: isPain },
  pain_next_morning: { says: 'must be a whole number from 0 to 10', fits: isPain, optional: true },
  pain_usual: { says: 'must be a whole number from 0 to 10', fits: isPain, optional: true },
  note: { says: `must be words on one line, at most ${LIMITS.note_letters} letters, none of them hidden`, fits: (value) => isText(value, LIMITS.note_letters), optional: true },
  edition: { says: 'must be an edition such as 2026.2', fits: (value) => typeof value === 'string' && /^[0-9A-Za-z][0-9A-Za-z.-]{0,30}$/.test(value) },
}

const EACH_KEY = Object.entries(SESSION_KEYS)

/** What came out of JSON as keys and values. */
export type Keyed = Readonly<Record<string, unknown>>
/** True for keys and values, and not for a list. */
export const isKeyed = (value: unknown): value is Keyed => typeof value === 'object' && value !== null && !Array.isArray(value)
/** What a key holds by itself; nothing is inherited. */
export const own = (record: Keyed, key: string): unknown => (Object.hasOwn(record, key) ? record[key] : undefined)

/** A key of a file as it may be said: short, with nothing hidden. */
const shown = (key: string): string => `"${key.replace(new RegExp(HIDDEN, 'gu'), '').slice(0, 40)}"`

const unknownKeys = (record: Keyed): string[] => Object.keys(record).flatMap((key) => (Object.hasOwn(SESSION_KEYS, key) ? [] : [`${shown(key)} is no key of this record`]))

/** A name as it is kept: composed letters, single spaces, none at the ends. */
export const tidyName = (name: string): string => name.normalize('NFC').replace(/\s+/gu, ' ').trim()

/** Why a name may not be kept, or undefined. */
export function nameTrouble(name: string): string | undefined {
  if (name === '') return 'Give a name.'
  return isText(name, LIMITS.name_letters) ? undefined : `A name has at most ${LIMITS.name_letters} letters, none of them hidden.`
}

/** The session in its one order of keys, so that two of the same content are the same text. */
function ordered(session: LoggedSession): LoggedSession {
  const { ladder, rung, on, unit, amounts, sets_out_of_form, pain_during, pain_next_morning, pain_usual, note, edition } = session
  return {
    ladder,
    rung,
    on,
    unit,
    amounts: amounts.map((amount) => amount + 0),
    sets_out_of_form: sets_out_of_form + 0,
    pain_during: pain_during + 0,
    ...(pain_next_morning === undefined ? {} : { pain_next_morning: pain_next_morning + 0 }),
    ...(pain_usual === undefined ? {} : { pain_usual: pain_usual + 0 }),
    ...(note === undefined ? {} : { note }),
    edition,
  }
}

/** Holds where every key has a value that fits; what keys may not say to each other is seen to after it. */
const keysFit = (record: Keyed): record is Keyed & LoggedSession =>
  EACH_KEY.every(([key, { fits, optional }]) => {
    const value = own(record, key)
    return (optional && value === undefined) || fits(value)
  })

/** What one key may hold only beside another. */
function together({ unit, amounts, sets_out_of_form }: LoggedSession): string[] {
  const most = MOST[unit]
  return [
    ...(amounts.some((amount) => amount > most) ? [`amounts must be at most ${most} ${unit} a set`] : []),
    ...(unit === 'reps' && !amounts.every(Number.isInteger) ? ['amounts must be whole numbers where the unit is reps'] : []),
    ...(sets_out_of_form > amounts.length ? [`sets_out_of_form is ${sets_out_of_form}, and there were ${amounts.length} sets`] : []),
  ]
}

/** Reads one session of a record or a form, or says everything that is wrong with it. */
export function readSession(value: unknown): LoggedSession | Refused {
  if (!isKeyed(value)) return { refused: ['a session must be a record of keys and values'] }
  const unknown = unknownKeys(value)
  if (keysFit(value)) {
    const wrong = [...unknown, ...together(value)]
    return wrong.length === 0 ? ordered(value) : { refused: wrong }
  }
  const wrong = EACH_KEY.flatMap(([key, { says, fits, optional }]) => ((optional && own(value, key) === undefined) || fits(own(value, key)) ? [] : [`${key} ${says}`]))
  return { refused: [...unknown, ...wrong] }
}

/** A session's content, by which two are the same. */
export const contentOf = (session: LoggedSession): string => JSON.stringify(ordered(session))

/** True of two sessions of the same content. */
export const isSame = (one: LoggedSession, other: LoggedSession): boolean => one.on === other.on && one.rung === other.rung && contentOf(one) === contentOf(other)

/** Sessions in their order, each content once. Contents are written out only where two sessions share day and rung. */
export function eachOnce(sessions: readonly LoggedSession[]): LoggedSession[] {
  const first = new Map<string, LoggedSession>()
  const contents = new Map<string, Set<string>>()
  return sessions.filter((session) => {
    const key = session.on + session.rung
    const before = first.get(key)
    if (!before) return first.set(key, session)
    const there = contents.get(key) ?? new Set([contentOf(before)])
    contents.set(key, there)
    return there.size < there.add(contentOf(session)).size
  })
}

/** Athletes in their order, each name once with all its sessions. */
export function joined(athletes: readonly LoggedAthlete[]): LoggedAthlete[] {
  const byName = new Map<string, readonly LoggedSession[]>()
  for (const { name, sessions } of athletes) byName.set(name, [...(byName.get(name) ?? []), ...sessions])
  return [...byName].map(([name, sessions]) => ({ name, sessions: eachOnce(sessions) }))
}

/** How many sessions a log holds. */
export const sessionCount = ({ athletes }: Pick<Log, 'athletes'>): number => athletes.reduce((sum, { sessions }) => sum + sessions.length, 0)
