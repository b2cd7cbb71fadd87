import { parentPort, workerData } from 'node:worker_threads'
import { readCurriculum } from '../read/read-curriculum.ts'
import { cacheIn, type Kept } from './cache.ts'
import { checkShare, shareOf, type Answered, type Asked, type InShare, type KeptThere } from './check-team.ts'
import { readAhead, readingsOnce } from './readings-once.ts'

/** The other end of a checking thread: answers what it is asked, in order. */
const { folder, tool } = (workerData as { given: KeptThere }).given
const kept: Kept = { cache: cacheIn(folder), tool }

async function answer(question: Asked): Promise<Answered> {
  if ('read' in question) {
    for (const group of question.read) await readAhead(group, kept)
    return 'read'
  }
  const share = await readShare(question)
  return share ? checkShare(share, question.asked) : 'failed'
}

/** The ladders of a share, and nothing else of the curriculum that would be held while they are checked. */
async function readShare({ layers, asked, share }: Extract<Asked, { layers: unknown }>): Promise<InShare | undefined> {
  const { value } = readCurriculum(layers, undefined, await readingsOnce(layers, kept))
  return value && shareOf(value, asked, share)
}

let before: Promise<unknown> = Promise.resolve()
parentPort?.on('message', (question: Asked) => {
  before = before.then(() => answer(question)).catch((): Answered => 'failed').then((answered) => parentPort?.postMessage(answered))
})
