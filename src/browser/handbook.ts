/** What every page runs: it looks what the page has, and fetches only the script for that. */
const has = (selector: string): boolean => document.querySelector(selector) !== null

const searching = has('#search-results') ? import('./search.ts').then(({ startSearch }) => startSearch(document, window.location)) : Promise.resolve()

/** What is kept for reading without a signal is fetched after what was searched for. */
if (has('#offline') && window.isSecureContext) void searching.catch(() => undefined).then(() => import('./offline.ts')).then(({ startOffline }) => startOffline(document, new URL(document.body.dataset.root ?? './', window.location.href)))

const timer = document.querySelector<HTMLElement>('#timer')
if (timer) void import('./timer.ts').then(({ startTimer }) => startTimer(document, timer))

const printed = document.querySelector<HTMLElement>('#printed')
const card = new URLSearchParams(window.location.search).get('edition')
if (printed && card !== null) void import('./printed.ts').then(({ startPrinted }) => startPrinted(document, printed, card))

const own = document.querySelector<HTMLElement>('#own-numbers')
const find = document.querySelector<HTMLFormElement>('form#find')
if (find) void import('./find-your-rung.ts').then(({ startFindYourRung }) => startFindYourRung(find, document))
else if (own) void import('./own-numbers.ts').then(({ startOwnNumbers }) => startOwnNumbers(own))

/** The day by the reader's own clock, as 2026-10-03. To a slow telephone, a formatter of dates costs more than a page. */
function today(): string {
  const now = new Date()
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((number) => String(number).padStart(2, '0')).join('-')
}
const log = document.querySelector<HTMLElement>('#my-ladders')
if (log) void import('./my-ladders.ts').then(({ startMyLadders }) => startMyLadders(log, today))

/** A slash goes to the search box from anywhere, Escape out of it. */
document.addEventListener('keydown', (event) => {
  const box = document.querySelector<HTMLInputElement>('#q')
  const typing = document.activeElement instanceof HTMLInputElement || document.activeElement instanceof HTMLTextAreaElement || document.activeElement instanceof HTMLSelectElement
  if (event.key === '/' && !typing && !event.ctrlKey && !event.metaKey && !event.altKey) {
    event.preventDefault()
    box?.focus()
  }
  if (event.key === 'Escape' && document.activeElement === box) box?.blur()
})
