import { mergeLogs } from './log-changes.ts'
import { confirmIn } from './log-confirm.ts'
import type { Desk } from './log-desk.ts'
import { element } from './element.ts'
import { logText, onlyOf, readLog, sizeTrouble } from './log-file.ts'
import { isRefused, sessionCount, type Log, type Refused } from './log-record.ts'
import { asideText } from './log-store.ts'
import { counted } from './log-words.ts'
import { said } from './said.ts'

/** Hands the reader a file to keep. It is made on the device; nothing is asked of any host. */
function saveFile(name: string, text: string): void {
  const link = element('a', '')
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }))
  link.download = name
  link.click()
  window.setTimeout(() => URL.revokeObjectURL(link.href), 10_000)
}

const safe = (name: string): string => name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '')

const saveWhole = ({ shown, today }: Desk): void => saveFile(`my-ladders-${today()}.json`, logText(shown().log))

/** Sets up saving the log as a file, and adding one. */
export function startTransfer(desk: Desk): void {
  const { find, shown, today, athlete } = desk
  find('log-export').addEventListener('click', () => saveWhole(desk))
  find('log-export-one').addEventListener('click', () => {
    const name = athlete()?.name ?? ''
    saveFile(`my-ladders-${safe(name)}-${today()}.json`, logText(onlyOf(shown().log, name)))
  })
  const input = find<HTMLInputElement>('log-import')
  input.addEventListener('change', () => {
    const file = input.files?.[0]
    if (!file) return
    void readFile(file).then((read) => addFile(desk, read)).then(() => void (input.value = ''))
  })
}

/** A file as a log, or why not; too large a one is not opened. */
function readFile(file: File): Promise<Log | Refused> {
  const trouble = sizeTrouble(file.size)
  if (trouble) return Promise.resolve({ refused: [trouble] })
  return file.text().then((text) => readLog(JSON.parse(text) as unknown)).then((log) => log, (error: unknown) => ({ refused: [error instanceof SyntaxError ? 'The file is no JSON: it is not a log, or not the whole of one.' : 'The file could not be read.'] }))
}

async function addFile({ find, shown, change }: Desk, read: Log | Refused): Promise<void> {
  const says = find('log-file-says')
  if (isRefused(read)) return says.replaceChildren(element('p', '', 'Nothing was added.'), element('ul', '', ...read.refused.map((reason) => element('li', '', reason))))
  const before = shown().log
  if (!(await change((log) => mergeLogs(log, read), 'log-file-says'))) return
  const added = sessionCount(shown().log) - sessionCount(before)
  const people = shown().log.athletes.length - before.athletes.length
  says.textContent = said(`Added from the file: ${counted(added, 'session')} and ${counted(people, 'athlete')}. ${counted(sessionCount(read) - added, 'session')} of it ${sessionCount(read) - added === 1 ? 'was' : 'were'} here already.`)
}

function button(text: string, act: () => void): HTMLButtonElement {
  const made = element('button', '', text)
  made.type = 'button'
  made.addEventListener('click', act)
  return made
}

/** Says what is wrong with the storage, and what can be saved of it. */
export function showTrouble(desk: Desk): void {
  const { shown, change, store, refresh, today, find } = desk
  const { trouble, unsaved, aside } = shown()
  const waiting = unsaved ? [element('p', '', 'What was logged since is on this screen only. Save it as a file before you leave the page.'), element('p', 'log-buttons', button('Save the whole log', () => saveWhole(desk)), button('Try to keep it again', () => void change((log) => log, 'log-says')))] : []
  const unread = aside.map((name, index) => {
    const place = element('div', '')
    const forget = (): void => confirmIn(place, { asks: 'Delete the log that could not be read?', yes: 'Delete it', no: 'Keep' }, () => void store.forgetAside(name).then(refresh))
    return element('div', '', element('p', '', 'A log that could not be read is kept aside on this device. Nothing was written over it.'), element('p', 'log-buttons', button('Save it as a file', () => saveFile(`my-ladders-unread-${index + 1}-${today()}.txt`, asideText(name))), button('Delete it', forget)), place)
  })
  find('log-trouble').replaceChildren(...(trouble === undefined ? [] : [element('p', '', trouble)]), ...waiting, ...unread)
}
