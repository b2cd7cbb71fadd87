import { compareText } from '../ladder/finding.ts'
import type { MeasuredCurriculum, MeasuredLadder } from '../measure/measure.ts'
import { ladderAddress, linkTo, type Address } from './address.ts'
import { booklet } from './booklet.ts'
import { editionText, imprintOf, type Imprint } from './card-words.ts'
import { html, say, type Html } from './html.ts'
import { pocketCards } from './pocket-card.ts'
import type { SitePage } from './site-page.ts'
import { wallCard } from './wall-card.ts'

const CARDS = '/cards/'

/** Where the cards of a ladder are, and the files they are printed to when a build is asked for them. */
export const wallAddress = (ladder: string): Address => `${CARDS}${ladder}/`
export const pocketAddress = (ladder: string): Address => `${CARDS}${ladder}/pocket/`
export const wallPdf = (ladder: string): string => `pdf/${ladder}-wall-a4.pdf`
export const bookletAddress = (ladder: string): Address => `${CARDS}${ladder}/booklet/`
export const bookletPdf = (ladder: string): string => `pdf/${ladder}-booklet-a4.pdf`
export const pocketPdf = (ladder: string): string => `pdf/${ladder}-pocket.pdf`

/** For whoever comes from a printed card: where changes are told, and for a script, what to look them up in. */
export const fromPrinted = (from: Address, edition: string, ladder: string, rung?: string): Html =>
  html`<p class="on-paper" id="printed" data-edition="${edition}" data-data="${linkTo(from, '/data/editions.json')}" data-page="${rung === undefined ? ladder : `${ladder}/${rung}`}">Here from a card of an older edition? <a href="${linkTo(from, '/changes/')}">See what has changed since</a>.</p>`

/** The line that leads from a ladder's or a rung's page to its cards. */
export const onPaper = (from: Address, ladder: string, rung?: string): Html =>
  html`<p class="on-paper">On paper: <a href="${linkTo(from, wallAddress(ladder))}">wall card of the ladder</a>, <a href="${linkTo(from, pocketAddress(ladder))}${rung === undefined ? '' : `#card-${rung}`}">${rung === undefined ? 'a pocket card a rung' : 'pocket card of this rung'}</a>, <a href="${linkTo(from, bookletAddress(ladder))}${rung === undefined ? '' : `#sheet-${rung}`}">${rung === undefined ? 'the whole ladder as a booklet' : 'sheet of this rung'}</a></p>`

const choice = (name: string, value: string, label: string, checked: boolean): Html => html`<label><input type="radio" name="${name}" id="${name}-${value}" value="${value}"${checked ? html` checked` : ''}> ${label}</label>`

/** Which paper: the stylesheet reads the choice, so it works without scripts. */
const paperForm = (): Html => html`<form class="paper-choice">
<fieldset><legend>Paper</legend> ${choice('paper', 'a4', 'A4', true)} ${choice('paper', 'a3', 'A3', false)} ${choice('paper', 'letter', 'Letter', false)}</fieldset>
<fieldset><legend>Lying</legend> ${choice('way', 'portrait', 'portrait', true)} ${choice('way', 'landscape', 'landscape', false)}</fieldset>
</form>`

/** Which paper, where a sheet is only ever upright. */
const uprightForm = (): Html => html`<form class="paper-choice">
<fieldset><legend>Paper</legend> ${choice('paper', 'a4', 'A4', true)} ${choice('paper', 'letter', 'Letter', false)}</fieldset>
</form>`

const pdfLink = (from: Address, file: string, pdfs: boolean): Html | undefined => (pdfs ? html` Or take it <a href="${linkTo(from, `/${file}`)}">as a PDF</a>.` : undefined)

function wallPage(ladder: MeasuredLadder, imprint: Imprint, pdfs: boolean): SitePage {
  const address = wallAddress(ladder.id)
  return {
    address,
    title: say`Wall card: ${ladder.title}`,
    description: say`${ladder.title} for the wall: its rungs in order with load, entry and cautions, form points, stop signs and who asks first.`,
    body: html`<div class="not-on-paper"><p class="trail"><a href="${linkTo(address, CARDS)}">Cards</a> · <a href="${linkTo(address, ladderAddress(ladder.id))}">${ladder.title}</a></p>
<h1>Wall card: ${ladder.title}</h1>
<p>Choose the paper, then print this page from the browser’s menu, at full size and with the browser’s own margins. Only the card is printed.${pdfLink(address, wallPdf(ladder.id), pdfs)}</p>
${paperForm()}</div>
${wallCard(ladder, imprint)}`,
  }
}

