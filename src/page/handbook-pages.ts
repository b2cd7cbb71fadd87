import type { MeasuredCurriculum } from '../measure/measure.ts'
import type { Address } from './address.ts'
import { checkPages, type Examples } from './check-pages.ts'
import { framed } from './frame.ts'
import { homePage } from './home-page.ts'
import { raw, type Html } from './html.ts'
import { ladderPage } from './ladder-page.ts'
import { contentPage, notFoundPage, searchPage, sourcesPage } from './other-pages.ts'
import { rungPage } from './rung-page.ts'
import type { Frame, SitePage } from './site-page.ts'

/** A finished page: where it goes, and its bytes. */
export type WrittenPage = { readonly address: Address; readonly html: string }

/** Every page of a handbook, in a fixed order. `diagrams` holds each ladder's drawing by its id, `examples` each rule's two ladders. */
export function handbookPages(curriculum: MeasuredCurriculum, diagrams: ReadonlyMap<string, Html>, examples: Examples): WrittenPage[] {
  const { handbook, ladders, pages } = curriculum
  const frame: Frame = {
    title: handbook.title,
    organisation: handbook.organisation,
    edition: handbook.edition,
    contact: handbook.contact,
    language: handbook.languages[0] ?? 'en',
    safety: pages.find(({ id }) => id === 'safety'),
  }
  const made: SitePage[] = [
    homePage(curriculum),
    ...ladders.flatMap((ladder) => [ladderPage(ladder, diagrams.get(ladder.id) ?? raw('')), ...ladder.rungs.map((rung) => rungPage(rung, ladder))]),
    ...pages.map(contentPage),
    sourcesPage(),
    ...checkPages(examples),
    searchPage(),
    notFoundPage(),
  ]
  return made.map((page) => ({ address: page.address, html: framed(page, frame) }))
}
