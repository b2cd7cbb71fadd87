import { placeOf, type Path, type Place, type Places } from '../ladder/finding.ts'
import { textsIn, type Translated, type WordLists, type Words } from '../ladder/translation.ts'
import type { Change, Subject } from './change.ts'
import { change } from './make.ts'

/** A ladder or page, as far as its translations go. */
type Spoken = { readonly title: string; readonly places: Places; readonly translations?: readonly Translated[] }

/** One language of the same ladder or page, before and after. */
type Pair = { readonly language: string; readonly was: Translated | undefined; readonly is: Translated | undefined }

function pairs({ translations: before = [] }: Spoken, { translations: after = [] }: Spoken): Pair[] {
  const languages = [...new Set([...before, ...after].map(({ language }) => language))]
  const of = (all: readonly Translated[], language: string): Translated | undefined => all.find((one) => one.language === language)
  return languages.map((language) => ({ language, was: of(before, language), is: of(after, language) }))
}

const text = (words: Words | undefined): string | undefined => (words === undefined ? undefined : textsIn(words).join('\n'))
const side = (said: string | undefined) => (said === undefined ? undefined : { text: said })

/** What was typed in the translations of one ladder or page: wording at most, since what counts stands in the original. */
export function spokenChanges(before: Spoken, after: Spoken, subject: Subject): Change[] {
  return pairs(before, after).flatMap(({ language, was, is }) => {
    const at = ({ places }: Spoken, ...path: Path): Place => placeOf(places, ['translations', language, ...path])
    if (!was?.there && !is?.there) return []
    if (!was?.there) return [change({ kind: 'translation-added', subject, name: language, weight: 'wording', after: side(after.title), is: at(after) })]
    if (!is?.there) return [change({ kind: 'translation-withdrawn', subject, name: language, weight: 'wording', before: side(before.title), was: at(before) })]
    const said = new Map(was.parts.map((part) => [part.name, text(part.said)]))
    const now = new Map(is.parts.map((part) => [part.name, text(part.said)]))
    return [...new Set([...said.keys(), ...now.keys()])].flatMap((name) => {
      if (said.get(name) === now.get(name) || !now.has(name) || !said.has(name)) return []
      const path = name.split('/')
      return [change({ kind: 'translation-reworded', subject, name: `${language} ${name}`, weight: 'wording', before: side(said.get(name)), after: side(now.get(name)), was: at(before, ...path), is: at(after, ...path) })]
    })
  })
}

/** Parts whose translation stood and stands no longer, or the other way round, by what was typed. */
export function spokenFollows(before: Spoken, after: Spoken, subject: Subject, causes: readonly string[]): Change[] {
  if (causes.length === 0) return []
  return pairs(before, after).flatMap(({ language, was, is }) => {
    const then = new Map((was?.parts ?? []).map((part) => [part.name, part.standing]))
    const moved = (from: string, to: string): string[] => (is?.parts ?? []).filter(({ name, standing }) => then.get(name) === from && standing === to).map(({ name }) => name)
    const at = placeOf(after.places, ['translations', language])
    const [gone, come] = [moved('current', 'stale'), moved('stale', 'current')]
    return [
      ...(gone.length > 0 ? [change({ kind: 'translation-no-longer-stands', subject, name: language, weight: 'wording', after: { text: gone.join(', ') }, is: at, causes })] : []),
      ...(come.length > 0 ? [change({ kind: 'translation-stands-again', subject, name: language, weight: 'wording', after: { text: come.join(', ') }, is: at, causes })] : []),
    ]
  })
}

/** Words shared by all that are said otherwise: equipment, movements, words of the interface. */
export function listChanges(before: WordLists = new Map(), after: WordLists = new Map()): Change[] {
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((language) => {
    const [was, is] = [before, after].map((lists) => lists.get(language) ?? new Map<string, string>()) as [ReadonlyMap<string, string>, ReadonlyMap<string, string>]
    return [...new Set([...was.keys(), ...is.keys()])].flatMap((phrase) =>
      was.get(phrase) === is.get(phrase) ? [] : [change({ kind: 'translation-reworded', subject: {}, name: `${language} ${phrase}`, weight: 'wording', before: side(was.get(phrase)), after: side(is.get(phrase)) })],
    )
  })
}
