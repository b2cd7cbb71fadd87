import { existsSync, mkdirSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { foundInWorkspace } from '../../src/command/curriculum.ts'
import { cacheIn } from '../../src/site/cache.ts'
import { toolDigest } from '../../src/site/tool-digest.ts'
import { generatedLayer } from './generated.ts'

/** `check` of one generated workspace on disk, in a process of its own, by two hands where there are two, with the readings that an earlier one kept; says what it took. Where no workspace lies there, one is written and nothing is checked. */
const [count = '', folder = ''] = process.argv.slice(2)
if (existsSync(path.join(folder, 'handbook.yaml'))) {
  const began = performance.now()
  const found = await foundInWorkspace({ options: {}, rest: [] }, { folder, progress: () => undefined }, 'findings', { hands: () => Math.min(2, os.availableParallelism()), kept: async () => ({ cache: cacheIn(path.join(folder, '.cache')), tool: await toolDigest() }) })
  const { user, system } = process.cpuUsage()
  process.stdout.write(JSON.stringify({ took_s: (performance.now() - began) / 1000, processor_s: (user + system) / 1e6, peak_mb: process.resourceUsage().maxRSS / 1024, findings: found.findings.length }))
} else {
  for (const { file, bytes } of generatedLayer(Number(count)).files) {
    mkdirSync(path.dirname(path.join(folder, file)), { recursive: true })
    writeFileSync(path.join(folder, file), bytes)
  }
  process.stdout.write('{}')
}
