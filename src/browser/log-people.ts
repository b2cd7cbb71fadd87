import { addAthlete, deleteAthlete, renameAthlete } from './log-changes.ts'
import { confirmIn } from './log-confirm.ts'
import type { Desk } from './log-desk.ts'
import { element } from './element.ts'
import { fillSelect } from './log-form.ts'
import { tidyName } from './log-record.ts'
import { counted } from './log-words.ts'
import { said } from './said.ts'

/** Sets up choosing, adding, renaming and deleting athletes. */
export function startPeople(desk: Desk): void {
  const { find, change, choose, athlete } = desk
  const name = find<HTMLInputElement>('log-name')
  find('log-athlete').addEventListener('change', () => choose(find<HTMLSelectElement>('log-athlete').value))
  find('log-add').addEventListener('submit', (event) => {
    event.preventDefault()
    const typed = name.value
    void change((log) => addAthlete(log, typed), 'log-who-says').then((made) => {
      if (!made) return
      name.value = ''
      find<HTMLDetailsElement>('log-new').open = false
      choose(tidyName(typed))
      find('log-ladder').focus()
    })
  })
  find('log-rename').addEventListener('submit', (event) => {
    event.preventDefault()
    const [was, typed] = [athlete()?.name ?? '', find<HTMLInputElement>('log-new-name').value]
    void change((log) => renameAthlete(log, was, typed), 'log-manage-says').then((made) => made && choose(tidyName(typed)))
  })
  find('log-delete-one').addEventListener('click', () => askToDelete(desk))
}

function askToDelete({ find, change, choose, athlete }: Desk): void {
  const whose = athlete()
  if (!whose) return
  const { name, sessions } = whose
  confirmIn(find('log-delete'), { asks: `Delete ${name} and ${counted(sessions.length, 'session')} from this device? Only a saved file brings them back.`, yes: `Delete ${name}`, no: 'Keep' }, () => {
    void change((log) => deleteAthlete(log, name), 'log-manage-says').then((made) => {
      if (!made) return
      choose(undefined)
      find('log-who-says').textContent = said(`${name} is deleted.`)
      find('log-who').focus()
    })
  })
}

/** Shows who is there, and who is chosen. */
export function showPeople({ find, shown, athlete }: Desk): void {
  const { athletes } = shown().log
  const chosen = athlete()
  fillSelect(find<HTMLSelectElement>('log-athlete'), athletes.map(({ name }) => [name, name] as const), chosen?.name ?? '')
  find('log-choose').hidden = !chosen
  find('log-manage').hidden = !chosen
  find('log-session').hidden = !chosen
  find('log-export').hidden = !chosen
  find('log-export-one').hidden = athletes.length < 2
  if (!chosen) find<HTMLDetailsElement>('log-new').open = true
  find('log-rename-says').replaceChildren(...(chosen ? [element('span', '', `This is ${chosen.name}, with ${counted(chosen.sessions.length, 'session')}.`)] : []))
}
