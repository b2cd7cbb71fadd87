import { generatedLayer } from './tests/bench/generated.ts'
import { readCurriculum } from './src/read/read-curriculum.ts'
import { measure } from './src/measure/measure.ts'
import { siteInMemory } from './src/site/build.ts'
import { handbookPages } from './src/page/handbook-pages.ts'
import { tongueOf } from './src/page/tongue.ts'
import inspector from 'node:inspector'
import fs from 'node:fs'
const c = measure(readCurriculum([generatedLayer(100)]).value!)
const go = () => handbookPages(c, { diagrams: new Map(), drawn: new Map(), examples: new Map(), editions: [], pdfs: false } as never, tongueOf('en'))
let t = performance.now(); go(); console.log('first', performance.now() - t)
const s = new inspector.Session(); s.connect()
s.post('Profiler.enable'); s.post('Profiler.setSamplingInterval', { interval: 2000 }); s.post('Profiler.start')
t = performance.now(); go(); console.log('second', performance.now() - t)
s.post('Profiler.stop', (_e, { profile }) => {
  const self = new Map<string, number>(); const dt = profile.timeDeltas!; const byId = new Map(profile.nodes.map(n => [n.id, n]))
  profile.samples!.forEach((id, i) => { const n = byId.get(id)!; const k = `${n.callFrame.functionName} ${n.callFrame.url.split('/').slice(-2).join('/')}:${n.callFrame.lineNumber}`; self.set(k, (self.get(k) ?? 0) + dt[i]!) })
  const total = [...self.values()].reduce((a, b) => a + b)
  for (const [k, v] of [...self].sort((a, b) => b[1] - a[1]).slice(0, 30)) console.log((100 * v / total).toFixed(1), k)
  // inclusive by function
  const parent = new Map<number, number>(); for (const n of profile.nodes) for (const ch of n.children ?? []) parent.set(ch, n.id)
  const inc = new Map<string, number>(); profile.samples!.forEach((id, i) => { const seen = new Set<string>(); let x: number | undefined = id; while (x !== undefined) { const n = byId.get(x)!; const k = `${n.callFrame.functionName} ${n.callFrame.url.split('/').slice(-2).join('/')}`; if (!seen.has(k)) { seen.add(k); inc.set(k, (inc.get(k) ?? 0) + dt[i]!) } x = parent.get(x) } })
  console.log('--- inclusive'); for (const [k, v] of [...inc].sort((a, b) => b[1] - a[1]).slice(0, 45)) console.log((100 * v / total).toFixed(1), k)
})
