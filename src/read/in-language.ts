import { lastOfEach } from '../quantity/once.ts'
import type { Fault, Ladder, Page, Rung, RungWords, Stretch } from '../ladder/curriculum.ts'
import type { Handbook } from '../ladder/schema.ts'
import { rungPart, stands, type Translated, type WordLists, type Words } from '../ladder/translation.ts'
import { becausePart, pageSections, sectionPart } from './parts.ts'

type AnyLadder = Omit<Ladder, 'rungs'> & { readonly rungs: readonly Rung[] }

/** What can be put into a language: a curriculum, as it was read or measured. */
type Speaking = { readonly handbook: Handbook; readonly ladders: readonly AnyLadder[]; readonly pages: readonly Page[]; readonly words?: WordLists }

/**
 * The curriculum with its words in one of its languages: the same numbers, the same ids, nothing measured again.
 * A part whose translation does not stand keeps the words it was written in, and is named in `spoken.fellBack`.
 *
 * Shape   a curriculum to one of the same type; the very same value for the language it is written in, or one it does not list.
 */
export function inLanguage<Of extends Speaking>(curriculum: Of, language: string): Of {
  const [original] = curriculum.handbook.languages
  if (original === undefined || language === original || !curriculum.handbook.languages.includes(language)) return curriculum
  const list = curriculum.words?.get(language)
  const phrase = (text: string): string => list?.get(text) ?? text
  return {
    ...curriculum,
    handbook: handbookIn(curriculum.handbook, phrase),
    ladders: curriculum.ladders.map((ladder) => spokenOnce(ladder, language, [original, list], () => ladderIn(ladder, standIn(ladder, language, original), phrase))),
    pages: curriculum.pages.map((page) => spokenOnce(page, language, [original, list], () => pageIn(page, standIn(page, language, original)))),
  }
}

/** A ladder or page in a language, made again only when it is another, or what is shared: the words beside it are its own. */
const spokenOnce = <Of extends Translatable>(one: Of, language: string, shared: readonly unknown[], make: () => Of): Of => spokenLast(wordsIn(one, language) ?? one, [one, language, ...shared], make) as Of // what went in is of the type that came out
const spokenLast = lastOfEach<unknown>()

type Translatable = { readonly translations?: readonly Translated[] }
const wordsIn = ({ translations = [] }: Translatable, language: string): Translated | undefined => translations.find((one) => one.language === language)

type Phrase = (text: string) => string

function handbookIn(handbook: Handbook, phrase: Phrase): Handbook {
  const { title, organisation, contact, editions } = handbook
  const said = editions?.map(({ note, ...edition }) => ({ ...edition, ...(note === undefined ? {} : { note: phrase(note) }) }))
  return { ...handbook, title: phrase(title), organisation: phrase(organisation), contact: phrase(contact), ...(said ? { editions: said } : {}) }
}

/** The words that stand for each part, and what the whole is then spoken in. */
type StandIn = { readonly words: ReadonlyMap<string, Words>; readonly spoken: { readonly language: string; readonly original: string; readonly fellBack: ReadonlySet<string> } }

function standIn(one: Translatable, language: string, original: string): StandIn {
  const parts = wordsIn(one, language)?.parts ?? []
  return {
    words: new Map(parts.flatMap((part) => (stands(part) && part.said !== undefined ? [[part.name, part.said] as const] : []))),
    spoken: { language, original, fellBack: new Set(parts.filter((part) => !stands(part)).map(({ name }) => name)) },
  }
}

const line = (said: Words | undefined, otherwise: string): string => (typeof said === 'string' ? said : otherwise)
/** What is optional stays out where it was not written. */
const optional = (said: Words | undefined, otherwise: string | undefined): string | undefined => (otherwise === undefined ? undefined : line(said, otherwise))
const isLines = (said: Words | undefined): said is readonly string[] => Array.isArray(said) && said.every((one) => typeof one === 'string')
const lines = <Otherwise extends readonly string[] | undefined>(said: Words | undefined, otherwise: Otherwise): Otherwise | readonly string[] => (isLines(said) ? said : otherwise)
const keysOf = (said: Words | undefined): Readonly<Record<string, Words>> => (typeof said === 'object' && !Array.isArray(said) ? (said as Readonly<Record<string, Words>>) : {})

