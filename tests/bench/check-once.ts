import { check } from '../../src/check/index.ts'
import { knownIn, measureInTurn, type InTurn } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { generatedLayer } from './generated.ts'

/** Reads, measures and checks one generated workspace in a process of its own, each ladder in its turn as `check` does, and says what it took. */
const ladders = Number(process.argv[2])
const layer = generatedLayer(ladders)
const processor_s = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1e6
}

/** The same ladders, one by one, and how long they took to come. */
function timed(all: InTurn['ladders']): { readonly ladders: InTurn['ladders']; readonly took_s: () => number } {
  let took_s = 0
  function* each(): Generator<InTurn['ladders'] extends Iterable<infer Each> ? Each : never> {
    let asked = performance.now()
    for (const ladder of all) {
      took_s += (performance.now() - asked) / 1000
      yield ladder
      asked = performance.now()
    }
  }
  return { ladders: each(), took_s: () => took_s }
}

const [began, spent_s] = [performance.now(), processor_s()]
const { value, findings } = readCurriculum([layer])
const readAt = performance.now()
if (!value) throw new Error(`bug: the generated workspace does not read: ${findings[0]?.message}`)
const { ladders: measured, pages } = measureInTurn(value, knownIn(value))
const { ladders: inTurn, took_s } = timed(measured)
const found = check({ ladders: inTurn, pages }, '2026-01-01', undefined, 'findings')
const checkedAt = performance.now()
process.stdout.write(
  JSON.stringify({
    ladders,
    read_s: (readAt - began) / 1000,
    measure_s: took_s(),
    check_s: (checkedAt - readAt) / 1000 - took_s(),
    processor_s: processor_s() - spent_s,
    peak_mb: process.resourceUsage().maxRSS / 1024,
    findings: findings.length + found.findings.length,
  }),
)
