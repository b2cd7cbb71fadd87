import { isMissing, missing, type Missing } from '../quantity/outcome.ts'
import { forget, keep, keepText, kept, readKept } from './keep.ts'
import type { Change } from './log-changes.ts'
import { isNewer, logReading } from './log-file.ts'
import { EMPTY, isRefused, type Log, type Refused } from './log-record.ts'
import { breath, paced } from './paced.ts'

/** The name the log is kept under. */
export const LOG = 'rungbook:log'
/** How many unreadable logs are kept aside. Chosen by us. */
const ASIDE = 9
const ASIDE_NAMES = Array.from({ length: ASIDE }, (_, index) => `${LOG}-aside-${index + 1}`)

/** The log as it is shown: what is kept and, over it, what could not be kept yet. */
export type Shown = {
  readonly log: Log
  /** True while something on the screen is not kept on the device. */
  readonly unsaved: boolean
  /** What a reader must know of the storage, where there is something. */
  readonly trouble: string | undefined
  /** Names of unreadable logs kept aside. */
  readonly aside: readonly string[]
}

/** The log on this device. */
export type LogStore = {
  read(): Promise<Shown>
  /** Makes a change on what is kept at that moment, and keeps it; or hands back why the change was refused. */
  change(make: Change): Promise<Shown | Refused>
  /** Takes away a log that was kept aside. */
  forgetAside(name: string): Promise<Shown>
}

/** One piece of work at a time, over all tabs where the browser can. */
export type Alone = <Answer>(work: () => Promise<Answer>) => Promise<Answer>

/** What is kept, and the letters it was read from where it could be read. */
type Base = { readonly log: Log; readonly text?: string; readonly trouble?: string; readonly blocked: boolean }


/** A store: every write reads first, so that two tabs add to one log; what cannot be kept waits on the screen. */
export function logStore(alone: Alone): LogStore {
  let waiting: readonly Change[] = []
  let known: Base = { log: EMPTY, blocked: false }
  /** What is kept now. While its letters are those that were read or written last, they are not read again; reading takes its time, so it looks once more after it. */
  async function base(): Promise<Base> {
    for (;;) {
      const text = await keptText()
      if (text !== undefined && text === known.text) return known
      const read = await stored(text)
      if (read.text === undefined) return read
      known = read
    }
  }
  const shown = ({ log, trouble }: Base): Shown => ({ log: replayed(log, waiting), unsaved: waiting.length > 0, trouble, aside: ASIDE_NAMES.filter((name) => asideText(name) !== '') })

  function change(before: Base, make: Change): Shown | Refused {
    const next = make(replayed(before.log, waiting))
    if (isRefused(next)) return next
    const text = JSON.stringify(next)
    const outcome = before.blocked ? missing('') : keepText(LOG, text)
    waiting = isMissing(outcome) ? [...waiting, make] : []
    if (!isMissing(outcome)) return shown((known = { log: next, text, blocked: false }))
    return shown(before.blocked ? before : { ...before, trouble: `Not kept on this device: ${outcome.missing}.` })
  }

  return {
    read: () => alone(async () => shown(await base())),
    change: (make) => alone(async () => change(await base(), make)),
    forgetAside: (name) =>
      alone(async () => {
        if (ASIDE_NAMES.includes(name)) forget(name)
        return shown(await base())
      }),
  }
}

/** A log with changes made over it; one that no longer applies is left out. */
function replayed(log: Log, changes: readonly Change[]): Log {
  return changes.reduce((before, change) => {
    const after = change(before)
    return isRefused(after) ? before : after
  }, log)
}

/** The letters that are kept, whatever they are. Asking alone may already fail where storage is turned off; a promise takes that. */
const keptText = (): Promise<string | undefined | Missing> => Promise.resolve().then(() => window.localStorage.getItem(LOG) ?? undefined).then((text) => text, () => missing('this browser keeps nothing for this handbook'))

/** An unreadable log as it was found. */
export function asideText(name: string): string {
  const found = kept(name)
  return isMissing(found) || typeof found.value !== 'string' ? '' : found.value
}

/** Reads what is kept. What cannot be read is set aside first; what a newer edition wrote is left alone. */
async function stored(text: string | undefined | Missing): Promise<Base> {
  if (isMissing(text)) return { log: EMPTY, blocked: true, trouble: `Nothing can be kept on this device: ${text.missing}.` }
  if (text === undefined) return { log: EMPTY, blocked: false }
  await breath() // of a long log, fetching and reading the letters are a task each
  const found = readKept(text)
  const log = isMissing(found) ? undefined : await paced(logReading(found.value))
  if (log && !isRefused(log)) return { log, text, blocked: false }
  if (!isMissing(found) && isNewer(found.value)) return { log: EMPTY, blocked: true, trouble: 'The log on this device was written by a newer edition of the handbook. It is left as it is: open it there.' }
  const outcome = setAside(text)
  return isMissing(outcome) ? { log: EMPTY, blocked: true, trouble: `The log on this device cannot be read, and could not be set aside: ${outcome.missing}. It is left as it is.` } : { log: EMPTY, blocked: false }
}

/** Copies an unreadable log to the first free name, and only then takes it from where the log belongs. */
function setAside(text: string): Missing | undefined {
  const free = ASIDE_NAMES.find((name) => {
    const found = kept(name)
    return !isMissing(found) && found.value === undefined
  })
  if (free === undefined) return missing(`${ASIDE} unreadable logs are kept aside already`)
  const copied = keep(free, text)
  if (isMissing(copied)) return copied
  if (asideText(free) !== text) return missing('the copy was not the same')
  const gone = forget(LOG)
  return isMissing(gone) ? gone : undefined
}
