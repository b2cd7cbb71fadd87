import { setImmediate as breath } from 'node:timers/promises'
import type { MeasuredLadder } from '../measure/measure.ts'
import { frameOf } from '../page/handbook-pages.ts'
import { raw } from '../page/html.ts'
import { languagesOf, type Speech } from '../page/speech.ts'
import type { Cache } from './cache.ts'
import { digested } from './copies.ts'
import { ladderShareFile } from './drawn-pictures.ts'
import type { Filling, Known } from './filling.ts'
import { ladderFiles, madeFrom, madeWith, picturesOf, type Setting } from './ladder-files.ts'
import { isSearched } from './search-index.ts'
import { below, type SiteFile } from './site-file.ts'

/** A file that lies in the folder, by its name below that of its language, and whether search looks at it. */
export type Laid = Known & { readonly searched: boolean }

/** A ladder, all that its files are made from, and what they will be where that is known from an earlier build. */
export type Looked = { readonly ladder: MeasuredLadder; readonly from: string; readonly known: readonly Laid[] | undefined }

/** The ladders of a handbook in one language, to be written in the folder `place`, and what is kept for the next build. */
export type Ladders = { readonly setting: Setting; readonly place: string; readonly looked: readonly Looked[]; readonly kept: Kept }

/** What a cache keeps: the digests of a ladder's files, by what they are made from. */
type Kept = { known(from: string): Promise<readonly Laid[] | undefined>; keep(from: string, laid: readonly Laid[]): Promise<void> }

/** What decides a ladder's files beside its handbook; `tool` is the digest of what makes them. */
type Making = Pick<Setting, 'drawn' | 'pdfs'> & { readonly cache: Cache; readonly tool: string }

/** What the files of every ladder will be, as far as it is known: what is made from the same by the same tool is the same. The bytes are in the old handbook alone. */
export async function laddersOnce(speeches: readonly Speech[], { drawn, pdfs, cache, tool }: Making, folder: string): Promise<Ladders[]> {
  const kept = keptIn(cache, `files of a ladder, ${tool}`)
  const originals = new Map(speeches[0]?.curriculum.ladders.map((ladder) => [ladder.id, ladder]))
  const shared = new Map<string, readonly SiteFile[]>()
  const all: Ladders[] = []
  for (const speech of speeches) {
    const { curriculum, tongue, under } = speech
    /** The pictures beside links have no letters: they are the same in all languages. */
    const share = (ladder: MeasuredLadder): readonly SiteFile[] => {
      const files = shared.get(ladder.id) ?? ladderShareFile(ladder, curriculum.handbook)
      shared.set(ladder.id, files)
      return files
    }
    const setting: Setting = { speech, drawn, pdfs, frame: frameOf(curriculum, languagesOf(speeches), tongue), share }
    const [place, whole] = [folder + under, madeWith(setting)]
    const looked: Looked[] = []
    for (const ladder of curriculum.ladders) {
      const original = originals.get(ladder.id)
      const from = [whole, ...[ladder, ...(original && original !== ladder ? [original] : [])].map((each) => madeFrom(each, picturesOf(each), drawn))].join('\n')
      looked.push({ ladder, from, known: await kept.known(from) })
    }
    all.push({ setting, place, looked, kept })
  }
  return all
}

/** Lays down the files of a ladder: from the old handbook where all of them are known and lie there, or else made, and kept in mind for the next build. */
export async function layLadder({ ladder, from, known }: Looked, diagram: (ladder: MeasuredLadder) => Promise<string>, { setting, place, kept }: Ladders, filling: Filling): Promise<readonly Laid[]> {
  if (known && filling.taken(below(place, known))) {
    await breath() // what is done beside this has its turn
    return known
  }
  const laid = await lay(ladderFiles(ladder, raw(await diagram(ladder)), setting), place, filling)
  await kept.keep(from, laid)
  return laid
}

/** Lays down files that were made, below a folder, and says what they are. */
export async function lay(made: readonly SiteFile[], place: string, filling: Filling): Promise<readonly Laid[]> {
  const files = made.map((file) => ({ ...digested(file), searched: typeof file.bytes === 'string' && file.name.endsWith('.html') && isSearched(file.bytes) }))
  await filling.write(below(place, files))
  return files.map(({ name, sha256, size, searched }) => ({ name, sha256, size, searched }))
}

const keptIn = (cache: Cache, kind: string): Kept => ({
  async known(from) {
    const bytes = await cache.known(kind, from)
    return bytes && (JSON.parse(Buffer.from(bytes).toString()) as readonly Laid[])
  },
  keep: async (from, laid) => void (await cache.of(kind, from, async () => Buffer.from(JSON.stringify(laid)))),
})
