import type { MeasuredCurriculum } from '../measure/measure.ts'
import { handbookPages } from '../page/handbook-pages.ts'
import { raw, type Html } from '../page/html.ts'
import { ladderDiagram } from '../page/ladder-diagram.ts'
import { writeAssets } from './assets.ts'
import { drawDiagram } from './draw-diagram.ts'
import { writeCompressed, writeManifest } from './manifest.ts'
import { publish } from './publish.ts'
import { writeSearchIndex } from './search-index.ts'
import { writePages } from './write-pages.ts'

/** What a build did. */
export type Built = { readonly pages: number; readonly files: number }

/** Draws, writes, indexes and publishes a checked curriculum. `note` is told each stage. */
export async function buildSite(curriculum: MeasuredCurriculum, out: string, note: (stage: string) => void): Promise<Built> {
  note('drawing diagrams')
  const diagrams = new Map<string, Html>()
  for (const ladder of curriculum.ladders) diagrams.set(ladder.id, raw(await drawDiagram(ladderDiagram(ladder), `diagram-of-${ladder.id}`)))
  const pages = handbookPages(curriculum, diagrams)
  let files = 0
  await publish(out, async (folder) => {
    note('writing pages')
    await writePages(pages, folder)
    await writeAssets(curriculum.handbook, folder)
    note('indexing for search')
    await writeSearchIndex(pages, folder)
    note('compressing')
    await writeCompressed(folder)
    files = await writeManifest(folder, curriculum.handbook.edition)
  })
  return { pages: pages.length, files }
}
