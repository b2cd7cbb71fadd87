import { lastOfEach } from '../quantity/once.ts'
import type { Curriculum, Ladder, Layer, Page, SourceFile } from '../ladder/curriculum.ts'
import { compareText, inOrder, placeOf, type Finding, type Path } from '../ladder/finding.ts'
import { handbookSchema, type Handbook } from '../ladder/schema.ts'
import { amended } from './amend.ts'
import { nearest } from './nearest.ts'
import { fitted } from './plain-words.ts'
import { readLadderFile, type LadderFile } from './read-ladder.ts'
import { readLogo } from './read-logo.ts'
import { readPage } from './read-page.ts'
import { languageIn, readLadderTranslation } from './read-translation.ts'
import { atTop, textOf, type Reading } from './text.ts'
import { withTranslations, type LayerWords } from './translated.ts'
import { readYaml } from './yaml.ts'

/** The file that makes a folder a workspace. */
export const HANDBOOK_FILE = 'handbook.yaml'

/** Reads handbook.yaml: what the handbook is called, whose it is, and what it extends. */
export function readHandbook({ file: own, shown, bytes }: SourceFile): Reading<Handbook> {
  const file = shown ?? own
  const text = textOf(file, bytes)
  if (text.value === undefined) return { findings: text.findings }
  const yaml = readYaml(file, text.value, 1)
  if (!yaml.value) return { findings: yaml.findings }
  const fields = fitted(handbookSchema, yaml.value.value, yaml.value.places)
  return { ...(fields.value ? { value: fields.value } : {}), findings: [...yaml.findings, ...fields.findings] }
}

type Files = { readonly handbook: Handbook; readonly logo: string | undefined; readonly ladders: readonly LadderFile[]; readonly pages: readonly Page[]; readonly words: LayerWords }

/**
 * Reads a curriculum from its layers, the one that is extended first.
 *
 * Shape   layers of files to one curriculum, and every finding in file order. No value where a handbook.yaml cannot be read.
 */
export function readCurriculum(layers: readonly Layer[], memory: ReadMemory = new Map(), read: Readers = FROM_BYTES): Reading<Curriculum> {
  const findings: Finding[] = []
  const ladders = new Map<string, Ladder>()
  const pages = new Map<string, Page>()
  const words: LayerWords[] = []
  let handbook: Handbook | undefined
  let logo: string | undefined
  for (const layer of layers) {
    const files = readLayer(layer, findings, memory, read.ladder)
    if (!files) return { findings: inOrder(findings) }
    ;({ handbook, logo } = files)
    words.push(files.words)
    addLadders(files, ladders, findings)
    addPages(files, pages, findings)
  }
  if (!handbook) return { findings: [atTop(HANDBOOK_FILE, 'handbook-is-there', 'There is no workspace here.')] }
  findings.push(...sharedAddresses(handbook, ladders, pages))
  const value: Curriculum = {
    handbook,
    ...(logo === undefined ? {} : { logo }),
    ladders: [...ladders.values()].toSorted((a, b) => compareText(a.id, b.id)),
    pages: [...pages.values()].toSorted((a, b) => a.order - b.order || compareText(a.id, b.id)),
  }
  const spoken = withTranslations(value, words, findings, read.translation)
  return { value: spoken, findings: inOrder(findings) }
}

/** The bytes of each file as they were last read, by name; so that two states of a curriculum share what did not change. */
export type ReadMemory = Map<string, Uint8Array>

/** How a file of ladders, and one of a ladder in another language, is read: as it stands, or from what was kept of the same bytes. */
export type Readers = { readonly ladder: typeof readLadderFile; readonly translation: typeof readLadderTranslation }
const FROM_BYTES: Readers = { ladder: readLadderFile, translation: readLadderTranslation }

/** The very bytes of before, where they say the same. */
function asBefore({ file, shown, bytes, ...rest }: SourceFile, memory: ReadMemory): SourceFile {
  const name = shown ?? file
  const before = memory.get(name)
  const kept = before && sameBytes(before, bytes) ? before : bytes
  memory.set(name, kept)
  return { ...rest, file, ...(shown === undefined ? {} : { shown }), bytes: kept }
}

function sameBytes(one: Uint8Array, other: Uint8Array): boolean {
  if (one === other) return true
  if (one.length !== other.length) return false
  for (let at = 0; at < one.length; at += 1) if (one[at] !== other[at]) return false
  return true
}

/** Files are read once for as long as their bytes are held. */
const ladderFiles = lastOfEach<Reading<LadderFile>>()
const pageFiles = lastOfEach<Reading<Page>>()
const amendments = lastOfEach<Reading<Ladder>>()

