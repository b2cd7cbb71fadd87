/** Where a line may be written and taken back. */
export type Terminal = { readonly isTTY?: boolean; write(text: string): unknown }

const BACK = '\r\u001b[K'

/**
 * One line of a terminal that says what long work is doing, and goes when anything else is written.
 * In a pipe it writes nothing; on a terminal that cannot take a line back it writes lines.
 */
export function statusLine(terminal: Terminal, simple: boolean): { says(stage: string): void; goes(): void } {
  let shown = false
  return {
    says(stage) {
      if (terminal.isTTY !== true) return
      terminal.write(simple ? `${stage} …\n` : `${shown ? BACK : ''}${stage} …`)
      shown = !simple
    },
    goes() {
      if (shown) terminal.write(BACK)
      shown = false
    },
  }
}
