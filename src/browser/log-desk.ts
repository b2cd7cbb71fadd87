import type { Change } from './log-changes.ts'
import { isRefused, type LoggedAthlete } from './log-record.ts'
import type { LogStore, Shown } from './log-store.ts'
import { breath } from './paced.ts'
import { said } from './said.ts'

/** What every part of the page works at: its fields, the log as it is shown, and one way to change it. */
export type Desk = {
  readonly find: <Kind extends HTMLElement>(id: string) => Kind
  readonly today: () => string
  readonly shown: () => Shown
  /** The athlete that is chosen, if there is any. */
  readonly athlete: () => LoggedAthlete | undefined
  readonly choose: (name: string | undefined) => void
  /** Makes a change, shows the log after it, and says under `says` why it was refused. True where it was made. */
  readonly change: (make: Change, says: string) => Promise<boolean>
  /** Reads the log again and shows it. */
  readonly refresh: () => Promise<void>
  readonly store: LogStore
}

/** A field of the page by its id. The page and its script are made together, so it is there. */
export function finder(page: Document): Desk['find'] {
  return <Kind extends HTMLElement>(id: string): Kind => {
    const found = page.getElementById(id)
    if (!found) throw new Error(`bug: there is no ${id} on this page`)
    return found as Kind
  }
}

/** The desk over a store. `show` draws the page again. */
export function deskOf(page: Document, store: LogStore, today: () => string, first: Shown, show: (desk: Desk) => void): Desk {
  const find = finder(page)
  let shown = first
  let chosen: string | undefined = latest(first)
  const athlete = (): LoggedAthlete | undefined => shown.log.athletes.find(({ name }) => name === chosen) ?? shown.log.athletes[0]
  const desk: Desk = {
    find,
    today,
    store,
    shown: () => shown,
    athlete,
    choose(name) {
      chosen = name
      show(desk)
    },
    async change(make, says) {
      const outcome = await store.change(make)
      find(says).textContent = said(isRefused(outcome) ? outcome.refused.map((reason) => (reason.endsWith('.') ? reason : `${reason}.`)).join(' ') : '')
      if (isRefused(outcome)) return false
      shown = outcome
      await breath()
      show(desk)
      return true
    },
    async refresh() {
      shown = await store.read()
      show(desk)
    },
  }
  return desk
}

/** The athlete who was logged for last, so that most days nobody need be chosen. */
function latest({ log: { athletes } }: Shown): string | undefined {
  const last = (sessions: LoggedAthlete['sessions']): string => sessions.reduce((day, { on }) => (on > day ? on : day), '')
  return athletes.toSorted((a, b) => (last(a.sessions) < last(b.sessions) ? 1 : -1))[0]?.name
}
