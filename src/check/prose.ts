import type { Curriculum, Ladder, Page, Rung } from '../ladder/curriculum.ts'
import { placeOf, type Path, type Place, type Places } from '../ladder/finding.ts'
import { onceInARow, onceOfEach } from '../quantity/once.ts'
import { linksIn } from '../read/links.ts'
import { pictureFile } from '../read/pictures.ts'

/** A piece of a ladder's prose, with the way to where it stands. */
export type Prose = { readonly path: Path; readonly text: string }

/** Everything a coach wrote below the front matter, piece by piece; put together once, though a dozen rules ask. */
export const proseOf = onceInARow(({ intro, rungs }: Pick<Ladder, 'intro' | 'rungs'>): readonly Prose[] => [{ path: ['intro'], text: intro }, ...rungs.flatMap(ofRung)])

/** All that a coach wrote and a page shows as Markdown: the lines of the front matter, and the prose. */
export const writtenIn = onceInARow((ladder: Ladder): readonly Prose[] => [...frontOf(ladder), ...proseOf(ladder)])

/** Every link and picture of a ladder, those of its front matter apart; looked for once, though three rules ask. */
export const linksOf = onceInARow((ladder: Ladder) => ({ front: linked(frontOf(ladder)), prose: linked(proseOf(ladder)) }))

const linked = (texts: readonly Prose[]) => texts.flatMap(({ path, text }) => linksIn(text).map((link) => ({ path, link })))

/** The lines of the front matter that a page shows. */
function frontOf(ladder: Ladder): Prose[] {
  const lines = (path: Path, texts: readonly string[]): Prose[] => texts.map((text, index) => ({ path: [...path, index], text }))
  return [
    ...lines(['form'], ladder.form),
    ...lines(['stop'], ladder.stop),
    ...lines(['ask_first'], ladder.ask_first),
    ...ladder.rungs.flatMap(({ id, form, cautions, first_side }) => [
      ...lines(['rungs', id, 'form'], form),
      ...lines(['rungs', id, 'cautions'], cautions),
      { path: ['rungs', id, 'first_side'], text: first_side ?? '' },
    ]),
  ]
}

/** A picture a text shows: its file as findings name it, and where it was written. */
export type ShownPicture = { readonly file: string; readonly place: Place }

/** Every picture that pages and ladders show, in order; those that are no file of the workspace have a rule of their own. */
export const shownPictures = ({ ladders, pages }: Pick<Curriculum, 'ladders' | 'pages'>): ShownPicture[] => [...pages.flatMap(ofPage), ...ladders.flatMap(ladderPictures)]

/** Those of one ladder. */
export const ladderPictures = onceOfEach((ladder: Ladder) => picturesIn(ladder.places, proseOf(ladder).map(({ path, text }) => ({ path: [...path, 'text'], text }))))

/** Kept with the page, as with a ladder: of a thousand, a save makes one another. */
const ofPage = onceOfEach(({ body, places }: Page) => picturesIn(places, [{ path: ['body'], text: body }]))

const picturesIn = (places: Places, texts: readonly Prose[]): readonly ShownPicture[] =>
  texts.filter(({ text }) => text.includes('![')).flatMap(({ path, text }) => {
    const place = placeOf(places, path)
    return linksIn(text).flatMap(({ href, alt, line }) => {
      const file = alt === undefined ? undefined : pictureFile(place.file, href)
      return file === undefined ? [] : [{ file, place: { ...place, line: place.line + line } }]
    })
  })

function ofRung({ id, words }: Rung): Prose[] {
  if (!words) return []
  const at = (part: Path, text: string): Prose => ({ path: ['rungs', id, ...part], text })
  return [
    at(['section'], words.intro),
    at(['set-up'], words.set_up ?? ''),
    ...(words.full_rep ?? []).map((step, index) => at(['full-rep', index], step)),
    ...(words.cues ?? []).map((cue, index) => at(['cues', index], cue)),
    ...(words.faults ?? []).flatMap(({ seen, cause, say, remedy }, index) => [seen, cause, say, remedy].map((text) => at(['faults', index], text))),
    ...words.notes.map(({ body }) => at(['notes'], body)),
  ]
}
