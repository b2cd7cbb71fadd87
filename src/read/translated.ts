import { lastOfEach, once } from '../quantity/once.ts'
import type { Curriculum, Ladder, Page, SourceFile } from '../ladder/curriculum.ts'
import { digestOf } from '../ladder/digest.ts'
import { pathKey, type Finding, type Place, type Places } from '../ladder/finding.ts'
import { stands, type Part, type Translated, type TranslatedPart } from '../ladder/translation.ts'
import { nearest } from './nearest.ts'
import { ladderParts, pageParts } from './parts.ts'
import { languageIn, readLadderTranslation, readPageTranslation, readWordList, type TranslationFile } from './read-translation.ts'
import { shapeDiffers } from './shape.ts'
import { atTop, type Reading } from './text.ts'

/** What a layer has in other languages, as it lies there, and what its handbook.yaml says of languages. */
export type LayerWords = { readonly by: string; readonly languages: readonly string[]; readonly files: readonly SourceFile[] }

const RULE = 'translations-fit'

/** A file of one layer in one language. */
type Found = { readonly layer: LayerWords; readonly language: string; readonly read: TranslationFile }

/** A file is read once for as long as its bytes are held; a ladder or page is another only when it, or what is laid beside it, is. */
const ladderFiles = lastOfEach<Reading<TranslationFile>>()
const pageFiles = lastOfEach<Reading<TranslationFile>>()
const wordFiles = lastOfEach<Reading<ReadonlyMap<string, string>>>()
const joined = lastOfEach<ReadonlyMap<string, string>>()
const ladderOnce = lastOfEach<Ladder>()
const pageOnce = lastOfEach<Page>()

const NO_WORDS: ReadonlyMap<string, string> = new Map()

/**
 * Lays what the layers have in other languages beside the ladders and pages it is of.
 *
 * Shape   a curriculum and its layers' files, lowest first, to the same curriculum; findings are added to those there are.
 */
export function withTranslations(curriculum: Curriculum, layers: readonly LayerWords[], findings: Finding[], readLadder: typeof readLadderTranslation): Curriculum {
  findings.push(...layers.flatMap(unlisted))
  const [original, ...others] = [...new Set(curriculum.handbook.languages)]
  const words = wordLists(curriculum.handbook.languages, layers, findings)
  const shared = words.size > 0 ? { words } : {}
  if (original === undefined || others.length === 0) return { ...curriculum, ...shared }
  const ladders = filesBy('ladders/', others, layers, findings, (name, bytes) => ladderFiles(bytes, [name], () => readLadder(name, bytes)))
  const pages = filesBy('content/', others, layers, findings, (name, bytes) => pageFiles(bytes, [name], () => readPageTranslation(name, bytes)))
  const top = layers.at(-1)
  const lists = others.map((language) => words.get(language) ?? NO_WORDS)
  const madeFrom = (found: readonly Found[]): readonly unknown[] => [top?.by, ...others, ...lists, ...found.flatMap(({ layer, language, read }) => [layer === top, layer.by, language, read])]
  const beside = <Of extends Ladder | Page>(one: Of, parts: readonly Part[], found: readonly Found[], phrases: readonly string[]): Of => ({
    ...one,
    ...withPlaces(one, found),
    translations: others.map((language, index) => inOne(language, parts, found.filter((file) => file.language === language), top, { phrases, list: lists[index] ?? NO_WORDS })),
  })
  const ladderBeside = (ladder: Ladder, found: readonly Found[]): Ladder => ladderOnce(ladder, madeFrom(found), () => beside(ladder, ladderParts(ladder), found, phrasesOf(ladder)))
  const pageBeside = (page: Page, found: readonly Found[]): Page => pageOnce(page, madeFrom(found), () => beside(page, pageParts(page), found, []))
  findings.push(...astray(ladders, 'ladder', curriculum.ladders), ...astray(pages, 'page', curriculum.pages))
  return {
    ...curriculum,
    ...shared,
    ladders: curriculum.ladders.map((ladder) => ladderBeside(ladder, ladders.get(ladder.id) ?? [])),
    pages: curriculum.pages.map((page) => pageBeside(page, pages.get(page.id) ?? [])),
  }
}

/** Words of a ladder that many share, and which stand in words.LANG.yaml. */
const phrasesOf = ({ movement, equipment, rungs, withdrawn_notes }: Ladder): string[] => [
  ...new Set([movement, ...equipment, ...rungs.flatMap((rung) => rung.equipment), ...withdrawn_notes.flatMap(({ note, because }) => [note, because])]),
]

/** Files whose language this layer's handbook.yaml does not list. */
const unlisted = ({ languages, files }: LayerWords): Finding[] =>
  files.flatMap(({ file, shown }) => {
    const language = languageIn(file) ?? ''
    const name = shown ?? file
    if (!languages.includes(language)) return [atTop(name, 'languages-are-listed', `"${language}" is not among the languages of handbook.yaml (${languages.join(', ')}). Add it there, or give the file another name.`)]
    return language === languages[0] && file.endsWith('.md') ? [atTop(name, 'languages-are-listed', `The files are written in ${language}, the first language of handbook.yaml; a translation is into another. Give the file another name.`)] : []
  })

/** The phrases of each language, a layer's over those of the layers below. */
function wordLists(languages: readonly string[], layers: readonly LayerWords[], findings: Finding[]): Map<string, ReadonlyMap<string, string>> {
  const lists = new Map<string, ReadonlyMap<string, string>>()
  for (const { files } of layers) {
    for (const file of files.filter((one) => one.file.endsWith('.yaml'))) {
      const language = languageIn(file.file) ?? ''
      if (!languages.includes(language)) continue
      const { value = NO_WORDS, findings: found } = wordFiles(file.bytes, [file.shown ?? file.file], () => readWordList(file))
      findings.push(...found)
      const below = lists.get(language) ?? NO_WORDS
      lists.set(language, joined(value, [below], () => new Map([...below, ...value])))
    }
  }
  return lists
}