function ladderIn<Of extends AnyLadder>(ladder: Of, { words, spoken }: StandIn, phrase: Phrase): Of {
  return {
    ...ladder,
    spoken,
    title: line(words.get('title'), ladder.title),
    movement: phrase(ladder.movement),
    equipment: ladder.equipment.map(phrase),
    intro: line(words.get('intro'), ladder.intro),
    form: lines(words.get('form'), ladder.form),
    stop: lines(words.get('stop'), ladder.stop),
    ask_first: lines(words.get('ask_first'), ladder.ask_first),
    amended: ladder.amended.map((amended, index) => ({ ...amended, by: phrase(amended.by), because: line(words.get(becausePart(index)), amended.because) })),
    withdrawn_notes: ladder.withdrawn_notes.map((withdrawn) => ({ ...withdrawn, note: phrase(withdrawn.note), because: phrase(withdrawn.because), layer: phrase(withdrawn.layer) })),
    layer: phrase(ladder.layer),
    rungs: ladder.rungs.map((rung) => rungIn(rung, words, phrase)),
  }
}

function rungIn<Of extends Rung>(rung: Of, words: ReadonlyMap<string, Words>, phrase: Phrase): Of {
  const head = keysOf(words.get(rungPart(rung.id)))
  return {
    ...rung,
    title: line(head.title, rung.title),
    cautions: lines(head.cautions, rung.cautions),
    form: lines(head.form, rung.form),
    first_side: optional(head.first_side, rung.first_side),
    equipment: rung.equipment.map(phrase),
    words: rung.words && proseIn(rung.words, (section) => words.get(rungPart(rung.id, section))),
  }
}

function proseIn(written: RungWords, said: (section: string) => Words | undefined): RungWords {
  const rows = said('faults')
  return {
    intro: line(said('intro'), written.intro),
    set_up: optional(said('set-up'), written.set_up),
    full_rep: lines(said('full-rep'), written.full_rep),
    cues: lines(said('cues'), written.cues),
    faults: written.faults && Array.isArray(rows) ? rows.map(faultOf) : written.faults,
    notes: written.notes.map(({ title, body }) => ({ title, body: line(said('notes'), body) })),
  }
}

function faultOf(row: string | readonly string[]): Fault {
  const [seen = '', cause = '', say = '', remedy = ''] = typeof row === 'string' ? [row] : row
  return { seen, cause, say, remedy }
}

function pageIn<Of extends Page>(page: Of, { words, spoken }: StandIn): Of {
  const stretches = stretchesOf(page, words, spoken)
  return {
    ...page,
    spoken,
    title: line(words.get('title'), page.title),
    summary: line(words.get('summary'), page.summary),
    body: stretches.map(({ body }) => body).join('\n\n'),
    stretches,
  }
}

/** The body in stretches of one language each. Headings keep the addresses they have in the original. */
function stretchesOf({ body }: Page, words: ReadonlyMap<string, Words>, { language, original }: StandIn['spoken']): Stretch[] {
  const { intro, sections } = pageSections(body)
  const said = words.get('intro')
  const pieces: Stretch[] = intro === '' ? [] : [typeof said === 'string' ? { language, body: said } : { language: original, body: intro }]
  for (const { id, title, body: below } of sections) {
    const section = keysOf(words.get(sectionPart(id)))
    const [heading, text] = [line(section.title, title), line(section.body, below)]
    pieces.push({ language: section.title === undefined ? original : language, body: `## ${heading} {#${id}}\n\n${text}`.trimEnd() })
  }
  return pieces.reduce<Stretch[]>((all, piece) => {
    const last = all.at(-1)
    return last?.language === piece.language ? [...all.slice(0, -1), { language: piece.language, body: `${last.body}\n\n${piece.body}` }] : [...all, piece]
  }, [])
}
