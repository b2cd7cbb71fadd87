import { asking } from './asked.ts'
import { main } from './main.ts'
import { statusLine } from './status-line.ts'

const asked = asking(process.stdin, process.stderr)
const status = statusLine(process.stderr, process.env.TERM === 'dumb')

/** Whoever reads may have read enough, as head does; that is no fault of anybody. */
for (const stream of [process.stdout, process.stderr]) stream.on('error', (error: NodeJS.ErrnoException) => error.code === 'EPIPE' && process.exit())

/** The program: the process's words, streams and exit code. */
process.exitCode = await main(process.argv.slice(2), {
  out: (text) => {
    status.goes()
    process.stdout.write(text)
  },
  note: (text) => {
    status.goes()
    process.stderr.write(text)
  },
  progress: (stage) => status.says(stage),
  ended: () => new Promise((resolve) => process.once('SIGINT', () => resolve()).once('SIGTERM', () => resolve())),
  colour: process.stdout.isTTY === true && !process.env.NO_COLOR,
  folder: process.cwd(),
  asked,
})
asked.ends()
status.goes()
