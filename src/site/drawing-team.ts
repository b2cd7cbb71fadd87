import type { Worker } from 'node:worker_threads'
import { drawDiagram } from './draw-diagram.ts'
import type { Draw } from './drawn-once.ts'
import { threadOf } from './thread.ts'

/**
 * Draws with up to so many hands at once: threads beside this one where enough waits to be drawn, else this one alone.
 * The bytes are those of `drawDiagram`, whoever draws.
 */
export function drawingTeam(hands: number, worth_a_thread = WORTH_A_THREAD): Draw {
  const waiting: Job[] = []
  const beside = new Set<Worker>()
  let [drawing_here, lost] = [false, false]

  function handOut(): void {
    if (!lost && beside.size < Math.min(hands, Math.floor(waiting.length / worth_a_thread))) beside.add(drawingThread(waiting, ended))
    if (beside.size === 0 && !drawing_here) void drawHere()
  }

  function ended(thread: Worker): void {
    beside.delete(thread)
    if (waiting.length === 0) return
    lost = true // it ended before its time: this one draws what is left
    handOut()
  }

  /** What a drawing leaves behind slows the next one down until it is cleared away, which comes late beside a large curriculum: so this thread stops where others draw. */
  async function drawHere(): Promise<void> {
    drawing_here = true
    for (let job = waiting.shift(); job; job = beside.size === 0 ? waiting.shift() : undefined) await drawDiagram(job.source, job.name).then(job.drawn, job.failed)
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
