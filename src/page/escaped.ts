const NAMED: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

/** Characters no HTML may hold, and those that turn the reading direction. */
const DROPPED = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069\ufdd0-\ufdef\ufffe\uffff]/g
const MARKS = /[&<>"']/g
/** Either of them: most texts hold none. */
const ANY = new RegExp(`${DROPPED.source}|${MARKS.source}`)

/** Text for an element or a quoted attribute. Characters no HTML may hold, and those that turn the reading direction, are dropped. */
export const escaped = (text: string): string => (ANY.test(text) ? text.replace(DROPPED, '').replace(MARKS, (character) => NAMED[character] ?? character) : text)
