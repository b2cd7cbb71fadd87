import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import MarkdownIt from 'markdown-it'
import { measure } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { buildSite } from '../../src/site/build.ts'
import { cacheIn } from '../../src/site/cache.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { pageFiles } from '../../src/site/page-files.ts'
import { writeFiles } from '../../src/site/site-file.ts'
import { firstQuery } from './first-query.ts'
import { generatedLayer } from './generated.ts'

/**
 * Builds a generated workspace once, in a process of its own, into a folder that keeps site and cache for the next, and says what each stage took, and the processor time of it all but the indexer's, which is a process of its own.
 * `changed` has one ladder with other words. `compared` builds nothing: it takes the pages that lie there for the floor (the same Markdown rendered and
 * the same pages written one after another) and for plain Eleventy, and says what a first search loads.
 */
const [count = '', folder = '', what = ''] = process.argv.slice(2)
const ladders = Number(count)
const out = path.join(folder, 'site')

const seconds = async (work: () => unknown): Promise<number> => {
  const began = performance.now()
  await work()
  return (performance.now() - began) / 1000
}

/** The workspace, one ladder of it changed. */
function layer() {
  const { files } = generatedLayer(ladders)
  const other = (bytes: Uint8Array): Uint8Array => new TextEncoder().encode(new TextDecoder().decode(bytes).replace('Long neck', 'Tall neck'))
  return { files: what === 'changed' ? files.map(({ file, bytes }) => ({ file, bytes: file === 'ladders/movement-5.md' ? other(bytes) : bytes })) : files }
}

async function build() {
  const stages_s: Record<string, number> = {}
  let [stage, since] = ['reading', performance.now()]
  const enter = (next: string): void => {
    stages_s[stage] = (stages_s[stage] ?? 0) + (performance.now() - since) / 1000
    ;[stage, since] = [next, performance.now()]
  }
  const { value, findings } = readCurriculum([layer()])
  if (!value) throw new Error(`bug: the generated workspace does not read: ${findings[0]?.message}`)
  enter('measuring')
  const curriculum = measure(value)
  enter('building')
  await buildSite(curriculum, { folder, layers: [folder] }, out, enter, { cache: cacheIn(path.join(folder, 'cache')) })
  enter('done')
  const { user, system } = process.cpuUsage()
  return { stages_s, processor_s: (user + system) / 1e6, peak_mb: process.resourceUsage().maxRSS / 1024 }
}

async function compare() {
  const pages = (await filesBelow(out)).filter((name) => name.endsWith('.html'))
  const written = pages.map((name) => ({ address: name.endsWith('index.html') ? (`/${name.slice(0, -'index.html'.length)}` as const) : (`/${name}` as const), html: readFileSync(path.join(out, name), 'utf8') }))
  const eleventy_s = await seconds(async () => writeFiles(await pageFiles(written), path.join(folder, 'plain')))
  const markdown = new MarkdownIt()
  const floor_s = await seconds(() => {
    for (const { bytes } of layer().files) markdown.render(new TextDecoder().decode(bytes))
    for (const { address, html } of written) {
      const file = path.join(folder, 'floor', address.endsWith('/') ? `${address}index.html` : address)
      mkdirSync(path.dirname(file), { recursive: true })
      writeFileSync(file, html)
    }
  })
  return { pages: pages.length, eleventy_s, floor_s, query: await firstQuery(out, 'movement 7') }
}

if (!existsSync(folder)) throw new Error(`bug: there is no folder ${folder}`)
process.stdout.write(JSON.stringify(what === 'compared' ? await compare() : await build()))
