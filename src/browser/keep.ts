import { missing, type Outcome } from '../quantity/outcome.ts'

/** The name a reader's body is kept under. */
export const BODY = 'rungbook:body'

/** Why the browser would not, in words a reader can follow. It throws where storage is turned off, full, or holds what is no JSON. */
function why(error: unknown): string {
  if (error instanceof SyntaxError) return 'what was kept on this device cannot be read any more'
  if (error instanceof DOMException && error.name === 'QuotaExceededError') return 'the room this browser gives a handbook is full'
  return 'this browser keeps nothing for this handbook'
}

/** What this device keeps under a name; `value` is undefined where nothing is kept. Whoever reads it checks what it is. */
export function kept(name: string): Outcome<{ readonly value: unknown }> {
  try {
    const text = window.localStorage.getItem(name)
    return text === null ? { value: undefined } : readKept(text)
  } catch (error) {
    return missing(why(error))
  }
}

/** What the letters say that are kept, or why they cannot be read. */
export function readKept(text: string): Outcome<{ readonly value: unknown }> {
  try {
    return { value: JSON.parse(text) as unknown }
  } catch (error) {
    return missing(why(error))
  }
}

/** Keeps a plain value on this device, or says why it could not. */
export const keep = (name: string, value: unknown): Outcome<'kept'> => keepText(name, JSON.stringify(value))

/** The same with the letters it is written in. */
export function keepText(name: string, text: string): Outcome<'kept'> {
  try {
    window.localStorage.setItem(name, text)
    return 'kept'
  } catch (error) {
    return missing(why(error))
  }
}

/** Takes away what is kept under a name, or says why it could not. */
export function forget(name: string): Outcome<'forgotten'> {
  try {
    window.localStorage.removeItem(name)
    return 'forgotten'
  } catch (error) {
    return missing(why(error))
  }
}
