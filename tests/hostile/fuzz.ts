import { spawnSync } from 'node:child_process'

/** The fuzz tests with much more chance, for minutes. `npm run fuzz -- RUNS SEED` runs another number, or the same again. */
const [runs = 10_000, seed = Date.now() % 1_000_000_000] = process.argv.slice(2).map(Number)
process.stdout.write(`${runs} runs, seed ${seed}\n`)
const { status } = spawnSync('npx', ['--no-install', 'vitest', 'run', 'tests/hostile/fuzz.test.ts'], { stdio: 'inherit', shell: process.platform === 'win32', env: { ...process.env, FUZZ_RUNS: String(runs), FUZZ_SEED: String(seed) } })
process.exit(status ?? 1)
