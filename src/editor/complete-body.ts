import { ladderChoices, rungChoices, type Around, type Choice } from './choices.ts'
import type { Completion } from './complete.ts'
import type { Outline } from './outline.ts'

/** The headings a rung may hold, with what each begins with. */
const HEADINGS: Readonly<Record<string, string>> = {
  'Set up': '\n- ',
  'Full rep': '\n- Start: \n- End: ',
  Cues: '\n- ',
  Faults: '\n| seen | likely cause | say | if it stays |\n|---|---|---|---|\n| ',
  Notes: '\n',
}

/** Letters of a word of the glossary before it is offered. Chosen by us. */
const FEWEST = 2

/** What may be written in the body: where a link leads, a rung's heading, what a rung's section holds, a word of the glossary. */
export function bodyCompletions(outline: Outline, offset: number, around: Around): Completion[] {
  const line = outline.text.slice(0, offset).split(/\r\n|\n|\r/).at(-1) ?? ''
  const typed = (pattern: RegExp): string | undefined => pattern.exec(line)?.[1]
  const as = (kind: Completion['kind'], letters: string, choices: readonly Choice[], insert = (label: string) => label): Completion[] =>
    choices.map((choice) => ({ ...choice, kind, insert: insert(choice.label), from: offset - letters.length, to: offset }))
  const rung = /rung:([a-z0-9-]+)\/([a-z0-9-]*)$/.exec(line)
  if (rung) return as('value', rung[2] ?? '', rungChoices(rung[1], around))
  const ladder = typed(/rung:([a-z0-9-]*)$/)
  if (ladder !== undefined) return as('value', ladder, ladderChoices(around))
  const link = typed(/\]\(([^)\s]*)$/)
  if (link !== undefined) return as('value', link, [{ label: 'rung:', detail: 'a rung or ladder' }, ...pages(around)])
  const anchor = typed(/^## .*\{#([a-z0-9-]*)$/)
  if (anchor !== undefined) return as('value', anchor, rungChoices(outline.ladder, around))
  const section = typed(/^### ?(.*)$/)
  if (section !== undefined) return isPage(outline) ? [] : as('word', section, Object.keys(HEADINGS).map((label) => ({ label, detail: 'heading of a rung' })), (label) => `${line === '###' ? ' ' : ''}${label}${HEADINGS[label] ?? ''}`)
  const heading = typed(/^## (.*)$/)
  if (heading !== undefined) return isPage(outline) ? [] : as('word', heading, sections(outline, around))
  const word = typed(/([\p{Letter}-]+)$/u)
  return word === undefined || word.length < FEWEST ? [] : as('word', word, glossary(around).filter(({ label }) => label.toLowerCase().startsWith(word.toLowerCase())), (label) => (/^\p{Lowercase}/u.test(word) ? lowered(label) : label))
}

const isPage = ({ kind }: Outline): boolean => kind === 'page' || kind === 'page-translation'

const pages = ({ curriculum }: Around): Choice[] => (curriculum?.pages ?? []).map(({ id, title }) => ({ label: `/${id}/`, detail: title }))

/** A heading for each rung that has none. */
function sections(outline: Outline, around: Around): Choice[] {
  const there = new Set(outline.mentions.filter(({ from }) => from >= outline.body_from).map(({ rung }) => rung))
  return rungChoices(outline.ladder, around).filter(({ label }) => !there.has(label)).map(({ label, detail }) => ({ label: `${detail ?? label} {#${label}}`, detail: 'heading of a rung' }))
}

/** The terms of the glossary, each with what it means. */
const glossary = ({ curriculum }: Around): Choice[] =>
  [...(curriculum?.pages.find(({ id }) => id === 'glossary')?.body ?? '').matchAll(/^(\p{Letter}[^\n]*)\n: +([^\n]+)/gmu)].map(([, label = '', says = '']) => ({ label, detail: 'glossary', says }))

/** "Aim" within a sentence, unless it is written in capitals throughout. */
const lowered = (term: string): string => (/^\p{Uppercase}{2}/u.test(term) ? term : `${term.slice(0, 1).toLowerCase()}${term.slice(1)}`)
