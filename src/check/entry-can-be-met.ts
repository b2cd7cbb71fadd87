import type { Entry } from '../ladder/schema.ts'
import type { Found, Rule } from './rule.ts'

/** More work in one session than anyone shows as a test. Taste. */
const MOST_REPS_IN_ALL = 150
const MOST_SECONDS_IN_ALL = 1800

const amounts = ({ reps, seconds, metres }: Entry): number => [reps, seconds, metres].filter((amount) => amount !== undefined).length

/** What cannot be met about a standard or an entry, if anything. */
function unmeetable(what: string, sets: number, { reps = 0, seconds = 0, ...others }: Entry): string | undefined {
  if (amounts({ ...others, ...(reps ? { reps } : {}), ...(seconds ? { seconds } : {}) }) > 1) return `${what} asks for more than one of reps, seconds and metres. Keep one.`
  if (sets * reps > MOST_REPS_IN_ALL) return `${what} asks for ${sets * reps} repetitions in all, more than ${MOST_REPS_IN_ALL}. Ask for fewer, or for a harder rung.`
  if (sets * seconds > MOST_SECONDS_IN_ALL) return `${what} asks for ${sets * seconds} s in all, more than ${MOST_SECONDS_IN_ALL} s. Ask for less, or for a harder rung.`
  return undefined
}

export const entryCanBeMet: Rule = {
  name: 'entry-can-be-met',
  says: 'Every standard and entry asks for one amount that somebody can show.',
  why: 'An entry nobody can meet ends the ladder there without saying so.',

  check({ standard, rungs }) {
    const found: Found[] = []
    const says = amounts(standard) === 0 ? 'The standard gives no amount. Add reps, seconds or metres.' : unmeetable('The standard', standard.sets, standard)
    if (says) found.push({ path: ['standard'], message: says })
    for (const [index, { title, entry, after }] of rungs.entries()) {
      if (Object.keys(entry).length === 0) continue
      const path = ['rungs', index, 'entry']
      const wrong = unmeetable(`The entry of "${title}"`, entry.sets ?? standard.sets, entry)
      if (wrong) found.push({ path, message: wrong })
      else if (after.length === 0) found.push({ path, message: `"${title}" follows no rung, so there is nothing to show its entry on. Remove the entry, or say what it comes after.` })
    }
    return found
  },
}
