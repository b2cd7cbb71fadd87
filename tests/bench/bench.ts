import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { brotliCompressSync } from 'node:zlib'
import { build } from 'esbuild'
import { fit } from '../../src/load/fit.ts'
import { ask, type LoadModel } from '../../src/load/model.ts'
import { supportedBody } from '../../src/load/supported-body.ts'
import { AVERAGE } from '../../src/measure/measure.ts'
import type { FirstQuery } from './first-query.ts'

/** Times what people wait for, and prints ratios: what one more of something costs. `npm run bench`. */
const REPOSITORY = path.resolve(import.meta.dirname, '../..')

/** Microseconds a call, the median of several rounds. */
function each_us(call: () => unknown): number {
  const rounds = Array.from({ length: 7 }, () => {
    const began = performance.now()
    let calls = 0
    while (performance.now() - began < 150) {
      call()
      calls += 1
    }
    return ((performance.now() - began) * 1000) / calls
  })
  return rounds.toSorted((a, b) => a - b)[3] ?? 0
}

const PRESS_UP = { facing: 'down', feet: 'toes', hands: 'surface', hand_height_cm: 30 }
/** Twenty-one bodies in two directions at two ends of the rep, and the two of the middle. */
const POSES = 21 * 2 * 2 + 2 * 2

const rung_us = each_us(() => ask(supportedBody, PRESS_UP, AVERAGE))
const fit_us = each_us(() => fit(supportedBody as unknown as LoadModel, PRESS_UP, 'hand_height_cm', 33, AVERAGE))

const bundle = await build({ entryPoints: [path.join(REPOSITORY, 'src/load/index.ts')], bundle: true, format: 'esm', minify: true, charset: 'utf8', target: 'es2022', write: false })
const bundle_bytes = brotliCompressSync(bundle.outputFiles[0]?.contents ?? new Uint8Array()).length

/** Runs one measurement in a process of its own. */
function ofItsOwn<Figures>(script: string, ladders: number, ...more: string[]): Figures {
  const { stdout, stderr, status } = spawnSync(process.execPath, ['--import', 'tsx', path.join(import.meta.dirname, script), String(ladders), ...more], { cwd: REPOSITORY, encoding: 'utf8', maxBuffer: 1e8 })
  if (status !== 0) throw new Error(`bug: ${script} of ${ladders} ladders failed: ${stderr}`)
  return JSON.parse(stdout) as Figures
}

type Checked = { ladders: number; read_s: number; measure_s: number; check_s: number; processor_s: number; peak_mb: number; findings: number }
const sizes = process.argv.includes('--quick') ? [10, 100] : [10, 100, 1000, 10_000]
const checked = sizes.map((ladders): Checked => {
  const { stdout, stderr, status } = spawnSync(process.execPath, ['--import', 'tsx', path.join(import.meta.dirname, 'check-once.ts'), String(ladders)], { cwd: REPOSITORY, encoding: 'utf8', maxBuffer: 1e8 })
  if (status !== 0) throw new Error(`bug: checking ${ladders} ladders failed: ${stderr}`)
  return JSON.parse(stdout) as Checked
})

type CommandOnce = { took_s: number; processor_s: number; peak_mb: number; findings: number }
/** The command as somebody runs it: on a disk, twice. */
const commanded = sizes.slice(-1).map((ladders) => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'rungbook-bench-'))
  const [, first, again] = ['written', 'first', 'again'].map(() => ofItsOwn<CommandOnce>('command-once.ts', ladders, folder)) as [unknown, CommandOnce, CommandOnce]
  rmSync(folder, { recursive: true, force: true })
  return { ladders, first, again }
})

type ReviewedOnce = { ladders: number; cold_s: number; warm_s: number; typed: number; peak_mb: number }
const reviewed = [100, ...(process.argv.includes('--quick') ? [] : [1000])].map((ladders): ReviewedOnce => {
  const { stdout, stderr, status } = spawnSync(process.execPath, ['--import', 'tsx', path.join(import.meta.dirname, 'review-once.ts'), String(ladders)], { cwd: REPOSITORY, encoding: 'utf8', maxBuffer: 1e8 })
  if (status !== 0) throw new Error(`bug: reviewing ${ladders} ladders failed: ${stderr}`)
  return JSON.parse(stdout) as ReviewedOnce
})

