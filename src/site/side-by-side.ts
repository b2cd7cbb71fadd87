import os from 'node:os'

/** As many as keep every core and the disk busy. Chosen by us. */
const WIDTH = 2 * os.availableParallelism() + 2

/** Does one thing to each, several at once, and no more than that. After one that fails nothing more is begun; it is thrown when all that had begun have ended. */
export async function sideBySide<T>(all: Iterable<T>, each: (one: T) => Promise<void>): Promise<void> {
  const waiting = all[Symbol.iterator]()
  const failed: unknown[] = []
  const worker = async (): Promise<void> => {
    for (let next = waiting.next(); !next.done && failed.length === 0; next = waiting.next()) await each(next.value).catch((error: unknown) => void failed.push(error))
  }
  await Promise.all(Array.from({ length: WIDTH }, worker))
  if (failed.length > 0) throw failed[0]
}
