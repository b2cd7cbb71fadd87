import os from 'node:os'

/** As many as keep every core and the disk busy. Chosen by us. */
const WIDTH = 2 * os.availableParallelism() + 2

/** Does one thing to each, several at once, and no more than that. The first that fails ends it. */
export async function sideBySide<T>(all: readonly T[], each: (one: T) => Promise<void>): Promise<void> {
  const waiting = all[Symbol.iterator]()
  const worker = async (): Promise<void> => {
    for (const one of waiting) await each(one)
  }
  await Promise.all(Array.from({ length: Math.min(WIDTH, all.length) }, worker))
}
