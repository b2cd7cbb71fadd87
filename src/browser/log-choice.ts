import { isMissing } from '../quantity/outcome.ts'
import type { LadderData } from '../page/data.ts'
import { ladderDataAt } from './ladder-data.ts'
import { byDay, heirOf, heirsOn } from './log-decisions.ts'
import type { Desk } from './log-desk.ts'
import type { LoggedSession } from './log-record.ts'
import { said } from './said.ts'

/** The ladder and rung that are chosen. `ladder` is its data; undefined while it is on its way, and where the handbook has none. */
export type Choice = {
  readonly id: () => string
  readonly ladder: () => LadderData | undefined
  readonly rung: () => string
  /** Chooses a ladder, and on it a rung: the one given, else the one logged last. */
  readonly open: (id: string, rung?: string) => Promise<void>
  /** The latest session of the chosen athlete on the chosen rung. */
  readonly last: () => LoggedSession | undefined
  /** After another athlete was chosen: stays on a ladder they have been on, or with somebody new; else goes to the one they were on last. */
  readonly follow: () => Promise<void>
}

/** The two choices of the form. `opened` is told when another ladder is there. */
export function ladderChoice({ find, athlete }: Desk, root: string, opened: () => Promise<void>): Choice {
  const [ladders, rungs] = [find<HTMLSelectElement>('log-ladder'), find<HTMLSelectElement>('log-rung')]
  const known = new Set([...ladders.options].map(({ value }) => value))
  const sessions = (): LoggedSession[] => byDay(athlete()?.sessions ?? [])
  let id = ''
  let ladder: LadderData | undefined

  const says = (text: string): void => void (find('log-form-says').textContent = said(text))
  const on = (data: LadderData): LoggedSession[] => sessions().filter((session) => session.ladder === data.id)

  function fill(data: LadderData, wanted: string | undefined): void {
    const heir = wanted === undefined ? undefined : heirOf(data, wanted)
    const there = data.rungs.find((rung) => rung.id === heir) ?? data.rungs[0]
    rungs.replaceChildren(...data.rungs.map(({ id: value, title }) => new Option(value === data.aim ? said(`${title} (the aim)`) : title, value)))
    rungs.value = there?.id ?? ''
  }

  async function open(wanted: string, rung?: string): Promise<void> {
    offer(ladders, known, sessions())
    ladders.value = wanted
    id = wanted
    ladder = undefined
    const data = known.has(wanted) ? await ladderDataAt(`${root}data/ladders/${wanted}.json`) : undefined
    if (id !== wanted) return
    ladder = data === undefined || isMissing(data) ? undefined : data
    says(data === undefined ? 'This ladder is not in this handbook. Its sessions are kept; none can be added.' : isMissing(data) ? `Not shown: ${data.missing}.` : '')
    find('log-fields').hidden = !ladder
    if (ladder) fill(ladder, rung ?? on(ladder).at(-1)?.rung)
    await opened()
  }

  return {
    id: () => id,
    ladder: () => ladder,
    rung: () => rungs.value,
    open,
    last: () => (ladder ? lastOn(ladder, on(ladder), rungs.value) : undefined),
    follow() {
      const been = sessions()
      if (been.length === 0 && known.has(id)) return open(id, rungs.value)
      return open(been.some((session) => session.ladder === id) ? id : (been.at(-1)?.ladder ?? ladders.options[0]?.value ?? ''))
    },
  }
}

function lastOn(ladder: LadderData, sessions: readonly LoggedSession[], rung: string): LoggedSession | undefined {
  const heir = heirsOn(ladder)
  return sessions.findLast((session) => heir(session.rung) === rung)
}

/** Offers beside the handbook's ladders those an athlete was logged on elsewhere. */
function offer(ladders: HTMLSelectElement, known: ReadonlySet<string>, sessions: readonly LoggedSession[]): void {
  ladders.querySelector('[data-elsewhere]')?.remove()
  const elsewhere = [...new Set(sessions.map(({ ladder }) => ladder))].filter((ladder) => !known.has(ladder))
  if (elsewhere.length === 0) return
  const group = document.createElement('optgroup')
  group.label = said('Not in this handbook')
  group.dataset.elsewhere = ''
  group.append(...elsewhere.map((ladder) => new Option(ladder, ladder)))
  ladders.append(group)
}
