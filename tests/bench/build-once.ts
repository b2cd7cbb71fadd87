import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import MarkdownIt from 'markdown-it'
import { check } from '../../src/check/index.ts'
import type { Curriculum, Layer } from '../../src/ladder/curriculum.ts'
import { measure, type MeasuredLadder } from '../../src/measure/measure.ts'
import { readCurriculum, type Readers } from '../../src/read/read-curriculum.ts'
import { buildSite } from '../../src/site/build.ts'
import { cacheIn } from '../../src/site/cache.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { firstPage, frameOf, otherPages, writtenPage } from '../../src/page/handbook-pages.ts'
import { raw } from '../../src/page/html.ts'
import { searchParts } from '../../src/page/search-parts.ts'
import { speechesOf } from '../../src/page/speech.ts'
import { ladderFiles, type Setting } from '../../src/site/ladder-files.ts'
import { ruleExamples } from '../../src/site/rule-examples.ts'
import { pageFiles } from '../../src/site/page-files.ts'
import { fileOf } from '../../src/site/plugin.ts'
import { readingsOnce } from '../../src/site/readings-once.ts'
import { isSearched, partFiles, partOf } from '../../src/site/search-index.ts'
import type { SiteFile } from '../../src/site/site-file.ts'
import { toolDigest } from '../../src/site/tool-digest.ts'
import { firstQuery } from './first-query.ts'
import { generatedLayer, generatedLayers } from './generated.ts'

/**
 * Builds a generated workspace once, in a process of its own, into a folder that keeps site and cache for the next, and says what each stage took, and the processor time of it all but the indexer's, which is a process of its own.
 * `changed` has one ladder with other words. Others build nothing: `pages` makes and writes pages alone; `compared` takes the pages that lie there for the floor (the same Markdown rendered and
 * the same pages written one after another) and for plain Eleventy, and says what a first search loads; `searched` says that of a handbook that is not built. With `layered`, in two layers and two languages.
 */
const [count = '', folder = '', what = '', kind = ''] = process.argv.slice(2)
const ladders = Number(count)
const out = path.join(folder, 'site')

/** Writes files one after another, the same way for all that are compared. */
function written(files: readonly SiteFile[], below: string): void {
  for (const { name, bytes } of files) {
    const file = path.join(folder, below, name)
    mkdirSync(path.dirname(file), { recursive: true })
    writeFileSync(file, bytes)
  }
}

/** Processor time of what this process does itself: what the system needs to write the same files swings tenfold with the state of the disk. */
const processor = async (work: () => unknown): Promise<number> => {
  const before = process.cpuUsage()
  await work()
  return process.cpuUsage(before).user / 1e6
}

/** The workspace, one ladder of it changed. */
function layers(): Layer[] {
  const other = (bytes: Uint8Array): Uint8Array => new TextEncoder().encode(new TextDecoder().decode(bytes).replace('Long neck', 'Tall neck'))
  const whole = kind === 'layered' ? generatedLayers(ladders) : [generatedLayer(ladders)]
  return what === 'changed' ? whole.map(({ files }) => ({ files: files.map(({ file, bytes }) => ({ file, bytes: file === 'ladders/movement-5.md' ? other(bytes) : bytes })) })) : whole
}

function curriculumOf(read: Layer[], readers?: Readers): Curriculum {
  const { value, findings } = readCurriculum(read, undefined, readers)
  if (!value) throw new Error(`bug: the generated workspace does not read: ${findings[0]?.message}`)
  return value
}

async function build() {
  const stages_s: Record<string, number> = {}
  let [stage, since] = ['reading', performance.now()]
  const enter = (next: string): void => {
    stages_s[stage] = (stages_s[stage] ?? 0) + (performance.now() - since) / 1000
    ;[stage, since] = [next, performance.now()]
  }
  const kept = { cache: cacheIn(path.join(folder, 'cache')), tool: await toolDigest() }
  const read = layers()
  const value = curriculumOf(read, await readingsOnce(read, kept))
  enter('measuring and checking')
  const curriculum = measure(value)
  const { findings } = check(curriculum, '2026-01-01', undefined, 'findings')
  if (findings.length > 0) throw new Error(`bug: the generated workspace has ${findings.length} findings, such as ${findings[0]?.message}`)
  enter('building')
  await buildSite(curriculum, { folder, layers: [folder] }, out, enter, { kept })
  enter('done')
  const { user, system } = process.cpuUsage()
  return { stages_s, processor_s: (user + system) / 1e6, peak_mb: process.resourceUsage().maxRSS / 1024 }
}

/** Pages as they are without diagrams. */
function plainSetting(): Setting {
  const [speech] = speechesOf(measure(curriculumOf(layers())))
  if (!speech) throw new Error('bug: a handbook without a language')
  return { speech, frame: frameOf(speech.curriculum, [], speech.tongue), drawn: new Map(), pdfs: false, share: () => [] }
}
const pagesOf = (ladder: MeasuredLadder, setting: Setting): SiteFile[] => ladderFiles(ladder, raw(''), setting).filter(({ name }) => name.endsWith('.html'))

/** Makes the search index of a handbook too large to be built here, part by part, and says what a first search loads of it. */
async function onlySearched() {
  const setting = plainSetting()
  const parts = searchParts(ladders)
  const index_s = await processor(async () => {
    for (let part = 0; part < parts; part += 1) {
      const within = setting.speech.curriculum.ladders.filter(({ id }) => partOf(id, parts) === part)
      const pages = within.flatMap((ladder) => pagesOf(ladder, setting)).flatMap(({ name, bytes }) => (isSearched(String(bytes)) ? [{ name, sha256: name, text: () => String(bytes) }] : []))
      written(await partFiles(part, pages), 'site')
    }
  })
  return { ladders, parts, index_s, query: await firstQuery(out, 'movement 7') }
}

/** Reads, measures, makes every page and writes it: no diagrams, no search index, no copies. */
async function onlyPages() {
  const pages_s = await processor(async () => {
    const setting = plainSetting()
    const { curriculum, tongue } = setting.speech
    written(await pageFiles([firstPage(curriculum), ...otherPages(curriculum, { examples: await ruleExamples(), editions: [] })].map((page) => writtenPage(page, setting.frame, setting.drawn, tongue))), 'pages')
    for (const ladder of curriculum.ladders) written(pagesOf(ladder, setting), 'pages')
  })
  return { pages_s, peak_mb: process.resourceUsage().maxRSS / 1024 }
}

async function compare() {
  const pages = (await filesBelow(out)).filter((name) => name.endsWith('.html'))
  const whole = pages.map((name) => ({ address: name.endsWith('index.html') ? (`/${name.slice(0, -'index.html'.length)}` as const) : (`/${name}` as const), html: readFileSync(path.join(out, name), 'utf8') }))
  const eleventy_s = await processor(async () => written(await pageFiles(whole), 'plain'))
  const markdown = new MarkdownIt()
  const floor_s = await processor(() => {
    for (const { bytes } of layers().flatMap(({ files }) => files)) markdown.render(new TextDecoder().decode(bytes))
    written(whole.map(({ address, html }) => ({ name: fileOf(address), bytes: html })), 'floor')
  })
  return { pages: pages.length, eleventy_s, floor_s, query: await firstQuery(out, 'movement 7') }
}

if (!existsSync(folder)) throw new Error(`bug: there is no folder ${folder}`)
process.stdout.write(JSON.stringify(what === 'compared' ? await compare() : what === 'pages' ? await onlyPages() : what === 'searched' ? await onlySearched() : await build()))
