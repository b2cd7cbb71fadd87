import type { MeasuredCurriculum, MeasuredLadder } from '../measure/measure.ts'
import type { Address } from './address.ts'
import { cardsPage } from './cards-page.ts'
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
import { notFoundPage } from './not-found-page.ts'
import { contentPage, sourcesPage } from './other-pages.ts'
import { rungPage } from './rung-page.ts'
import type { Frame, SitePage } from './site-page.ts'
import type { Tongue } from './tongue.ts'
import { withdrawnPages } from './withdrawn-page.ts'

/** A finished page: where it goes, and its bytes. */
export type WrittenPage = { readonly address: Address; readonly html: string }

/** What pages show beside the curriculum: each rule's two ladders, and what each edition changed. */
export type Beside = { readonly examples: Examples; readonly editions: readonly EditionChanges[] }

/** The frame that stands around each page. */
export function frameOf({ handbook, logo, pages }: MeasuredCurriculum, languages: Frame['languages'], { language }: Tongue): Frame {
  return {
    title: handbook.title,
    logo: logo === undefined ? undefined : raw(logo),
    organisation: handbook.organisation,
    edition: handbook.edition,
    contact: handbook.contact,
    published: handbook.address?.replace(/\/$/, ''),
    language,
    languages,
    safety: pages.flatMap(({ id, title }) => (id === 'safety' ? [{ id, title }] : [])).at(0),
  }
}

/** The page that everything is found from. */
export const firstPage = (curriculum: MeasuredCurriculum): SitePage => ({ ...homePage(curriculum), about: handbookAbout(curriculum) })

/** A ladder's page and those of its rungs, withdrawn ones last. */
export function ladderPages(ladder: MeasuredLadder, diagram: Html, { handbook: { title, edition } }: MeasuredCurriculum): SitePage[] {
  const whole = ladderPage(ladder, diagram, edition)
  const rungs = ladder.rungs.map((rung): SitePage => {
    const page = rungPage(rung, ladder, edition)
    return { ...page, about: rungAbout(title, rung, ladder, page.description) }
  })
  return [{ ...whole, about: ladderAbout(title, ladder, whole.description) }, ...rungs, ...withdrawnPages(ladder, edition)]
}

/** Every page but the first, those of the ladders and their cards, and the search page, which says what lies in the index. */
export function otherPages(curriculum: MeasuredCurriculum, { examples, editions }: Beside): SitePage[] {
  const { handbook, ladders, pages } = curriculum
  return [
    ...pages.map((page) => ({ ...contentPage(page), about: pageAbout(handbook.title, page) })),
    findYourRungPage(curriculum),
    myLaddersPage(curriculum),
    equipmentPage(ladders),
    movementMap(ladders),
    sourcesPage(),
    ...checkPages(examples),
    changesPage(curriculum, editions),
    cardsPage(curriculum),
    notFoundPage(handbook.address),
  ]
}

/** One page finished: in its frame, in one language, with what was drawn in its place. */
export const writtenPage = (page: SitePage, frame: Frame, drawn: Drawn, tongue: Tongue): WrittenPage => ({ address: page.address, html: withDrawn(framed(page, frame, tongue), drawn, page.address) })
