import { isDeepStrictEqual } from 'node:util'
import type { Layer, SourceFile } from '../ladder/curriculum.ts'
import { nthOf } from '../ladder/part.ts'
import { fromKept, keptLadder, keptTranslation, translationFromKept, type KeptLadder, type KeptTranslation } from '../read/kept-ladder.ts'
import type { Readers } from '../read/read-curriculum.ts'
import { readLadderFile } from '../read/read-ladder.ts'
import { readLadderTranslation } from '../read/read-translation.ts'
import type { Reading } from '../read/text.ts'
import type { Kept } from './cache.ts'
import { sha256Of } from './copies.ts'

/** Readers that know what an earlier run read, and keep what they read anew for the next. */
export type Readings = { readonly readers: Readers; keep(): Promise<void> }

/** What is kept of one file; null of one that is read each time. */
type KeptFile = { readonly ladder: KeptLadder } | { readonly translation: KeptTranslation } | null

/** Files whose readings are kept in one entry, about. Chosen by us: one that changed has so many others read again, and a thousand take thirty entries. */
const TOGETHER = 32

/** Some files of ladders, by what they all say. */
type Group = { readonly from: string; readonly sources: readonly SourceFile[] }

/** What was read of ladder files that nothing is to be put right in, kept from run to run. */
export async function readingsOnce(layers: readonly Layer[], { cache, tool }: Kept): Promise<Readings> {
  const kind = `readings of ladder files, ${tool}`
  const before = new Map<Uint8Array, KeptFile>()
  const anew: Group[] = []
  for (const group of grouped(layers.flatMap(({ files }) => files.filter(isLadder)))) {
    const kept = await cache.known(kind, group.from) // one after another: all at once would be the whole curriculum twice
    if (kept) (JSON.parse(Buffer.from(kept).toString()) as KeptFile[]).forEach((each, index) => group.sources[index] && before.set(group.sources[index].bytes, each))
    else anew.push(group)
  }
  const known = (bytes: Uint8Array): KeptFile => {
    const kept = before.get(bytes) ?? null
    before.delete(bytes) // who reads holds it now
    return kept
  }
  const fresh = new Map<Uint8Array, KeptFile>()
  return {
    readers: {
      ladder(file, bytes, layer) {
        const kept = known(bytes)
        if (kept && 'ladder' in kept) return { value: fromKept(kept.ladder, file, bytes, layer), findings: [] }
        const reading = readLadderFile(file, bytes, layer)
        if (fit(reading)) fresh.set(bytes, sound(reading.value, (read) => ({ ladder: keptLadder(read) }), ({ ladder }) => fromKept(ladder, file, bytes, layer)))
        return reading
      },
      translation(file, bytes) {
        const kept = known(bytes)
        if (kept && 'translation' in kept) return { value: translationFromKept(kept.translation, file), findings: [] }
        const reading = readLadderTranslation(file, bytes)
        if (fit(reading)) fresh.set(bytes, sound(reading.value, (read) => ({ translation: keptTranslation(read) }), ({ translation }) => translationFromKept(translation, file)))
        return reading
      },
    },
    async keep() {
      for (const { from, sources } of anew) await cache.of(kind, from, async () => Buffer.from(JSON.stringify(sources.map(({ bytes }) => fresh.get(bytes) ?? null))))
    },
  }
}

const isLadder = ({ file }: SourceFile): boolean => file.startsWith('ladders/') && file.endsWith('.md')

const nameOf = ({ file, shown }: SourceFile): string => shown ?? file

/** Files by what their names come to, so that each stays in its group whatever comes or goes beside it. */
function grouped(sources: readonly SourceFile[]): Group[] {
  const of = 2 ** Math.max(0, Math.round(Math.log2(sources.length / TOGETHER)))
  const groups = Array.from({ length: of }, (): SourceFile[] => [])
  for (const source of sources) groups[nthOf(nameOf(source), of) - 1]?.push(source)
  return groups.filter((group) => group.length > 0).map((group) => ({ from: JSON.stringify(group.map(({ bytes }) => sha256Of(bytes))), sources: group }))
}

/** Whether nothing is to be put right in what was read. */
const fit = <Read>(reading: Reading<Read>): reading is { readonly value: Read; readonly findings: readonly [] } => reading.value !== undefined && reading.findings.length === 0

/** What is kept of a file, where it comes out of JSON as it went in. */
function sound<Read, Kept extends KeptFile>(read: Read, kept: (read: Read) => Kept, back: (kept: Kept) => Read): Kept | null {
  const own = kept(read)
  return isDeepStrictEqual(kept(back(JSON.parse(JSON.stringify(own)) as Kept)), own) ? own : null
}