function readLayer(layer: Layer, findings: Finding[], memory: ReadMemory, readLadder: Readers['ladder']): Files | undefined {
  const files = layer.files.map((source) => asBefore(source, memory))
  const own = files.find(({ file }) => file === HANDBOOK_FILE)
  if (!own) {
    findings.push(atTop(HANDBOOK_FILE, 'handbook-is-there', 'There is no handbook.yaml here. Write one with title, organisation, edition and contact.'))
    return undefined
  }
  const handbook = readHandbook(own)
  findings.push(...handbook.findings)
  if (!handbook.value) return undefined
  const by = handbook.value.organisation
  const sorted = files.toSorted((a, b) => compareText(a.file, b.file))
  const spoken = sorted.filter(({ file }) => languageIn(file) !== undefined)
  const others = new Set(spoken)
  const within = (folder: string) => sorted.filter((one) => one.file.startsWith(folder) && one.file.endsWith('.md') && !others.has(one))
  const kept = <Value>({ value, findings: found }: Reading<Value>): Value[] => {
    findings.push(...found)
    return value === undefined ? [] : [value]
  }
  return {
    handbook: handbook.value,
    logo: logoOf(handbook.value, own, files, findings),
    ladders: within('ladders/').flatMap(({ file, bytes, shown }) => kept(ladderFiles(bytes, [shown ?? file, by], () => readLadder(shown ?? file, bytes, by)))),
    pages: within('content/').flatMap(({ file, bytes, shown }) => kept(pageFiles(bytes, [file, shown ?? file, by], () => readPage(file, shown ?? file, bytes, by)))),
    words: { by, languages: handbook.value.languages, files: spoken },
  }
}

/** The logo that a handbook names, from the file beside it. */
function logoOf({ logo }: Handbook, { file, shown }: SourceFile, files: readonly SourceFile[], findings: Finding[]): string | undefined {
  if (logo === undefined) return undefined
  const drawn = files.find((other) => other.file === logo)
  const reading = drawn ? readLogo(drawn.shown ?? drawn.file, drawn.bytes) : { findings: [atTop(shown ?? file, 'logo-is-plain', `There is no file "${logo}" beside handbook.yaml. Put the logo there, or take out logo.`)] }
  findings.push(...reading.findings)
  return 'value' in reading ? reading.value : undefined
}

/** A page takes the place of one in a layer below; two in one layer cannot share an address. */
function addPages({ pages: files }: Files, pages: Map<string, Page>, findings: Finding[]): void {
  const own = new Map<string, Page>()
  for (const page of files) {
    const twin = own.get(page.id)
    if (twin) findings.push({ ...placeOf(page.places, []), rule: 'ids-are-unique', message: `The page "${page.id}" is already there, in ${placeOf(twin.places, []).file}. Rename one of the two files.` })
    own.set(page.id, page)
    pages.set(page.id, page)
  }
}

/** Ladders and pages that would stand at one address, or where the handbook stands in another language: some systems take large letters for small ones. */
function sharedAddresses({ languages }: Handbook, ladders: ReadonlyMap<string, Ladder>, pages: ReadonlyMap<string, Page>): Finding[] {
  const folders = new Map(languages.slice(1).map((language) => [language.toLowerCase(), language]))
  const found = ({ places }: Ladder | Page, path: Path, message: string): Finding => ({ ...placeOf(places, path), rule: 'ids-are-unique', message })
  const inFolder = (one: Ladder | Page, what: string, path: Path, remedy: string): Finding[] =>
    folders.has(one.id) ? [found(one, path, `The ${what} "${one.id}" would stand where the handbook stands in the language ${folders.get(one.id)}. ${remedy}`)] : []
  return [
    ...[...ladders.values()].flatMap((ladder) => inFolder(ladder, 'ladder', ['id'], 'Give it another id.')),
    ...[...pages.values()].flatMap((page) => {
      const twin = ladders.has(page.id) ? [found(page, [], `The page "${page.id}" and the ladder "${page.id}" would share one address. Rename the page's file.`)] : []
      return [...twin, ...inFolder(page, 'page', [], 'Rename its file.')]
    }),
  ]
}

/** Adds a layer's ladders to those below it, then lays its amendments over them. */
function addLadders({ ladders: files, handbook }: Files, ladders: Map<string, Ladder>, findings: Finding[]): void {
  for (const entry of files) {
    if (entry.kind !== 'ladder') continue
    const { ladder } = entry
    const twin = ladders.get(ladder.id)
    if (twin) {
      const { file, line } = placeOf(twin.places, ['id'])
      findings.push({ ...placeOf(ladder.places, ['id']), rule: 'ids-are-unique', message: `The ladder "${ladder.id}" is already there, in ${file}:${line}. Give this one another id, or write amends: ${ladder.id} to change that one.` })
    } else ladders.set(ladder.id, ladder)
  }
  for (const entry of files) {
    if (entry.kind !== 'amendment') continue
    const { amends } = entry.fields
    const base = ladders.get(amends)
    if (base) {
      const { value, findings: found } = amendments(base, [entry, handbook.organisation], () => amended(base, entry, handbook.organisation))
      findings.push(...found)
      if (value) ladders.set(amends, value)
    } else {
      const like = nearest(amends, [...ladders.keys()])
      findings.push({ ...placeOf(entry.places, ['amends']), rule: 'amendments-fit', message: `There is no ladder "${amends}" to amend. ${like ? `Did you mean ${like}?` : 'Name a ladder of the curriculum that is extended.'}` })
    }
  }
}
