import type { MeasuredCurriculum } from '../measure/measure.ts'
import { handbookPages, type WrittenPage } from '../page/handbook-pages.ts'
import { raw, type Html } from '../page/html.ts'
import { ladderDiagram } from '../page/ladder-diagram.ts'
import { assetFiles } from './assets.ts'
import { drawDiagram } from './draw-diagram.ts'
import { writeCompressed, writeManifest } from './manifest.ts'
import { fileOf } from './plugin.ts'
import { publish } from './publish.ts'
import { ruleExamples } from './rule-examples.ts'
import { searchFiles } from './search-index.ts'
import { writeFiles, type SiteFile } from './site-file.ts'
import { writePages } from './write-pages.ts'

/** What a build did. */
export type Built = { readonly pages: number; readonly files: number }

/** Draws every ladder's diagram, then makes every page. */
async function drawnPages(curriculum: MeasuredCurriculum): Promise<WrittenPage[]> {
  const diagrams = new Map<string, Html>()
  for (const ladder of curriculum.ladders) diagrams.set(ladder.id, raw(await drawDiagram(ladderDiagram(ladder), `diagram-of-${ladder.id}`)))
  return handbookPages(curriculum, diagrams, await ruleExamples())
}

/** Draws, writes, indexes and publishes a checked curriculum. `progress` is told each stage. */
export async function buildSite(curriculum: MeasuredCurriculum, out: string, progress: (stage: string) => void): Promise<Built> {
  progress('drawing diagrams')
  const pages = await drawnPages(curriculum)
  let files = 0
  await publish(out, async (folder) => {
    progress('writing pages')
    await writePages(pages, folder)
    await writeFiles(await assetFiles(curriculum.handbook), folder)
    progress('indexing for search')
    await writeFiles(await searchFiles(pages), folder)
    progress('compressing')
    await writeCompressed(folder)
    files = await writeManifest(folder, curriculum.handbook.edition)
  })
  return { pages: pages.length, files }
}

/** The whole handbook in memory, as a preview serves it. */
export async function siteInMemory(curriculum: MeasuredCurriculum): Promise<SiteFile[]> {
  const pages = await drawnPages(curriculum)
  const written = pages.map(({ address, html }) => ({ name: fileOf(address), bytes: html }))
  return [...written, ...(await assetFiles(curriculum.handbook)), ...(await searchFiles(pages))]
}
