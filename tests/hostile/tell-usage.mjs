/** Loaded before the program: at its end, tells over a pipe of its own what the process took. A process that is aborted tells nothing. */
import { writeSync } from 'node:fs'

process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage()
  writeSync(3, JSON.stringify({ spent_s: (userCPUTime + systemCPUTime) / 1e6, most_mb: maxRSS / 1024 }))
})
