/**
 * What a page is about, in the vocabulary of schema.org, for programs that read pages.
 * The types of that vocabulary hold each shape when the program is checked; nothing of them is in the program.
 */
import type { BreadcrumbList, ExercisePlan, ItemList, LearningResource, WebSite } from 'schema-dts'
import { isMissing } from '../quantity/outcome.ts'
import type { FullEntry } from '../measure/entry.ts'
import type { MeasuredCurriculum, MeasuredLadder, MeasuredPage, MeasuredRung } from '../measure/measure.ts'
import { ladderAddress, pageAddress, rungAddress, type Address } from './address.ts'
import { loadText } from './figures.ts'
import { raw, say, type Html, type Words } from './html.ts'

/** How a page says words and addresses: in its language, and whole where the handbook's address is known. */
export type Says = { readonly to: (address: Address) => string; readonly words: (words: Words) => string; readonly language: string; readonly organisation: string }

/** One thing a page is about. */
export type Thing = Readonly<Record<string, unknown>>
export type About = (says: Says) => readonly Thing[]

/** JSON that no reader of HTML takes for the end of its block or for markup. */
export const blockText = (value: unknown): string =>
  JSON.stringify(value).replace(/[<>&\u2028\u2029]/g, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`)

/** A block of data: a browser does not run it, and a policy against scripts does not stop it. */
export const dataBlock = (things: readonly Thing[]): Html => raw(things.length === 0 ? '' : `<script type="application/ld+json">${blockText({ '@context': 'https://schema.org', '@graph': things })}</script>\n`)

const publisher = (organisation: string) => ({ '@type': 'Organization', name: organisation }) as const

/** The way to a page from the first one. */
function trail(says: Says, steps: readonly (readonly [name: string, address: Address])[]): Thing {
  return {
    '@type': 'BreadcrumbList',
    itemListElement: steps.map(([name, address], index) => ({ '@type': 'ListItem', position: index + 1, name, item: says.to(address) }) as const),
  } satisfies BreadcrumbList
}

const list = (says: Says, name: string, items: readonly (readonly [name: string, address: Address])[]) =>
  ({
    '@type': 'ItemList',
    name,
    numberOfItems: items.length,
    itemListOrder: 'https://schema.org/ItemListOrderAscending',
    itemListElement: items.map(([title, address], index) => ({ '@type': 'ListItem', position: index + 1, name: title, url: says.to(address) }) as const),
  }) satisfies ItemList

/** The handbook and its ladders. */
export const handbookAbout =
  ({ handbook, ladders }: MeasuredCurriculum): About =>
  (says) => [
    { '@type': 'WebSite', name: handbook.title, url: says.to('/'), inLanguage: says.language, version: handbook.edition, publisher: publisher(says.organisation) } satisfies WebSite,
    list(says, handbook.title, ladders.map(({ id, title }) => [title, ladderAddress(id)] as const)),
  ]

/** What a standard asks, in whole repetitions or in words. */
const standardOf = ({ sets, amount: asked }: FullEntry, says: Says) =>
  asked?.unit === 'reps' ? { repetitions: { '@type': 'QuantitativeValue', value: sets * asked.value, unitText: says.words(say`repetitions in ${sets} sets`) } as const } : {}

/** A ladder: what is learned, its rungs in order, the way to it. */
export const ladderAbout =
  (handbook: string, ladder: MeasuredLadder, description: Words): About =>
  (says) => [
    {
      '@type': 'LearningResource',
      name: ladder.title,
      description: says.words(description),
      url: says.to(ladderAddress(ladder.id)),
      inLanguage: says.language,
      learningResourceType: says.words('ladder of exercises'),
      teaches: says.words(ladder.movement),
      publisher: publisher(says.organisation),
    } satisfies LearningResource,
    list(says, ladder.title, ladder.rungs.map(({ id, title }) => [title, rungAddress(ladder.id, id)] as const)),
    trail(says, [[handbook, '/'], [ladder.title, ladderAddress(ladder.id)]]),
  ]

/** A rung: the exercise, its load, its standard and rest, the way to it. */
export const rungAbout =
  (handbook: string, rung: MeasuredRung, ladder: MeasuredLadder, description: Words): About =>
  (says) => [
    {
      '@type': 'ExercisePlan',
      name: rung.title,
      description: says.words(description),
      url: says.to(rungAddress(ladder.id, rung.id)),
      inLanguage: says.language,
      exerciseType: says.words(ladder.movement),
      activityFrequency: says.words(say`${ladder.sessions_per_week} sessions a week`),
      restPeriods: says.words(say`${ladder.standard.rest_s} s between sets`),
      ...standardOf(rung.standard, says),
      ...(isMissing(rung.outcome) ? {} : { intensity: says.words(say`${rung.outcome.quantity.name}: ${loadText(rung)}`) }),
      isPartOf: { '@type': 'LearningResource', name: ladder.title, url: says.to(ladderAddress(ladder.id)) },
      publisher: publisher(says.organisation),
    } satisfies ExercisePlan,
    trail(says, [[handbook, '/'], [ladder.title, ladderAddress(ladder.id)], [rung.title, rungAddress(ladder.id, rung.id)]]),
  ]

/** A hand-written page. */
export const pageAbout =
  (handbook: string, page: MeasuredPage): About =>
  (says) => [
    { '@type': 'LearningResource', name: page.title, description: page.summary, url: says.to(pageAddress(page.id)), inLanguage: says.language, publisher: publisher(says.organisation) } satisfies LearningResource,
    trail(says, [[handbook, '/'], [page.title, pageAddress(page.id)]]),
  ]