type EditedOnce = { ladders: number; first_ms: number; whole_ms: number; findings_ms: number; hover_ms: number; completion_ms: number; rename_ms: number }
const edited = [100, ...(process.argv.includes('--quick') ? [] : [1000])].map((ladders): EditedOnce => {
  const { stdout, stderr, status } = spawnSync(process.execPath, ['--import', 'tsx', path.join(import.meta.dirname, 'editor-once.ts'), String(ladders)], { cwd: REPOSITORY, encoding: 'utf8', maxBuffer: 1e8 })
  if (status !== 0) throw new Error(`bug: serving ${ladders} ladders to an editor failed: ${stderr}`)
  return JSON.parse(stdout) as EditedOnce
})

type Searched = { parts: number; query: FirstQuery }
function searchedOnly(ladders: number): Searched {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'rungbook-bench-'))
  const searched = ofItsOwn<Searched>('build-once.ts', ladders, folder, 'searched')
  rmSync(folder, { recursive: true, force: true })
  return searched
}

const built_sizes = process.argv.includes('--quick') ? [10] : process.argv.includes('--whole') ? [10, 100, 1000] : [10, 100]
const kinds = process.argv.includes('--quick') ? [] : [{ ladders: 100, kind: 'layered' }]
type BuiltOnce = { stages_s: Record<string, number>; processor_s: number; peak_mb: number }
type Compared = { pages: number; eleventy_s: number; floor_s: number; query: FirstQuery }
/** A build from nothing, one of the same again, and one after a change to a ladder: each a process of its own, as somebody runs it. */
const built = [...built_sizes.map((ladders) => ({ ladders, kind: 'plain' })), ...kinds].map(({ ladders, kind }) => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'rungbook-bench-'))
  const [cold, again, changed] = ['cold', 'again', 'changed'].map((what) => ofItsOwn<BuiltOnce>('build-once.ts', ladders, folder, what, kind)) as [BuiltOnce, BuiltOnce, BuiltOnce]
  const { pages_s } = ofItsOwn<{ pages_s: number }>('build-once.ts', ladders, folder, 'pages', kind)
  const compared = ofItsOwn<Compared>('build-once.ts', ladders, folder, 'compared', kind)
  rmSync(folder, { recursive: true, force: true })
  return { ladders, kind, cold, again, changed, pages_s, ...compared }
})
/** What a search loads of a handbook ten times as large as the largest that is built. */
const far = process.argv.includes('--far') ? searchedOnly(10_000) : undefined
type SavedOnce = { ladders: number; first_ms: number; save_ms: number; processor_ms: number }
const saved = [100, ...(process.argv.includes('--quick') ? [] : [1000])].map((ladders) => ofItsOwn<SavedOnce>('save-once.ts', ladders))

