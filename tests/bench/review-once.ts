import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { main } from '../../src/command/main.ts'
import { generatedLayer } from './generated.ts'

/** Reviews a generated repository of so many ladders in which ten were changed, twice, and says what it took. */
const ladders = Number(process.argv[2])
const folder = mkdtempSync(path.join(os.tmpdir(), 'rungbook-bench-'))
const git = (...words: string[]): void => void execFileSync('git', ['-c', 'user.name=Bench', '-c', 'user.email=bench@example.org', ...words], { cwd: folder })
for (const { file, bytes } of generatedLayer(ladders).files) {
  mkdirSync(path.dirname(path.join(folder, file)), { recursive: true })
  writeFileSync(path.join(folder, file), bytes)
}
git('init', '-q')
git('add', '-A')
git('commit', '-qm', 'base')
for (let index = 0; index < 10; index += 1) {
  const file = path.join(folder, `ladders/movement-${index * Math.floor(ladders / 10)}.md`)
  writeFileSync(file, readFileSync(file, 'utf8').replace('reps: 12', 'reps: 14'))
}
let out = ''
const review = async (): Promise<number> => {
  out = ''
  const began = performance.now()
  await main(['review', 'HEAD'], { out: (text) => void (out += text), note: () => undefined, progress: () => undefined, ended: () => Promise.resolve(), colour: false, folder })
  return (performance.now() - began) / 1000
}
const cold_s = await review()
const warm_s = await review()
rmSync(folder, { recursive: true, force: true })
process.stdout.write(JSON.stringify({ ladders, cold_s, warm_s, typed: (out.match(/criterion raised/g) ?? []).length, peak_mb: process.resourceUsage().maxRSS / 1024 }))
