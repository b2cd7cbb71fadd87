import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { mkdtemp } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { checkedWorkspace, nothingSeen } from '../../src/command/curriculum.ts'
import { cacheIn } from '../../src/site/cache.ts'
import { liveHandbook, type AssetMemory } from '../../src/site/live-handbook.ts'
import { generatedLayer } from './generated.ts'

/** What a preview does after a save of one of so many ladders, from the file on disk to the page that is looked at; in a process of its own. With `es`, in two languages. */
const ladders = Number(process.argv[2])
const languages = process.argv[3] === undefined ? '' : `languages: [en, ${process.argv[3]}]\n`
const folder = await mkdtemp(path.join(os.tmpdir(), 'rungbook-bench-'))
for (const { file, bytes } of generatedLayer(ladders).files) {
  mkdirSync(path.dirname(path.join(folder, file)), { recursive: true })
  writeFileSync(path.join(folder, file), bytes)
}
const handbook = path.join(folder, 'handbook.yaml')
writeFileSync(handbook, readFileSync(handbook, 'utf8') + languages)
const seen = nothingSeen()
const assets: AssetMemory = new Map()
const cache = cacheIn(path.join(folder, '.cache-of-the-bench'))
const file = path.join(folder, 'ladders/movement-5.md')

const milliseconds = ({ user, system }: NodeJS.CpuUsage): number => (user + system) / 1000
const saves: { readonly wall_ms: number; readonly processor_ms: number }[] = []
for (let save = 0; save < 10; save += 1) {
  const [began, used] = [performance.now(), process.cpuUsage()]
  const { measured, workspace } = await checkedWorkspace({ options: {}, rest: [] }, { folder, progress: () => undefined }, undefined, { seen })
  if (!measured) throw new Error('bug: the generated workspace does not read')
  const page = await liveHandbook(measured, { folder, layers: workspace.folders }, cache, assets).file('movement-5/rung-2/index.html')
  if (save > 0 && !String(page).includes(`Long neck ${save - 1}`)) throw new Error('bug: the page does not show what was saved')
  saves.push({ wall_ms: performance.now() - began, processor_ms: milliseconds(process.cpuUsage(used)) })
  writeFileSync(file, readFileSync(file, 'utf8').replace(/Long neck[^.]*/g, `Long neck ${save}`))
}
rmSync(folder, { recursive: true, force: true })
const [first, ...after] = saves
const median = (of: 'wall_ms' | 'processor_ms'): number => after.map((save) => save[of]).toSorted((a, b) => a - b)[4] ?? 0
process.stdout.write(JSON.stringify({ ladders, first_ms: first?.wall_ms ?? 0, save_ms: median('wall_ms'), processor_ms: median('processor_ms') }))
