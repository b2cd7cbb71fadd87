import { linkTo, pageAddress, rootedAt, type Address } from './address.ts'
import { searchable } from './found.ts'
import { asIs, html, say, type Html } from './html.ts'
import { dataBlock } from './linked-data.ts'
import { SHARE, shareAddress } from './share-picture.ts'
import type { Frame, SitePage } from './site-page.ts'
import type { Tongue } from './tongue.ts'
import { WORKER_POLICY } from './trusted.ts'
import { spoken, written } from './written.ts'

/** What a page may load: its own host's scripts, styles, pictures and search index; the last needs WebAssembly. No string becomes markup or a script but what the named policy vouches for. */
export const POLICY =
  `default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data:; connect-src 'self'; form-action 'self'; base-uri 'none'; manifest-src 'self'; require-trusted-types-for 'script'; trusted-types ${WORKER_POLICY}`

/** What a program shows beside a link to the page. A picture needs a whole address, so there is none where the handbook's is not known. */
function shared({ address, title, description, ladder }: SitePage, { title: site, published }: Frame): Html | undefined {
  if (published === undefined) return undefined
  return html`<meta property="og:type" content="website">
<meta property="og:site_name" content="${site}">
<meta property="og:title" content="${title}">
<meta property="og:description" content="${description}">
<meta property="og:url" content="${asIs(published + address)}">
<meta property="og:image" content="${asIs(published + shareAddress(ladder))}">
<meta property="og:image:width" content="${SHARE.wide}">
<meta property="og:image:height" content="${SHARE.high}">
<meta property="og:image:alt" content="${ladder === undefined ? 'The ladders of the handbook, each as a bar from its lightest rung to its heaviest' : 'The rungs of the ladder, each as a bar as long as its load'}">
<meta name="twitter:card" content="summary_large_image">
`
}

/** What the page is about, as data. */
const linked = ({ address, about }: SitePage, { published, organisation }: Frame, tongue: Tongue): Html | undefined =>
  about && dataBlock(about({ to: (to) => (published === undefined ? linkTo(address, to) : published + to), words: (words) => spoken(words, tongue), language: tongue.language, organisation }))

type Way = (to: Address) => string

/** The way from a page to another. */
const wayFrom = ({ address, anywhere }: SitePage, { published }: Frame): Way => (to) => (anywhere && published !== undefined ? rootedAt(published, to) : linkTo(address, to))

const searchForm = (to: Way): Html => html`<form class="search" role="search" action="${to(pageAddress('search'))}" method="get">
<label for="q">Search</label> <input id="q" type="search" name="q" autocomplete="off"> <button>Find</button>
</form>`

/** From a page in one language to the same page in another; from one that may be shown anywhere, from the root of the host. */
function toLanguage({ address, anywhere }: SitePage, frame: Frame, { under, root }: Frame['languages'][number]): string {
  if (anywhere && root !== undefined) return rootedAt(root, address)
  const own = frame.languages.find(({ language }) => language === frame.language)?.under ?? ''
  return linkTo(`/${own}${address.slice(1)}`, `/${under}${address.slice(1)}`)
}

/** The same page in every language, itself among them, for those who look for pages; the first is for everybody else. */
function alternates(page: SitePage, frame: Frame): Html | undefined {
  const { address } = page
  if (frame.languages.length < 2 || !address.endsWith('/')) return undefined
  const href = (each: Frame['languages'][number]): string => (each.root === undefined ? toLanguage(page, frame, each) : each.root + address.slice(1))
  const [first] = frame.languages
  return html`${frame.languages.map((each) => html`<link rel="alternate" hreflang="${each.language}" href="${href(each)}">
`)}${first && html`<link rel="alternate" hreflang="x-default" href="${href(first)}">
`}`
}

/** The other languages, each by its own name. */
function otherLanguages(page: SitePage, frame: Frame): Html | undefined {
  const others = frame.languages.filter(({ language }) => language !== frame.language)
  if (others.length === 0) return undefined
  return html`<nav class="languages" aria-label="Languages">${others.map((each) => html`<a href="${toLanguage(page, frame, each)}" lang="${each.language}" hreflang="${each.language}">${asIs(each.name)}</a> `)}</nav>
`
}

const DISCLAIMER = html`<p>This handbook is no medical advice. Loads are estimates for an average body. Local rules, the maker of the equipment and qualified people on the spot come first.</p>`

/**
 * A whole document: head, banner, the page, and the notes that stand on every page.
 *
 * Shape   a page, the frame and a language to the bytes of one HTML file.
 */
export function framed(page: SitePage, frame: Frame, tongue: Tongue): string {
  if (page.anywhere && frame.published === undefined) return bare(page, frame, tongue)
  const { address, title, description, body, found } = page
  const to = wayFrom(page, frame)
  const whole = address === '/' ? title : say`${title} · ${frame.title}`
  return written(
    html`<!doctype html>
<html lang="${frame.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="referrer" content="no-referrer">
<title>${whole}</title>
<meta name="description" content="${description}">
<meta name="color-scheme" content="light dark">
<link rel="stylesheet" href="${to('/assets/handbook.css')}">
${page.own && html`<link rel="preload" href="${to('/assets/kept.js')}" as="script">
`}<link rel="alternate" type="application/atom+xml" title="Editions" href="${to('/feed.xml')}">
<link rel="manifest" href="${to('/manifest.webmanifest')}">
${alternates(page, frame)}<link rel="icon" href="${to('/assets/icon.svg')}" type="image/svg+xml">
<link rel="apple-touch-icon" href="${to('/assets/apple-touch-icon.png')}">
${shared(page, frame)}${linked(page, frame, tongue)}<script type="module" src="${to('/assets/handbook.js')}"></script>
</head>
<body data-root="${to('/')}"${page.ladder !== undefined && html` data-ladder="${page.ladder}"`}>
<a class="skip" href="#page">To the page</a>
<header class="banner">
<p class="whose">${frame.logo}<a href="${to('/')}">${frame.title}</a> <span>${frame.organisation}, edition ${frame.edition}</span></p>
${searchForm(to)}
<nav aria-label="Handbook"><a href="${to('/')}">Ladders</a><a href="${to('/')}#pages">Pages</a><a href="${to(pageAddress('my-ladders'))}">My ladders</a>${frame.safety && html`<a href="${to(pageAddress(frame.safety.id))}">${frame.safety.title}</a>`}<a href="${to('/sources/')}">Numbers</a></nav>
${otherLanguages(page, frame)}</header>
<main id="page"${found ? html` data-pagefind-body` : ''}>
${body}
${searchable(page)}</main>
<footer>
${DISCLAIMER}
<p>${frame.organisation} · edition ${frame.edition} · ${frame.contact} · <a href="${to('/changes/')}">what has changed</a> · <a href="${to('/sources/')}">where the numbers come from</a> · <a href="${to('/checks/')}">what is checked</a></p>
<div id="offline"></div>
</footer>
</body>
</html>
`,
    tongue,
  )
}

/** A document that needs no other file and leads nowhere: it may be shown at any depth of a host. */
const bare = ({ title, description, body }: SitePage, { language, title: site, organisation, edition, contact }: Frame, tongue: Tongue): string =>
  written(
    html`<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="referrer" content="no-referrer">
<title>${say`${title} · ${site}`}</title>
<meta name="description" content="${description}">
<meta name="color-scheme" content="light dark">
</head>
<body>
<header>
<p>${site}</p>
</header>
<main>
${body}
</main>
<footer>
${DISCLAIMER}
<p>${organisation} · edition ${edition} · ${contact}</p>
</footer>
</body>
</html>
`,
    tongue,
  )
