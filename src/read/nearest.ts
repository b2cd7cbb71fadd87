/**
 * The known word most like the one that was typed, for "did you mean".
 *
 * Shape   a word and the words that are known to one of them, or undefined where none is close.
 * Assumes a slip changes, adds, drops or swaps at most a third of the letters (taste).
 */
export function nearest(typed: string, known: readonly string[]): string | undefined {
  const short = typed.slice(0, 64).toLowerCase()
  let best: string | undefined
  let least = Math.max(1, Math.floor(short.length / 3)) + 1
  for (const word of known) {
    if (Math.abs(word.length - short.length) >= least) continue // a slip adds or drops one letter
    const apart = slips(short, word.toLowerCase(), least)
    if (apart < least) [best, least] = [word, apart]
  }
  return best
}

/** Letters to add, drop, change or swap with their neighbour, or `enough` where they are no fewer. Optimal string alignment, three rows at a time. */
function slips(from: string, to: string, enough: number): number {
  let before: number[] = []
  let last = Array.from({ length: to.length + 1 }, (_, index) => index)
  for (let row = 1; row <= from.length; row += 1) {
    const now = [row]
    for (let column = 1; column <= to.length; column += 1) {
      const same = from[row - 1] === to[column - 1]
      const changed = (last[column - 1] ?? 0) + (same ? 0 : 1)
      const swapped = row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1] ? (before[column - 2] ?? 0) + 1 : Infinity
      now.push(Math.min(changed, (last[column] ?? 0) + 1, (now[column - 1] ?? 0) + 1, swapped))
    }
    before = last
    last = now
    if (Math.min(...before) >= enough && Math.min(...last) >= enough) return enough
  }
  return last[to.length] ?? to.length
}
