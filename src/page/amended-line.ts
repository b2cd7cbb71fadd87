import type { Amended, Did } from '../ladder/curriculum.ts'
import type { MeasuredLadder } from '../measure/measure.ts'
import { ladderAddress, linkTo, rungAddress } from './address.ts'
import { nameWords } from './change-names.ts'
import { html, joined, type Html, type Part } from './html.ts'

/** Keys that a list of changes need not name, and a reader of an amended ladder must. */
const KEYS: Readonly<Record<string, string>> = { standard: 'the standard', supervision: 'supervision', form: 'form points', because: 'why' }

/** One thing a layer did: rungs by their titles, led to where they stand. */
function didWords(did: Did, ladder: MeasuredLadder): Part {
  const rung = (id: string, title: string): Part => {
    const still = ladder.rungs.find((each) => each.id === id)
    return still ? html`<a href="${linkTo(ladderAddress(ladder.id), rungAddress(ladder.id, id))}">${still.title}</a>` : title
  }
  if ('key' in did) return KEYS[did.key] ?? nameWords(did.key, undefined) ?? did.key
  if ('changed' in did) return html`changed: ${rung(did.changed, did.title)}`
  if ('added' in did) return html`new: ${rung(did.added, did.title)}`
  if ('withdrawn' in did) return html`withdrawn: ${rung(did.withdrawn, did.title)}, in its place ${rung(did.heir, did.heir)}`
  return 'a safety note taken out'
}

/** Who changed a ladder they did not write, what of it, and why. */
export const amendedLine = ({ by, because, what }: Amended, ladder: MeasuredLadder): Html => html`<p class="amended">Changed by ${by} (${joined(what.map((did) => didWords(did, ladder)), '; ')}): ${because}</p>`
