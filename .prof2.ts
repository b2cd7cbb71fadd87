import { generatedLayer } from './tests/bench/generated.ts'
import { readCurriculum } from './src/read/read-curriculum.ts'
import { measure } from './src/measure/measure.ts'
import { liveHandbook } from './src/site/live-handbook.ts'
import { NO_CACHE } from './src/site/cache.ts'
import inspector from 'node:inspector'
const c = readCurriculum([generatedLayer(500)]).value!
const m = measure(c)
const a = new Map()
await liveHandbook(m, { folder: '/tmp', layers: ['/tmp'] }, NO_CACHE, a).file('movement-5/rung-2/index.html')
const s = new inspector.Session(); s.connect()
s.post('Profiler.enable'); s.post('Profiler.setSamplingInterval', { interval: 1000 }); s.post('Profiler.start')
const t = performance.now(); await liveHandbook(m, { folder: '/tmp', layers: ['/tmp'] }, NO_CACHE, a).file('movement-6/rung-2/index.html'); console.log(performance.now() - t)
s.post('Profiler.stop', (_e, { profile }) => {
  const dt = profile.timeDeltas!; const byId = new Map(profile.nodes.map(n => [n.id, n]))
  const parent = new Map<number, number>(); for (const n of profile.nodes) for (const ch of n.children ?? []) parent.set(ch, n.id)
  const inc = new Map<string, number>(); let total = 0
  profile.samples!.forEach((id, i) => { total += dt[i]!; const seen = new Set<string>(); let x: number | undefined = id; while (x !== undefined) { const n = byId.get(x)!; const k = `${n.callFrame.functionName} ${n.callFrame.url.split('/').slice(-2).join('/')}`; if (!seen.has(k)) { seen.add(k); inc.set(k, (inc.get(k) ?? 0) + dt[i]!) } x = parent.get(x) } })
  for (const [k, v] of [...inc].sort((a, b) => b[1] - a[1]).slice(0, 40)) console.log((100 * v / total).toFixed(1), k)
})
