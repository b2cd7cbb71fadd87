import { check, type Checked } from '../check/index.ts'
import type { Curriculum, Layer } from '../ladder/curriculum.ts'
import { inOrder } from '../ladder/finding.ts'
import { partOf, type Part } from '../ladder/part.ts'
import { knownIn, measureInTurn, type Known } from '../measure/measure.ts'
import type { Kept } from './cache.ts'
import { readAhead, unread, type Group } from './readings-once.ts'
import { threadOf } from './thread.ts'

/** What a check is asked for: of which part, on which day, and whether what cannot be told is told too. */
export type CheckAsked = { readonly part: Part | undefined; readonly today: string; readonly asked: 'everything' | 'findings' }

/** One hand's share of so many, from 0: every so-manieth ladder. The first share has the pages. */
export type Share = { readonly nth: number; readonly of: number }
const WHOLE: Share = { nth: 0, of: 1 }

/** What one hand measures and checks, and all that it may point at. */
export type InShare = Pick<Curriculum, 'ladders' | 'pages'> & { readonly known: Known }

/** The ladders and pages of a share; who holds these alone lets go of the others. */
export function shareOf(curriculum: Curriculum, { part }: CheckAsked, { nth, of }: Share = WHOLE): InShare {
  const { ladders, pages } = part ? partOf(curriculum, part) : curriculum
  return { ladders: ladders.filter((_, index) => index % of === nth), pages: nth === 0 ? pages : [], known: knownIn(curriculum) }
}

/** Measures and checks a share. */
export const checkShare = (share: InShare, { today, asked }: CheckAsked): Checked => check(measureInTurn(share, share.known), today, undefined, asked)

/** Hands that have begun to check, beside this one. */
export type CheckTeam = {
  /** Checks this thread's share of the curriculum, and gives all that was found. */
  checked(curriculum: Curriculum): Promise<Checked>
  /** Sends all others home. */
  end(): void
}

/**
 * Reads layers ahead with so many hands, this thread's among them, and lets the others begin with their shares of the check.
 * What was read goes from hand to hand by way of the cache. What another hand fails at is done here: the findings are those of one.
 */
export async function checkTeam(layers: readonly Layer[], kept: Kept, hands: number, asked: CheckAsked): Promise<CheckTeam> {
  const { cache: { folder }, tool } = kept
  const beside = folder === undefined ? [] : Array.from({ length: hands - 1 }, () => handBeside({ folder, tool }, roomFor(layers)))
  const waiting = [...unread(layers, kept)]
  const reads = Promise.allSettled(beside.flatMap((hand) => [hand, hand].map(async () => { // twice, so that a question always waits for who has answered
    for (let some = waiting.splice(0, AT_ONCE); some.length > 0; some = waiting.splice(0, AT_ONCE)) await hand.ask({ read: some })
  })))
  for (let one = waiting.shift(); one; one = waiting.shift()) await readAhead(one, kept)
  await reads
  const shares = beside.map((hand, index) => {
    const share = { nth: index + 1, of: beside.length + 1 }
    return { share, answer: hand.ask({ layers, asked, share }).catch(() => undefined) }
  })
  return {
    async checked(curriculum) {
      const own = checkShare(shareOf(curriculum, asked, { nth: 0, of: beside.length + 1 }), asked)
      const others = await Promise.all(shares.map(async ({ share, answer }) => (await answer) ?? checkShare(shareOf(curriculum, asked, share), asked)))
      const all = [own, ...others]
      return { findings: inOrder(all.flatMap(({ findings }) => findings)), untold: inOrder(all.flatMap(({ untold }) => untold)) }
    },
    end: () => beside.forEach((hand) => hand.end()),
  }
}

/** Groups of files that another hand is sent at once. Chosen by us: a fifth of a second's work. */
const AT_ONCE = 4

/** Memory a hand may take, so that it clears up in time. Measured: read, files take three times their own room, and what is measured in turn takes more until it is cleared away. Units MB. */
const roomFor = (layers: readonly Layer[]): number => Math.ceil(100 + (8 * layers.reduce((sum, { files }) => sum + files.reduce((bytes, file) => bytes + file.bytes.length, 0), 0)) / 2 ** 20)

/** What another thread is asked: to read groups of files into the cache, or to check a share of what is kept there. */
export type Asked = { readonly read: readonly Group[] } | { readonly layers: readonly Layer[]; readonly asked: CheckAsked; readonly share: Share }

/** What it answers, in the order it was asked: nothing, what was found, or that it could not. */
export type Answered = Checked | 'read' | 'failed'

/** Where another thread finds the cache, and by what digest of the tool. */
export type KeptThere = { readonly folder: string; readonly tool: string }

type Hand = { ask(question: Asked): Promise<Checked | undefined>; end(): void }

/** A thread that answers one question after another; where it fails or ends, so does all that it has not answered. */
function handBeside(kept: KeptThere, most_mb: number): Hand {
  const thread = threadOf(import.meta.url.replace('check-team', 'check-thread'), kept, most_mb)
  const waiting: { readonly answered: (checked?: Checked) => void; readonly failed: (why: Error) => void }[] = []
  const given_up = new Error('another hand could not')
  let gone = false
  thread.on('message', (answer: Answered) => {
    const question = waiting.shift()
    if (answer === 'failed') question?.failed(given_up)
    else question?.answered(answer === 'read' ? undefined : answer)
  })
  thread.on('error', () => undefined) // it ends then
  thread.on('exit', () => {
    gone = true
    waiting.splice(0).forEach(({ failed }) => failed(given_up))
  })
  return {
    ask: (question) =>
      new Promise((answered, failed) => {
        if (gone) return failed(given_up) // nobody would answer
        waiting.push({ answered, failed })
        thread.postMessage(question)
      }),
    end: () => void thread.terminate(),
  }
}
