import { encodeQR } from 'qr'
import { onceUnder } from '../quantity/once.ts'
import { html, type Html, type Words } from './html.ts'

/** Modules of white round the code, without which a reader does not find it. */
const QUIET = 4

/**
 * A text as a QR code: one path of dark modules on the page's white, with the quiet zone inside the drawing.
 * A sixth of it may be lost to a scratch or a thumb (level "medium", 15 %).
 *
 * Shape   a text and what it is called to one drawing; the same bytes for the same text.
 * Units   1 unit of the drawing is one module.
 */
export function qrCode(text: string, name: Words): Html {
  const { wide, d } = drawn(text, () => drawing(text))
  return html`<svg class="qr" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${name}" viewBox="0 0 ${wide} ${wide}" shape-rendering="crispEdges"><path d="${d}"/></svg>`
}

/** A rung's code stands on its pocket card and on its sheet of the booklet. */
const KEPT_CODES = 500
const drawn = onceUnder<Drawing>(KEPT_CODES)

type Drawing = { readonly wide: number; readonly d: string }

function drawing(text: string): Drawing {
  const modules = encodeQR(text, 'raw', { ecc: 'medium', border: QUIET })
  let d = ''
  for (const [y, row] of modules.entries()) {
    for (let from = row.indexOf(true); from !== -1; ) {
      const end = row.indexOf(false, from)
      const to = end === -1 ? row.length : end
      d += `M${from} ${y}H${to}v1H${from}z`
      from = row.indexOf(true, to)
    }
  }
  return { wide: modules.length, d }
}
