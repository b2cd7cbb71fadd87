import { encodeQR } from 'qr'
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
  const modules = encodeQR(text, 'raw', { ecc: 'medium', border: QUIET })
  const wide = modules.length
  const d = modules.flatMap((row, y) => runs(row).map(({ from, to }) => `M${from} ${y}H${to}v1H${from}z`)).join('')
  return html`<svg class="qr" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${name}" viewBox="0 0 ${wide} ${wide}" shape-rendering="crispEdges"><path d="${d}"/></svg>`
}

/** Stretches of dark modules in a row. */
function runs(row: readonly boolean[]): { readonly from: number; readonly to: number }[] {
  return row.flatMap((dark, x) => {
    if (!dark || row[x - 1]) return []
    const end = row.indexOf(false, x)
    return [{ from: x, to: end === -1 ? row.length : end }]
  })
}
