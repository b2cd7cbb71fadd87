import type { Worker } from 'node:worker_threads'
import { drawDiagram } from './draw-diagram.ts'
import type { Draw } from './drawn-once.ts'
import { threadOf } from './thread.ts'

/**
 * Draws with up to so many hands at once: this thread's, and threads beside it where enough waits to be drawn.
 * The bytes are those of `drawDiagram`, whoever draws.
 */
export function drawingTeam(hands: number, worth_a_thread = WORTH_A_THREAD): Draw {
  const waiting: Job[] = []
  const beside = new Set<Worker>()
  let drawing_here = false

  function handOut(): void {
    if (beside.size < Math.min(hands - 1, Math.floor(waiting.length / worth_a_thread))) beside.add(drawingThread(waiting, (ended) => beside.delete(ended)))
    if (!drawing_here) void drawHere()
  }

  async function drawHere(): Promise<void> {
    drawing_here = true
    for (let job = waiting.shift(); job; job = waiting.shift()) await drawDiagram(job.source, job.name).then(job.drawn, job.failed)
    drawing_here = false
  }

  return (source, name) =>
    new Promise((drawn, failed) => {
      waiting.push({ source, name, drawn, failed })
      handOut()
    })
}

export type Job = { readonly source: string; readonly name: string; readonly drawn: (svg: string) => void; readonly failed: (why: unknown) => void }

/** What a thread is asked, and what it answers: a drawing or why there is none. */
export type Asked = Pick<Job, 'source' | 'name'>
export type Answered = { readonly svg: string } | { readonly why: unknown }

/** To be ready, a thread takes as long as a hundred drawings. Measured: of three hundred two hands make as long as one, of a thousand five sixths. */
const WORTH_A_THREAD = 400

/** A thread that takes one drawing after another from those that wait, and ends when none is left. */
export function drawingThread(waiting: Job[], ended: (thread: Worker) => void): Worker {
  const thread = threadOf(import.meta.url.replace('drawing-team', 'drawing-thread'))
  let job: Job | undefined
  const next = (): void => {
    job = waiting.shift()
    if (job) thread.postMessage({ source: job.source, name: job.name } satisfies Asked)
    else void thread.terminate()
  }
  thread.on('message', (answer: Answered | 'ready') => {
    if (answer !== 'ready' && 'svg' in answer) job?.drawn(answer.svg)
    if (answer !== 'ready' && 'why' in answer) job?.failed(answer.why)
    next()
  })
  thread.on('error', (why) => job?.failed(why))
  thread.on('exit', () => ended(thread))
  return thread
}
