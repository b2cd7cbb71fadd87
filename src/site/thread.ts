import { Worker } from 'node:worker_threads'

/** A thread that runs another module of this program, by its address as `import.meta.url` has it; what it is given stands in its `workerData`. One that needs more than `most_mb` ends. */
export const threadOf = (module: string, given?: unknown, most_mb?: number): Worker =>
  new Worker(START, { eval: true, workerData: { module, given }, ...(most_mb === undefined ? {} : { resourceLimits: { maxOldGenerationSizeMb: most_mb, maxYoungGenerationSizeMb: YOUNG_MB } }) })

/** The room for what is new that a thread has by itself; with a limit it would have less, and clear up all the time. */
const YOUNG_MB = 48

/** The repository runs its source as it is, and a new thread must be told how; the package carries it compiled. */
const START = `
const { workerData: { module } } = require('node:worker_threads')
const ready = module.endsWith('.ts') ? import('tsx/esm/api').then(({ register }) => register()) : Promise.resolve()
ready.then(() => import(module))`
