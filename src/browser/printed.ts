import type { EditionsData } from '../page/editions-data.ts'
import { element, linkElement } from './element.ts'

const isData = (value: unknown): value is EditionsData => typeof value === 'object' && value !== null && 'version' in value && value.version === 1 && 'editions' in value && Array.isArray(value.editions)

/** A card longer ago than its name can be said is no edition. */
const NAME = /^[\w. -]{1,40}$/

/**
 * What to tell somebody who came from a printed card.
 *
 * Shape   the editions, the card's own, and the page as "ladder" or "ladder/rung", to a sentence.
 */
export function cardText({ edition, editions }: EditionsData, card: string, page: string): string {
  if (card === edition) return `Your card is of this edition, ${edition}.`
  const back = editions.findIndex(({ since }) => since === card)
  if (back === -1) return `Your card is of edition ${card}, which is not listed here; this is edition ${edition}. Go by the page, not by the card.`
  const since = editions.slice(0, back + 1)
  if (since.some(({ changed }) => !Array.isArray(changed))) return `Your card is of edition ${card}; this is edition ${edition}. What has changed between them cannot be said: go by the page, not by the card.`
  const ladder = page.split('/')[0] ?? page
  const about = (name: string): boolean => name === page || name === ladder || (page === ladder && name.startsWith(`${ladder}/`))
  const touched = since.filter(({ changed }) => Array.isArray(changed) && changed.some(about)).map((each) => each.edition)
  if (touched.length === 0) return `Your card is of edition ${card}. Nothing on this page has changed since.`
  return `Your card is of edition ${card}. This page has changed since, in edition ${touched.toReversed().join(' and ')}: go by the page, not by the card.`
}

/** Says above a page what has changed since the card that led here was printed. Without a signal it says which edition the page is. */
export function startPrinted(page: Document, about: HTMLElement, card: string): void {
  const { edition = '', data = '', page: name = '' } = about.dataset
  if (!NAME.test(card)) return
  const tell = (text: string): void => {
    const link = linkElement('', about.querySelector('a')?.href ?? '', 'What has changed')
    const said = element('p', 'printed', text, ' ', link)
    said.setAttribute('role', 'status')
    page.querySelector('h1')?.after(said)
  }
  const unknown = (): void => tell(card === edition ? `Your card is of this edition, ${edition}.` : `Your card is of edition ${card}; this is edition ${edition}. Go by the page, not by the card.`)
  fetch(data)
    .then(async (response): Promise<unknown> => (response.ok ? response.json() : undefined))
    .then((value) => (isData(value) ? tell(cardText(value, card, name)) : unknown()), unknown)
}
