import { closeSync, constants, lstatSync, openSync } from 'node:fs'

/** No link is followed, and no pipe waited for. */
const PLAINLY = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0)

/**
 * Does something with a file that is open: what is asked about is then what is read, whatever takes its name in between.
 * All at once: over a thousand files a promise each costs several times the reading.
 *
 * Shape   a file's name to what `answer` makes of it, or `unopened` where it cannot be opened, by what the system calls that: ENOENT, or ELOOP where a link stands there.
 */
export function whileOpen<Answer>(file: string, answer: (opened: number) => Answer, unopened: (code: string) => Answer): Answer {
  const opened = openedPlainly(file)
  if (typeof opened === 'string') return unopened(opened)
  try {
    return answer(opened)
  } finally {
    closeSync(opened)
  }
}

function openedPlainly(file: string): number | string {
  try {
    if (constants.O_NOFOLLOW === undefined && lstatSync(file).isSymbolicLink()) return 'ELOOP' // a system that opens links by other means
    return openSync(file, PLAINLY)
  } catch (error) {
    return (error as NodeJS.ErrnoException).code ?? ''
  }
}
