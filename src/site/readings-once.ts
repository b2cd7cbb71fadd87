import { isDeepStrictEqual } from 'node:util'
import type { Layer, SourceFile } from '../ladder/curriculum.ts'
import { nthOf } from '../ladder/part.ts'
import { fromKept, keptLadder, type KeptLadder } from '../read/kept-ladder.ts'
import { readLadderFile, type LadderFile } from '../read/read-ladder.ts'
import type { ReadLadder } from '../read/read-curriculum.ts'
import type { Reading } from '../read/text.ts'
import type { Kept } from './cache.ts'
import { sha256Of } from './copies.ts'

/** A reader of ladder files that knows those of an earlier run, and keeps what it read anew for the next. */
export type Readings = { readonly read: ReadLadder; keep(): Promise<void> }

/** Files whose readings are kept in one entry, about. Chosen by us: one that changed has so many others read again, and a thousand take thirty entries. */
const TOGETHER = 32

/** Some files of ladders, by what they all say. */
type Group = { readonly from: string; readonly sources: readonly SourceFile[] }

/** What was read of ladder files that nothing is to be put right in, kept from run to run. */
export async function readingsOnce(layers: readonly Layer[], { cache, tool }: Kept): Promise<Readings> {
  const kind = `readings of ladder files, ${tool}`
  const before = new Map<Uint8Array, KeptLadder>()
  const anew: Group[] = []
  for (const group of grouped(layers.flatMap(({ files }) => files.filter(isLadder)))) {
    const kept = await cache.known(kind, group.from) // one after another: all at once would be the whole curriculum twice
    if (kept) (JSON.parse(Buffer.from(kept).toString()) as (KeptLadder | null)[]).forEach((each, index) => each && group.sources[index] && before.set(group.sources[index].bytes, each))
    else anew.push(group)
  }
  const fresh = new Map<Uint8Array, Reading<LadderFile>>()
  return {
    read(file, bytes, layer) {
      const kept = before.get(bytes)
      before.delete(bytes) // who reads holds it now
      if (kept) return { value: fromKept(kept, file, bytes, layer), findings: [] }
      const reading = readLadderFile(file, bytes, layer)
      fresh.set(bytes, reading)
      return reading
    },
    async keep() {
      for (const { from, sources } of anew) await cache.of(kind, from, async () => Buffer.from(JSON.stringify(sources.map(({ bytes }) => sound(fresh.get(bytes))))))
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

/** A reading that nothing is to be put right in, and that comes out of JSON as it went in. */
function sound({ value, findings = [] }: Partial<Reading<LadderFile>> = {}): KeptLadder | null {
  if (!value || findings.length > 0) return null
  const kept = keptLadder(value)
  const text = JSON.stringify(kept)
  const back = keptLadder(fromKept(JSON.parse(text) as KeptLadder, '', new Uint8Array(), ''))
  return isDeepStrictEqual(back, kept) && JSON.stringify(back) === text ? kept : null // in the same order too: by its text it is known later
}
