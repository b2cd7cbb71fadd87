import { Misuse, type Asked } from './verb.ts'

/** A question, what holds when nothing is answered, and what makes a value of an answer or says in a sentence why it is none. */
export type Question<Value> = {
  readonly asks: string
  readonly unless?: string
  /** The value, or why the answer will not do. */
  read(answer: string): { readonly value: Value } | { readonly wrong: string }
}

/** Any words. */
export const asTyped = (answer: string): { readonly value: string } => ({ value: answer })

/** Words parted by semicolons, or by commas where there is none. */
export const asList = (answer: string): { readonly value: readonly string[] } => ({ value: answer.split(answer.includes(';') ? ';' : ',').map((word) => word.trim()).filter((word) => word !== '') })

/**
 * Asks until the answer will do. What was piped in is asked once: a wrong answer there is wrong usage.
 *
 * Shape   a question to its value.
 */
export async function ask<Value>({ asks, unless, read }: Question<Value>, asked: Asked, note: (text: string) => void): Promise<Value> {
  for (;;) {
    const typed = await asked.answer(unless === undefined || unless === '' ? `${asks}: ` : `${asks} [${unless}]: `)
    if (typed === undefined && asked.terminal) throw new Misuse('Nothing was written.')
    const answer = typed?.trim() || unless
    if (answer === undefined) {
      if (!asked.terminal) throw new Misuse(`There is no answer to "${asks}". Nothing was written.`)
      continue
    }
    const outcome = read(answer)
    if ('value' in outcome) return outcome.value
    if (!asked.terminal) throw new Misuse(`"${answer}" does not answer "${asks}": ${outcome.wrong} Nothing was written.`)
    note(`  ${outcome.wrong}\n`)
  }
}
