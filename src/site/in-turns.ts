/** How long one turn may last. Units ms. Chosen by us: a third of what a person notices. */
const TURN_MS = 30

/** Does something for each of many, letting whatever waits have its turn in between; stops early when it is no longer wanted. */
export async function inTurns<Each>(all: readonly Each[], act: (each: Each) => void, isOver: () => boolean): Promise<void> {
  let began = performance.now()
  for (const each of all) {
    act(each)
    if (performance.now() - began < TURN_MS) continue
    await new Promise((resolve) => setImmediate(resolve))
    if (isOver()) return
    began = performance.now()
  }
}
