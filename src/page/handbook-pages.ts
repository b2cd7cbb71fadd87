import type { MeasuredCurriculum, MeasuredLadder, MeasuredRung } from '../measure/measure.ts'
import type { Address } from './address.ts'
import { cardPages } from './cards-page.ts'
import { changesPage, type EditionChanges } from './changes-page.ts'
import { checkPages, type Examples } from './check-pages.ts'
import { withDrawn, type Drawn } from './drawn.ts'
import { equipmentPage } from './equipment-page.ts'
import { findYourRungPage } from './find-your-rung-page.ts'
import { framed } from './frame.ts'
import { homePage } from './home-page.ts'
import { raw, type Html } from './html.ts'
import { handbookAbout, ladderAbout, pageAbout, rungAbout } from './linked-data.ts'
import { ladderPage } from './ladder-page.ts'
import { movementMap } from './movement-map.ts'
import { myLaddersPage } from './my-ladders-page.ts'
import { contentPage, notFoundPage, searchPage, sourcesPage } from './other-pages.ts'
import { rungPage } from './rung-page.ts'
import type { Frame, SitePage } from './site-page.ts'
import type { Tongue } from './tongue.ts'

/** A finished page: where it goes, and its bytes. */
export type WrittenPage = { readonly address: Address; readonly html: string }

/** What pages show beside the curriculum: each ladder's drawing by its id, what else was drawn by its key, each rule's two ladders, what each edition changed, whether cards are printed to files as well, and the languages there are. */
export type Beside = { readonly diagrams: ReadonlyMap<string, Html>; readonly drawn?: Drawn; readonly examples: Examples; readonly editions: readonly EditionChanges[]; readonly pdfs?: boolean; readonly languages?: Frame['languages'] }

/** Every page of a handbook, in a fixed order. */
export function handbookPages(curriculum: MeasuredCurriculum, { diagrams, drawn = new Map(), examples, editions, pdfs = false, languages = [] }: Beside, tongue: Tongue): WrittenPage[] {
  const { handbook, logo, ladders, pages } = curriculum
  const frame: Frame = {
    title: handbook.title,
    logo: logo === undefined ? undefined : raw(logo),
    organisation: handbook.organisation,
    edition: handbook.edition,
    contact: handbook.contact,
    published: handbook.address?.replace(/\/$/, ''),
    language: tongue.language,
    languages,
    safety: pages.find(({ id }) => id === 'safety'),
  }
  const aboutLadder = (page: SitePage, ladder: MeasuredLadder): SitePage => ({ ...page, about: ladderAbout(handbook.title, ladder, page.description) })
  const aboutRung = (page: SitePage, rung: MeasuredRung, ladder: MeasuredLadder): SitePage => ({ ...page, about: rungAbout(handbook.title, rung, ladder, page.description) })
  const made: SitePage[] = [
    { ...homePage(curriculum), about: handbookAbout(curriculum) },
    ...ladders.flatMap((ladder) => [aboutLadder(ladderPage(ladder, diagrams.get(ladder.id) ?? raw('')), ladder), ...ladder.rungs.map((rung) => aboutRung(rungPage(rung, ladder), rung, ladder))]),
    ...pages.map((page) => ({ ...contentPage(page), about: pageAbout(handbook.title, page) })),
    findYourRungPage(curriculum),
    myLaddersPage(curriculum),
    equipmentPage(ladders),
    movementMap(ladders),
    sourcesPage(),
    ...checkPages(examples),
    changesPage(curriculum, editions),
    ...cardPages(curriculum, pdfs),
    searchPage(),
    notFoundPage(),
  ]
  return made.map((page) => ({ address: page.address, html: withDrawn(framed(page, frame, tongue), drawn, page.address) }))
}
