import { isMissing } from '../quantity/outcome.ts'
import { element } from './element.ts'
import { chiefVerdict, type Entry, type Ladder } from './log-decisions.ts'
import type { LoggedSession } from './log-record.ts'
import { amountsText, besidesText, decisionText } from './log-words.ts'
import { said } from './said.ts'

/** What can be done with a session in the list. */
export type Acts = { readonly change: ((entry: Entry) => void) | undefined; readonly remove: (session: LoggedSession, place: HTMLElement) => void }

/** A rung's title, and the name it was logged under where that was another. */
function rungText(ladder: Ladder | undefined, { session, rung }: Entry): string {
  const title = ladder?.rungs.find(({ id }) => id === rung)?.title ?? rung
  return session.rung === rung ? title : `${title} (logged as ${session.rung})`
}

function reasonText({ verdicts }: Entry): string {
  const decided = chiefVerdict(verdicts)?.decided
  if (!decided) return ''
  return isMissing(decided) ? said(`not decided: ${decided.missing}`) : `${said(decided.decision)}: ${said(decided.because)}`
}

function button(text: string, label: string, act: () => void): HTMLButtonElement {
  const made = element('button', '', text)
  made.type = 'button'
  made.setAttribute('aria-label', said(label))
  made.addEventListener('click', act)
  return made
}

/** One session in the list: what was done, what it ended in, and what can be done with it. */
export function historyItem(ladder: Ladder | undefined, entry: Entry, { change, remove }: Acts): HTMLLIElement {
  const { session } = entry
  const which = `the session of ${session.on}`
  const place = element('div', 'log-confirm')
  const buttons = element('p', 'log-buttons', ...(change ? [button('Change', `Change ${which}`, () => change(entry))] : []), button('Delete', `Delete ${which}`, () => remove(session, place)))
  return element(
    'li',
    '',
    element('p', 'log-done', element('time', '', session.on), ' ', element('strong', '', amountsText(session)), ` ${rungText(ladder, entry)}`),
    element('p', 'about', [reasonText(entry), besidesText(session)].filter(Boolean).join(' · ')),
    ...(session.note === undefined ? [] : [element('p', 'log-note', document.createTextNode(session.note))]),
    buttons,
    place,
  )
}

const COLUMNS = ['Day', 'Rung', 'Sets', 'Form lost', 'Pain', 'Next morning', 'Decision', 'Note']

function row(ladder: Ladder | undefined, entry: Entry): HTMLElement {
  const { session } = entry
  const { on, sets_out_of_form, pain_during, pain_next_morning, note } = session
  const head = element('th', '', on)
  head.scope = 'row'
  const cells = [rungText(ladder, entry), amountsText(session), `${sets_out_of_form} of ${session.amounts.length} sets`, `${pain_during} of 10`, pain_next_morning === undefined ? '–' : `${pain_next_morning} of 10`, entry.verdicts.length > 0 ? decisionText(entry.verdicts) : '–', note ?? '']
  return element('tr', '', head, ...cells.map((text) => element('td', '', text)))
}

/** The whole history as a table, for paper. */
export function historyTable(caption: string, ladder: Ladder | undefined, entries: readonly Entry[]): HTMLTableElement {
  const heads = COLUMNS.map((name) => Object.assign(element('th', '', name), { scope: 'col' }))
  return element('table', '', element('caption', '', caption), element('thead', '', element('tr', '', ...heads)), element('tbody', '', ...entries.map((entry) => row(ladder, entry))))
}
