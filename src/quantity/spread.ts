/**
 * One figure for an average body, and the same figure for every body and every assumption that was tried.
 *
 * `points` stand in a fixed order named by `over`, so that two spreads over the same thing
 * can be divided body by body: what makes one rung heavy for long arms makes its neighbour heavy too.
 */
export type Spread = { readonly mid: number; readonly points: readonly number[]; readonly over: string }

/** The ends of a spread, around its middle. */
export type Interval = { readonly low: number; readonly mid: number; readonly high: number }

/** A figure that is the same for everybody. */
export const exactly = (value: number): Spread => ({ mid: value, points: [value], over: 'one value' })

/** Shape a spread to its lowest, middle and highest figure. */
export function interval({ mid, points }: Spread): Interval {
  let low = mid
  let high = mid
  for (const point of points) {
    if (point < low) low = point
    if (point > high) high = point
  }
  return { low, mid, high }
}

/** Applies `change` to the middle and to every point. */
export const mapSpread = ({ mid, points, over }: Spread, change: (value: number) => number): Spread => ({
  mid: change(mid),
  points: points.map(change),
  over,
})

/**
 * How many times `above` is `below`.
 *
 * Shape   two spreads to one: point by point where both run over the same bodies, else every pair.
 * Throws  bug, when `below` holds a zero: callers answer that case first.
 */
export function ratio(above: Spread, below: Spread): Spread {
  if (below.mid === 0 || below.points.includes(0)) throw new Error('bug: ratio over a load of zero')
  const together = above.over === below.over && above.points.length === below.points.length
  const points = together
    ? above.points.map((point, index) => point / (below.points[index] ?? below.mid))
    : above.points.flatMap((top) => below.points.map((base) => top / base))
  return { mid: above.mid / below.mid, points, over: together ? above.over : `${above.over} against ${below.over}` }
}
