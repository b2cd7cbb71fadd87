import { killBuilds, killSwaps } from './faults.ts'

/** Kills a hundred builds, half of them with a link, and says what stood after each. `npm run faults -- TIMES SEED` runs another number, or the same again. */
const [times = 100, seed = Date.now() % 1_000_000] = process.argv.slice(2).map(Number)
process.stdout.write(`seed ${seed}\n`)
for (const [words, count] of [[['--link'], Math.ceil(times / 2)], [[], Math.floor(times / 2)]] as const) {
  const { kills, ended, published, gaps } = await killBuilds(count, seed, words, (line) => void process.stdout.write(`${words.join('') || 'folder'} ${line}\n`))
  process.stdout.write(`${words.join('') || 'folder'}: ${kills} killed, ${ended} ended before; ${published} new editions stood; ${gaps} times nothing until the next build\n`)
}
for (const link of [true, false]) {
  const { kills, gaps, editions } = await killSwaps(times, seed, link)
  process.stdout.write(`${link ? '--link' : 'folder'}: ${kills} kills of a process that only publishes, over ${editions} editions; ${gaps} times nothing until the next build\n`)
}
