import type { Fault, Ladder, Page, Rung } from '../ladder/curriculum.ts'
import { rungPart, type Part, type Words } from '../ladder/translation.ts'
import { headingSlug, sectionsOf } from './markdown.ts'

const isWritten = (words: Words | undefined): words is Words => words !== undefined && (typeof words === 'object' && !Array.isArray(words) ? true : words.length > 0)

const part = (key: string, words: Words | undefined, more: Partial<Part> = {}): Part[] => (isWritten(words) ? [{ name: key, key, words, ...more }] : [])

const row = ({ seen, cause, say, remedy }: Fault): readonly string[] => [seen, cause, say, remedy]

/** Everything in a ladder that is words, part by part, in the order of the file. Numbers, ids, equipment and movement are not among them. */
export const ladderParts = ({ title, amended, intro, form, stop, ask_first, rungs }: Omit<Ladder, 'rungs'> & { readonly rungs: readonly Rung[] }): Part[] => [
  ...part('title', title),
  ...amended.flatMap(({ because, by }, index) => part('because', because, { name: becausePart(index), by })),
  ...part('intro', intro),
  ...part('form', form),
  ...part('stop', stop),
  ...part('ask_first', ask_first),
  ...rungs.flatMap(rungParts),
]

/** How the reason of a ladder's n-th amendment is called. */
export const becausePart = (index: number): string => (index === 0 ? 'because' : `because:${index + 1}`)

function rungParts({ id, title, cautions, form, first_side, words }: Rung): Part[] {
  const head = { title, ...(cautions.length > 0 ? { cautions } : {}), ...(form.length > 0 ? { form } : {}), ...(first_side === undefined ? {} : { first_side }) }
  const section = (name: string, written: Words | undefined): Part[] => part(rungPart(id, name), written)
  return [
    ...part(rungPart(id), head),
    ...section('intro', words?.intro),
    ...section('set-up', words?.set_up),
    ...section('full-rep', words?.full_rep),
    ...section('cues', words?.cues),
    ...section('faults', words?.faults?.map(row)),
    ...section('notes', words?.notes[0]?.body),
  ]
}

/** One `##` section of a page: what it is called, and all below it. */
export type PageSection = { readonly id: string; readonly title: string; readonly body: string; readonly line: number }

/** A page's body at its `##` headings; each is known by its {#id}, or else by the slug of its words. Lines count from 0. */
export function pageSections(body: string): { readonly intro: string; readonly sections: readonly (PageSection & { readonly named: boolean })[] } {
  const { intro, sections } = sectionsOf(body, 0)
  const lines = body.split('\n')
  const used = new Map<string, number>()
  return {
    intro,
    sections: sections.map(({ id, title, line, from, to }) => {
      const name = id ?? (headingSlug(title) || 'part')
      const nth = (used.get(name) ?? 0) + 1
      used.set(name, nth)
      return { id: nth === 1 ? name : `${name}-${nth}`, named: id !== undefined, title, line, body: lines.slice(from, to).join('\n').trim() }
    }),
  }
}

/** Everything in a page that is words: its title, its summary, its introduction, and each `##` section with its heading. */
export function pageParts({ title, summary, body }: Page): Part[] {
  const { intro, sections } = pageSections(body)
  return [...part('title', title), ...part('summary', summary), ...part('intro', intro), ...sections.flatMap((section) => part(sectionPart(section.id), { title: section.title, body: section.body }))]
}

/** How a section of a page is called among its parts; the three other parts keep their names. */
export const sectionPart = (id: string): string => (id === 'title' || id === 'summary' || id === 'intro' ? `section:${id}` : id)
