import { addSession, editSession } from './log-changes.ts'
import { ladderChoice, type Choice } from './log-choice.ts'
import type { Entry } from './log-decisions.ts'
import { deskOf, finder, type Desk } from './log-desk.ts'
import { logForm, type LogForm } from './log-form.ts'
import { LISTED, MORE, pastShower, showTable, type Past } from './log-past.ts'
import { showPeople, startPeople } from './log-people.ts'
import { isRefused, readSession, type LoggedSession } from './log-record.ts'
import { LOG, logStore, type Alone } from './log-store.ts'
import { showTrouble, startTransfer } from './log-transfer.ts'
import { atOnce } from '../quantity/work.ts'
import { breath, paced } from './paced.ts'
import { said } from './said.ts'
import './more-words.ts'

/** Over all tabs where the browser can lock; else one after the other in this one. */
const alone: Alone = (work) => ('locks' in navigator ? navigator.locks.request(LOG, work) : work())

/** How long the log waits for its ladder before it shows itself without. Chosen by us. Units ms. */
const PATIENCE_ms = 1500

/** What stands on the page besides the log itself. */
type Standing = { readonly editing?: LoggedSession; readonly decided?: LoggedSession; readonly listed: number }

/** Runs the log. `today` is the day by the reader's own clock. */
export async function startMyLadders(root: HTMLElement, today: () => string): Promise<void> {
  const store = logStore(alone)
  const find = finder(document)
  const place = root.dataset.root ?? '../'
  let standing: Standing = { listed: LISTED }
  let whose: string | undefined

  const pastOf = (): Past => ({ id: choice.id(), ladder: choice.ladder(), rung: choice.rung(), decided: standing.decided, listed: standing.listed, root: place })
  const past = (): void => void atOnce(showPast(pastOf()))

  function show(at: Desk): void {
    showPeople(at)
    showTrouble(at)
    const name = at.athlete()?.name
    if (name === whose) return past()
    whose = name
    void choice.follow()
  }

  function more(): void {
    standing = { ...standing, listed: standing.listed + MORE }
    past()
  }

  function blank(): void {
    const { editing: _, ...left } = standing
    standing = left
    showEditing(find, undefined)
    const ladder = choice.ladder()
    if (ladder) form.fresh(ladder, choice.rung(), choice.last())
  }

  function fresh(): void {
    blank()
    past()
  }

  function edit({ session, rung }: Entry): void {
    const ladder = choice.ladder()
    if (!ladder) return
    find<HTMLSelectElement>('log-rung').value = rung
    standing = { ...standing, editing: session }
    form.load(ladder, rung, session)
    showEditing(find, session)
    find('log-a-session').focus()
  }

  async function save(): Promise<void> {
    const name = desk.athlete()?.name ?? ''
    const session = readSession(form.typed(choice.id(), root.dataset.edition ?? ''))
    if (isRefused(session)) return void (find('log-form-says').textContent = said(`Not taken: ${session.refused.join('; ')}.`))
    const before = standing
    const { editing, listed } = before
    standing = { decided: session, listed }
    if (!(await desk.change((log) => (editing ? editSession(log, name, editing, session) : addSession(log, name, session)), 'log-form-says'))) return void (standing = before)
    await breath()
    blank()
    find('log-decision').focus()
  }

  const kept = await store.read()
  await breath()
  const desk = deskOf(document, store, today, kept, show)
  const showPast = pastShower(desk, { change: edit, more })
  const form: LogForm = logForm(find, today)
  const choice: Choice = ladderChoice(desk, place, async () => {
    standing = { listed: LISTED }
    blank()
    await paced(showPast(pastOf()))
  })
  startPeople(desk)
  startTransfer(desk)
  wire(desk, choice, { save, fresh, past, isEditing: () => standing.editing !== undefined, table: () => showTable(desk, pastOf()) })
  find('log-says').textContent = ''
  whose = desk.athlete()?.name
  showPeople(desk)
  showTrouble(desk)
  await Promise.race([openAsked(choice, find<HTMLSelectElement>('log-ladder')), new Promise((resolve) => setTimeout(resolve, PATIENCE_ms))])
  root.hidden = false
}

/** Opens the ladder and rung the address asks for, where the handbook has them; else the one that was logged last. */
function openAsked(choice: Choice, ladders: HTMLSelectElement): Promise<void> {
  const asked = new URLSearchParams(window.location.search)
  const ladder = asked.get('ladder')
  if (ladder !== null && [...ladders.options].some(({ value }) => value === ladder)) return choice.open(ladder, asked.get('rung') ?? undefined)
  return choice.follow()
}

/** Says whether a new session is logged or an old one changed. */
function showEditing(find: Desk['find'], session: LoggedSession | undefined): void {
  find('log-leave').hidden = !session
  find('log-save').textContent = said(session ? 'Save the change' : 'Save the session')
  find('log-a-session').textContent = said(session ? `Change the session of ${session.on}` : 'Log a session')
}

type Doing = { readonly save: () => Promise<void>; readonly fresh: () => void; readonly past: () => void; readonly isEditing: () => boolean; readonly table: () => void }

function wire({ find, refresh, shown }: Desk, choice: Choice, { save, fresh, past, isEditing, table }: Doing): void {
  const ladders = find<HTMLSelectElement>('log-ladder')
  ladders.addEventListener('change', () => void choice.open(ladders.value))
  find('log-rung').addEventListener('change', () => (isEditing() ? past() : fresh()))
  find('log-leave').addEventListener('click', () => {
    fresh()
    find('log-a-session').focus()
  })
  find('log-form').addEventListener('submit', (event) => {
    event.preventDefault()
    void save()
  })
  window.addEventListener('storage', ({ key }) => (key === null || key === LOG) && void refresh())
  window.addEventListener('beforeunload', (event) => shown().unsaved && event.preventDefault())
  window.addEventListener('beforeprint', table)
  window.addEventListener('afterprint', () => find('log-table').replaceChildren())
}