const machine = `${os.cpus().length} × ${os.cpus()[0]?.model ?? 'unknown'}, Node ${process.version}`
const total = ({ read_s, measure_s, check_s }: Checked): number => read_s + measure_s + check_s
/** Other work on the machine lengthens the time on the clock, and far less that of the processor. */
const each_ms = ({ ladders, processor_s }: Checked): number => (1000 * processor_s) / ladders
process.stdout.write(`${machine}

load
  one rung with its interval   ${rung_us.toFixed(0)} µs, ${Math.round((POSES * 1e6) / rung_us)} poses a second on one core
  one fit                      ${fit_us.toFixed(0)} µs, ${(fit_us / rung_us).toFixed(1)} rungs
  all models for a browser     ${bundle_bytes} bytes compressed

check     ladders   per second   read : measure : check   peak MB   processor ms a ladder, over that of ${sizes[1]}
${checked
  .map((row) => {
    const base = checked[1]
    const whole = total(row)
    const shares = [row.read_s, row.measure_s, row.check_s].map((part) => ((100 * part) / whole).toFixed(0)).join(' : ')
    return `          ${String(row.ladders).padStart(7)}   ${(row.ladders / whole).toFixed(0).padStart(10)}   ${shares.padStart(22)}   ${row.peak_mb.toFixed(0).padStart(7)}   ${each_ms(row).toFixed(2)}, ${base ? (each_ms(row) / each_ms(base)).toFixed(2) : '–'}`
  })
  .join('\n')}
`)
process.stdout.write(`
command   ladders   check on a disk, and again: seconds, peak MB; processor time of the second over the first
${commanded.map(({ ladders, first, again }) => `          ${String(ladders).padStart(7)}   ${[first, again].map(({ took_s, peak_mb }) => `${took_s.toFixed(1)} s, ${peak_mb.toFixed(0)}`).join('; ')}; ${(again.processor_s / first.processor_s).toFixed(2)} times`).join('\n')}
`)
process.stdout.write(`
review    ladders   ten changed, warm over checking all of them
${reviewed
  .map((row) => {
    const whole = checked.find(({ ladders }) => ladders === row.ladders)
    return `          ${String(row.ladders).padStart(7)}   ${row.warm_s.toFixed(2)} s${whole ? `, ${(row.warm_s / total(whole)).toFixed(2)} times` : ''}`
  })
  .join('\n')}
`)
process.stdout.write(`
editor    ladders   first hover, all checked; then findings after a key, hover, completion, rename of a rung
${edited.map((row) => `          ${String(row.ladders).padStart(7)}   ${[row.first_ms, row.whole_ms, row.findings_ms, row.hover_ms, row.completion_ms, row.rename_ms].map((time) => `${time.toFixed(0)} ms`).join(', ')}`).join('\n')}
`)
const sum = (stages: Record<string, number>): number => Object.values(stages).reduce((all, one) => all + one, 0)
const kb = (bytes: number): string => `${Math.round(bytes / 1000)} kB`
process.stdout.write(`
build     ladders   pages   processor time of reading, measuring, making and writing pages, and of the floor, without the system's, in times of plain Eleventy with the same pages; peak MB cold, the same again, after a change to one ladder
${built
  .map(({ ladders, kind, pages, cold, again, changed, pages_s, eleventy_s, floor_s, query }) => {
    const whole_s = sum(cold.stages_s)
    const [same, one] = [again, changed].map(({ stages_s }) => `${((100 * sum(stages_s)) / whole_s).toFixed(0)} %`)
    const [same_of_processor, one_of_processor] = [again, changed].map(({ processor_s }) => `${((100 * processor_s) / cold.processor_s).toFixed(0)} %`)
    return `          ${String(ladders).padStart(7)}   ${String(pages).padStart(5)}   ${kind === 'layered' ? 'two layers, two languages: ' : ''}${[...(kind === 'layered' ? [] : [pages_s]), floor_s].map((time) => `${(time / eleventy_s).toFixed(1)} ×`).join(', ')}; ${[cold, again, changed].map(({ peak_mb }) => peak_mb.toFixed(0)).join(', ')}
          stages: ${Object.entries(cold.stages_s).filter(([, time]) => time > 0.005).map(([name, time]) => `${name} ${((100 * time) / whole_s).toFixed(0)} %`).join(', ')}; the same again takes ${same}, after a change ${one}; of processor time ${same_of_processor} and ${one_of_processor}
          a first search loads ${query.files} files, ${kb(query.bytes)}: ${Object.entries(query.kinds).map(([kind, bytes]) => `${kind} ${kb(bytes)}`).join(', ')}`
  })
  .join('\n')}

${far ? `search at 10,000 ladders, in ${far.parts} parts: a first one loads ${far.query.files} files, ${kb(far.query.bytes)}: ${Object.entries(far.query.kinds).map(([kind, bytes]) => `${kind} ${kb(bytes)}`).join(', ')}\n\n` : ''}preview   ladders   first page, then from a save to its page; the save's processor time over that at ${saved[0]?.ladders}
${saved.map((row) => `          ${String(row.ladders).padStart(7)}   ${row.first_ms.toFixed(0)} ms, ${row.save_ms.toFixed(0)} ms; ${(row.processor_ms / (saved[0]?.processor_ms ?? 1)).toFixed(1)} times`).join('\n')}
`)
type Read = { sessions: number; pages: { address: string; lcp_ms: number; shift: number; beyond_ms: number }[]; answered: { says: string; handler_ms: number; longest_ms: number }[]; search_ms: number[] }
const read = ofItsOwn<Read>('reader-once.ts', 5000)
process.stdout.write(`
reader, slow 4G, processor four times as slow, ${read.sessions} sessions, forty rungs
          largest paint, blocking, shift
${read.pages.map(({ address, lcp_ms, beyond_ms, shift }) => `          ${address.padEnd(30)} ${lcp_ms.toFixed(0).padStart(5)} ms ${beyond_ms.toFixed(0).padStart(5)} ms ${shift.toFixed(3).padStart(7)}`).join('\n')}
          handler, longest task
${read.answered.map(({ says, handler_ms, longest_ms }) => `          ${says.padEnd(30)} ${handler_ms.toFixed(0).padStart(5)} ms ${longest_ms.toFixed(0).padStart(5)} ms`).join('\n')}
          first result of a search, warm: ${read.search_ms.map((time) => `${time.toFixed(0)} ms`).join(', and with the slow processor ')}
`)
const results = path.join(REPOSITORY, 'bench-results')
mkdirSync(results, { recursive: true })
writeFileSync(path.join(results, 'bench.json'), `${JSON.stringify({ machine, rung_us, fit_us, bundle_bytes, checked, commanded, reviewed, edited, built, far, saved, read }, null, 2)}\n`)
