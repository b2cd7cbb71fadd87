import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import type { Ladder } from './curriculum.ts'

/** Letters of a digest that are shown and kept. Chosen by us: 48 bits, enough to notice a change, short enough to read out. */
const SHOWN = 12

/** One text for one value: keys in order, nothing undefined. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null'
  const entries = Object.entries(value).filter(([, entry]) => entry !== undefined)
  return `{${entries.toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([key, entry]) => `${JSON.stringify(key)}:${canonical(entry)}`).join(',')}}`
}

/** A short digest of any plain value: the same for the same value, whatever the order of its keys. Source SHA-256. */
export const digestOf = (value: unknown): string => bytesToHex(sha256(utf8ToBytes(canonical(value)))).slice(0, SHOWN)

/**
 * What a reviewer signs: criteria, loads and safety of a ladder. The wording of cues and faults is not among them.
 *
 * Shape   a ladder to twelve letters.
 */
export function criteriaDigest({ aim, standard, first_reps, form, supervision, stop, ask_first, rungs }: Ladder): string {
  const criteria = rungs.map(({ id, after, demand, entry, load, supervision: watched, form: own, cautions, words }) => ({ id, after, demand, entry, load, supervision: watched, form: own, cautions, full_rep: words?.full_rep }))
  return digestOf({ aim, standard, first_reps, form, supervision, stop, ask_first, rungs: criteria })
}
