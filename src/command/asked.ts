import { createInterface } from 'node:readline'
import { createInterface as createAsking } from 'node:readline/promises'
import type { Asked } from './verb.ts'

/** How long piped answers may keep us waiting. Chosen by us: nobody is asked, so nobody thinks. Units ms. */
const PATIENCE_MS = 5000

/** Where answers come from, and how the asking ends; nothing is read before the first question. */
export type Asking = Asked & { ends(): void }

/** Asks whoever sits at the terminal, or reads one answer a line from what was piped in; there a line that begins with # is none. */
export function asking(input: NodeJS.ReadStream, output: NodeJS.WriteStream): Asking {
  return input.isTTY && output.isTTY ? person(input, output) : pipe(input)
}

function person(input: NodeJS.ReadStream, output: NodeJS.WriteStream): Asking {
  const open: { asks?: ReturnType<typeof createAsking>; closed?: Promise<undefined> } = {}
  return {
    terminal: true,
    answer(question) {
      const asks = (open.asks ??= createAsking({ input, output }))
      const closed = (open.closed ??= new Promise((resolve) => asks.once('close', () => resolve(undefined)))) // Ctrl-C or Ctrl-D
      return Promise.race([closed, asks.question(question).catch(() => undefined)])
    },
    ends: () => open.asks?.close(),
  }
}

function pipe(input: NodeJS.ReadStream): Asking {
  const open: { lines?: AsyncIterator<string> } = {}
  const line = async (): Promise<string | undefined> => {
    open.lines ??= createInterface({ input, crlfDelay: Infinity })[Symbol.asyncIterator]()
    const late = new Promise<undefined>((resolve) => setTimeout(() => resolve(undefined), PATIENCE_MS).unref())
    const next = await Promise.race([open.lines.next(), late])
    return next === undefined || next.done === true ? undefined : next.value
  }
  return {
    terminal: false,
    async answer() {
      let found = await line()
      while (found?.startsWith('#')) found = await line()
      return found
    },
    ends: () => void (open.lines && input.destroy()),
  }
}
