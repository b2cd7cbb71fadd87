import type { Entry } from '../ladder/schema.ts'
import { fullEntry, type FullEntry } from '../measure/entry.ts'
import type { Found, Rule } from './rule.ts'

/** More work in one session than anyone shows as a test; one unbroken set, such as two hundred turns of a rope, is a test. Taste. */
const MOST_REPS_IN_ALL = 150
const MOST_SECONDS_IN_ALL = 1800

const amounts = ({ reps, seconds, metres }: Entry): number => [reps, seconds, metres].filter((amount) => amount !== undefined).length

/** What cannot be met about a standard or an entry, if anything: as it was written, and with its silences filled in. */
function unmeetable(what: string, asked: Entry, { sets, amount }: FullEntry): string | undefined {
  if (amounts(asked) > 1) return `${what} asks for more than one of reps, seconds and metres. Keep one.`
  const inAll = sets * (amount?.value ?? 0)
  if (amount?.unit === 'reps' && sets > 1 && inAll > MOST_REPS_IN_ALL) return `${what} asks for ${inAll} repetitions in all, more than ${MOST_REPS_IN_ALL}. Ask for fewer, or for a harder rung.`
  if (amount?.unit === 'seconds' && inAll > MOST_SECONDS_IN_ALL) return `${what} asks for ${inAll} s in all, more than ${MOST_SECONDS_IN_ALL} s. Ask for less, or for a harder rung.`
  return undefined
}

export const entryCanBeMet: Rule = {
  name: 'entry-can-be-met',
  says: 'Every standard and entry asks for one amount that somebody can show.',
  why: 'An entry nobody can meet ends the ladder there without saying so.',

  check({ standard, rungs }) {
    const found: Found[] = []
    const says = amounts(standard) === 0 ? 'The standard gives no amount. Add reps, seconds or metres.' : unmeetable('The standard', standard, fullEntry(standard, {}))
    if (says) found.push({ path: ['standard'], message: says })
    for (const [index, { title, entry, after }] of rungs.entries()) {
      if (Object.keys(entry).length === 0) continue
      const path = ['rungs', index, 'entry']
      const changesWork = entry.sets !== undefined || amounts(entry) > 0
      const wrong = changesWork ? unmeetable(`The entry of "${title}"`, entry, fullEntry(standard, entry)) : undefined
      if (wrong) found.push({ path, message: wrong })
      else if (after.length === 0) found.push({ path, message: `"${title}" follows no rung, so there is nothing to show its entry on. Remove the entry, or say what it comes after.` })
    }
    return found
  },
}
