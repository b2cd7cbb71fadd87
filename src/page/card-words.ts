import { onceUnder } from '../quantity/once.ts'
import { isMissing } from '../quantity/outcome.ts'
import type { Markdown } from '../ladder/curriculum.ts'
import type { Handbook } from '../ladder/schema.ts'
import { entryText, fullEntry, type FullEntry } from '../measure/entry.ts'
import type { MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import { markdown, type MarkdownToken } from '../read/markdown.ts'
import type { Address } from './address.ts'
import { entryWords, inBoth } from './both-units.ts'
import { loadText, titleOf } from './figures.ts'
import { asIs, html, joined, say, type Html, type Part, type Words } from './html.ts'
import { qrCode } from './qr.ts'
import { supervisionText } from './safety.ts'

/** The same stop signs and form points stand on every card of a ladder. */
const KEPT_LINES = 5000
const kept = onceUnder<readonly string[]>(KEPT_LINES)

/** Markdown as lines of plain words, one a paragraph or list line. Paper cannot follow a link, so links keep only their words. */
export const plainLines = (text: Markdown): readonly string[] => kept(text, () => markdown.parse(text, {}).flatMap((token) => (token.type === 'inline' ? [wordsOf(token)] : [])))

const wordsOf = ({ children }: MarkdownToken): string => (children ?? []).map(({ type, content }) => (type.endsWith('break') ? ' ' : (content ?? ''))).join('')

/** One line of Markdown as plain words. */
export const plainLine = (text: Markdown): string => plainLines(text).join(' ')

/** What a card says of a rung's load, with the name of the quantity unless the card has one name for all. */
export const cardLoad = (rung: MeasuredRung, common?: string): Words =>
  isMissing(rung.outcome) ? 'no load computed' : rung.outcome.quantity.name === common ? loadText(rung) : say`${loadText(rung)}, ${rung.outcome.quantity.name}`

/** The quantity all computed rungs of a ladder are known by, where it is one. */
export function commonQuantity({ rungs }: MeasuredLadder): string | undefined {
  const names = new Set(rungs.flatMap(({ outcome }) => (isMissing(outcome) ? [] : [outcome.quantity.name])))
  return names.size === 1 ? [...names][0] : undefined
}

/** What must be shown before a rung, one line a way to it. */
export const cardEntry = ({ steps }: MeasuredRung, ladder: MeasuredLadder, shown: (entry: FullEntry) => Part = entryWords): Part[] =>
  steps.length === 0 ? ['Begin here.'] : steps.map(({ from, entry }) => (steps.length > 1 || isFork(from, ladder) ? say`${shown(entry)}, on ${titleOf(ladder, from)}` : shown(entry)))

/** The standard of a ladder in words, and an entry in words where it is another. */
export const standardWords = ({ standard }: MeasuredLadder): Part => entryWords(fullEntry(standard, {}))
export const besideStandard = ({ standard }: MeasuredLadder) => (entry: FullEntry): Part => (entryText(entry) === entryText(fullEntry(standard, {})) ? 'the standard' : entryWords(entry))

/** True where more than one rung follows: there the rung above in the list need not be the rung before. */
const isFork = (id: string, { rungs }: MeasuredLadder): boolean => rungs.filter(({ after }) => after.includes(id)).length > 1

/** What to take care of on a rung: as written, then as computed. */
export const cardCautions = ({ cautions, outcome }: MeasuredRung): Part[] => [...new Set(cautions), ...new Set(isMissing(outcome) ? [] : outcome.cautions.filter((caution) => !cautions.includes(caution)).map(inBoth))].map((caution) => (typeof caution === 'string' ? plainLine(caution) : caution))

/** Who has to be there on this rung, where that is not what the ladder says of all. */
export const cardWatch = ({ supervision }: MeasuredRung, ladder: MeasuredLadder): string[] => (supervision === undefined || supervision === ladder.supervision ? [] : [supervisionText(supervision)])

/** "Press-up · rung 3 of 11 · the aim". */
export const placeText = ({ id }: MeasuredRung, { title, rungs, aim }: MeasuredLadder): Part => [say`${title} · rung ${rungs.findIndex((each) => each.id === id) + 1} of ${rungs.length}`, id === aim && [' · ', 'the aim']]

/** Whose card it is and of when, the same on every card. */
export type Imprint = Pick<Handbook, 'title' | 'organisation' | 'edition' | 'address'> & { readonly on: string | undefined }

export const imprintOf = ({ title, organisation, edition, address, editions }: Handbook): Imprint => ({ title, organisation, edition, address, on: editions?.find((each) => each.edition === edition)?.on })

/** "Edition 2026.2, 2026-10-03". */
export const editionText = ({ edition, on }: Pick<Imprint, 'edition' | 'on'>): Words => (on === undefined ? say`Edition ${edition}` : say`Edition ${edition}, ${on}`)

/** Where a card's code leads: a page of the published handbook, and the edition the card was printed from. */
export const codeAddress = (published: string, to: Address, edition: string): string => `${published.replace(/\/$/, '')}${to}?edition=${edition}`

/** The code of a card, where the handbook names the address it is published at. */
export const cardCode = ({ address, edition }: Imprint, to: Address, name: string): Html | undefined =>
  address === undefined ? undefined : html`<p class="card-code">${qrCode(codeAddress(address, to, edition), say`Code that leads to ${name}`)}</p>`

/** Where the page of a card is, in letters: for those without a reader of codes, and for handbooks without an address. */
const pathText = ({ address }: Imprint, to: Address): Part => (address === undefined ? say`In the handbook: ${asIs(to)}` : asIs(`${address.replace(/^https:\/\/|\/$/g, '')}${to}`))

/** The last lines of every card: edition, whose it is, where its page is, and what it is not. */
export const footText = (imprint: Imprint, to: Address): Part => joined([editionText(imprint), imprint.organisation, pathText(imprint, to), CARD_NOTE], ' · ')

const CARD_NOTE = 'Estimates for an average body, no medical advice. Local rules, makers and qualified people come first.'
