import { closeSync, constants, lstatSync, openSync } from 'node:fs'

/** No link is followed, and no pipe waited for. */
const PLAINLY = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0)

/**
 * Does something with a file that is open: what is asked about is then what is read, whatever takes its name in between.
 * All at once: over a thousand files a promise each costs several times the reading.
 *
 * Throws  what the system says, such as ENOENT, and ELOOP where a link stands there.
 */
export function whileOpen<Answer>(file: string, answer: (opened: number) => Answer): Answer {
  if (constants.O_NOFOLLOW === undefined && lstatSync(file).isSymbolicLink()) throw Object.assign(new Error(`${file} is a link`), { code: 'ELOOP' }) // a system that opens links by other means
  const opened = openSync(file, PLAINLY)
  try {
    return answer(opened)
  } finally {
    closeSync(opened)
  }
}
