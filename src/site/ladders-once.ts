import type { MeasuredLadder } from '../measure/measure.ts'
import { frameOf } from '../page/handbook-pages.ts'
import { raw } from '../page/html.ts'
import { languagesOf, type Speech } from '../page/speech.ts'
import type { Cache } from './cache.ts'
import { digested, type Digested } from './copies.ts'
import { ladderShareFile } from './drawn-pictures.ts'
import type { Filling, Known } from './filling.ts'
import { ladderFiles, madeFrom, madeWith, picturesOf, type Setting } from './ladder-files.ts'
import { isSearched } from './search-index.ts'
import { below, type SiteFile } from './site-file.ts'

/** A file that lies in the folder, by its name below that of its language, and whether search looks at it. */
export type Laid = Known & { readonly searched: boolean }

/** A ladder whose files have to be made, and all that they are made from. */
type Left = { readonly ladder: MeasuredLadder; readonly from: string }

/** The ladders of a handbook in one language while it is written, in the folder `place`: the files of each that lie there, the ladders that are left, and what is kept for the next build. */
export type Ladders = { readonly setting: Setting; readonly place: string; readonly laid: Map<string, readonly Laid[]>; readonly left: readonly Left[]; readonly kept: Kept }

/** What a cache keeps: the digests of a ladder's files, by what they are made from. */
type Kept = { known(from: string): Promise<readonly Laid[] | undefined>; keep(from: string, laid: readonly Laid[]): Promise<void> }

/** What decides a ladder's files beside its handbook; `tool` is the digest of what makes them. */
type Making = Pick<Setting, 'drawn' | 'pdfs'> & { readonly cache: Cache; readonly tool: string }

/** Takes over from the old handbook the files of every ladder that would be made the same. What was made from the same by the same tool is known by its digest; the bytes are in the old handbook alone. */
export async function laddersOnce(speeches: readonly Speech[], { drawn, pdfs, cache, tool }: Making, filling: Filling, folder: string): Promise<Ladders[]> {
  const kept = keptIn(cache, `files of a ladder, ${tool}`)
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
    const laid = new Map<string, readonly Laid[]>()
    const left: Left[] = []
    for (const ladder of curriculum.ladders) {
      const from = `${whole}\n${madeFrom(ladder, picturesOf(ladder), drawn)}`
      const known = await kept.known(from)
      if (known && (await filling.taken(below(place, known)))) laid.set(ladder.id, known)
      else left.push({ ladder, from })
    }
    all.push({ setting, place, laid, left, kept })
  }
  return all
}

/** Makes the files of a ladder that is left, lays them down, and keeps what they are. */
export async function layLadder({ ladder, from }: Left, diagram: string, { setting, place, laid, kept }: Ladders, filling: Filling): Promise<void> {
  const made = ladderFiles(ladder, raw(diagram), setting)
  const files = made.map(digested)
  await filling.write(below(place, files))
  const known = made.map((file, index) => laidAs(file, files[index]))
  laid.set(ladder.id, known)
  await kept.keep(from, known)
}

/** What a file is once it lies there. */
export const laidAs = (file: SiteFile, { name, sha256, size }: Digested = digested(file)): Laid => ({ name, sha256, size, searched: typeof file.bytes === 'string' && name.endsWith('.html') && isSearched(file.bytes) })

const keptIn = (cache: Cache, kind: string): Kept => ({
  async known(from) {
    const bytes = await cache.known(kind, from)
    return bytes && (JSON.parse(Buffer.from(bytes).toString()) as readonly Laid[])
  },
  keep: async (from, laid) => void (await cache.of(kind, from, async () => Buffer.from(JSON.stringify(laid)))),
})
