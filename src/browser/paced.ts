import type { Work } from '../quantity/work.ts'

/** How long work keeps a reader's finger waiting, at most. Chosen by us: a quarter of a frame. Units ms. */
const SLICE_ms = 4

/** Lets the page draw and listen. */
export const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve))

/** Does it in slices, and lets the page draw and listen before each. */
export async function paced<Answer>(work: Work<Answer>): Promise<Answer> {
  for (let began = -Infinity; ; ) {
    if (performance.now() - began > SLICE_ms) {
      await breath()
      began = performance.now()
    }
    const { done, value } = work.next()
    if (done) return value
  }
}
