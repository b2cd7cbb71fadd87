import { element } from './element.ts'
import { said } from './said.ts'

/** A question asked in the page before something is lost. */
export type Question = { readonly asks: string; readonly yes: string; readonly no: string }

/** Asks in `place`; whoever says no, or presses Escape, is back where they were. */
export function confirmIn(place: HTMLElement, { asks, yes, no }: Question, act: () => void): void {
  const opener = document.activeElement
  const close = (): void => {
    place.replaceChildren()
    if (opener instanceof HTMLElement && opener.isConnected) opener.focus()
  }
  const button = (text: string, click: () => void): HTMLButtonElement => {
    const made = element('button', '', text)
    made.type = 'button'
    made.addEventListener('click', click)
    return made
  }
  const stay = button(no, close)
  const group = element('div', 'log-question', element('p', '', asks), element('p', 'log-buttons', button(yes, () => {
    place.replaceChildren()
    act()
  }), stay))
  group.setAttribute('role', 'group')
  group.setAttribute('aria-label', said(asks))
  group.addEventListener('keydown', ({ key }) => key === 'Escape' && close())
  place.replaceChildren(group)
  stay.focus()
}
