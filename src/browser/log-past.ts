import type { Work } from '../quantity/work.ts'
import { removeSession } from './log-changes.ts'
import { chart } from './log-chart.ts'
import { confirmIn } from './log-confirm.ts'
import { decidedNodes } from './log-decided.ts'
import { byDay, historyOf, waysOn, type Entry, type Ladder } from './log-decisions.ts'
import type { Desk } from './log-desk.ts'
import { element } from './element.ts'
import { historyItem, historyTable } from './log-history.ts'
import { isSame, type LoggedSession } from './log-record.ts'
import { counted } from './log-words.ts'

/** Sessions listed at first, and more at each asking. Chosen by us: two screens of a phone, then four. */
export const LISTED = 8
export const MORE = 16
/** Sessions on paper. Chosen by us: about thirty pages. */
const PRINTED = 1000

/** Which history is shown: of a ladder, known or not, and the session whose decision stands above it. */
export type Past = { readonly id: string; readonly ladder: Ladder | undefined; readonly rung: string; readonly decided: LoggedSession | undefined; readonly listed: number; readonly root: string }

/** What can be asked of the history. */
export type PastActs = { readonly change: (entry: Entry) => void; readonly more: () => void }

/** The sessions of one ladder with their decisions; of one that is not in this handbook, as they were logged. */
function entriesOf({ id, ladder }: Pick<Past, 'id' | 'ladder'>, sessions: readonly LoggedSession[]): Entry[] {
  if (ladder) return historyOf(ladder, sessions)
  return byDay(sessions.filter((session) => session.ladder === id)).map((session) => ({ session, rung: session.rung, verdicts: [] }))
}

/** What is on the page: each part is drawn again only when what it shows is another. */
type Drawn = { readonly past: Past; readonly sessions: readonly LoggedSession[]; readonly entries: readonly Entry[] }

const NOBODY: readonly LoggedSession[] = []

/** Shows the decision, the chart and the list of the chosen ladder, one after the other; shown anew meanwhile, it leaves off. */
export function pastShower(desk: Desk, acts: PastActs): (past: Past) => Work<void> {
  let drawn: Drawn | undefined
  return function* (past) {
    const before = drawn
    const sessions = desk.athlete()?.sessions ?? NOBODY
    const same = before && before.sessions === sessions && before.past.ladder === past.ladder && before.past.id === past.id
    const entries = same ? before.entries : entriesOf(past, sessions)
    const now = (drawn = { past, sessions, entries })
    const parts = [
      ...(!same || before.past.decided !== past.decided ? [() => showDecided(desk, past, entries)] : []),
      ...(!same || before.past.rung !== past.rung ? [() => showChart(desk, past, entries)] : []),
      ...(!same || before.past.listed !== past.listed ? [() => showList(desk, past, entries, acts)] : []),
    ]
    for (const part of parts) {
      if (drawn !== now) return
      part()
      yield
    }
  }
}

function showDecided({ find }: Desk, { ladder, decided: asked, root }: Past, entries: readonly Entry[]): void {
  const decided = entries.findLast(({ session }) => asked && isSame(session, asked)) ?? entries.at(-1)
  find('log-decided').hidden = !ladder || !decided
  find('log-decided').replaceChildren(...(ladder && decided ? decidedNodes(ladder, decided, root) : []))
}

function showList(desk: Desk, past: Past, entries: readonly Entry[], acts: PastActs): void {
  const { find, athlete } = desk
  find('log-past').hidden = entries.length === 0
  const remove = (session: LoggedSession, place: HTMLElement): void =>
    confirmIn(place, { asks: `Delete the session of ${session.on}?`, yes: 'Delete', no: 'Keep' }, () => void desk.change((log) => removeSession(log, athlete()?.name ?? '', session), 'log-past-says').then(() => find('log-history').focus()))
  const listed = entries.slice(-past.listed)
  find('log-list').replaceChildren(...listed.toReversed().map((entry) => historyItem(past.ladder, entry, { change: past.ladder ? acts.change : undefined, remove })))
  const older = element('button', '', `Show older ones: ${counted(entries.length - listed.length, 'session')}`)
  older.type = 'button'
  older.addEventListener('click', acts.more)
  find('log-older').replaceChildren(...(listed.length === entries.length ? [] : [older]))
}

function showChart({ find }: Desk, { ladder, rung }: Past, entries: readonly Entry[]): void {
  const way = ladder ? waysOn(ladder, rung)[0] : undefined
  const unit = way?.entry.amount?.unit
  const sessions = entries.filter((entry) => entry.rung === rung && entry.session.unit === unit).map(({ session }) => session)
  if (!ladder || !unit || sessions.length === 0) return find('log-chart').replaceChildren()
  const title = ladder.rungs.find(({ id }) => id === rung)?.title ?? rung
  const open = sessions.some(({ sets_out_of_form }) => sets_out_of_form > 0)
  const caption = element('figcaption', 'about', `Best set on “${title}”, session by session${open ? '; a hollow mark where form was lost' : ''}`)
  find('log-chart').replaceChildren(element('figure', 'log-figure', caption, chart({ rung: title, unit, sessions, asks: way?.entry.amount?.value })))
}

/** Puts the whole history on paper as a table, and takes it away after. */
export function showTable({ find, athlete }: Desk, past: Past): void {
  const entries = entriesOf(past, athlete()?.sessions ?? [])
  const printed = entries.slice(-PRINTED)
  const caption = `${athlete()?.name ?? ''}, ${past.ladder?.title ?? past.id}: ${printed.length < entries.length ? `the latest ${PRINTED} of ` : ''}${counted(entries.length, 'session')}`
  find('log-table').replaceChildren(historyTable(caption, past.ladder, printed))
}