function pocketPage(ladder: MeasuredLadder, imprint: Imprint, pdfs: boolean): SitePage {
  const address = pocketAddress(ladder.id)
  return {
    address,
    title: say`Pocket cards: ${ladder.title}`,
    description: say`${ladder.title} for the pocket: a card of A6 for each rung, four to a sheet of A4.`,
    body: html`<div class="not-on-paper"><p class="trail"><a href="${linkTo(address, CARDS)}">Cards</a> · <a href="${linkTo(address, ladderAddress(ladder.id))}">${ladder.title}</a></p>
<h1>Pocket cards: ${ladder.title}</h1>
<p>One card a rung. Choose the paper, print this page at full size, without margins, and cut along the lines. A card with more safety notes than A6 holds takes the room of two. On Letter the same cards are a little smaller.${pdfLink(address, pocketPdf(ladder.id), pdfs)}</p>
${uprightForm()}</div>
${pocketCards(ladder, imprint)}`,
  }
}

function bookletPage(ladder: MeasuredLadder, imprint: Imprint, pdfs: boolean): SitePage {
  const address = bookletAddress(ladder.id)
  return {
    address,
    title: say`Booklet: ${ladder.title}`,
    description: say`${ladder.title} on paper: a sheet for each rung with set-up, cues, faults, and everything that keeps an athlete safe on it.`,
    body: html`<div class="not-on-paper"><p class="trail"><a href="${linkTo(address, CARDS)}">Cards</a> · <a href="${linkTo(address, ladderAddress(ladder.id))}">${ladder.title}</a></p>
<h1>Booklet: ${ladder.title}</h1>
<p>A sheet for each rung, so that its safety notes are never on another. Choose the paper and print this page from the browser’s menu, at full size.${pdfLink(address, bookletPdf(ladder.id), pdfs)}</p>
${uprightForm()}</div>
${booklet(ladder, imprint)}`,
  }
}

/** All cards, and how to print them. */
function indexPage(ladders: readonly MeasuredLadder[], imprint: Imprint): SitePage {
  const rows = ladders.toSorted((a, b) => compareText(a.title, b.title)).map(
    ({ id, title, rungs }) => html`
<li><strong>${title}</strong>: <a href="${linkTo(CARDS, wallAddress(id))}">wall card</a>, <a href="${linkTo(CARDS, pocketAddress(id))}">${rungs.length} pocket cards</a>, <a href="${linkTo(CARDS, bookletAddress(id))}">booklet</a></li>`,
  )
  return {
    address: CARDS,
    title: 'Cards to print',
    description: 'A wall card for each ladder and a pocket card for each rung, and how to print them.',
    body: html`<h1>Cards to print</h1>
<p class="lead">A wall card shows a whole ladder. A pocket card shows one rung. A booklet holds a whole ladder, a sheet a rung. ${editionText(imprint)}.</p>
<section><h2 id="how">How to print</h2>
<ul><li>Wall cards fit A4, A3 and Letter, portrait or landscape. On A3 the same card is larger, to be read from farther off.</li>
<li>Pocket cards are A6, four to a sheet of A4, and a little smaller on Letter. Cut along the lines.</li>
<li>Booklets fit A4 and Letter.</li>
<li>One colour is enough. Nothing is told by colour.</li>
<li>${imprint.address === undefined ? 'This handbook names no address of its own, so its cards carry no code and say in words where to look.' : 'The code on a card leads to its page, and names the edition the card was printed from.'}</li>
<li>Take a card down when a new edition is out, and print it again.</li></ul></section>
<section><h2 id="all">All cards</h2>
<ul class="all-cards">${rows}
</ul></section>`,
  }
}

/** The page that leads to every card. */
export const cardsPage = ({ handbook, ladders }: MeasuredCurriculum): SitePage => indexPage(ladders, imprintOf(handbook))

/** The pages of a ladder's cards. `pdfs` where the build prints them to files as well. */
export function cardPages(ladder: MeasuredLadder, { handbook }: Pick<MeasuredCurriculum, 'handbook'>, pdfs: boolean): SitePage[] {
  const imprint = imprintOf(handbook)
  return [wallPage(ladder, imprint, pdfs), pocketPage(ladder, imprint, pdfs), bookletPage(ladder, imprint, pdfs)]
}
