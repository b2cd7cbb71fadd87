import type { Layer, SourceFile } from '../ladder/curriculum.ts'
import { nthOf } from '../ladder/part.ts'
import { fromKept, keptLadder, keptTranslation, translationFromKept, type KeptLadder, type KeptTranslation } from '../read/kept-ladder.ts'
import type { Readers } from '../read/read-curriculum.ts'
import { onceOfEach } from '../quantity/once.ts'
import { readLadderFile, type LadderFile } from '../read/read-ladder.ts'
import { languageIn, readLadderTranslation, type TranslationFile } from '../read/read-translation.ts'
import type { Reading } from '../read/text.ts'
import type { Kept } from './cache.ts'
import { sha256Of } from './copies.ts'

/** What is kept of one file; null of one that is read each time. */
type KeptFile = { readonly ladder: KeptLadder } | { readonly translation: KeptTranslation } | null

/** Files whose readings are kept in one entry, about. Chosen by us: one that changed has so many others read again, and a thousand take thirty entries. */
const TOGETHER = 32

/** Some files of ladders, by what they all say. */
export type Group = { readonly from: string; readonly sources: readonly SourceFile[] }

/**
 * Readers that know what was read of files that have not changed since.
 * Groups that nothing is kept of are read here and now. Of files that something is to be put right in nothing is kept.
 */
export async function readingsOnce(layers: readonly Layer[], kept: Kept): Promise<Readers> {
  const before = new Map<Uint8Array, KeptFile>()
  for (const group of groupsIn(layers)) {
    const files = JSON.parse(Buffer.from(await readAhead(group, kept)).toString()) as KeptFile[] // one after another: all at once would be the whole curriculum twice
    files.forEach((each, index) => group.sources[index] && before.set(group.sources[index].bytes, each))
  }
  const known = (bytes: Uint8Array): KeptFile => {
    const file = before.get(bytes) ?? null
    before.delete(bytes) // who reads holds it now
    return file
  }
  return {
    ladder(file, bytes, layer) {
      const found = known(bytes)
      return found && 'ladder' in found ? { value: fromKept(found.ladder, file, bytes, layer), findings: [] } : (ofLayer(laddersNow.get(bytes), layer) ?? readLadderFile(file, bytes, layer))
    },
    translation(file, bytes) {
      const found = known(bytes)
      return found && 'translation' in found ? { value: translationFromKept(found.translation, file), findings: [] } : (translationsNow.get(bytes) ?? readLadderTranslation(file, bytes))
    },
  }
}

/** The groups of files that nothing is kept of. */
export const unread = (layers: readonly Layer[], { cache, tool }: Kept): Group[] => groupsIn(layers).filter(({ from }) => !cache.holds(kindOf(tool), from))

/** What is kept of a group of files: as it was read before, or now. */
export const readAhead = ({ from, sources }: Group, { cache, tool }: Kept): Promise<Uint8Array> =>
  cache.of(kindOf(tool), from, async () => Buffer.from(JSON.stringify(sources.map(toKeep))))

function toKeep({ file, shown = file, bytes }: SourceFile): KeptFile {
  if (languageIn(file) !== undefined) {
    const reading = readLadderTranslation(shown, bytes)
    const kept = translationToKeep(reading)
    if (!kept) translationsNow.set(bytes, reading)
    return kept
  }
  const reading = readLadderFile(shown, bytes, '')
  const kept = ladderToKeep(reading)
  if (!kept) laddersNow.set(bytes, reading)
  return kept
}

/** What was read just now and cannot be kept for another run: nobody reads twice what is hard to read. */
const laddersNow = new WeakMap<Uint8Array, Reading<LadderFile>>()
const translationsNow = new WeakMap<Uint8Array, Reading<TranslationFile>>()

/** What was read before it was known whose it is. */
const ofLayer = (reading: Reading<LadderFile> | undefined, layer: string): Reading<LadderFile> | undefined =>
  reading?.value?.kind === 'ladder' ? { ...reading, value: { ...reading.value, ladder: { ...reading.value.ladder, layer } } } : reading

const kindOf = (tool: string): string => `readings of ladder files, ${tool}`

const isLadder = ({ file }: SourceFile): boolean => file.startsWith('ladders/') && file.endsWith('.md')

const nameOf = ({ file, shown }: SourceFile): string => shown ?? file

/** Files by what their names come to, so that each stays in its group whatever comes or goes beside it. */
const groupsIn = onceOfEach((layers: readonly Layer[]): readonly Group[] => {
  const sources = layers.flatMap(({ files }) => files.filter(isLadder))
  const of = 2 ** Math.max(0, Math.round(Math.log2(sources.length / TOGETHER)))
  const groups = Array.from({ length: of }, (): SourceFile[] => [])
  for (const source of sources) groups[nthOf(nameOf(source), of) - 1]?.push(source)
  return groups.filter((group) => group.length > 0).map((group) => ({ from: JSON.stringify(group.map(({ bytes }) => sha256Of(bytes))), sources: group }))
})

/** What is kept of a ladder file that nothing is to be put right in, where JSON can say all of it. */
const ladderToKeep = ({ value, findings }: Reading<LadderFile>): KeptFile => (value && findings.length === 0 ? sound({ ladder: keptLadder(value) }) : null)

/** The same of a ladder in another language. */
const translationToKeep = ({ value, findings }: Reading<TranslationFile>): KeptFile => (value && findings.length === 0 ? sound({ translation: keptTranslation(value) }) : null)

const sound = (kept: NonNullable<KeptFile>): KeptFile => (comesBack(kept) ? kept : null)

/** Whether a value comes out of JSON as it went in. */
function comesBack(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value) && !Object.is(value, -0)
  if (typeof value !== 'object' || value === null) return value === null || typeof value === 'string' || typeof value === 'boolean'
  if (Array.isArray(value)) return value.every(comesBack)
  return Object.getPrototypeOf(value) === Object.prototype && Object.values(value).every(comesBack)
}
