import { cardPages } from '../../src/page/cards-page.ts'
import type { Drawn } from '../../src/page/drawn.ts'
import { firstPage, frameOf, ladderPages, otherPages, writtenPage, type Beside, type WrittenPage } from '../../src/page/handbook-pages.ts'
import { raw, type Html } from '../../src/page/html.ts'
import { searchChoices } from '../../src/page/search-choices.ts'
import { searchPage } from '../../src/page/search-page.ts'
import type { Frame } from '../../src/page/site-page.ts'
import type { Speech } from '../../src/page/speech.ts'

/** Every page of a handbook in one language, as a build writes it, in a fixed order. */
export function everyPage(speech: Speech, { diagrams = new Map(), drawn = new Map(), languages = [], pdfs = false, ...beside }: Beside & { diagrams?: ReadonlyMap<string, Html>; drawn?: Drawn; languages?: Frame['languages']; pdfs?: boolean }): WrittenPage[] {
  const { curriculum, tongue, tongueOf } = speech
  const frame = frameOf(curriculum, languages, tongue)
  return [
    writtenPage(firstPage(curriculum), frame, drawn, tongue),
    ...curriculum.ladders.flatMap((ladder) => [...ladderPages(ladder, diagrams.get(ladder.id) ?? raw(''), curriculum), ...cardPages(ladder, curriculum, pdfs)].map((page) => writtenPage(page, frame, drawn, tongueOf(ladder)))),
    ...[...otherPages(curriculum, beside), searchPage(searchChoices(speech))].map((page) => writtenPage(page, frame, drawn, tongue)),
  ]
}
