import type { Finding } from '../ladder/finding.ts'

/** The most a file may weigh. Units bytes. Chosen by us: a ladder of forty rungs weighs a sixth of it. */
export const MOST_BYTES = 256 * 1024

/** One reading of a file: what was found wrong, and the value where there is one. */
export type Reading<Value> = { readonly value?: Value; readonly findings: readonly Finding[] }

/** A finding at the top of a file, for what is wrong with it as a whole. */
export const atTop = (file: string, rule: string, message: string, line = 1, column = 1): Finding => ({ file, line, column, rule, message })

const RULE = 'files-are-text'

/** Control characters, those that turn the direction of the text after them, and two that are no characters. */
const UNSEEN = /[\u0001-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069\ufffe\uffff]/

/**
 * The words in a file, as UTF-8 with plain line ends.
 *
 * Shape   bytes to text, or one finding: empty, too large, not UTF-8, or holding a NUL or a character nobody sees.
 */
export function textOf(file: string, bytes: Uint8Array): Reading<string> {
  const wrong = (message: string, before = ''): Reading<string> => {
    const lines = before.split(/\r\n|\r|\n/)
    return { findings: [atTop(file, RULE, message, lines.length, (lines.at(-1) ?? '').length + 1)] }
  }
  if (bytes.length > MOST_BYTES) return wrong(`The file is larger than ${MOST_BYTES / 1024} KiB. Split it, or take out what was pasted in by mistake.`)
  const text = new TextDecoder('utf-8').decode(bytes)
  const broken = text.includes('\ufffd') ? firstBroken(bytes) : -1
  if (broken >= 0) return wrong('The file is not UTF-8 text. Save it again as UTF-8.', new TextDecoder().decode(bytes.subarray(0, broken)))
  if (text.includes('\0')) return wrong('The file holds a NUL character, so it is not plain text. Write it again in a text editor.', text.slice(0, text.indexOf('\0')))
  const unseen = text.search(UNSEEN)
  if (unseen >= 0) return wrong('A character here cannot be seen and changes how the text around it is read. Type the line again by hand.', text.slice(0, unseen))
  if (text.trim() === '') return wrong('The file is empty. Write in it, or delete it.')
  return { value: text.replaceAll('\r\n', '\n').replaceAll('\r', '\n'), findings: [] }
}

/** Where decoding and encoding again does not give the same bytes back; -1 where nothing had to be replaced. */
function firstBroken(bytes: Uint8Array): number {
  const again = new TextEncoder().encode(new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes))
  const at = bytes.findIndex((byte, index) => again[index] !== byte)
  return at < 0 && again.length > bytes.length ? bytes.length : at
}