/** The files of each ladder or page, the lowest layer's first. */
function filesBy(folder: 'ladders/' | 'content/', languages: readonly string[], layers: readonly LayerWords[], findings: Finding[], readFile: typeof readLadderTranslation): Map<string, Found[]> {
  const all = new Map<string, Found[]>()
  for (const layer of layers) {
    for (const { file, shown, bytes } of layer.files.filter((one) => one.file.startsWith(folder))) {
      const language = languageIn(file) ?? ''
      if (!languages.includes(language)) continue
      const name = shown ?? file
      const { value: read, findings: found } = readFile(name, bytes)
      findings.push(...found)
      if (!read) continue
      const beside = all.get(read.translates) ?? []
      findings.push(...misnamed(file, folder, language, read), ...twice(beside, layer, language, read))
      all.set(read.translates, [...beside, { layer, language, read }])
    }
  }
  return all
}

const placeOfKey = ({ places, file }: TranslationFile, key: string): Place => places.get(key) ?? { file, line: 1, column: 1 }

/** A file is called after what it translates, so that it is found beside it. */
function misnamed(file: string, folder: string, language: string, read: TranslationFile): Finding[] {
  const inside = file.slice(folder.length, -`.${language}.md`.length)
  const name = folder === 'ladders/' ? (inside.split('/').at(-1) ?? '') : inside.replaceAll('/', '-')
  return name === read.translates ? [] : [{ ...placeOfKey(read, 'translates'), rule: RULE, message: `The file is named "${name.slice(0, 80)}" but translates "${read.translates}". Make the two the same.` }]
}

function twice(beside: readonly Found[], layer: LayerWords, language: string, read: TranslationFile): Finding[] {
  const twin = beside.find((one) => one.layer === layer && one.language === language)
  return twin ? [{ ...placeOfKey(read, 'translates'), rule: RULE, message: `"${read.translates}" is translated already, in ${twin.read.file}. Join the two files.` }] : []
}

/** Files that translate what is not there. */
function astray(files: ReadonlyMap<string, readonly Found[]>, what: 'ladder' | 'page', originals: readonly { readonly id: string }[]): Finding[] {
  const known = originals.map(({ id }) => id)
  return [...files].flatMap(([id, found]) => {
    if (known.includes(id)) return []
    const like = nearest(id, known)
    return found.map(({ read }) => ({ ...placeOfKey(read, 'translates'), rule: RULE, message: `There is no ${what} "${id}" to translate. ${like ? `Did you mean ${like}?` : `Name a ${what} of this handbook.`}` }))
  })
}

/** The places of translations under `translations/LANG/`, the topmost layer's over those below. */
function withPlaces({ places }: Ladder | Page, found: readonly Found[]): { places: Places } | undefined {
  if (found.length === 0) return undefined
  const own = found.map(({ language, read }) => ({ language, places: read.places }))
  return { places: once(() => laidBeside(places(), own)) }
}

function laidBeside(places: ReadonlyMap<string, Place>, own: readonly { readonly language: string; readonly places: ReadonlyMap<string, Place> }[]): ReadonlyMap<string, Place> {
  const all = new Map(places)
  for (const { language, places: theirs } of own) for (const [key, place] of theirs) all.set(pathKey(['translations', language, ...(key === '' ? [] : [key])]), place)
  return all
}

/** Phrases that are looked up in the list of words of a language. */
type Shared = { readonly phrases: readonly string[]; readonly list: ReadonlyMap<string, string> }

/** One ladder or page in one language. What a layer below gives as its reason, and did not translate itself, is looked up among the shared words. */
function inOne(language: string, parts: readonly Part[], found: readonly Found[], top: LayerWords | undefined, { phrases, list }: Shared): Translated {
  const own = found.find(({ layer }) => layer === top)?.read
  const all = parts.map((part) => standingOf(part, found.toReversed(), top))
  const left = all.filter((part) => part.by !== undefined && part.by !== top?.by && !stands(part))
  const reason = ({ words }: Part): string => String(words)
  const listed = (part: TranslatedPart): TranslatedPart[] => {
    if (!left.includes(part)) return [part]
    const said = list.get(reason(part))
    return said === undefined ? [] : [{ ...part, standing: 'current', said }]
  }
  return {
    language,
    there: found.length > 0,
    own,
    parts: all.flatMap(listed),
    unworded: [...phrases, ...left.map(reason)].filter((phrase) => !list.has(phrase)),
  }
}

/** What stands for a part: the topmost layer's words that were made from those that stand now; else the topmost, which do not stand. */
function standingOf(part: Part, found: readonly Found[], top: LayerWords | undefined): TranslatedPart {
  const digest = digestOf(part.words)
  const said = found.filter(({ read }) => read.parts.has(part.key))
  const current = said.find(({ read }) => read.of.get(part.key) === digest)
  const chosen = current ?? said.find(({ layer }) => part.by === undefined || layer.by === part.by)
  const words = chosen?.read.parts.get(part.key)
  if (!chosen || words === undefined) return { ...part, digest, standing: 'missing', own: false }
  const standing = current ? 'current' : chosen.read.of.has(part.key) ? 'stale' : 'unsealed'
  const differs = standing === 'stale' ? undefined : shapeDiffers(words, part.words)
  return { ...part, digest, standing, said: words, ...(differs === undefined ? {} : { differs }), own: chosen.layer === top }
}
