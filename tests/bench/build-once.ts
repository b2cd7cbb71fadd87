import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { mkdtemp } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import MarkdownIt from 'markdown-it'
import { measure } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { buildSite } from '../../src/site/build.ts'
import { cacheIn } from '../../src/site/cache.ts'
import { filesBelow } from '../../src/site/manifest.ts'
import { pageFiles } from '../../src/site/page-files.ts'
import { writeFiles } from '../../src/site/site-file.ts'
import { generatedLayer } from './generated.ts'

/**
 * Builds one generated workspace in a process of its own, and says what each stage took; then, in the same run, the floor
 * (the same Markdown rendered and the same pages written one after another) and plain Eleventy with the same pages.
 */
const ladders = Number(process.argv[2])
const folder = await mkdtemp(path.join(os.tmpdir(), 'rungbook-bench-'))
const seconds = async (work: () => unknown): Promise<number> => {
  const began = performance.now()
  await work()
  return (performance.now() - began) / 1000
}

const layer = generatedLayer(ladders)
const measured_s: Record<string, number> = {}
let stage = 'reading'
let since = performance.now()
const enter = (next: string): void => {
  measured_s[stage] = (measured_s[stage] ?? 0) + (performance.now() - since) / 1000
  ;[stage, since] = [next, performance.now()]
}
const { value, findings } = readCurriculum([layer])
if (!value) throw new Error(`bug: the generated workspace does not read: ${findings[0]?.message}`)
enter('measuring')
const curriculum = measure(value)
enter('building')
const out = path.join(folder, 'site')
const cache = cacheIn(path.join(folder, 'cache'))
await buildSite(curriculum, { folder, layers: [folder] }, out, enter, { cache })
enter('done')
const cold_s = { ...measured_s }
for (const name of Object.keys(measured_s)) delete measured_s[name]
await buildSite(curriculum, { folder, layers: [folder] }, out, enter, { cache })
enter('done')
delete measured_s['done']
const peak_mb = process.resourceUsage().maxRSS / 1024

const pages = (await filesBelow(out)).filter((name) => name.endsWith('.html'))
const { readFile } = await import('node:fs/promises')
const written = await Promise.all(pages.map(async (name) => ({ address: name.endsWith('index.html') ? (`/${name.slice(0, -'index.html'.length)}` as const) : (`/${name}` as const), html: await readFile(path.join(out, name), 'utf8') })))
const eleventy_s = await seconds(async () => writeFiles(await pageFiles(written), path.join(folder, 'plain')))
const markdown = new MarkdownIt()
const floor_s = await seconds(() => {
  for (const { bytes } of layer.files) markdown.render(new TextDecoder().decode(bytes))
  for (const { address, html } of written) {
    const file = path.join(folder, 'floor', address.endsWith('/') ? `${address}index.html` : address)
    mkdirSync(path.dirname(file), { recursive: true })
    writeFileSync(file, html)
  }
})
rmSync(folder, { recursive: true, force: true })
process.stdout.write(JSON.stringify({ ladders, pages: pages.length, cold_s, warm_s: measured_s, eleventy_s, floor_s, peak_mb }))
