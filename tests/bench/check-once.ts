import { check } from '../../src/check/index.ts'
import { measure } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { generatedLayer } from './generated.ts'

/** Reads, measures and checks one generated workspace in a process of its own, and says what it took. */
const ladders = Number(process.argv[2])
const layer = generatedLayer(ladders)
const began = performance.now()
const { value, findings } = readCurriculum([layer])
const readAt = performance.now()
if (!value) throw new Error(`bug: the generated workspace does not read: ${findings[0]?.message}`)
const measured = measure(value)
const measuredAt = performance.now()
const found = check(measured, '2026-01-01')
const checkedAt = performance.now()
process.stdout.write(
  JSON.stringify({
    ladders,
    read_s: (readAt - began) / 1000,
    measure_s: (measuredAt - readAt) / 1000,
    check_s: (checkedAt - measuredAt) / 1000,
    peak_mb: process.resourceUsage().maxRSS / 1024,
    findings: findings.length + found.findings.length,
  }),
)
