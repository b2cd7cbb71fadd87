/** Work that can be left off after each part of it, and taken up again. */
export type Work<Answer> = Generator<undefined, Answer>

/** Does all of it in one go. */
export function atOnce<Answer>(work: Work<Answer>): Answer {
  for (;;) {
    const { done, value } = work.next()
    if (done) return value
  }
}
