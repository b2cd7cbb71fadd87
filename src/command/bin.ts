import { main } from './main.ts'

/** The program: the process's words, streams and exit code. */
process.exitCode = await main(process.argv.slice(2), {
  out: (text) => void process.stdout.write(text),
  note: (text) => void process.stderr.write(text),
  progress: (stage) => void (process.stderr.isTTY && process.stderr.write(`${stage} …\n`)),
  ended: () => new Promise((resolve) => process.once('SIGINT', () => resolve()).once('SIGTERM', () => resolve())),
  colour: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
  folder: process.cwd(),
})
