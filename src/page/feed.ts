import { editionKind } from '../compare/compare.ts'
import { digestOf } from '../ladder/digest.ts'
import type { MeasuredCurriculum } from '../measure/measure.ts'
import { EDITION_SAYS, isTold, type EditionChanges } from './changes-page.ts'
import { escaped } from './escaped.ts'
import { say, type Part } from './html.ts'
import type { Tongue } from './tongue.ts'
import { spoken } from './written.ts'

/** A day as Atom wants it; an edition without one is as old as the format. */
const time = (on: string | undefined): string => `${on ?? '1970-01-01'}T00:00:00Z`

/** The feed of editions, in Atom: an entry an edition, the newest first. */
export function feed({ handbook }: MeasuredCurriculum, editions: readonly EditionChanges[], tongue: Tongue): string {
  const text = (words: Part): string => escaped(spoken(words, tongue))
  const name = (part: string): string => `urn:rungbook:${digestOf([handbook.organisation, handbook.title, part, ...(tongue.foreign ? [tongue.language] : [])])}`
  const entries = editions.map((changes) => {
    const says = isTold(changes) ? EDITION_SAYS[editionKind(changes.comparison)] : 'What changed cannot be said.'
    return `  <entry>
    <id>${name(changes.edition)}</id>
    <title>${text(say`Edition ${changes.edition}`)}</title>
    <updated>${time(changes.on)}</updated>
    <link rel="alternate" href="changes/#edition-${changes.edition.toLowerCase().replace(/[^a-z0-9]+/g, '-')}"/>
    <summary>${text([changes.note, ' ', says]).trim()}</summary>
  </entry>
`
  })
  return `<?xml version="1.0" encoding="utf-8"?>
<feed xmlns="http://www.w3.org/2005/Atom"${tongue.foreign ? ` xml:lang="${tongue.language}"` : ''}>
  <id>${name('feed')}</id>
  <title>${text(say`${handbook.title}: editions`)}</title>
  <author><name>${escaped(handbook.organisation)}</name></author>
  <updated>${time(editions.map(({ on }) => on).filter((on) => on !== undefined).toSorted().at(-1))}</updated>
  <link rel="self" href="feed.xml"/>
${entries.join('')}</feed>
`
}
