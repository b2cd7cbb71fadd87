import { startAuthorPanel } from './author-panel.ts'
import { element } from './element.ts'

/** What the preview's own script is told of each thing to put right. */
type Shown = { readonly file: string; readonly line: number; readonly column: number; readonly rule: string; readonly message: string; readonly frame: readonly { readonly line: number; readonly text: string; readonly here: boolean }[] }
type Told = { readonly findings: readonly Shown[] }

const token = document.querySelector<HTMLScriptElement>('script[data-token]')?.dataset.token ?? ''
const asked = (name: string): string => `/preview/${name}?token=${encodeURIComponent(token)}`
const FOLDED = 'rungbook-preview-folded'

/** One finding: its place, what to do, and the lines it stands in. */
function findingElement({ file, line, column, rule, message, frame }: Shown): HTMLElement {
  const rows = frame.map((row) => element('span', row.here ? 'here' : '', `${row.here ? '>' : ' '} ${String(row.line).padStart(4)} | ${row.text}\n`))
  const lines = element('pre', '', ...rows)
  lines.tabIndex = 0 // a long line is reached by keyboard
  return element('li', '', element('p', 'place', `${file}:${line}:${column}`), element('p', '', message), element('p', 'rule', rule), ...(rows.length > 0 ? [lines] : []))
}

/** The panel over the page: how many there are to put right, and each. Nothing where there is nothing. */
function showFindings({ findings }: Told): void {
  document.querySelector('#preview-findings')?.remove()
  if (findings.length === 0) return
  const head = element('summary', '', findings.length === 1 ? 'One thing to put right' : `${findings.length} things to put right`)
  const list = element('ol', '', ...findings.map(findingElement))
  const fold = element('details', '', head, element('p', 'stale', 'A page that cannot be made anew is shown as it was before.'), list)
  fold.open = sessionStorage.getItem(FOLDED) !== 'yes'
  fold.addEventListener('toggle', () => sessionStorage.setItem(FOLDED, fold.open ? 'no' : 'yes'))
  const panel = element('aside', '', fold)
  panel.id = 'preview-findings'
  panel.setAttribute('aria-label', 'To put right')
  panel.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') fold.open = false
  })
  document.body.append(panel)
}

/** Learns of saves, and shows the page anew where it was. */
function follow(): void {
  let version: string | undefined
  const saves = new EventSource(asked('saved'))
  const told = ({ data }: MessageEvent<string>): void => {
    if (version !== undefined && data !== version) window.location.reload()
    version = data
  }
  saves.addEventListener('now', told)
  saves.addEventListener('saved', told)
}

follow()
void fetch(asked('findings.json'))
  .then((response) => response.json() as Promise<Told>)
  .then(showFindings)
startAuthorPanel(document, window.location.pathname)
