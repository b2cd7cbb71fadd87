import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { mkdtemp } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { check, type CheckMemory } from '../../src/check/index.ts'
import { AVERAGE, measure, type Memory } from '../../src/measure/measure.ts'
import { readCurriculum, type ReadMemory } from '../../src/read/read-curriculum.ts'
import { cacheIn } from '../../src/site/cache.ts'
import { readWorkspace } from '../../src/site/disk.ts'
import { liveHandbook, type AssetMemory } from '../../src/site/live-handbook.ts'
import { pictureFindings } from '../../src/site/pictures.ts'
import { generatedLayer } from './generated.ts'

/** What a preview does after a save of one of so many ladders, from the file on disk to the page that is looked at; in a process of its own. */
const ladders = Number(process.argv[2])
const folder = await mkdtemp(path.join(os.tmpdir(), 'rungbook-bench-'))
for (const { file, bytes } of generatedLayer(ladders).files) {
  mkdirSync(path.dirname(path.join(folder, file)), { recursive: true })
  writeFileSync(path.join(folder, file), bytes)
}
const reading: ReadMemory = new Map()
const measuring: Memory = new WeakMap()
const checking: CheckMemory = new WeakMap()
const assets: AssetMemory = new Map()
const cache = cacheIn(path.join(folder, '.cache-of-the-bench'))
const file = path.join(folder, 'ladders/movement-5.md')
const saves: number[] = []
for (let save = 0; save < 6; save += 1) {
  const began = performance.now()
  const { layers, folders } = await readWorkspace(folder)
  const { value } = readCurriculum(layers, reading)
  if (!value) throw new Error('bug: the generated workspace does not read')
  const measured = measure(value, AVERAGE, measuring)
  check(measured, '2026-01-01', checking)
  await pictureFindings(measured, { folder, layers: folders })
  await liveHandbook(measured, { folder, layers: folders }, cache, assets).file('movement-5/rung-2/index.html')
  saves.push(performance.now() - began)
  writeFileSync(file, readFileSync(file, 'utf8').replace(/Long neck[^.]*/, `Long neck ${save}`))
}
rmSync(folder, { recursive: true, force: true })
const [first = 0, ...after] = saves
process.stdout.write(JSON.stringify({ ladders, first_ms: first, save_ms: after.toSorted((a, b) => a - b)[2] ?? 0 }))
